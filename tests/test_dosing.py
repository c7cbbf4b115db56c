"""Dosing: what it adds, what it refuses, what it warns of, and random inputs."""

import json
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.core.paint.answer import rows
from calculators.core.result import BadInput
from calculators.core.run import find, run
from calculators.dosing.salts import ADDED, SALTS
from tests.effort import examples

DOSING = find("dosing")


def dose(**given):
    return run("dosing", given)


def texts(answer, level=None):
    return " ".join(
        note["text"] for note in answer["notes"] if level is None or note["level"] == level
    )


# What one dose adds


def test_a_dose_of_potassium_nitrate_adds_what_its_make_up_says():
    # 1 g in 60 L by a reference library: NO3 10.221, K 6.445 mg/L; nitrogen 10.221 / 4.4268
    adds = dose(volume_l=60, rise_mg_l=10.221)["outputs"]["adds"]
    assert list(adds) == list(ADDED)
    assert adds["nitrate"] == pytest.approx(10.221)
    assert adds["potassium"] == pytest.approx(6.445, abs=0.001)
    assert adds["nitrogen"] == pytest.approx(2.3089, abs=0.001)
    assert {key for key, value in adds.items() if value} == {"nitrate", "potassium", "nitrogen"}


def test_the_counter_ion_is_told():
    # Ca 27.26 % and Cl 48.23 % of the dihydrate, by a reference library
    adds = dose(source="cacl2_2h2o", nutrient="calcium", rise_mg_l=27.26)["outputs"]["adds"]
    assert adds["chloride"] == pytest.approx(48.23, abs=0.01)


def test_what_a_label_does_not_print_is_not_known():
    adds = dose(source="label", nutrient="potassium", label_k2o_percent=4)["outputs"]["adds"]
    assert [key for key, value in adds.items() if value is None] == [
        "calcium",
        "sulfate",
        "chloride",
    ]
    assert adds["iron"] == 0


# The bottle


def test_a_bottle_that_is_too_strong_is_said_so_with_what_fits():
    answer = dose(rise_mg_l=20, dose_ml=5, bottle_ml=250)
    assert answer["outputs"]["bottle_g_l"] > 316
    assert answer["outputs"]["dissolves"] is False
    assert "This does not dissolve" in texts(answer, "caution")
    assert "Take 14.1 mL or more" in texts(answer, "caution")
    assert dose(rise_mg_l=20, dose_ml=14.1, bottle_ml=250)["outputs"]["dissolves"] is True


def test_a_bottle_between_the_two_limits_dissolves_in_water_but_not_when_filled_to_the_mark():
    # 300 g/L: less than the 316 g that dissolve in a litre of water, but a litre of the saturated
    # solution weighs 1162 g and holds 24.0 % of it, 279 g
    answer = dose(volume_l=613.31 / 10, rise_mg_l=30, dose_ml=10)
    outputs = answer["outputs"]
    assert outputs["bottle_g_l"] == pytest.approx(300, abs=0.1)
    assert outputs["most_g_l"] == pytest.approx(279, abs=1)
    assert outputs["dissolves"] is True  # it is what the two figures beside it say
    assert "not in a bottle filled up to its mark" in texts(answer, "caution")
    assert "This does not dissolve" not in texts(answer)


def test_no_stock_of_gypsum_is_made():
    answer = dose(source="caso4_2h2o", nutrient="calcium", rise_mg_l=20)
    assert answer["outputs"]["dissolves"] is False
    assert "Not even one dose fits" in texts(answer, "caution")
    assert "Gypsum barely dissolves" in texts(answer, "caution")


def test_a_label_has_no_grams():
    answer = dose(source="label", nutrient="nitrate", label_n_percent=3)
    for key in ("grams_per_dose", "grams_per_bottle", "bottle_g_l", "solubility_g_l", "dissolves"):
        assert answer["outputs"][key] is None
    assert "left out for a labelled bottle" in texts(answer)
    assert answer["outputs"]["doses_per_bottle"] == pytest.approx(
        500 / answer["outputs"]["ml_per_dose"]
    )


def test_a_salt_has_no_millilitres_of_a_label():
    answer = dose()
    assert answer["outputs"]["ml_per_dose"] is None
    assert "left out for a salt" in texts(answer)


# Refusals


