"""The trimmed, byte-compiled Python answers for every calculator as this one does, under Node."""

import gzip
import io
import json
import zipfile

import pytest

from calculators.core.listing import load_all
from calculators.core.run import run
from scripts.records.published import cases
from scripts.runtime.make_runtime import MADE
from scripts.setup.node import node
from tests.effort import thorough
from tests.near import assert_near

ASK = """
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { gunzipSync } from "node:zlib";
const [folder, asked, library] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${folder}/pyodide.mjs`));
const parts = JSON.parse(readFileSync(`${folder}/parts.json`, "utf8"));
const unpacked = (part) => gunzipSync(readFileSync(`${folder}/${part}`));
writeFileSync(library, unpacked(parts.library));
const python = await loadPyodide({
  indexURL: `${folder}/`,
  stdLibURL: library,
  lockFileContents: JSON.stringify(parts.lock),
});
python.FS.writeFile("/calculators.whl", unpacked(parts.calculators));
python.FS.mkdirTree("/calculator-tables");
for (const tables of Object.values(parts.tables)) {
  for (const [name, file] of Object.entries(tables)) {
    python.FS.writeFile(`/calculator-tables/${name}.json`, readFileSync(`${folder}/${file}`));
  }
}
python.runPython("import sys; sys.path.insert(0, '/calculators.whl')");
const run = python.runPython(`
import json
from calculators.core.run import run
lambda text: json.dumps([run(name, given) for name, given in json.loads(text)])
`);
console.log(run(readFileSync(asked, "utf8")));
"""


@pytest.mark.usefixtures("site")
def test_every_calculator_runs_in_the_trimmed_runtime(tmp_path):
    """Its example and its first published case; in a thorough run all of them."""
    asked = [
        (name, given)
        for name in load_all()
        for given in ({}, *(case.given for case in cases(name)[: None if thorough() else 1]))
    ]
    script, questions = tmp_path / "ask.mjs", tmp_path / "asked.json"
    script.write_text(ASK, encoding="utf-8")
    questions.write_text(json.dumps(asked), encoding="utf-8")
    done = node(*map(str, (script, MADE, questions, tmp_path / "library.zip")))
    assert done.returncode == 0, done.stderr
    for (name, given), answer in zip(asked, json.loads(done.stdout), strict=True):
        here = json.loads(json.dumps(run(name, given)))
        for key, value in here["outputs"].items():
            assert_near(answer["outputs"][key], value, f"{name} {key}", relative=1e-9)


@pytest.mark.usefixtures("site")
def test_only_bytecode_is_shipped():
    parts = json.loads((MADE / "parts.json").read_text(encoding="utf-8"))
    for name in (parts["library"], parts["calculators"]):
        with zipfile.ZipFile(io.BytesIO(gzip.decompress((MADE / name).read_bytes()))) as archive:
            assert not [entry for entry in archive.namelist() if entry.endswith(".py")]
            assert [entry for entry in archive.namelist() if entry.endswith(".pyc")]
