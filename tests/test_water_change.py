"""The water change: what is measured, what it aims at, and plans that cannot mislead."""

import pytest

from calculators.core.run import compute, run
from calculators.science.animals.reading_steps import CHANGES
from calculators.science.water.carbonate import activity


def change(**given):
    return run("water-change", given)


def texts(answer, level=None):
    return " ".join(one["text"] for one in answer["notes"] if level in (None, one["level"]))


def test_a_nitrite_of_1_never_meets_a_target_of_nitrate():
    answer = change(what="nitrite", now_mg_l=1)
    # British Columbia 2009: at most 0.06 mg N/L where chloride is low
    assert answer["outputs"]["target_used_mg_l"] == 0.06
    assert answer["outputs"]["changes"] == 8  # ln(1 / 0.06) / -ln(0.7) = 7.9
    assert answer["notes"][0]["level"] == "danger"
    assert "no change is needed" not in texts(answer)
    assert "counted as nitrogen" in texts(answer)


def test_the_callers_target_is_taken():
    answer = change(what="nitrite", now_mg_l=1, target_mg_l=0.25, max_change_percent=50)
    assert answer["outputs"]["changes"] == 2
    assert answer["outputs"]["after_mg_l"] == 0.25
    assert "itself above what animals bear" in texts(answer, "caution")


@pytest.mark.parametrize(
    ("what", "target"),
    # Arthur and Leonard 1970: young amphipods grew up at 4.6 micrograms a litre or less
    [("nitrate", 20), ("nitrite", 0.06), ("phosphate", 1), ("copper", 0.004)],
)
def test_each_substance_has_its_own_target_with_a_reason(what, target):
    answer = change(what=what, now_mg_l=3 * target, tap_mg_l=0)
    assert answer["outputs"]["target_used_mg_l"] == target
    assert any(one["text"].startswith("Target taken:") for one in answer["notes"])


def test_something_else_is_not_given_a_target():
    answer = change(what="other", now_mg_l=5)
    assert set(answer["outputs"].values()) == {None}
    assert "Enter the reading that you want" in texts(answer)
    assert change(what="other", now_mg_l=4, target_mg_l=1, tap_mg_l=0)["outputs"]["changes"] == 4


def test_ammonia_gives_no_change_and_leads_to_its_own_calculator():
    found = compute("water-change", {"what": "ammonia", "now_mg_l": 3})
    assert set(found.answer["outputs"].values()) == {None}
    assert found.notes[0].level == "danger"
    assert found.notes[0].links[0].page == "calculators/ammonia-change/"
    assert found.notes[0].links[0].given == {"ammonia_mg_l": 3}
    said = texts(found.answer)
    assert "Do not change water by these figures" in said
    assert "first change now" not in said


def test_ammonia_with_a_target_gets_its_figures_and_the_warning_before_them():
    answer = change(what="ammonia", now_mg_l=2, target_mg_l=0.05, tap_mg_l=0, max_change_percent=50)
    assert answer["outputs"]["changes"] == 6
    assert answer["notes"][0]["level"] == "danger"
    assert "would bring" in texts(answer)


def test_no_ninety_four_changes():
    # from 100 to 15.5 mg/L with water of 15 mg/L and changes of 5 %: ln(0.5 / 85) / ln(0.95) = 100.1
    answer = change(now_mg_l=100, target_mg_l=15.5, tap_mg_l=15, max_change_percent=5)
    outputs = answer["outputs"]
    assert outputs["changes"] is None
    assert outputs["litres_total"] is None
    assert "101 changes of 5 % would be needed, which is no plan" in texts(answer)
    assert "lead to about 66 mg/L" in texts(answer)  # 15 + 85 x 0.95^10 = 65.9


def test_ten_changes_are_a_plan_and_eleven_are_not():
    ten = change(now_mg_l=100, target_mg_l=100 * 0.7**10 + 1e-9, tap_mg_l=0)
    assert ten["outputs"]["changes"] == 10
    assert ten["outputs"]["plan_days"] <= 28
    assert (
        change(now_mg_l=100, target_mg_l=100 * 0.7**10.5, tap_mg_l=0)["outputs"]["changes"] is None
    )


@pytest.mark.parametrize(("now", "days"), [(60, 3), (400, 1)])
def test_it_says_how_long_to_wait_and_that_nitrate_is_made_meanwhile(now, days):
    answer = change(now_mg_l=now, tap_mg_l=5)
    assert answer["outputs"]["days_between"] == days
    assert answer["outputs"]["plan_days"] == days * (answer["outputs"]["changes"] - 1)
    assert "Feed and soil make nitrate meanwhile" in texts(answer)


@pytest.mark.parametrize("largest", [10, 30, 40, 60, 100])
def test_a_deadly_nitrate_is_said_first_and_nothing_contradicts_it(largest):
    answer = change(now_mg_l=400, tap_mg_l=5, max_change_percent=largest)
    assert answer["notes"][0]["level"] == "danger"
    said = texts(answer)
    assert "Nitrate of 400 mg/L can kill" in answer["notes"][0]["text"]
    assert "first change now, of no more than about a quarter" in said
    assert "different days" not in said
    if largest > 34:
        assert "changes of a quarter, a day apart, instead" in said
    assert CHANGES["quarter"].startswith(
        "Change a quarter of the water now"
    )  # the standing's words


def test_a_deadly_nitrite_is_taken_in_parts_on_one_day():
    said = texts(change(what="nitrite", now_mg_l=10, max_change_percent=90))
    assert "first change now, of no more than about a third" in said
    assert "changes of a third, half a day apart, instead" in said
    plan = change(what="nitrite", now_mg_l=1)
    assert plan["outputs"]["days_between"] == 0.5  # as the problem's page and the standing have it
    assert "half a day apart at least" in texts(plan)
    harms = change(what="nitrite", now_mg_l=0.3)  # from its one line on the pace is the same
    assert harms["outputs"]["days_between"] == 0.5
    large = texts(change(what="nitrite", now_mg_l=0.3, max_change_percent=90))
    assert "changes of a third, half a day apart, instead" in large


def test_parts_of_a_third_do_as_much_as_one_large_change():
    said = texts(change(now_mg_l=100, target_mg_l=40, tap_mg_l=0, max_change_percent=60), "caution")
    assert (
        "3 changes of a third" in said
    )  # two leave 44 %, three leave 30 %; one of 60 % leaves 40 %


def test_an_untested_tap_is_said():
    assert "taken to hold no nitrate" in texts(change(), "caution")
    assert "taken to hold" not in texts(change(tap_mg_l=0))


def test_litres_are_left_out_without_a_volume():
    outputs = change(volume_l=None)["outputs"]
    assert outputs["litres_total"] is None
    assert outputs["changes"] == 2


def test_a_target_above_what_animals_bear_is_not_called_enough():
    answer = change(now_mg_l=300, target_mg_l=300)
    assert answer["notes"][0]["level"] == "danger"
    assert "no change is needed" not in texts(answer)
    assert "animals need it lower still" in texts(answer)


def test_the_activity_of_an_ion_is_held_where_its_equation_ends():
    """Stumm and Morgan, Aquatic Chemistry: the Davies equation serves up to about 0.5 mol/L."""
    assert activity(2, 1e6) == activity(2, 0.5)