@pytest.mark.parametrize(
    ("given", "problems"),
    [
        (
            {"source": "k2so4"},
            {
                "nutrient": "potassium sulfate gives no nitrate that plants can use; "
                "allowed are potassium"
            },
        ),
        (
            {"source": "fe_edta", "nutrient": "nitrogen", "dose_ml": 600},
            {
                "nutrient": "iron EDTA (sodium salt, trihydrate) gives no nitrogen that plants can use; "
                "allowed are iron",
                "dose_ml": "one dose is more than the bottle holds; allowed is 0.01 to 500 mL",
            },
        ),
        (
            {"source": "label", "nutrient": "iron", "label_n_percent": 2},
            {"nutrient": "the analysis of the label shows no iron; allowed are nitrogen, nitrate"},
        ),
        (
            {"source": "label", "nutrient": "iron"},
            {
                "label_fe_percent": "fill in the printed analysis of the bottle, at least the share "
                "of what you dose; allowed is 0.0001 to 100 %"
            },
        ),
        (
            {"source": "label", "label_n_percent": 40, "label_k2o_percent": 70},
            {
                "label_k2o_percent": "the printed shares add up to more than 100 %; "
                "allowed is 0 to 60 %"
            },
        ),
    ],
)
def test_what_does_not_go_together_is_refused(given, problems):
    with pytest.raises(BadInput) as refused:
        dose(**given)
    assert dict(refused.value.problems) == problems


# Animals and people


@pytest.mark.parametrize(
    ("given", "level", "words"),
    [
        # 10 mg N/L; five days at 56 mg N/L killed half of an amphipod's (Camargo and others 2005)
        ({"rise_mg_l": 9, "now_mg_l": 36, "schedule": "once"}, "caution", "nitrate to 45 mg/L."),
        ({"rise_mg_l": 9, "now_mg_l": 242, "schedule": "once"}, "danger", "nitrate to 251 mg/L."),
        ({"rise_mg_l": 11}, "caution", "One dose raises nitrate by 11 mg/L in a day"),
        # a nitrate that nobody asked for: 40 mg/L of potassium brings 63 mg/L of it
        (
            {"nutrient": "potassium", "rise_mg_l": 40, "schedule": "once"},
            "caution",
            "nitrate to 63.4 mg/L if plants take none of it",
        ),
        ({"nutrient": "nitrogen", "rise_mg_l": 12, "schedule": "once"}, "caution", "nitrate to 53.1"),
        # Canada 2019: 0.604 mg/L; US EPA 1976: 1 mg/L, MEMORY
        (
            {"source": "fe_dtpa", "nutrient": "iron", "rise_mg_l": 0.65, "schedule": "once"},
            "caution",
            "iron to 0.65 mg/L",
        ),
        (
            {"source": "fe_dtpa", "nutrient": "iron", "rise_mg_l": 1.1, "schedule": "once"},
            "danger",
            "iron to 1.1 mg/L",
        ),
        # Biesinger and Christensen 1972, MEMORY
        (
            {"source": "k2so4", "nutrient": "potassium", "rise_mg_l": 60, "schedule": "once"},
            "caution",
            "potassium to 60 mg/L",
        ),
        # US EPA 1988: 230 mg/L, MEMORY; 160 mg/L of calcium bring 283 of chloride
        (
            {"source": "cacl2_2h2o", "nutrient": "calcium", "rise_mg_l": 160, "schedule": "once"},
            "caution",
            "chloride to 283 mg/L",
        ),
        # 7.147 mg/L of calcium are one German degree
        (
            {"source": "cacl2_2h2o", "nutrient": "calcium", "rise_mg_l": 21.44},
            "caution",
            "One dose raises hardness by 3 °dH at once. Split it over 2 days or more",
        ),
        (
            {"source": "k2so4", "nutrient": "potassium", "rise_mg_l": 46, "schedule": "once"},
            "caution",
            "dissolved salts by 103",
        ),
        ({"change_percent": 0}, "caution", "builds up by 5 mg/L a week without end"),
        ({"use_mg_l_week": 6}, "caution", "Plants take more than comes in"),
        ({}, "caution", "Potassium nitrate is an oxidiser"),
        ({}, "caution", "Regulation 2019/1148"),
        ({}, "caution", "Buy, store and mix it only as your local law says"),
        ({}, "caution", "Wear gloves and cover your eyes"),
        ({"source": "kh2po4", "nutrient": "phosphate"}, "caution", "Keep phosphate and iron in separate"),
        ({"source": "fe_edta", "nutrient": "iron", "rise_mg_l": 0.1}, "caution", "Iron stains"),
        (
            {"source": "label", "nutrient": "iron", "rise_mg_l": 0.1, "label_fe_percent": 1},
            "caution",
            "Read the label for copper",
        ),
    ],
)  # fmt: skip
def test_cautions(given, level, words):
    assert words in texts(dose(**given), level)


