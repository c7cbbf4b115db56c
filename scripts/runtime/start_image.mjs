// Under Node: an image of the memory of the browser's Python, with the first calculators imported and asked once, so
// that a first visit need not start it. Usage: node start_image.mjs RUNTIME TARGET: the runtime's folder as it is
// served, and the file to write. The last line says which tables were read, whose octets are then in the image, and how
// many words of memory the interpreter's code brings.
// What an interpreter's code itself brings into memory is left out of the image: where both agree it holds zeros, and
// the page puts them together again.

import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { gunzipSync } from "node:zlib";

process.on("uncaughtException", (wrong) => {
  console.error(wrong.message); // by itself Node shows the line too, which is the whole of the runtime's script
  process.exit(1);
});

const [runtime, target] = process.argv.splice(1).slice(1); // taken out, or Python would keep them in its memory
const MOMENT = Date.UTC(2000, 0, 1);
const PLACE = 1; // of the number, among those that an image begins with, that says where memory begins in it

// The same memory on every machine: no clock, no chance, no zone of time and no language of the one that makes it.
process.env.TZ = "UTC";
Date.now = () => MOMENT;
performance.now = () => 0;
globalThis.crypto.getRandomValues = (octets) => octets.fill(0);
const env = { HOME: "/home/pyodide", LANG: "C.UTF-8", PYTHONHASHSEED: "0", _: "python" };

/** @type {Uint32Array} */
let fresh; // memory as the interpreter's code has it, before anything ran
const { instantiate } = WebAssembly;
WebAssembly.instantiate = async (code, imports) => {
  const made = await instantiate.call(WebAssembly, code, imports);
  fresh ??= new Uint32Array(imports.env.memory.buffer.slice(0));
  return made;
};

const { loadPyodide } = await import(pathToFileURL(`${runtime}/pyodide.mjs`).href);
const parts = JSON.parse(readFileSync(`${runtime}/parts.json`, "utf8"));
const unpacked = (part) => gunzipSync(readFileSync(`${runtime}/${part}`));
const library = `${target}-library.zip`;
writeFileSync(library, unpacked(parts.library));
const python = await loadPyodide({
  indexURL: `${runtime}/`,
  stdLibURL: library,
  lockFileContents: JSON.stringify(parts.lock),
  env,
  _makeSnapshot: true, // private option of the pinned runtime
});
rmSync(library);
python.FS.writeFile("/calculators.whl", unpacked(parts.calculators));
python.runPython("import sys; sys.path.insert(0, '/calculators.whl')");
python.runPython(`from calculators.bridge import answer_examples; answer_examples(${JSON.stringify(parts.first)})`);
const image = python.makeMemorySnapshot();
const words = new Uint32Array(image.buffer, new Uint32Array(image.buffer)[PLACE]);
const brought = fresh.findLastIndex(Boolean) + 1;
for (let at = 0; at < brought; at++) words[at] ^= fresh[at];
writeFileSync(target, image);
const tables = python.runPython("from calculators.core.data import tables_read; '\\n'.join(sorted(tables_read()))");
console.log(JSON.stringify({ tables: tables.split("\n").filter(Boolean), words: brought }));
