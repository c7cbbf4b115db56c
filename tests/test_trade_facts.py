"""The records against the table of what keepers say: interval, light, speed and habit, one row a plant."""

import math

import pytest

from scripts.setup.paths import ROOT
from tests.own_records import own_records
from tests.plain_yaml import read_yaml

FACTS = read_yaml(ROOT / "tests" / "trade_facts.yml")
ROWS = FACTS["plants"]
NEAR = 2  # the middles of two intervals that mean the same lie within such a factor; judgement


def middle(low, high):
    """Half-way between two numbers of days, by factors."""
    return math.sqrt(low * high)


@pytest.fixture(scope="module")
def plants():
    return own_records().plants


def test_the_table_is_wide_enough_to_hold_the_book_to():
    named = [row["plant"] for row in ROWS]
    assert len(named) == len(set(named)) >= 40
    assert {row["habit"] for row in ROWS} >= {
        "stem",
        "floater",
        "rosette",
        "epiphyte",
        "moss",
        "carpet",
    }
    assert FACTS["source"] == "common practice, no source"


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["plant"])
def test_a_record_agrees_with_what_keepers_say(row, plants):
    plant = plants[row["plant"]]
    trim, doubling, light = (
        plant.growth.trim_every_days,
        plant.growth.doubling_days,
        plant.needs.dli_mol,
    )
    assert plant.habit == row["habit"]
    low, high = row["trim"]
    assert trim.low <= high
    assert trim.high >= low, "trimmed at another pace"
    if row.get("exactly"):
        assert (trim.low, trim.high) == (low, high)
    assert 1 / NEAR <= middle(trim.low, trim.high) / middle(low, high) <= NEAR
    least, most = FACTS["light"][row["light"]]
    assert least <= light.low <= most, f"light: {light.low} is not {row['light']}"
    least, most = FACTS["speed"][row["speed"]]
    assert least <= middle(doubling.low, doubling.high) <= most, f"speed: not {row['speed']}"


@pytest.mark.parametrize(
    "row", [row for row in ROWS if "sold_as" in row], ids=lambda row: row["plant"]
)
def test_a_name_that_is_not_its_own_is_said(row, plants):
    assert row["sold_as"] in {one.name for one in plants[row["plant"]].uncertain_names}


@pytest.mark.parametrize("pair", FACTS["little_faster"], ids=lambda pair: pair["plant"])
def test_one_grows_a_little_faster_than_the_other(pair, plants):
    one, other = plants[pair["plant"]].growth, plants[pair["than"]].growth
    ratio = one.doubling_days.middle_by_factors / other.doubling_days.middle_by_factors
    assert pair["ratio"][0] <= ratio <= pair["ratio"][1]
    assert one.trim_every_days.low <= other.trim_every_days.low
