/** Keeps the files of this page and the data behind its fields, so that it opens without a network the next time. */
const pages = 'escape-ledger-pages';
const data = 'escape-ledger-data';

/** Plain HTTP from another machine has no service worker: drafts are kept there too, but the page does not open offline. */
export const canOpenOffline = (): boolean => 'serviceWorker' in navigator && 'caches' in globalThis;

const loadedFrom = (folder: string): string[] =>
  performance
    .getEntriesByType('resource')
    .map(({ name }) => name)
    .filter((name) => name.startsWith(`${location.origin}${folder}`));

async function keepFiles(): Promise<void> {
  const cache = await caches.open(pages);
  const files = loadedFrom('/assets/');
  await cache.addAll(['/record', ...files]);
  for (const { url } of await cache.keys())
    if (url.includes('/assets/') && !files.includes(url)) await cache.delete(url);
}

/** Before the worker is in charge nobody has kept the answers that the page was drawn from. */
async function keepData(): Promise<void> {
  const cache = await caches.open(data);
  const paths = ['session', 'plants', 'lines', 'stages', 'housings', 'terminals', 'tools', 'failures/marks'];
  const asked = new Set(paths.flatMap((path) => loadedFrom(`/api/v1/${path}`)));
  await Promise.allSettled([...asked].map((address) => cache.add(address)));
}

export async function keepForOffline(): Promise<void> {
  if (!import.meta.env.PROD || !canOpenOffline()) return;
  const unattended = navigator.serviceWorker.controller === null;
  await navigator.serviceWorker.register('/offline-worker.js');
  await navigator.serviceWorker.ready;
  if (!navigator.onLine) return;
  await keepFiles();
  if (unattended) await keepData();
}
