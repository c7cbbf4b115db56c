"""Dosing to a level, from bottles of every kind of label, and doses that must not be given."""

import pytest

from calculators.core.result import BadInput
from calculators.core.run import find, run


def dose(**given):
    return run("dosing", given)


def texts(answer, level=None):
    return " ".join(one["text"] for one in answer["notes"] if level in (None, one["level"]))


# A level, or a rise


def test_a_level_is_reached_from_the_reading_now():
    # from 4 to 14.221 mg/L in 60 L: a rise of 10.221, 1 g of potassium nitrate by a reference library
    answer = dose(volume_l=60, now_mg_l=4, target_mg_l=14.221, schedule="once")
    assert answer["outputs"]["grams_per_dose"] == pytest.approx(1, abs=0.0002)
    assert answer["outputs"]["rise_used_mg_l"] == pytest.approx(10.221)
    assert "from 4 to 14.2 mg/L" in texts(answer)


def test_a_level_without_the_reading_now_is_asked_for():
    with pytest.raises(BadInput, match="now_mg_l: fill in the reading now"):
        dose(target_mg_l=20)


def test_neither_rise_nor_level_is_asked_for():
    with pytest.raises(BadInput, match="rise_mg_l: fill in a rise"):
        dose(rise_mg_l=None)


def test_a_level_that_is_there_already_needs_no_dose():
    answer = dose(now_mg_l=30, target_mg_l=20)
    assert answer["outputs"]["grams_per_dose"] == 0
    assert "nothing is to be dosed" in texts(answer)


def test_a_dose_to_a_level_that_is_repeated_is_said_to_pass_it():
    said = texts(dose(now_mg_l=5, target_mg_l=20, schedule="weekly"), "caution")
    assert "One such dose reaches 20 mg/L. Repeated, it leads to" in said
    assert "Repeated" not in texts(dose(now_mg_l=5, target_mg_l=20, schedule="once"))


def test_a_reading_that_was_not_entered_is_said():
    assert "levels here count from nothing" in texts(dose(), "caution")
    assert "count from nothing" not in texts(dose(now_mg_l=0))


def test_no_changes_entered_count_as_none():
    answer = dose(change_percent=None)
    assert answer["outputs"]["settled_before_change_mg_l"] is None
    assert "without end" in texts(answer)


@pytest.mark.parametrize(("schedule", "week"), [("daily", 35), ("weekly", 5), ("once", None)])
def test_it_says_how_much_a_week(schedule, week):
    outputs = dose(schedule=schedule)["outputs"]
    assert outputs["week_mg_l"] == (None if week is None else pytest.approx(week))


# Labels


def test_a_bottle_by_grams_a_litre():
    # 39 g of potassium in a litre, printed as 46.98 g of K2O: 10 mL bring 390 mg, 3.9 mg/L in 100 L
    answer = dose(
        source="label", nutrient="potassium", rise_mg_l=3.9, volume_l=100, label_k2o_g_l=46.98,
        density_g_ml=1.2,
    )  # fmt: skip
    assert answer["outputs"]["ml_per_dose"] == pytest.approx(10, abs=0.01)


def test_percent_and_grams_a_litre_of_one_bottle_agree():
    percent = dose(
        source="label", nutrient="iron", rise_mg_l=0.1, label_fe_percent=2, density_g_ml=1.1
    )
    grams = dose(source="label", nutrient="iron", rise_mg_l=0.1, label_fe_g_l=22)
    assert percent["outputs"]["ml_per_dose"] == pytest.approx(grams["outputs"]["ml_per_dose"])


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"label_k2o_g_l": 1200, "label_n_g_l": 400}, "label_k2o_g_l: .* more than 1,500 g/L"),
        ({"label_k2o_g_l": 12, "label_k2o_percent": 4}, "by percent and by grams a litre"),
    ],
)
def test_a_label_that_cannot_be_is_refused(given, words):
    with pytest.raises(BadInput, match=words):
        dose(source="label", nutrient="potassium", **given)


def test_a_nitrate_bottle_raises_no_ammonia_alarm():
    bottle = {"source": "label", "nutrient": "nitrate", "rise_mg_l": 10, "label_n_percent": 3}
    assert "total ammonia nitrogen" in texts(dose(**bottle), "danger")
    calm = dose(**bottle, label_n_form="nitrate", schedule="once", now_mg_l=0)
    assert "ammonia" not in texts(calm)
    assert "at most" not in calm["notes"][0]["text"]
    assert "count as ammonia" in texts(dose(**bottle, label_n_form="urea-or-ammonium"), "danger")


# Doses that must not be given


@pytest.mark.parametrize(
    ("given", "what"),
    [
        ({"rise_mg_l": 1_000}, "nitrate"),
        # Biesinger and Christensen 1972, MEMORY: half of the water fleas died at 93 mg/L of potassium
        ({"source": "k2so4", "nutrient": "potassium", "rise_mg_l": 94}, "potassium"),
        # 230 mg/L of phosphate as KH2PO4 bring 230 x 39.098 / 94.971 = 94.7 mg/L of potassium
        ({"source": "kh2po4", "nutrient": "phosphate", "rise_mg_l": 230}, "potassium"),
        # Mount and others 1997, MEMORY: MgCl2 880 mg/L is 225 mg/L of magnesium
        ({"source": "mgso4_7h2o", "nutrient": "magnesium", "rise_mg_l": 226}, "magnesium"),
    ],
)
def test_a_dose_that_can_kill_is_said_first_and_nobody_is_told_to_split_it(given, what):
    answer = dose(**given, schedule="once", now_mg_l=0)
    assert answer["notes"][0]["level"] == "danger"
    assert "That can kill animals: do not dose it" in answer["notes"][0]["text"]
    assert f"takes {what} to" in texts(answer, "danger")
    assert "Split it" not in texts(answer)


@pytest.mark.parametrize(("rise", "level"), [(50, None), (55, "caution"), (98, "danger")])
def test_phosphate_has_its_lines(rise, level):
    # phosphoric acid at pH 7, Daphnia magna: no effect at 56 mg/L, under half at 100; 94.97 / 98 of it
    answer = dose(source="kh2po4", nutrient="phosphate", rise_mg_l=rise, schedule="once")
    said = [one["level"] for one in answer["notes"] if "takes phosphate to" in one["text"]]
    assert said == ([level] if level else [])


# The form


def test_the_schedule_comes_first_and_the_bottle_is_a_part_of_its_own():
    parts = []
    for field in find("dosing").inputs:
        heading = next(one.heading for one in field.hints if hasattr(one, "heading"))
        if heading not in parts:
            parts.append(heading)
    assert [parts[0], parts[1]] == [
        "How often, and your water changes",
        "What the water has, and what you want",
    ]
    assert parts.index("What you dose") < parts.index("Mixing a bottle of a salt")


def test_what_is_asked_for_is_little():
    asked = [one.key for one in find("dosing").inputs if not (one.nullable or one.assumed)]
    assert asked == ["schedule", "volume_l", "nutrient", "source"]
