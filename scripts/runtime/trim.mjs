// Under Node, in the browser's own Python: find what the calculators need of the standard library, and
// byte-compile that and the wheel. Usage: node trim.mjs REQUEST.json, which names
// {pyodide, library, scripts, wheel, first, later, read, tables, compile: library and wheel to write or null, list: file to write}.

import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

process.on("uncaughtException", (wrong) => {
  console.error(wrong.message); // by itself Node shows the line too, which is the whole of the runtime's script
  process.exit(1);
});

const asked = JSON.parse(readFileSync(process.argv[2], "utf8"));
const { loadPyodide } = await import(pathToFileURL(`${asked.pyodide}/pyodide.mjs`));
const python = await loadPyodide({
  indexURL: `${asked.pyodide}/`,
  stdLibURL: asked.library,
  env: { PYTHONNODEBUGRANGES: "1" }, // as what is shipped: an error is shown without columns
});

python.FS.writeFile("/calculators.whl", readFileSync(asked.wheel));
python.FS.mkdirTree("/scripts/runtime");
for (const [name, file] of Object.entries(asked.scripts)) python.FS.writeFile(`/scripts/runtime/${name}`, readFileSync(file));
python.FS.mkdirTree("/calculator-tables");
for (const [name, file] of Object.entries(asked.tables)) python.FS.writeFile(`/calculator-tables/${name}.json`, readFileSync(file));
python.runPython("import sys; sys.path[:0] = ['/', '/calculators.whl']");
python.globals.set("first", JSON.stringify(asked.first));
python.globals.set("later", JSON.stringify(asked.later));
python.globals.set("read", JSON.stringify(asked.read));
// The modules are counted before trim's own tools, such as zipfile, are loaded.
python.runPython("import json\nfrom scripts.runtime import trim\nused = trim.used(json.loads(first), json.loads(later))");
writeFileSync(asked.list, python.runPython("json.dumps(used)"));

if (asked.compile) {
  const bytes = (code) => {
    const proxy = python.runPython(code);
    const data = proxy.toJs();
    proxy.destroy();
    return data;
  };
  writeFileSync(asked.compile.library, bytes("trim.compiled(trim.LIBRARY, used['library'])"));
  writeFileSync(asked.compile.wheel, bytes("trim.compiled('/calculators.whl', read=json.loads(read))"));
}
