"""The trimmed, byte-compiled Python answers for every calculator as this one does, under Node."""

import gzip
import html
import io
import json
import re
import runpy
import subprocess
import sys
import zipfile

import pytest

from calculators.core.listing import load_all
from calculators.core.run import run
from scripts.records.published import cases
from scripts.runtime.bytecode import STAND_INS
from scripts.runtime.make_runtime import MADE
from scripts.runtime.pieces import LATER
from scripts.setup.node import node
from scripts.setup.paths import DOCS, ROOT
from tests.effort import long_run, thorough
from tests.near import assert_near

ASK = """
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { gunzipSync } from "node:zlib";
const [folder, asked, library] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${folder}/pyodide.mjs`));
const parts = JSON.parse(readFileSync(`${folder}/parts.json`, "utf8"));
const pageScript = readFileSync(process.argv[7], "utf8");
const unpacked = (part) => gunzipSync(readFileSync(`${folder}/${part}`));
writeFileSync(library, unpacked(parts.library));
const start = async (extra, whole) => {
  const python = await loadPyodide({
    indexURL: `${folder}/`,
    stdLibURL: library,
    lockFileContents: JSON.stringify(parts.lock),
    ...extra,
  });
  python.FS.writeFile("/calculators.whl", unpacked(parts.calculators));
  python.FS.mkdirTree("/calculator-tables");
  for (const tables of Object.values(parts.tables)) {
    for (const [name, file] of Object.entries(tables)) {
      python.FS.writeFile(`/calculator-tables/${name}.json`, readFileSync(`${folder}/${file}`));
    }
  }
  const bringRest = () => {
    const rest = unpacked(parts.rest);
    const file = python.FS.open("/calculators.whl", "r+");
    python.FS.write(file, rest, 0, rest.length, parts.restAt);
    python.FS.close(file);
  };
  if (whole) bringRest();
  python.runPython("import sys; sys.path[:0] = {'/calculators.whl'}.difference(sys.path)");
  if (whole) return python;
  const answer = python.runPython("from calculators.bridge import answer; answer");
  for (const calculator of parts.first) answer(JSON.stringify({ calculator, given: {} }));
  bringRest();
  python.runPython(/READ_AGAIN = `([^`]*)`/.exec(pageScript)[1].replace("${WHEEL}", "/calculators.whl"));
  return python;
};
const image = async () => {
  const python = await start({ _makeSnapshot: true }, true);
  python.runPython("from calculators.bridge import import_all\\nimport_all()");
  return python.makeMemorySnapshot();
};
const python = await (process.argv[6] ? start({ _loadSnapshot: await image() }, true) : start({}, false));
const run = python.runPython(`
import json
from calculators.core.run import run
lambda text: json.dumps([run(name, given) for name, given in json.loads(text)])
`);
console.log(run(readFileSync(asked, "utf8")));
for (const wrong of JSON.parse(process.argv[5] ?? "[]")) {
  try {
    python.runPython(wrong);
  } catch ({ message }) {
    console.log(JSON.stringify(message));
  }
}
"""
# What goes wrong, and what its error says: the runtime's own modules are ours in part, and have no lines.
WRONG = {
    "from calculators.core.run import run\nrun('no-such', {})": "no calculator is called 'no-such'",
    "{'a': 1}['b']": "KeyError: 'b'",
    "import asyncio\nasyncio.run": "AttributeError: the book's Python goes without asyncio.run",
    "from inspect import signature": "ImportError: cannot import name 'signature' from 'inspect'",
    "import html\nhtml.unescape": "AttributeError: the book's Python goes without html.unescape",
    "import sqlite3": "ModuleNotFoundError: No module named 'sqlite3'",
    "1 +": "SyntaxError: invalid syntax",
}
STAND_IN_HTML = runpy.run_path(str(STAND_INS / "html" / "__init__.py"))
PYTHON_START = DOCS / "assets" / "python-start.js"
OURS = re.compile(r'File "calculators/core/run\.py", line \d+, in find')


def unpacked(part):
    """A part's octets."""
    return gzip.decompress((MADE / part).read_bytes())


def whole_calculators(parts):
    """The zip of all calculators, its two pieces put together as the page does."""
    return unpacked(parts["calculators"])[: parts["restAt"]] + unpacked(parts["rest"])


