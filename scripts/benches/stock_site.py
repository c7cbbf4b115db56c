"""A copy of the built site whose worker starts the runtime as it comes, to be measured beside ours."""

import shutil
from pathlib import Path

from scripts.setup.node import browser_parts
from scripts.setup.paths import DOCS, SITE
from scripts.site.offline import write_offline_list

START = """
import { loadPyodide } from "../stock/pyodide.mjs";
const runtime = new URL("../runtime/", import.meta.url);
export const compileEarly = () => {};
export const bringTables = async () => {};
export const bringRest = async () => {};
export const fetchRest = async () => {};
export const listAhead = async () => [];
export const imageAddress = () => new URL("no-image", runtime).href;
export const listOfParts = async () => (await fetch(new URL("parts.json", runtime))).json();
export async function startPython(parts) {
  const piece = async (name) => {
    const reply = await fetch(new URL(name, runtime));
    const whole = new Response(reply.body.pipeThrough(new DecompressionStream("gzip")));
    return new Uint8Array(await whole.arrayBuffer());
  };
  const [python, first, rest] = await Promise.all([
    loadPyodide({ indexURL: new URL("../stock/", import.meta.url).href }),
    piece(parts.calculators),
    piece(parts.rest),
  ]);
  performance.mark("Python started");
  python.FS.writeFile("/calculators.whl", first);
  const file = python.FS.open("/calculators.whl", "r+");
  python.FS.write(file, rest, 0, rest.length, parts.restAt);
  python.FS.close(file);
  python.runPython("import sys; sys.path.insert(0, '/calculators.whl')");
  return python;
}
"""
STOCK = (
    "pyodide.mjs",
    "pyodide.asm.js",
    "pyodide.asm.wasm",
    "pyodide-lock.json",
    "python_stdlib.zip",
)


def stock_site(folder: Path) -> Path:
    """Make the copy in ``folder``, with an offline list of its own."""
    shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(SITE, folder, ignore=shutil.ignore_patterns("data"))
    (folder / "stock").mkdir()
    for name in STOCK:
        shutil.copyfile(browser_parts() / "pyodide" / name, folder / "stock" / name)
    for path in (folder / "runtime").glob("pyodide*"):
        path.unlink()
    for name in (
        "calculator-worker.js",
        "python-image.js",
    ):  # unjoined, so that they load this start
        shutil.copyfile(DOCS / "assets" / name, folder / "assets" / name)
    (folder / "assets" / "python-start.js").write_text(START, encoding="utf-8")
    (folder / "assets" / "brought-image.js").write_text(
        "export const broughtImage = async () => undefined;", encoding="utf-8"
    )
    (folder / "assets" / "image-worker.js").write_text(
        "postMessage({ made: false });", encoding="utf-8"
    )
    shutil.copyfile(DOCS / "service-worker.js", folder / "service-worker.js")
    write_offline_list(folder)
    return folder
