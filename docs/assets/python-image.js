// An image of Python's memory with the calculators imported, made on this device once for each version and
// kept beside the book's copy: a later visit starts from it in half the time, and nothing more is fetched.

const CACHE = "python-images"; // not named like the book's versions, which the service worker keeps in order
// Milliseconds. A store in which another page was writing as it closed may never answer, and a start without an image
// takes about as long as this.
const SOON = 4_000;
const TYPE = { "Content-Type": "application/octet-stream" };

/** The image's bytes for this version of the runtime; nothing where there is none, or none comes soon. */
export function keptImage(address) {
  return Promise.race([readImage(address), new Promise((done) => setTimeout(done, SOON))]); // as atMost does for pages: a file for both would be one more to fetch
}

async function readImage(address) {
  try {
    const reply = await (await caches.open(CACHE)).match(address);
    const bytes = reply && new Uint8Array(await reply.arrayBuffer());
    return bytes?.length === Number(reply?.headers.get("Content-Length")) ? bytes : undefined;
  } catch {
    return undefined; // no storage here, as on a host without https
  }
}

/** Whether an image is kept, without reading it. */
export async function isImageKept(address) {
  return Boolean(await (await caches.open(CACHE)).match(address));
}

/** Keep an image, and let those of other versions of this book go. */
export async function keepImage(address, bytes) {
  const cache = await caches.open(CACHE);
  const folder = new URL(".", address).href;
  for (const { url } of await cache.keys()) if (url.startsWith(folder)) await cache.delete(url);
  await cache.put(address, new Response(bytes, { headers: { ...TYPE, "Content-Length": String(bytes.length) } }));
}

/** Let an image go that Python could not start from. */
export async function dropImage(address) {
  await (await caches.open(CACHE)).delete(address);
}
