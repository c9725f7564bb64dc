/**
 * Lets the record page open without a network: its files and the master data it offers are kept from the last visit.
 * Everything else goes to the network untouched. Signing in or out forgets the data.
 */
const pages = 'escape-ledger-pages';
const data = 'escape-ledger-data';
const keptData =
  /^\/api\/v1\/(session|plants|lines|stages|housings|terminals|tools)(\/|$)|^\/api\/v1\/failures\/marks$/;
/** Answers to what somebody typed are not kept: there is no end of them. */
const typed = /[?&](q|cursor)=/;
const patience = 8000;

addEventListener('install', () => skipWaiting());
addEventListener('activate', (event) => event.waitUntil(clients.claim()));

async function networkFirst(request, cacheName, key) {
  const cache = await caches.open(cacheName);
  try {
    const answer = await fetch(request, { signal: AbortSignal.timeout(patience) });
    if (answer.ok) await cache.put(key, answer.clone());
    return answer;
  } catch (error) {
    const kept = await cache.match(key);
    if (kept) return kept;
    throw error;
  }
}

const keptFirst = async (request) => (await caches.match(request, { cacheName: pages })) ?? fetch(request);

addEventListener('fetch', (event) => {
  const { request } = event;
  const { pathname, search, origin } = new URL(request.url);
  if (origin !== location.origin) return;
  if (pathname === '/api/v1/session' && request.method !== 'GET') event.waitUntil(caches.delete(data));
  if (request.method !== 'GET') return;
  if (request.mode === 'navigate' && pathname === '/record') event.respondWith(networkFirst(request, pages, '/record'));
  else if (pathname.startsWith('/assets/')) event.respondWith(keptFirst(request));
  else if (keptData.test(pathname) && !typed.test(search)) event.respondWith(networkFirst(request, data, request.url));
});