def asked_in_the_runtime(folder, asked, wrong=(), *, image=False):
    """The lines that the trimmed runtime says under Node: the answers, then the errors.

    With ``image`` it starts from an image of its memory.
    """
    script, questions = folder / "ask.mjs", folder / "asked.json"
    script.write_text(ASK, encoding="utf-8")
    questions.write_text(json.dumps(asked), encoding="utf-8")
    paths = (script, MADE, questions, folder / "library.zip")
    done = node(
        *map(str, paths), json.dumps(list(wrong)), "image" if image else "", str(PYTHON_START)
    )
    assert done.returncode == 0, done.stderr
    return [json.loads(line) for line in done.stdout.splitlines()]


@pytest.mark.usefixtures("site")
def test_every_calculator_runs_in_the_trimmed_runtime(tmp_path):
    """Its example and its first published case; in a thorough run all of them."""
    asked = [
        (name, given)
        for name in load_all()
        for given in ({}, *(case.given for case in cases(name)[: None if thorough() else 1]))
    ]
    [answers] = asked_in_the_runtime(tmp_path, asked)
    for (name, given), answer in zip(asked, answers, strict=True):
        here = json.loads(json.dumps(run(name, given)))
        for key, value in here["outputs"].items():
            assert_near(answer["outputs"][key], value, f"{name} {key}", relative=1e-9)


@pytest.mark.usefixtures("site")
def test_the_first_piece_of_the_calculators_is_the_beginning_of_the_whole():
    parts = json.loads((MADE / "parts.json").read_text(encoding="utf-8"))
    first, whole = (
        zipfile.ZipFile(io.BytesIO(octets))
        for octets in (unpacked(parts["calculators"]), whole_calculators(parts))
    )
    assert whole.testzip() is None
    assert whole.namelist()[: len(first.namelist())] == first.namelist()
    assert len(first.namelist()) < len(whole.namelist())
    assert set(parts["first"]) == set(load_all()) - LATER


@pytest.mark.usefixtures("site")
def test_the_modules_to_import_ahead_are_all_that_the_larger_calculators_need():
    """One by one in the order of the list; what their examples need then is there."""
    parts = json.loads((MADE / "parts.json").read_text(encoding="utf-8"))
    modules = json.loads((MADE / parts["ahead"]).read_text(encoding="utf-8"))
    asked = """if True:
        import json, sys
        from calculators.bridge import answer_examples, import_ahead
        first, later, modules = json.loads(sys.stdin.read())
        answer_examples(first)
        for module in modules:
            import_ahead(module)
        before = set(sys.modules)
        answer_examples(later)
        print([name for name in sys.modules if name not in before and "calculators" in name])
    """
    given = json.dumps([parts["first"], sorted(LATER), modules])
    done = subprocess.run(
        [sys.executable, "-c", asked], input=given, capture_output=True, text=True, cwd=ROOT
    )
    assert done.stdout == "[]\n", done.stderr
    assert "calculators.nitrogen_forecast.calculator" in modules


@long_run()
@pytest.mark.usefixtures("site")
def test_an_image_of_its_memory_answers_alike(tmp_path):
    asked = [(name, {}) for name in load_all()]
    plain, imaged = (
        asked_in_the_runtime(tmp_path, asked, WRONG, image=image) for image in (False, True)
    )
    assert plain == imaged


@long_run()
@pytest.mark.usefixtures("site")
def test_an_error_is_as_clear_as_ever(tmp_path):
    [_, *errors] = asked_in_the_runtime(tmp_path, [], WRONG)
    for error, said in zip(errors, WRONG.values(), strict=True):
        assert said in error
    assert OURS.search(errors[0])


@pytest.mark.parametrize("quote", [True, False])
def test_html_is_written_as_the_whole_module_writes_it(quote):
    text = "".join(map(chr, range(0x20, 0x400))) + "&amp; <a href='x'>"
    assert STAND_IN_HTML["escape"](text, quote) == html.escape(text, quote)


@pytest.mark.usefixtures("site")
def test_only_bytecode_is_shipped():
    parts = json.loads((MADE / "parts.json").read_text(encoding="utf-8"))
    for octets in (unpacked(parts["library"]), whole_calculators(parts)):
        with zipfile.ZipFile(io.BytesIO(octets)) as archive:
            assert not [entry for entry in archive.namelist() if entry.endswith(".py")]
            assert [entry for entry in archive.namelist() if entry.endswith(".pyc")]
