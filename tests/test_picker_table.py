"""The compact table of plants: what the records say, read only where it is needed."""

import gzip
import io
import json
import subprocess
import sys
import zipfile

import pytest

from calculators.core.data import table_bytes
from calculators.core.listing import load_all
from calculators.pick.plant_table import COLUMNS, book
from scripts.runtime.make_runtime import MADE
from scripts.setup.paths import ROOT, TABLES
from scripts.tables.plant_rows import form_to_pick
from tests.effort import long_run

TABLE = TABLES / "plants.json"


def test_every_plant_and_animal_is_in_it(library):
    assert book().plants.keys() == library.offered().keys()
    assert book().appetites.keys() == library.animals.keys()
    for slug, plant in library.offered().items():
        row = book().plants[slug]
        assert (row.name, row.habit, row.role) == (
            plant.name,
            plant.habit,
            plant.nitrogen.role.value,
        )
        needs = plant.needs.temperature_c
        assert (row.temperature_c.low, row.temperature_c.high) == (needs.low, needs.high)


def test_columns_are_the_reader_s_own():
    assert tuple(json.loads(TABLE.read_text(encoding="utf-8"))["columns"]) == COLUMNS


def test_looks_go_by_habit_and_shape(library):
    """Common practice, no source."""
    looks = {slug: form_to_pick(plant) for slug, plant in library.plants.items()}
    assert looks["rotala-rotundifolia"] == looks["vallisneria-spiralis"] == "upright"
    assert looks["hydrocotyle-leucocephala"] == "sprawling"
    assert looks["lilaeopsis-brasiliensis"] == "carpet"
    assert looks["pistia-stratiotes"] == "floating"


@long_run()
def test_no_calculator_but_those_that_name_it_reads_it():
    """Each calculator's example in one process: the table is opened for picking and naming alone."""
    program = (
        "import calculators.core.data as data\n"
        "from calculators.core.listing import load_all\n"
        "from calculators.core.run import run\n"
        "seen = []\n"
        "plain = data.table_bytes\n"
        "data.table_bytes = lambda name: (seen.append(name), plain(name))[1]\n"
        "for name in load_all():\n"
        "    if name not in ('pick', 'identify'): run(name, {})\n"
        "before = list(seen)\n"
        "run('pick', {}); run('pick', {})\n"
        "print(before.count('plants'), seen.count('plants'))"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert done.stdout.split() == ["0", "1"]


def test_it_lies_beside_the_package_where_that_is_a_zip_without_it(tmp_path, monkeypatch):
    monkeypatch.setattr("calculators.core.data.BESIDE", str(tmp_path))
    (tmp_path / "beside.json").write_text('{"a": 1}', encoding="utf-8")
    assert table_bytes("beside") == b'{"a": 1}'
    with pytest.raises(FileNotFoundError):
        table_bytes("no-such-table")


@pytest.mark.usefixtures("site")
def test_the_wheel_is_without_it_and_the_runtime_lists_it_for_the_picker():
    parts = json.loads((MADE / "parts.json").read_text(encoding="utf-8"))
    first, rest = (
        gzip.decompress((MADE / parts[key]).read_bytes()) for key in ("calculators", "rest")
    )
    with zipfile.ZipFile(io.BytesIO(first[: parts["restAt"]] + rest)) as wheel:
        names = set(wheel.namelist())
    assert not names & {"calculators/data/plants.json", "calculators/data/identify.json"}
    assert "calculators/data/animals.json" in names
    assert parts["tables"].keys() == {name for name, spec in load_all().items() if spec.tables}
    assert (MADE / parts["tables"]["pick"]["plants"]).read_bytes() == TABLE.read_bytes()
