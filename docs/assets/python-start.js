// Starts the trimmed Python, for the worker that answers and for the one that makes the image of its memory.

import { loadPyodide } from "../runtime/pyodide.mjs";

const runtime = new URL("../runtime/", import.meta.url);
const WHEEL = "/calculators.whl";

/** The build's list of the runtime's files. */
export async function listOfParts() {
  return (await fetch(new URL("parts.json", runtime))).json();
}

/** Where the image of this version's memory is kept. */
export function imageAddress(parts) {
  return new URL(parts.image, runtime).href;
}

/** Python with the calculators at hand, not imported yet unless ``extra`` brings an image. */
export async function startPython(parts, extra = {}) {
  const wheel = fetch(new URL(parts.calculators, runtime)).then((reply) => reply.arrayBuffer());
  wheel.catch(() => {}); // looked at below, once Python is there
  const python = await loadPyodide({
    indexURL: runtime.href,
    stdLibURL: new URL(parts.library, runtime).href,
    lockFileContents: JSON.stringify(parts.lock), // no packages: the stock list alone is 120 KB
    ...extra,
  });
  python.FS.writeFile(WHEEL, new Uint8Array(await wheel));
  python.FS.mkdirTree("/calculator-tables");
  python.runPython(`import sys\nif '${WHEEL}' not in sys.path: sys.path.insert(0, '${WHEEL}')`);
  return python;
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
