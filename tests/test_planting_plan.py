"""The planting plan against an integrated growth equation, and against its own picture."""

import math
import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from calculators.core.listing import load_all
from calculators.core.paint.text_table import table
from calculators.core.run import run
from calculators.planting_plan.words import until_full
from calculators.science.growth.filling import stems_for


@given(st.integers(5, 99), st.floats(2, 200))
def test_weeks_until_full_solve_the_growth_equation(start, doubling):
    plan = {
        "length_cm": 100, "width_cm": 100, "spacing_cm": 10, "start_percent": start,
        "doubling_days": doubling, "settle_days": 0,
    }  # fmt: skip
    found = run("planting-plan", plan)["outputs"]
    assert found["stems_to_plant"] == start
    rate = math.log(2) / doubling
    grown = solve_ivp(
        lambda _, cover: rate * cover, (0, found["weeks_to_fill"] * 7), [start / 100], rtol=1e-8
    )
    assert grown.y[0, -1] == pytest.approx(1, rel=1e-5)


@pytest.mark.parametrize(
    ("area", "spacing", "stems"),
    [(100, 5, 4), (100, 3, 12), (1, 10, 1), (600, 4, 38), (900, 3, 100)],
)
def test_stems_are_squares_of_the_spacing(area, spacing, stems):
    assert stems_for(area, spacing) == stems


@given(st.floats(1, 100), st.floats(1, 60), st.floats(0, 60), st.floats(5, 95))
def test_the_picture_shows_as_many_trims_as_are_counted(start, doubling, settle, cut):
    answer = run(
        "planting-plan",
        {
            "start_percent": start, "doubling_days": doubling, "settle_days": settle,
            "cut_percent": cut,
        },
    )  # fmt: skip
    covers = answer["series"]["cover"]["y"]
    drops = sum(later < earlier for earlier, later in pairwise(covers))
    assert abs(drops - answer["outputs"]["trims_half_year"]) <= 1  # one may fall on the last day
    assert max(covers) <= 100 + 1e-9
    weeks = answer["series"]["cover"]["x"]
    assert weeks == sorted(weeks)
    assert weeks[-1] == pytest.approx(26)


def test_work_of_half_a_year_is_planting_and_trims():
    found = run("planting-plan", {"seconds_a_stem": 30, "trim_minutes": 12})["outputs"]
    assert found["plant_minutes"] == found["stems_to_plant"] / 2
    work = found["plant_minutes"] + 12 * found["trims_half_year"]
    assert found["minutes_half_year"] == pytest.approx(work)


@pytest.mark.parametrize(
    ("given_", "words"),
    [
        ({"start_percent": 10}, "leaves light and nutrients to algae"),
        ({"doubling_days": 3}, "a trim a week or more"),
        ({"cut_percent": 80}, "two rounds a week apart"),
        ({}, "Never put cuttings"),
        ({}, "may not be kept or passed on"),
    ],
)
def test_says_what_the_keeper_must_know(given_, words):
    assert any(words in note["text"] for note in run("planting-plan", given_)["notes"])


@pytest.mark.parametrize("start", [10, 30, 50, 51, 70, 99, 100])
def test_what_more_stems_save_is_what_the_plan_with_them_says(start):
    """The words are held to a second plan; twice as many are never more than fill the bed."""
    bed = {"length_cm": 40, "width_cm": 25, "spacing_cm": 1, "doubling_days": 14, "settle_days": 10}
    answer = run("planting-plan", bed | {"start_percent": start})
    text = " ".join(note["text"] for note in answer["notes"])
    more = run("planting-plan", bed | {"start_percent": min(100, 2 * start)})["outputs"]
    if start == 100:
        assert "would save" not in text
        assert answer["outputs"]["weeks_to_fill"] == 0
        assert "full at once" in text
        return
    said = re.search(
        r"(Twice as many|A full bed at once), (\d+) stems, would save about ([\d.]+)", text
    )
    assert said[1] == ("Twice as many" if start <= 50 else "A full bed at once")
    assert int(said[2]) == more["stems_to_plant"] <= answer["outputs"]["stems_full"]
    saved = 7 * (answer["outputs"]["weeks_to_fill"] - more["weeks_to_fill"])
    assert float(said[3]) == pytest.approx(saved, rel=0.05)


def test_a_bed_fills_no_faster_than_its_light_pays_for():
    """115 g dry a m² and 1.877 g for each mol: 28 days for a doubling on 1.5 mol."""
    slow, own = (run("planting-plan", {"doubling_days": 7, "dli_mol": dli}) for dli in (1.5, None))
    assert slow["outputs"]["weeks_to_fill"] > 2 * own["outputs"]["weeks_to_fill"]
    assert any("that is used in place of 7" in note["text"] for note in slow["notes"])
    assert any("which stands: give the light" in note["text"] for note in own["notes"])


def notes_of(**given):
    """The notes as one text."""
    return " ".join(note["text"] for note in run("planting-plan", given)["notes"])


def test_the_weeks_are_no_finer_than_they_are_known():
    # 38 stems, 12 planted: 10 days to settle and 14 x log2(38/12) = 33.3 days in all, 4.75 weeks
    assert "full in about 5 weeks, 2 to 10" in notes_of()
    answer = run("planting-plan", {})
    assert answer["outputs"]["full"] == "in about 5 weeks, 2 to 10"
    shown = table(load_all()["planting-plan"], answer)
    assert "in about 5 weeks, 2 to 10" in shown.replace("\u00a0", " ")
    assert "4.75" not in shown


@pytest.mark.parametrize("weeks", [0.0, 0.3, 1.0, 1.4, 14.1, 260.0])
def test_no_bed_is_said_to_be_full_in_no_weeks_or_in_parts_of_one(weeks):
    words = until_full(weeks)
    assert "." not in words
    assert not re.search(r"\b0\b", words)


def test_planting_among_animals_speaks_of_poison_of_the_cap_and_of_ammonia():
    said = notes_of(start_percent=100)
    for word in ("three to four weeks", "insect poison", "through the cap", "test ammonia"):
        assert word in said


def test_no_bed_is_trimmed_more_than_once_a_day():
    said = notes_of(doubling_days=0.5, cut_percent=5)
    assert "look at the doubling time" in said
    assert "Every 0" not in said
    assert "every 0.0" not in said
