"""A tank whose surface floating plants have closed is never called calm, on the shelf or on the round."""

from datetime import timedelta

import pytest

from calculators.core.run import run
from calculators.science.light.lamps import CLOSED_COVER_PERCENT
from tests.test_standing import TANK, TODAY, entry, read, stands

CALM = read(1, "nitrate_mg_l", 10)


def covered(percent, days_ago=1):
    return read(days_ago, "cover_percent", percent)


@pytest.mark.parametrize(
    ("percent", "verdict"),
    [
        (20, "calm"),
        (CLOSED_COVER_PERCENT, "calm"),
        (CLOSED_COVER_PERCENT + 1, "watch"),
        (100, "watch"),
    ],
)
def test_from_the_line_on_that_the_floaters_calculator_warns_at(percent, verdict):
    found = stands(CALM, covered(percent))
    assert found["verdict"] == verdict
    words = f"Floaters cover {percent:g} % of the surface, read yesterday"
    assert (words in found["sentence"]) == (verdict == "watch")
    assert ("Calm" in found["sentence"]) == (verdict == "calm")
    floaters = run("floaters", {"cover_percent": percent})["notes"]
    assert any("closed mat" in note["text"] for note in floaters) == (verdict == "watch")


@pytest.mark.parametrize(
    "opened",
    [
        (covered(100, 5), entry(2, "thin", "floaters", 30)),
        (
            covered(100, 5),
            entry(5, "thin", "floaters", 30, at=f"{TODAY - timedelta(days=5)}T18:00:00Z"),
        ),
        (covered(100, 5), covered(40)),
        (covered(100, 15),),  # too long ago to go by
    ],
)
def test_a_surface_that_was_opened_since_is_calm(opened):
    assert stands(CALM, *opened)["verdict"] == "calm"


def test_a_tank_without_animals_needs_no_air_for_them():
    assert stands(CALM, covered(100), animals=[])["verdict"] == "calm"


def test_a_reading_that_harms_still_comes_first():
    found = stands(covered(100), read(1, "ammonia_mg_n_l", 4, ph=8.2))
    assert "mmonia" in found["sentence"]


def test_the_round_does_not_count_it_among_the_calm():
    given = {
        "tanks": [TANK], "entries": [CALM, covered(100)], "today": TODAY.isoformat(),
    }  # fmt: skip
    answer = run("round", given)
    [tank] = answer["outputs"]["order"]
    assert tank["verdict"] == "watch"
    assert "Floaters cover 100 %" in tank["sentence"]
    assert not any("1 of 1 tanks calm" in note["text"] for note in answer["notes"])
