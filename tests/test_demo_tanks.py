"""The demo tanks: invented, valid for their calculators, and each shows what it is there to show."""

import json
import shutil
from urllib.parse import parse_qsl

import pytest

from calculators.bridge import answer
from calculators.core.listing import load_all
from calculators.core.run import run
from scripts.pages.calculators.calculator_page import calculator_page, tries
from scripts.setup.paths import ROOT
from tests.effort import long_run, share_of
from tests.faults_of import all_faults
from tests.plain_yaml import read_yaml

FILE = ROOT / "species" / "demo-tanks.yml"
DEMO = read_yaml(FILE)
FILLED = [(key, name) for key, tank in DEMO.items() for name in tank["calculators"]]
VERDICTS = {
    "reading-room": "level",
    "foyer": "harmful",
    "childrens-corner": "running-short",
    "propagation-jar": "recovered",
}


def test_all_four_tanks_are_in_the_forecast_with_different_outcomes():
    found = {key: run("nitrogen-forecast", inputs(key))["outputs"] for key in DEMO}
    assert {key: one["verdict"] for key, one in found.items()} == VERDICTS
    jar, corner = found["propagation-jar"], found["childrens-corner"]
    assert jar["first_shortage_day"] < 28 < jar["recovery_day"]  # the dose of day 28 mends it
    assert corner["recovery_day"] is None
    assert found["foyer"]["final_nitrate_high_mg_l"] > found["foyer"]["final_nitrate_low_mg_l"]
    assert {DEMO[key]["litres"] for key in DEMO} == {120, 240, 54, 20}


def typed_row(row):
    """A row as the page's form gives it: all of it text."""
    return {
        key: value if isinstance(value, str) else json.dumps(value) for key, value in row.items()
    }


def inputs(key, name="nitrogen-forecast"):
    return DEMO[key]["calculators"][name]["inputs"]


@pytest.mark.parametrize(("key", "name"), FILLED)
def test_the_link_opens_the_same_calculation(key, name, library):
    spec = load_all()[name]
    links = {one.name: one.address for one in tries(spec, library)}
    query = dict(parse_qsl(links[DEMO[key]["name"]].removeprefix("?"), keep_blank_values=True))
    lists = {field.key for field in spec.inputs if field.kind == "list"}
    given = {k: json.loads(v) if k in lists else v for k, v in query.items()}
    given = {k: list(map(typed_row, v)) if k in lists else v for k, v in given.items()}
    reply = json.loads(answer(json.dumps({"calculator": name, "given": given, "units": "metric"})))
    assert "problems" not in reply
    assert reply["answer"]["outputs"] == json.loads(
        json.dumps(run(name, inputs(key, name))["outputs"])
    )


def test_pages_mark_the_data_as_invented(library):
    page = calculator_page("nitrogen-forecast", library)
    assert "Demo tanks to try; their data is invented" in page
    assert page.count('class="button" href="?') == 4
    assert "Demo tanks" not in calculator_page("units", library)


@long_run()
@pytest.mark.parametrize(
    ("old", "new", "said"),
    share_of(
        [
            ("verdict: level", "verdict: building", "comes out as 'level', not 'building'"),
            ("ph: 7.2", "ph: 72", "72 is out of range"),
            ("wet_g: 100", "wet_g: -1", "is out of range"),
            ("    stocking:", "    stoking:", "there is no calculator stoking"),
            ("verdict: level", "verdikt: level", "is no output"),
            ("litres: 120", "litres: none", "litres"),
        ],
        6,
    ),
)
def test_the_build_stops_at_a_tank_that_does_not_hold(tmp_path, old, new, said):
    folder = tmp_path / "species"
    shutil.copytree(ROOT / "species", folder)
    file = folder / "demo-tanks.yml"
    text = file.read_text(encoding="utf-8")
    line = text[: text.index(old)].count("\n") + 1
    file.write_text(text.replace(old, new, 1), encoding="utf-8")
    (finding,) = all_faults(folder)
    assert said in str(finding)
    assert finding.path.name == "demo-tanks.yml"
    assert finding.line == line
