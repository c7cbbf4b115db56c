// Keeps the whole book on the device. The build writes the version and the list of files with their hashes.
// A version is installed only when every file has arrived and its hash is right; until then, and until the
// reader takes it, the old version stays whole.

const VERSION = "{{ version }}"; // the hash of the list
const PREFIX = "mulmbook-";
const LIST = "offline-list.json";
const AT_ONCE = 6;

const scope = new URL(self.registration.scope);

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => event.data === "take" && self.skipWaiting());
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method === "GET" && url.href.startsWith(scope.href)) event.respondWith(answer(event.request, url));
});

async function install() {
  const text = await (await fetched(LIST)).text();
  if ((await digest(new TextEncoder().encode(text))) !== VERSION) throw new Error("the list is of another version");
  const files = Object.entries(JSON.parse(text));
  const cache = await caches.open(PREFIX + VERSION);
  const old = await oldFiles();
  const workers = Array.from({ length: AT_ONCE }, async () => {
    for (let next = files.pop(); next; next = files.pop()) await bring(cache, old, ...next);
  });
  await Promise.all(workers);
  await cache.put(new URL(LIST, scope), new Response(text, { headers: { "Content-Type": "application/json" } }));
}

/** Put one file into the cache: already there, unchanged since the old version, or fetched and checked. */
async function bring(cache, old, path, hash) {
  const url = new URL(path, scope);
  if (await cache.match(url)) return;
  const same = old.hashes[path] === hash && (await old.cache.match(url));
  if (same) return cache.put(url, same);
  const reply = await fetched(path);
  const body = await reply.arrayBuffer();
  if ((await digest(body)) !== hash) throw new Error(`${path} is not of this version`);
  await cache.put(url, new Response(body, { headers: { "Content-Type": reply.headers.get("Content-Type") } }));
}

async function fetched(path) {
  const reply = await fetch(new URL(path, scope), { cache: "no-cache" });
  if (!reply.ok) throw new Error(`${path}: ${reply.status}`);
  return reply;
}

async function oldFiles() {
  for (const name of await caches.keys()) {
    if (!name.startsWith(PREFIX) || name === PREFIX + VERSION) continue;
    const cache = await caches.open(name);
    const list = await cache.match(new URL(LIST, scope));
    if (list) return { cache, hashes: await list.json() };
  }
  return { hashes: {} };
}

async function digest(bytes) {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function activate() {
  for (const name of await caches.keys()) {
    if (name.startsWith(PREFIX) && name !== PREFIX + VERSION) await caches.delete(name);
  }
  await self.clients.claim();
}

async function answer(request, url) {
  const cache = await caches.open(PREFIX + VERSION);
  const path = url.pathname.replace(/\/index\.html$/, "/");
  const found = await cache.match(new URL(path, url));
  if (found) return found;
  const folder = new URL(`${path}/`, url);
  if (request.mode === "navigate" && (await cache.match(folder))) return Response.redirect(folder.href + url.search);
  try {
    return await fetch(request);
  } catch (failed) {
    const missing = request.mode === "navigate" && (await cache.match(new URL("404.html", scope)));
    if (!missing) throw failed;
    return new Response(await missing.blob(), { status: 404, headers: missing.headers });
  }
}
