// Keeps the page's own files, so that it opens again without network. It answers from the network
// first, so that a newer program is taken at once; what people tapped never passes through here.
const KEPT = 'underhook-day-1';
const SHELL = [
  'day.css', 'day.js', 'words.js', 'words/en.js', 'words/de.js', 'words/de-says.js', 'link.js', 'outbox.js', 'state.js', 'standing.js', 'marks.js',
  'join.js', 'orders.js', 'loader.js', 'pilot.js', 'crew.js', 'emergency.js', 'report.js', 'signals.js', 'units.js',
].map((name) => `/assets/day/${name}`)
  .concat(['offsets', 'quantities', 'words/de-says', 'words/de-recheck', 'words/de-versions', 'words/de-faults', 'words/de-ahead'].map((name) => `/assets/${name}.js`), '/lib/lit/lit-html.js', '/assets/icon.svg');

addEventListener('install', (event) => event.waitUntil((async () => {
  const cache = await caches.open(KEPT);
  await cache.addAll(SHELL.map((path) => new Request(path, { cache: 'reload' })));
  await skipWaiting();
})()));

addEventListener('activate', (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith('underhook-day-') && name !== KEPT) await caches.delete(name);
  await clients.claim();
})()));

addEventListener('fetch', (event) => {
  const address = new URL(event.request.url);
  if (event.request.method !== 'GET' || address.origin !== location.origin || address.pathname.startsWith('/api/')) return;
  event.respondWith(answer(event.request));
});

async function answer(request) {
  const cache = await caches.open(KEPT);
  try {
    const fresh = await fetch(request);
    // The entrance, or a refusal, must not take the place of the page.
    if (fresh.ok && !fresh.redirected) await cache.put(request, fresh.clone());
    return fresh;
  } catch (gone) {
    const kept = await cache.match(request, { ignoreSearch: true });
    if (kept) return kept;
    throw gone;
  }
}
