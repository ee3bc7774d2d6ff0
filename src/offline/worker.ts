/**
 * The service worker: keeps every built file, so that the app opens without a connection.
 *
 * Each build has a cache of its own, named by its content. A newer one waits until a page says `take-over`. Older
 * caches stay while another tab may still need a later part of them, and go when a page says that it has opened alone.
 */

/** Put in by the build. */
declare const BUILT: { cache: string; files: string[] };

declare const self: ServiceWorkerGlobalScope;

const { cache, files } = BUILT;

const isOlder = (name: string): boolean => name.startsWith('ringtrue-') && name !== cache;

async function keepAll(): Promise<void> {
  const kept = await caches.open(cache);
  await kept.addAll(files.map((file) => new Request(file, { cache: 'reload' })));
}

async function tidy(): Promise<void> {
  // A cache that is not this build's may be that of the next one.
  const { installing, waiting } = self.registration;
  const pages = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (installing || waiting || pages.length > 1) return;
  const names = await caches.keys();
  await Promise.all(names.filter(isOlder).map((name) => caches.delete(name)));
}

/** Nothing where the cache cannot be read: then the way is over the network, as if it were not there. */
const inCache = (request: RequestInfo, options: MultiCacheQueryOptions = {}): Promise<Response | undefined> =>
  caches.match(request, { ...options, ignoreVary: true }).catch(() => undefined);

/** This build's file first; then an older build's, for a page that is still of that build. */
async function answer(request: Request): Promise<Response> {
  return (await inCache(request, { cacheName: cache })) ?? (await inCache(request)) ?? fetch(request);
}

/** The app has one address. Below it there is nothing, and without a connection the way leads back to it. */
async function open(request: Request): Promise<Response> {
  const home = new URL(self.registration.scope);
  const { pathname } = new URL(request.url);
  if (pathname === home.pathname || pathname === `${home.pathname}index.html`)
    return (await inCache('./', { cacheName: cache })) ?? fetch(request);
  return fetch(request).catch(() => Response.redirect(home.href));
}

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('message', (event) => {
  if (event.data === 'take-over') event.waitUntil(self.skipWaiting());
  if (event.data === 'opened') event.waitUntil(tidy());
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== location.origin) return;
  event.respondWith(request.mode === 'navigate' ? open(request) : answer(request));
});
