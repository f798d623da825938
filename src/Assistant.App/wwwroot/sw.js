// Keeps the page itself on the phone, as one whole release; what is known of visits is kept by the page. The list of files stands before this.
const current = `coldwalk-${shell.version}`;
const tables = "coldwalk-tables";

addEventListener("install", event => event.waitUntil(
  caches.open(current).then(cache => cache.addAll(shell.files.map(file => new Request(file, { cache: "no-cache" }))))));

addEventListener("activate", event => event.waitUntil((async () => {
  for (const name of await caches.keys()) {
    if (name.startsWith("coldwalk-") && name !== current && name !== tables) await caches.delete(name);
  }
  await clients.claim();
})()));

addEventListener("fetch", event => {
  const { method, mode, url } = event.request;
  const { origin, pathname } = new URL(url);
  if (method !== "GET" || origin !== location.origin) return;
  if (mode === "navigate" ? pathname !== "/" : !shell.files.includes(pathname)) return;
  event.respondWith((async () => (await (await caches.open(current)).match(pathname)) ?? fetch(event.request))());
});
