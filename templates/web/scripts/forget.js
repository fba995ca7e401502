// Nobody is signed in on this device any more: the pages that it kept for packing without a
// connection, which tell what lies in boxes, are forgotten. What waits to be sent lies elsewhere
// and stays, and so does what holds nothing of the collection.
const CACHE = "underlid-pack";

async function forget() {
  if (!(await caches.has(CACHE))) return;
  const cache = await caches.open(CACHE);
  for (const request of await cache.keys()) {
    const { pathname } = new URL(request.url);
    const isBlank = pathname === "/pack/offline" || pathname.startsWith("/assets/");
    if (!isBlank) await cache.delete(request);
  }
}

// Only secure connections have such a store (W3C, Secure Contexts).
if (window.isSecureContext && "caches" in window) forget();
