"""The open data: held to the Data Package standard, its own schemas, the records, and a bare Python."""

import copy
import csv
import hashlib
import io
import json
import subprocess
import sys

import pytest
from jsonschema import Draft7Validator, Draft202012Validator

from scripts.pages.open_data.data_files import FOLDER, WHOLE, open_data
from scripts.pages.open_data.data_tables import TABLES
from scripts.records.claim import COMMON_PRACTICE
from scripts.runtime.published_wheel import make_wheel
from scripts.setup.paths import ROOT
from tests.effort import long_run, share_of
from tests.own_records import own_records
from tests.plain_yaml import read_yaml

# The profile of Data Package 2.0 as published by the Open Knowledge Foundation (datapackage.org/profiles/2.0,
# here as its library dplib 1.1.0 carries it, MIT licence), unchanged.
PROFILE = json.loads(
    (ROOT / "tests" / "standards" / "datapackage-2.0.schema.json").read_text(encoding="utf-8")
)
TYPES = {
    "string": str,
    "number": float,
    "integer": int,
    "boolean": {"true": True, "false": False}.__getitem__,
}


@pytest.fixture(scope="module")
def files():
    return {name.removeprefix(FOLDER): text for name, text in open_data(own_records())}


@pytest.fixture(scope="module")
def package(files):
    return json.loads(files["datapackage.json"])


@pytest.fixture(scope="module")
def tables(files):
    return {
        name: list(csv.DictReader(io.StringIO(files[f"{name}.csv"], newline=""))) for name in TABLES
    }


def test_the_package_is_valid_by_the_standards_own_schema(package):
    Draft7Validator.check_schema(PROFILE)
    assert [error.message for error in Draft7Validator(PROFILE).iter_errors(package)] == []


@pytest.mark.parametrize("break_it", ["resources", "name", "path", "field"])
def test_a_broken_package_is_refused_by_it(package, break_it):
    broken = copy.deepcopy(package)
    if break_it == "resources":
        del broken["resources"]
    elif break_it == "field":
        del broken["resources"][0]["schema"]["fields"][0]["name"]
    else:
        del broken["resources"][0][break_it]
    assert list(Draft7Validator(PROFILE).iter_errors(broken))


def test_every_resource_is_there_with_its_length_and_hash(package, files):
    described = {one["path"]: one for one in package["resources"]}
    assert set(described) == {f"{name}.csv" for name in TABLES} | {f"{name}.json" for name in WHOLE}
    assert len({one["name"] for one in described.values()}) == len(described)
    for path, one in described.items():
        octets = files[path].encode()
        assert one["bytes"] == len(octets)
        assert one["hash"] == f"sha256:{hashlib.sha256(octets).hexdigest()}"


def test_every_cell_is_of_its_columns_type_and_keys_are_unique(package, tables):
    for one in package["resources"]:
        if one["format"] != "csv":
            continue
        rows, schema = tables[one["name"]], one["schema"]
        assert rows
        assert list(rows[0]) == [field["name"] for field in schema["fields"]]
        for field in schema["fields"]:
            for row in rows:
                cell = row[field["name"]]
                assert cell == "" or TYPES[field["type"]](cell) is not None, (one["name"], field)
        for key in schema.get("primaryKey", []):
            keys = [row[key] for row in rows]
            assert len(set(keys)) == len(keys)
            assert "" not in keys


@long_run()
@pytest.mark.parametrize("name", share_of([*WHOLE], 3))
def test_whole_records_are_valid_by_the_schema_beside_them(name, files):
    schema = json.loads(files[f"schema/{name}.schema.json"])
    Draft202012Validator.check_schema(schema)
    held = json.loads(files[f"{name}.json"])
    assert len(held) > 5
    assert [error.message for error in Draft202012Validator(schema).iter_errors(held)] == []


def test_what_refers_to_another_table_finds_it(tables):
    plants, sources = ({row["key"] for row in tables[name]} for name in ("plants", "sources"))
    assert {row["plant"] for row in tables["names"]} <= plants | {""}
    assert {row["source"] for row in tables["laws"]} <= sources
    for row in tables["claims"]:
        assert set(row["sources"].split("; ")) <= sources | {COMMON_PRACTICE}, row


def test_the_tables_hold_what_the_records_say(tables, files):
    """Read again from the record's own file, with another reader of YAML."""
    written = read_yaml(ROOT / "species" / "plants" / "lemna-minor.yml")
    row = next(row for row in tables["plants"] if row["key"] == "lemna-minor")
    need = written["needs"]["temperature_c"]
    assert (float(row["needs_temperature_c_low"]), float(row["needs_temperature_c_high"])) == (
        need["low"],
        need["high"],
    )
    assert row["name"] == written["name"] == json.loads(files["plants.json"])["lemna-minor"]["name"]
    assert row["trade_names"].split("; ") == written["trade_names"]
    [claim] = [
        one
        for one in tables["claims"]
        if (one["kind"], one["record"], one["field"])
        == ("plants", "lemna-minor", "needs.temperature_c")
    ]
    assert claim["low"] == row["needs_temperature_c_low"]
    assert claim["grade"] == row["needs_temperature_c_grade"]
    assert {one["grade"] for one in tables["claims"]} == {
        "well-documented",
        "reported",
        "keepers-say",
        "uncertain",
    }


def test_the_page_names_every_file_and_the_licences_stand(files):
    page = (ROOT / "docs" / "data" / "index.md").read_text(encoding="utf-8")
    for name in files:
        assert f"({name})" in page, name
    assert f"({make_wheel().name})" in page
    assert "Attribution 4.0 International" in files["licence-data.txt"]
    assert files["licence-code.txt"].startswith("MIT License")


BARE = """
import sys
sys.path.insert(0, sys.argv.pop(1))
from calculators.__main__ import main
sys.exit(main(sys.argv[1:]))
"""


@pytest.fixture(scope="module")
def installed(tmp_path_factory):
    """The wheel, installed by pip with no network and nothing else."""
    target = tmp_path_factory.mktemp("installed")
    command = [
        sys.executable,
        "-m",
        "pip",
        "install",
        "--no-index",
        "--no-deps",
        "--no-compile",
        "--quiet",
    ]
    subprocess.run(
        [*command, "--target", str(target), str(make_wheel())], check=True, capture_output=True
    )
    return target


@pytest.mark.parametrize(
    ("asked", "said"),
    share_of(
        [
            (["free-ammonia", "ammonia_mg_l=1", "ph=8"], "mg N/L"),
            ([], "free-ammonia"),
            (["pick", "light_class=low"], "Anubias"),
            (["nitrogen-forecast", "days=10"], "nitrate"),
        ],
        4,
    ),
)
def test_the_wheel_runs_on_a_bare_python(installed, tmp_path, asked, said):
    """Isolated, with no site packages: only the standard library and what the wheel brought."""
    command = [sys.executable, "-I", "-S", "-c", BARE, str(installed), *asked]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    assert said in done.stdout
