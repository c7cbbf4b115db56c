// The image of Python's memory that the site brings, for a first visit: with the first calculators imported and asked
// once, it saves most of Python's start, and is some 2 MB more to fetch. So it is taken over a quick line alone, and the
// copy of the book on the device goes without; a later visit starts from an image that the device has made.

import { scriptAddress, unpacked } from "./python-start.js";

// Octets a second, while the interpreter comes over the same line. From there on the answer stands no later on a desktop,
// and sooner on a phone, whose processor takes longer for what the image saves.
const QUICK = 1.4e6;
const SOON = 1_000; // ms that it may take longer than the interpreter: by then Python would run without it

/** Whether a file came over a quick line, by what the browser noted of it; nothing noted is not quick. */
export function isQuick(noted) {
  if (!noted?.encodedBodySize) return false;
  return noted.encodedBodySize / (noted.responseEnd - noted.responseStart) >= QUICK / 1_000;
}

/**
 * What the browser notes of the runtime's script, the first large file: as soon as it has come, or, where an engine tells
 * of no files, once it is read. Nothing where it did not come.
 */
function scriptNoted() {
  return new Promise((done) => {
    const noted = () => performance.getEntriesByName(scriptAddress)[0];
    import(scriptAddress).then(() => done(noted()), () => done(undefined)); // the runtime itself tells what is wrong
    new PerformanceObserver((_list, observer) => {
      if (!noted()) return;
      observer.disconnect();
      done(noted());
    }).observe({ type: "resource", buffered: true });
  });
}

/**
 * The image's octets, as they were packed; nothing over a slow line, or where it does not come soon. `code` settles when
 * the interpreter is compiled, and `expect` hears of its size before it is fetched.
 */
export async function broughtImage(parts, code, expect) {
  if (!isQuick(await scriptNoted())) return undefined;
  expect(parts.start.bytes);
  const late = new AbortController();
  code.then(() => setTimeout(() => late.abort(), SOON), () => late.abort());
  try {
    const reply = await unpacked(new URL(parts.start.file, scriptAddress), late.signal);
    return new Uint8Array(await reply.arrayBuffer());
  } catch {
    return undefined; // the line is gone or slow after all; Python starts from its parts
  }
}
