// Starts the trimmed Python, for the worker that answers and for the one that makes the image of its memory.

import { loadPyodide } from "../runtime/pyodide.mjs";

const runtime = new URL("../runtime/", import.meta.url);
const WHEEL = "/calculators.whl";
// Of all that Python looks through, those that read this zip: its own word for all asks for what is not shipped.
const READ_AGAIN = `
import sys
for path, finder in sys.path_importer_cache.items():
    if path.startswith('${WHEEL}'): finder.invalidate_caches()
`;
const CODE = new URL("pyodide.asm.wasm", runtime).href;
const MEMORY_AT = 1; // of the numbers that an image begins with: where memory begins in it

/** The runtime's own script. */
export const scriptAddress = new URL("pyodide.asm.js", runtime).href;

/** @type {Promise<WebAssembly.Module> | undefined} */
let compiled; // once for all starts here: where an image does not serve, Python starts again
/** @type {Promise<Uint8Array> | undefined} */
let fetching; // of the calculators' other piece

/** Fetch the interpreter's two files and compile them while all else is on its way. */
export function compileEarly() {
  import(scriptAddress).catch(() => {}); // the runtime asks for it again, and tells what is wrong
  compiled ??= WebAssembly.compileStreaming(fetch(CODE)).then((code) => {
    performance.mark("compiled");
    return code;
  });
  compiled.catch(() => { compiled = undefined; }); // another try fetches it anew
  return compiled;
}

/** The build's list of the runtime's files. */
export async function listOfParts() {
  return (await fetch(new URL("parts.json", runtime))).json();
}

/** The modules that the larger calculators need, in an order to import them one by one. */
export async function listAhead(parts) {
  return (await fetch(new URL(parts.ahead, runtime))).json();
}

/** Where the image of this version's memory is kept. */
export function imageAddress(parts) {
  return new URL(parts.image, runtime).href;
}

/**
 * Python with most calculators at hand, not imported yet unless an image brings them; with `whole` all are at hand, as
 * an image needs that was made with all. `brought` is an image that the site brings. The others are options of the
 * runtime.
 * @param {any} parts
 * @param {{ whole?: boolean, brought?: Uint8Array, [option: string]: unknown }} more
 */
export async function startPython(parts, more = {}) {
  const { whole = false, brought, ...extra } = more;
  if (brought) extra._loadSnapshot = brought; // private option of the pinned runtime
  const stdLibURL = new URL(parts.library, runtime).href;
  const library = unpacked(stdLibURL);
  const first = compileEarly().then(() => octetsOf(parts.calculators)); // last on the line: Python starts meanwhile
  const rest = whole ? fetchRest(parts) : undefined;
  for (const part of [library, first, rest]) part?.catch(() => {}); // looked at below
  const complete = brought && ((memory) => completed(brought, memory, parts.start.words));
  const python = await withCompiled({ [stdLibURL]: library, [CODE]: new Response() }, complete, () => loadPyodide({
    indexURL: runtime.href,
    stdLibURL,
    lockFileContents: JSON.stringify(parts.lock), // no packages: the stock list alone is 120 KB
    ...extra,
  }));
  performance.mark("Python started");
  python.FS.writeFile(WHEEL, await first);
  if (whole) putRest(python, parts, await rest);
  python.FS.mkdirTree("/calculator-tables");
  python.runPython(`import sys\nif '${WHEEL}' not in sys.path: sys.path.insert(0, '${WHEEL}')`);
  if (brought) python.runPython(READ_AGAIN); // tables may have changed since, and with them where a file stands
  return python;
}

/** Have the other piece of the calculators on its way, before Python runs. */
export function fetchRest(parts) {
  fetching ??= octetsOf(parts.rest);
  fetching.catch(() => { fetching = undefined; }); // another try fetches it anew
  return fetching;
}

/** Bring the other piece, where Python started without. */
export async function bringRest(python, parts) {
  putRest(python, parts, await fetchRest(parts));
  python.runPython(READ_AGAIN);
}

/** Make the zip whole: the other piece goes over its end, where its list of files stands. */
function putRest(python, parts, octets) {
  const file = python.FS.open(WHEEL, "r+");
  python.FS.write(file, octets, 0, octets.length, parts.restAt);
  python.FS.close(file);
  fetching = undefined; // it is in Python's memory now
}

async function octetsOf(part) {
  const reply = await unpacked(new URL(part, runtime));
  return new Uint8Array(await reply.arrayBuffer());
}

/** A part that comes packed as one gzip stream, unpacked as it comes. */
export async function unpacked(address, signal) {
  const reply = await fetch(address, { signal });
  if (!reply.ok || !reply.body) throw new Error(`${address} could not be loaded`);
  return new Response(reply.body.pipeThrough(new DecompressionStream("gzip")));
}

/**
 * Run the runtime's start with the code that is compiled already. It would begin only after its own script has
 * arrived, and its option for this is for one that is not streamed. Fails at once where the code does not come.
 * What it fetches, by its address, it has from `replies` where they hold it. Where `complete` is a function, it is given
 * the memory as the code has brought it, before anything runs.
 */
async function withCompiled(replies, complete, start) {
  const code = compileEarly();
  const { fetch: plainFetch } = self;
  const { instantiateStreaming } = WebAssembly;
  self.fetch = async (address, options) => replies[String(address)] ?? plainFetch(address, options);
  WebAssembly.instantiateStreaming = async (_reply, imports) => {
    const module = await code;
    const instance = await WebAssembly.instantiate(module, imports);
    complete?.(/** @type {any} */ (imports).env.memory.buffer);
    performance.mark("instantiated");
    return { module, instance };
  };
  try {
    return (await Promise.all([start(), code]))[0];
  } finally {
    self.fetch = plainFetch;
    WebAssembly.instantiateStreaming = instantiateStreaming;
  }
}

/** Put into an image that the site brings what the interpreter's code itself has brought into memory, its first `count` words. */
function completed(image, memory, count) {
  const words = new Uint32Array(image.buffer, new Uint32Array(image.buffer)[MEMORY_AT], count);
  const fresh = new Uint32Array(memory, 0, count);
  for (let at = 0; at < count; at++) words[at] ^= fresh[at];
}

/** Write tables that calculators need where calculators/core/data.py looks, once each. */
export function bringTables(python, tables) {
  return Promise.all(Object.entries(tables).map(([table, file]) => bringTable(python, table, file)));
}

async function bringTable(python, table, file) {
  const path = `/calculator-tables/${table}.json`;
  if (python.FS.analyzePath(path).exists) return;
  const reply = await fetch(new URL(file, runtime));
  if (!reply.ok) throw new Error(`${file} could not be loaded`);
  python.FS.writeFile(path, new Uint8Array(await reply.arrayBuffer()));
}
