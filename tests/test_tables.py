"""The calculators' tables follow the records by themselves, and loading needs no calculator."""

import json
import os
import shutil
import subprocess
import sys

import pytest
import yaml

from calculators.core.data import ABOUT, MissingTable, read_table
from scripts.records.load import BadRecords
from scripts.setup.paths import BUILD, ROOT, TABLES
from scripts.tables.make import TablesInUse, make_tables, texts_of_tables, write_tables
from scripts.tables.registry import MAKERS
from scripts.tables.text import WRITTEN_BY, table_text
from tests.effort import long_run, share_of
from tests.plain_yaml import read_yaml

COPIED = ("calculators", "docs", "scripts", "species", "tests/published")
ADD_PLANT = {"name": "Lemna exampla", "trade_names": ["Example duckweed"]}
ADD_ANIMAL = {"name": "Danio exemplaris", "trade_names": ["Example danio"]}
ADD_PROBLEM = {"name": "Example polyps", "other_names": []}


def add(species, like, slug, changes):
    """A record like another, under a name of its own; its file."""
    path = species / like
    record = read_yaml(path) | changes
    target = path.with_name(f"{slug}.yml")
    target.write_text(yaml.safe_dump(record, sort_keys=False), encoding="utf-8")
    return target


@pytest.fixture
def project(tmp_path):
    """A copy of what the calculators on the command line need, and of the records."""
    for name in ("calculators", "species"):
        shutil.copytree(ROOT / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__"))
    return tmp_path


def made(project):
    """Make the tables of a copy; their names."""
    return make_tables(project / "species", project / "calculators" / "data")


def asked(project, name, **given):
    """What a calculator of a copy answers, in a bare Python of its own."""
    done = subprocess.run(
        [sys.executable, "-S", "-m", "calculators", name, "--json", "--input", "-"],
        cwd=project, input=json.dumps(given), capture_output=True, text=True,
        env={"PATH": os.environ["PATH"]},
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def listed_by_pick(project):
    """Every floating plant that the picker ranks or leaves out."""
    outputs = asked(project, "pick", habits=["floater"], count=40)["outputs"]
    return {row["plant"] for key in ("ranked", "excluded") for row in outputs[key]}


def described(project, name):
    done = subprocess.run(
        [sys.executable, "-S", "-m", "calculators", name, "--describe"],
        cwd=project, capture_output=True, text=True, check=True, env={"PATH": os.environ["PATH"]},
    )  # fmt: skip
    return done.stdout


def test_a_plant_added_is_listed_by_pick_and_gone_when_it_is_removed(project):
    path = add(project / "species", "plants/lemna-minor.yml", "lemna-exampla", ADD_PLANT)
    changed = [
        "diagnosis", "floating-plants", "identify", "names-plants", "plants", "shelf-plants",
    ]  # fmt: skip
    assert made(project) == changed
    assert "lemna-exampla" in listed_by_pick(project)
    path.unlink()
    assert made(project) == changed
    assert "lemna-exampla" not in listed_by_pick(project)
    assert all("exampla" not in held for held in texts(project).values())


@long_run()
def test_a_problem_added_is_ranked_and_its_finding_asked_about(project):
    species = project / "species"
    findings = species / "findings.yml"
    sign = (
        '\nexample-sign: {where: coating, label: "an example sign", question: "Is there an example?", '
        "usual: hardly-ever, source: common-practice, sure: reported}\n"
    )
    findings.write_text(findings.read_text(encoding="utf-8") + sign, encoding="utf-8")
    hydra = read_yaml(species / "problems" / "hydra.yml")
    evidence = [{**hydra["evidence"][0], "finding": "example-sign"}, *hydra["evidence"][1:]]
    add(species, "problems/hydra.yml", "example-polyps", ADD_PROBLEM | {"evidence": evidence})
    assert made(project) == ["diagnosis"]
    ranked = asked(project, "diagnose", findings=["example-sign"])["outputs"]["ranked"]
    assert ranked[0]["problem"] == "example-polyps"
    assert "Is there an example?" in described(project, "diagnose")


@long_run()
def test_an_animal_added_is_known_to_stocking(project):
    add(project / "species", "animals/danio-rerio.yml", "danio-exemplaris", ADD_ANIMAL)
    assert made(project) == ["animals", "plants"]
    rows = [{"kind": "danio-exemplaris", "count": 10, "mean_length_mm": 30}]
    assert asked(project, "stocking", animals=rows)["outputs"]["biomass_g"] > 0


def texts(project):
    """The bytes of every table of a copy."""
    data = project / "calculators" / "data"
    return {path.name: path.read_text(encoding="utf-8") for path in data.iterdir()}


@long_run()
def test_two_calls_write_nothing_the_second_time_and_nothing_stale_remains(project, tmp_path):
    data = tmp_path / "data"
    assert make_tables(project / "species", data) == list(MAKERS)
    ours, theirs = data / "once.json", data / "theirs.json"
    ours.write_text(table_text({"a": 1}), encoding="utf-8")
    theirs.write_text('{"a": 1}', encoding="utf-8")
    before = {path: path.stat().st_mtime_ns for path in data.iterdir() if path != ours}
    assert make_tables(project / "species", data) == []
    assert {path: path.stat().st_mtime_ns for path in data.iterdir()} == before


def test_the_tables_in_git_are_those_of_the_records_and_say_who_writes_them(tmp_path):
    make_tables(target=tmp_path)
    for name in MAKERS:
        text = (tmp_path / f"{name}.json").read_text(encoding="utf-8")
        assert (TABLES / f"{name}.json").read_text(encoding="utf-8") == text, (
            "the records changed: run python3 scripts/serve.py --build-only and commit the tables"
        )
        assert next(iter(json.loads(text).items())) == (ABOUT, WRITTEN_BY)
        assert ABOUT not in read_table(name)


@long_run()
def test_broken_records_leave_the_tables_as_they_are(project):
    before = texts(project)
    (project / "species" / "plants" / "broken.yml").write_text("name: 1\n", encoding="utf-8")
    with pytest.raises(BadRecords):
        made(project)
    assert texts(project) == before


def test_tables_that_this_process_reads_already_are_not_changed_behind_its_back(
    library, tmp_path, monkeypatch
):
    monkeypatch.setattr("scripts.setup.paths.TABLES", tmp_path)
    read_table("animals")
    new = {name: make() for name, make in texts_of_tables(library).items()}
    with pytest.raises(TablesInUse, match="run the command again"):
        write_tables(new, tmp_path)
    assert write_tables(new, tmp_path) == []


@pytest.mark.parametrize(
    ("content", "said"),
    share_of([(None, "is missing"), ("", "holds no table"), ("[1]", "holds no table")], 2),
)
def test_a_missing_table_is_a_plain_word_not_a_traceback(project, content, said):
    table = project / "calculators" / "data" / "animals.json"
    table.unlink()
    if content is not None:
        table.write_text(content, encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-m", "calculators", "stocking"],
        cwd=project, capture_output=True, text=True, env={"PATH": os.environ["PATH"]},
    )  # fmt: skip
    assert done.returncode == 1
    (line,) = done.stderr.splitlines()
    assert said in line
    assert "python3 scripts/serve.py --build-only" in line


def test_an_unknown_table_is_told_by_name():
    with pytest.raises(MissingTable, match=r"no-such\.json is missing"):
        read_table("no-such")


def test_loading_and_making_tables_read_no_table_and_import_no_page():
    """In a process of its own: what it imports, and which tables it has read."""
    program = (
        "import sys\n"
        "from calculators.core.data import tables_read\n"
        "from scripts.records.load import load\n"
        "from scripts.records.checks.all import record_faults\n"
        "from scripts.tables.make import make_tables\n"
        "load()\n"
        "print(sorted(name for name in sys.modules if name.startswith('scripts.pages')\n"
        "      or 'with_calculators' in name or name == 'calculators.core.run'), sorted(tables_read()))"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[] []"


@long_run()
def test_one_command_takes_new_records_to_pages_and_calculators(project):
    """The whole build of a copy of the project with a plant, an animal and a problem more."""
    for name in COPIED:
        shutil.copytree(ROOT / name, project / name, dirs_exist_ok=True)
    for name in ("mkdocs.yml", "pyproject.toml", "README.md", "LICENSE", "LICENSE-DATA"):
        shutil.copyfile(ROOT / name, project / name)
    (project / "build").mkdir()
    for fetched in ("npm", "node-environment", "pyodide-build-environment"):
        if (BUILD / fetched).exists():
            (project / "build" / fetched).symlink_to(BUILD / fetched)
    species = project / "species"
    add(species, "plants/lemna-minor.yml", "lemna-exampla", ADD_PLANT)
    add(species, "animals/danio-rerio.yml", "danio-exemplaris", ADD_ANIMAL)
    add(species, "problems/hydra.yml", "example-polyps", ADD_PROBLEM)
    done = subprocess.run(
        [sys.executable, "-m", "scripts.serve", "--build-only"],
        cwd=project, capture_output=True, text=True,
        env={**os.environ, "PYTHONPATH": str(project), "MULMBOOK_INSIDE": str(project / ".venv")},
    )  # fmt: skip
    assert done.returncode == 0, f"{done.stdout}{done.stderr}"
    for page in ("plants/lemna-exampla", "animals/danio-exemplaris", "problems/example-polyps"):
        assert (project / "site" / page / "index.html").exists()
    assert "lemna-exampla" in listed_by_pick(project)
    ranked = asked(project, "diagnose", findings=["polyps-with-arms"])["outputs"]["ranked"]
    assert "example-polyps" in {row["problem"] for row in ranked}
    (packed,) = (project / "site" / "runtime").glob("plants-*.json")
    assert "lemna-exampla" in json.loads(packed.read_text(encoding="utf-8"))["plants"]
