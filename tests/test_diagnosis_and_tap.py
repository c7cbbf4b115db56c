"""The diagnosis knows the tap as the other doors do, and asks for nothing of it that was given."""

import re

import pytest

from calculators.core.run import run
from calculators.diagnose.problem_table import CAUSES
from calculators.diagnose.water_step import ELSE_OTHER_WATER, TEST_THE_TAP, safe_action
from calculators.science.water.careful_change import WaterForChange
from tests.test_one_water_many_doors import ammonia_change, diagnosis, said, standing

NITRITE = {
    "ph": 7.8,
    "kh_dh": 6.0,
    "temperature_c": 25.0,
    "ammonia_mg_n_l": 0.0,
    "nitrite_mg_n_l": 2.0,
}
ACID = {"ph": 6.0, "kh_dh": 0.0, "temperature_c": 25.0, "ammonia_mg_n_l": 3.0}
HARD_TAP, OWN_TAP = {"tap_ph": 7.8, "tap_kh_dh": 8.0}, {"tap_ph": 6.0, "tap_kh_dh": 0.0}


@pytest.mark.parametrize("tap", [HARD_TAP, OWN_TAP])
def test_the_way_with_ammonia_is_that_of_its_own_calculator(tap):
    water = ACID | tap
    first = diagnosis(water)["first_action"]
    way = ammonia_change(water)["outputs"]["way"]
    assert ("Do not change water with this tap yet" in first) == (way == "match-first")
    assert "read the tap" not in first
    assert "tap's KH" not in first.partition("Free ammonia")[0] or way == "match-first"


@pytest.mark.parametrize(("nitrate", "words"), [
    (60.0, "is by itself no reason against a change"), (300.0, "can kill by itself"), (5.0, None),
])  # fmt: skip
def test_the_taps_nitrate_is_weighed_as_on_the_tanks_page(nitrate, words):
    water = NITRITE | {"tap_nitrate_mg_l": nitrate}
    for text in (diagnosis(water)["first_action"], said(standing(water))):
        assert (words in text) if words else "nitrate" not in text.partition("Test next")[0].lower()


def test_a_tap_that_brings_ammonia_is_treated_first():
    for water in (NITRITE, ACID | {"ph": 8.2, "kh_dh": 9.0}):
        told = diagnosis(water | {"tap_ph": 8.0, "tap_kh_dh": 8.0, "tap_ammonia_mg_n_l": 0.4})
        assert "0.4 mg N/L of its own" in told["first_action"]


@pytest.mark.parametrize("tap", [70.0, 7.0])
def test_nitrate_of_the_tap_that_was_read_is_not_asked_for_again(tap):
    record = CAUSES["high-nitrate"].first_action
    assert TEST_THE_TAP in record
    assert ELSE_OTHER_WATER in record
    water = WaterForChange(0.0, 7.5, nitrate_mg_l=60.0, tap_nitrate_mg_l=tap)
    told = safe_action("high-nitrate", water)
    assert TEST_THE_TAP not in told
    assert ("do not change with it" in told) == (tap >= 60)
    assert ("change a quarter of the water" in told) == (tap < 60)
    asked = run("diagnose", {"readings": {"nitrate_mg_l": 300}, "tap_nitrate_mg_l": tap})
    assert "tap’s nitrate now" not in asked["outputs"]["first_action"]


def test_a_deadly_tap_is_no_help_whatever_the_cause():
    told = run("diagnose", {"findings": ["animals-dying"], "tap_nitrate_mg_l": 300})["outputs"]
    first = told["first_action"]
    assert first.index("can kill: for any change take other") < first.index("change a third")


def test_a_tap_that_forbids_a_change_is_not_called_no_reason_to_wait():
    water = {"ph": 7.0, "kh_dh": 1.0, "temperature_c": 28.0, "ammonia_mg_n_l": 12.0, "tap_ph": 8.2,
             "tap_kh_dh": 16.0, "tap_nitrate_mg_l": 60.0}  # fmt: skip
    for text in (diagnosis(water)["first_action"], said(standing(water))):
        assert "no reason to wait" not in text


def test_the_tap_changes_no_chance():
    given = {"findings": ["fish-gasping"], "readings": {"ph": 7.2}}
    with_tap = {**given, "tap_ph": 8.4, "tap_kh_dh": 20, "tap_gh_dh": 25, "tap_nitrate_mg_l": 50}
    assert (
        run("diagnose", given)["outputs"]["ranked"]
        == run("diagnose", with_tap)["outputs"]["ranked"]
    )


@pytest.mark.parametrize("cause", sorted(key for key, one in CAUSES.items() if one.besides))
def test_what_the_tap_forbids_stands_before_the_change_and_no_condition_loses_its_test(cause):
    """Tap water of a far other hardness, for every problem whose first action orders a change."""
    water = WaterForChange(None, 7.8, 2.0, tap_kh_dh=30.0)
    told, plain = safe_action(cause, water), safe_action(cause, WaterForChange(None, 7.8, 2.0))
    said = re.search(
        r"(?:Your tap’s KH[^.]*[.]|Your new water’s KH.*?Where you cannot[^.]*[.]) ?", told
    )
    assert told.replace(said[0], "") == plain
    before, after = told[: said.start()], told[said.end() :]
    assert not re.search(r"hange (?:half|a third|a quarter|a tenth)", before)
    assert re.search(r"hange (?:half|a third|a quarter|a tenth)", after)
    assert not re.match(r"If (?:it|none|not|both)|Where it", after)
