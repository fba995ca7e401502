// Keeps the packing table usable without connection: pages as they were last loaded here, and what
// they need. KEPT, the list of that, stands before this text. What is packed never passes here: it
// waits in the page's own queue.
const CACHE = "underlid-pack";
const PATIENCE_MS = 6000;
// A phone that nobody lets in any more, or that was lost, tells of no box after a day.
const LONGEST_KEPT_MS = 24 * 3600 * 1000;

self.addEventListener("install", (event) => {
  event.waitUntil(keep().then(() => self.skipWaiting()));
});
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  if (request.mode === "navigate") event.respondWith(page(request));
  else if (url.pathname.startsWith("/assets/")) event.respondWith(asset(request));
});

// Assets of earlier versions stay: a page that was kept then still asks for them.
async function keep() {
  const cache = await caches.open(CACHE);
  await cache.addAll(KEPT);
}

// A page comes from the service while that answers in good time, else as it was.
async function page(request) {
  const cache = await caches.open(CACHE);
  const fresh = fetch(request).then((answer) => {
    if (answer.ok && !answer.redirected) {
      cache.put(request, answer.clone());
      // In the language that is read now.
      cache.add("/pack/offline").catch(() => {});
    }
    return answer;
  });
  fresh.catch(() => {});
  await forgetOld(cache);
  const kept = await find(cache, request);
  if (!kept) return fresh.catch(() => cache.match("/pack/offline", { ignoreVary: true }));
  const late = new Promise((resolve) => setTimeout(resolve, PATIENCE_MS));
  return (await Promise.race([fresh.catch(() => null), late])) ?? kept;
}

// What tells of no box stays.
async function forgetOld(cache) {
  for (const key of await cache.keys()) {
    const { pathname } = new URL(key.url);
    if (pathname === "/pack/offline" || pathname.startsWith("/assets/")) continue;
    const answer = await cache.match(key, { ignoreVary: true });
    const keptOn = Date.parse(answer?.headers.get("date"));
    if (!(Date.now() - keptOn < LONGEST_KEPT_MS)) await cache.delete(key, { ignoreVary: true });
  }
}

// Never the table of another container: things would go into the wrong box.
async function find(cache, request) {
  const exact = await cache.match(request, { ignoreVary: true });
  if (exact) return exact;
  const wanted = new URL(request.url);
  const number = wanted.searchParams.get("container");
  if (!number) return undefined;
  for (const key of (await cache.keys()).reverse()) {
    const url = new URL(key.url);
    const isSame = url.searchParams.get("container") === number;
    if (isSame && url.pathname === wanted.pathname) return cache.match(key, { ignoreVary: true });
  }
  return undefined;
}

async function asset(request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request, { ignoreVary: true });
  if (kept) return kept;
  const answer = await fetch(request);
  if (answer.ok) cache.put(request, answer.clone());
  return answer;
}
