// Keeps the lessons on this device: everything is fetched once, then read from here. A new version is fetched whole and used when no page of the old one
// is open any more, so that a page never meets files of another version.
const version = "sunlessons-VERSION";
const files = FILES;

self.addEventListener("install", event => event.waitUntil(caches.open(version).then(cache => cache.addAll(files))));

self.addEventListener("activate", event => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith("sunlessons-") && name !== version) await caches.delete(name);
  await self.clients.claim();
})()));

self.addEventListener("fetch", event => {
  if (event.request.method !== "GET") return;
  event.respondWith((async () => {
    const cache = await caches.open(version);
    return await cache.match(event.request, { ignoreSearch: true }) ?? await fetch(event.request);
  })());
});
