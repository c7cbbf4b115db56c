// Keeps the whole book on the device. The build writes the version and the list of files with their hashes.
// A version is installed only when every file has arrived and its hash is right; until then, and until the
// reader takes it, the old version stays whole.

const VERSION = "{{ version }}"; // the hash of the list
const PREFIX = "mulmbook-";
const LIST = "offline-list.json";
const BYTES = Number("{{ bytes }}"); // of all files together
const AT_ONCE = 6;
const PATIENCE = 180_000; // ms for one file; a server that drips ends here, and the next visit tries again
const FIRST = /^runtime\//; // what the first live answer waits for
const MOST_HELD = 30_000; // ms; a page that was closed meanwhile never says that it may go on

const scope = new URL(self.registration.scope);
let mayGoOn = Promise.resolve(); // what each next file waits for: what a keeper waits for takes half the time without us
let goOn = () => {};

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => {
  if (event.data === "take") self.skipWaiting();
  if (event.data === "hold") hold();
  if (event.data === "go on") goOn();
  if (event.data === "check") event.waitUntil(check().then((state) => event.ports[0].postMessage(state)));
});
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method === "GET" && url.href.startsWith(scope.href)) event.respondWith(answer(event.request, url));
});

async function install() {
  const text = await (await fetched(LIST, "reload")).text();
  if ((await digest(new TextEncoder().encode(text))) !== VERSION) throw new Error("the list is of another version");
  const files = Object.entries(JSON.parse(text)).sort(([one], [other]) => Number(FIRST.test(one)) - Number(FIRST.test(other)));
  const cache = await caches.open(PREFIX + VERSION);
  const old = await oldFiles();
  const workers = Array.from({ length: AT_ONCE }, async () => {
    for (let next = files.pop(); next; next = files.pop()) {
      await mayGoOn;
      await bring(cache, old, ...next);
    }
  });
  await Promise.all(workers);
  await cache.put(new URL(LIST, scope), new Response(text, { headers: { "Content-Type": "application/json", Date: new Date().toUTCString() } }));
}

/** Bring no further file until the page says so. */
function hold() {
  goOn(); // one hold at a time, or an earlier one would never end
  mayGoOn = new Promise((done) => {
    goOn = done;
    setTimeout(done, MOST_HELD);
  });
}

/** Look whether this version's copy is whole, and bring what was lost. Says how it stands. */
async function check() {
  const state = { version: VERSION, bytes: BYTES };
  try {
    const cache = await caches.open(PREFIX + VERSION);
    const list = await cache.match(new URL(LIST, scope));
    const held = new Set((await cache.keys()).map(({ url }) => url));
    const lost = !list || Object.keys(await list.clone().json()).some((path) => !held.has(new URL(path, scope).href));
    if (lost) await install();
    return { ...state, whole: true, since: (await cache.match(new URL(LIST, scope))).headers.get("Date") };
  } catch (wrong) {
    return { ...state, whole: false, why: String(wrong?.message ?? wrong) };
  }
}

/** Put one file into the cache: already there, unchanged since the old version, or fetched and checked. */
async function bring(cache, old, path, hash) {
  const url = new URL(path, scope);
  if (await cache.match(url)) return;
  const same = old.hashes[path] === hash && (await old.cache.match(url));
  if (same) return cache.put(url, same);
  // What the page fetched a moment ago serves, where it is of this version; else a copy in between is passed by.
  const [body, type] = (await fromBrowser(path, hash)) ?? (await rightBody(path, hash, "reload")) ?? [];
  if (!body) throw new Error(`${path} is not of this version`);
  await cache.put(url, new Response(body, { headers: { "Content-Type": type } }));
}

/** What the browser keeps of a file. It also keeps an error or a way elsewhere that a server gave: then nothing. */
async function fromBrowser(path, hash) {
  try {
    return await rightBody(path, hash, "force-cache");
  } catch (wrong) {
    if (wrong.name === "TimeoutError") throw wrong; // a server that drips has had its time
    return null;
  }
}

/** A file's octets and type, or nothing where its hash is another. */
async function rightBody(path, hash, freshness) {
  const reply = await fetched(path, freshness);
  const body = await reply.arrayBuffer();
  return (await digest(body)) === hash ? [body, reply.headers.get("Content-Type")] : null;
}

async function fetched(path, freshness) {
  const reply = await fetch(new URL(path, scope), { cache: freshness, signal: AbortSignal.timeout(PATIENCE) });
  if (!reply.ok) throw new Error(`${path}: ${reply.status}`);
  return reply;
}

/** The whole copy of another version, to take what did not change from; halves of given-up versions go. */
async function oldFiles() {
  let old = { hashes: {} };
  for (const name of await caches.keys()) {
    if (!name.startsWith(PREFIX) || name === PREFIX + VERSION) continue;
    const cache = await caches.open(name);
    const list = await cache.match(new URL(LIST, scope));
    if (list) old = { cache, hashes: await list.json() };
    else await caches.delete(name);
  }
  return old;
}

async function digest(bytes) {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Other whole versions go. A half may be one that is just being brought: the next version sweeps those away. */
async function activate() {
  for (const name of await caches.keys()) {
    if (!name.startsWith(PREFIX) || name === PREFIX + VERSION) continue;
    if (await (await caches.open(name)).match(new URL(LIST, scope))) await caches.delete(name);
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