@pytest.mark.parametrize(
    "given",
    [
        {"rise_mg_l": 9, "now_mg_l": 34, "schedule": "once"},
        {"source": "fe_dtpa", "nutrient": "iron", "rise_mg_l": 0.1, "schedule": "once"},
        {"source": "mgso4_7h2o", "nutrient": "magnesium", "rise_mg_l": 5, "schedule": "once"},
    ],
)
def test_a_modest_plan_is_not_cried_down(given):
    said = texts(dose(**given))
    assert "This plan takes" not in said
    assert "One dose raises" not in said


@pytest.mark.parametrize(
    ("rise", "schedule", "level"),
    [(0.2, "once", "caution"), (0.6, "once", "danger"), (0.2, "daily", "danger")],
)
def test_urea_is_never_dosed_without_the_free_ammonia_check(rise, schedule, level):
    # US EPA 2013, chronic, pH 8 and 25 °C: 0.563 mg/L of total ammonia nitrogen
    answer = dose(source="urea", nutrient="nitrogen", rise_mg_l=rise, schedule=schedule)
    said = texts(answer, level)
    assert f"Each dose equals {rise:g} mg/L of total ammonia nitrogen" in said
    assert "0.563 mg/L in total" in said
    assert "free-ammonia" in said


def test_nitrogen_of_unknown_form_counts_as_ammonia():
    answer = dose(source="label", nutrient="nitrate", rise_mg_l=4.427, label_n_percent=3)
    assert "equals 1 mg/L of total ammonia nitrogen" in texts(answer, "danger")


def test_nitrate_salts_need_no_ammonia_check():
    assert "ammonia" not in texts(dose())


def test_no_ammonium_salt_is_offered():
    assert not [salt.name for salt in SALTS.values() if "ammonium" in salt.name]


# What is shown


def test_what_a_dose_adds_is_shown_as_lines():
    answer = dose()
    shown = {row["key"]: row for row in rows(DOSING, answer["outputs"])}["adds"]
    assert shown["unit"] == ""
    assert shown["value"].split("\n") == [
        "nitrate 5 mg/L;",
        "potassium 3.15 mg/L;",
        "nitrogen 1.13 mg/L;",
        "none: phosphate, magnesium, calcium, iron, sulfate, chloride",
    ]


def test_what_is_not_known_is_shown_as_not_known():
    answer = dose(source="label", nutrient="potassium", label_k2o_percent=4)
    shown = {row["key"]: row for row in rows(DOSING, answer["outputs"])}["adds"]
    assert shown["value"].endswith("not known: calcium, sulfate, chloride")


# Any input

RANGES = {
    field.key: (
        st.sampled_from(field.choices)
        if field.choices
        else st.floats(field.low, field.high) | st.sampled_from([field.low, field.high])
    )
    for field in DOSING.inputs
}


NUTRIENTS = next(field.choices for field in DOSING.inputs if field.key == "nutrient")
PAIRS = [(key, one) for key in SALTS for one in NUTRIENTS if SALTS[key].share(one)]
MATCHED = st.builds(
    lambda pair, others: {"bottle_ml": 25_000, **others, "source": pair[0], "nutrient": pair[1]},
    st.sampled_from(PAIRS),
    st.fixed_dictionaries({}, optional={key: RANGES[key] for key in RANGES if key != "bottle_ml"}),
)


def answer_or_problems(given):
    try:
        return dose(**given), ()
    except BadInput as refused:
        return None, refused.problems


@examples(500)
@given(st.fixed_dictionaries({}, optional=RANGES) | MATCHED)
def test_any_input_gives_an_answer_or_a_clean_refusal(given):
    answer, problems = answer_or_problems(given)
    assert all("allowed" in message for _, message in problems)
    if answer is None:
        assert problems
        return
    json.dumps(answer, allow_nan=False)
    outputs = answer["outputs"]
    if outputs["dissolves"] is not None:
        fits = outputs["bottle_g_l"] <= outputs["solubility_g_l"]
        assert outputs["dissolves"] == fits
    if outputs["grams_per_bottle"] is not None:
        assert outputs["bottle_g_l"] == pytest.approx(
            outputs["grams_per_bottle"] / answer["inputs"]["bottle_ml"] * 1000
        )
    if outputs["adds"]:
        wanted = outputs["adds"][answer["inputs"]["nutrient"]]
        assert math.isclose(wanted, outputs["rise_used_mg_l"], abs_tol=1e-9)
