// Runs Python in a worker: loads the trimmed runtime, then answers {id, question} with {id, answer}.
// Only text crosses: JSON in, JSON out. All files come from this site.

import { loadPyodide } from "../runtime/pyodide.mjs";

const runtime = new URL("../runtime/", import.meta.url);
const LOADED = 85; // percent of the bar for what is fetched; the rest is Python's own start

let answer;
let bringTables; // brings the tables that a calculator alone needs, once each
const starting = begin().then(
  () => postMessage({ ready: true }),
  (wrong) => postMessage({ failed: String(wrong?.message ?? wrong) }),
);

self.onmessage = async ({ data: { id, question } }) => {
  await starting;
  try {
    await bringTables(JSON.parse(question).calculator);
    postMessage({ id, answer: answer(question) });
  } catch (wrong) {
    postMessage({ id, error: String(wrong?.message ?? wrong) });
  }
};

async function begin() {
  if (typeof WebAssembly === "undefined") throw new Error("this browser has no WebAssembly"); // before 5 MB are fetched
  const parts = await (await fetch(new URL("parts.json", runtime))).json();
  countBytes(parts.bytes);
  const wheel = fetch(new URL(parts.calculators, runtime)).then((reply) => reply.arrayBuffer());
  wheel.catch(() => {}); // looked at below, once Python is there
  const python = await loadPyodide({
    indexURL: runtime.href,
    stdLibURL: new URL(parts.library, runtime).href,
    lockFileContents: JSON.stringify(parts.lock), // no packages: the stock list alone is 120 KB
  });
  postMessage({ percent: 95, text: "Python is starting." });
  python.FS.writeFile("/calculators.whl", new Uint8Array(await wheel));
  python.FS.mkdirTree("/calculator-tables");
  bringTables = (calculator) => Promise.all(Object.entries(parts.tables[calculator] ?? {}).map(([table, file]) => bringTable(python, table, file)));
  answer = python.runPython("import sys; sys.path.insert(0, '/calculators.whl')\nfrom calculators.bridge import answer\nanswer");
  postMessage({ percent: 100, text: "Ready." });
}

async function bringTable(python, table, file) {
  const path = `/calculator-tables/${table}.json`; // where calculators/core/data.py looks
  if (python.FS.analyzePath(path).exists) return;
  const reply = await fetch(new URL(file, runtime));
  if (!reply.ok) throw new Error(`${file} could not be loaded`);
  python.FS.writeFile(path, new Uint8Array(await reply.arrayBuffer()));
}

/** Count what arrives of the large files, for the progress bar. Their sizes come from the build. */
function countBytes(total) {
  const plainFetch = self.fetch;
  let loaded = 0;
  self.fetch = async (...request) => {
    const reply = await plainFetch(...request);
    if (!reply.body || !reply.ok) return reply;
    const counted = reply.body.pipeThrough(new TransformStream({
      transform(chunk, controller) {
        loaded += chunk.byteLength;
        postMessage({ percent: Math.min(LOADED, (LOADED * loaded) / total), text: "Python is loading. Fill in the form meanwhile." });
        controller.enqueue(chunk);
      },
    }));
    return new Response(counted, { headers: reply.headers, status: reply.status });
  };
}
