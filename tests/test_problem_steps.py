"""Steps of the problems' records that help in one water and harm in another: each says for which."""

import pytest

from calculators.diagnose.problem_table import FINDINGS
from scripts.records.load import read_records

PROBLEMS = read_records().library.problems
HARDER = ("harder tap water", "harder water", "raise GH", "Raise GH")


def said(slug):
    """All that a keeper is told to do."""
    one = PROBLEMS[slug]
    steps = [one.first_action, *one.this_week]
    return " ".join(step.text for step in steps)


@pytest.mark.parametrize(
    "slug", sorted(slug for slug in PROBLEMS if any(w in said(slug) for w in HARDER))
)
def test_who_is_sent_to_harder_water_is_sent_to_the_test_for_ammonia_first(slug):
    """In acid water it turns harmless ammonium toxic."""
    assert "ammonia" in PROBLEMS[slug].first_action.text
    assert "ammonia-change" in {one.calculator for one in PROBLEMS[slug].calculators}


@pytest.mark.parametrize("slug", ["kh-crash", "calcium-shortage", "magnesium-starvation"])
def test_water_that_is_soft_on_purpose_is_left_soft(slug):
    normal = PROBLEMS[slug].normal_when
    assert "soft-water shrimp" in said(slug) or "bee shrimp" in normal.text


def test_animals_are_moved_to_water_that_is_as_hard():
    assert "as warm, as hard and of the same pH" in PROBLEMS["copper-poisoning"].first_action.text


def test_a_tap_that_holds_as_much_nitrate_brings_none_down():
    first = PROBLEMS["high-nitrate"].first_action.text
    assert first.index("Where it reads lower than the tank") < first.index("change a quarter")


@pytest.mark.parametrize(
    "slug", sorted(slug for slug in PROBLEMS if "cover the tank for" in said(slug))
)
def test_after_days_in_the_dark_ammonia_is_tested_and_air_runs_meanwhile(slug):
    after = said(slug).partition("cover the tank for")[2]
    assert "air running" in after
    assert "test ammonia" in after


def test_gasping_after_a_change_may_be_ammonia_that_the_change_made_toxic():
    assert "test ammonia and pH" in PROBLEMS["chlorine-after-water-change"].first_action.text


def test_fish_that_breathe_air_are_told_from_those_that_gasp():
    assert "gulp of air" in PROBLEMS["dawn-low-oxygen"].normal_when.text
    assert "the gulp of air now and then of fighters" in FINDINGS["fish-gasping"].question


def test_a_lid_that_is_lifted_keeps_the_animals_in():
    assert "a net over it" in PROBLEMS["heat"].first_action.text
