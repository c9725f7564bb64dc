/** After an update of the service the parts of an open page may be gone: load the page anew, but never in a loop. */
const mark = 'escape-ledger.reloaded-at';
const aMinute = 60_000;

export const reloadWhenStale = (): void => {
  addEventListener('vite:preloadError', (event) => {
    const last = Number(sessionStorage.getItem(mark) ?? 0);
    if (Date.now() - last < aMinute) return;
    event.preventDefault();
    sessionStorage.setItem(mark, String(Date.now()));
    location.reload();
  });
};
