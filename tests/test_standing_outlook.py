"""The weeks ahead of a tank: a picture where readings tell, else the reading that would; harm first."""

import itertools
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import norm

from calculators.core.plot.series_pictures import pictures, plots
from calculators.core.result import Series
from calculators.core.run import compute
from calculators.science.animals.toxic_lines import (
    ammonia_standing,
    least_deadly_ammonia_mg_n_l,
    least_harmful_ammonia_mg_n_l,
)
from calculators.science.fitting.fit_readings import Reading
from calculators.science.fitting.fitted_course import FittedCourse, course_days
from calculators.science.nitrogen.forecast_tank import Event
from calculators.science.shelf.harmful_readings import AmmoniaWater
from calculators.standing.nitrogen_outlook import FittedWeeks
from calculators.standing.outlook_pictures import outlook_pictures
from calculators.standing.outlook_words import caption, nitrate_sentence, reach_of
from calculators.standing.telling_reading import telling_reading
from tests.test_standing import FULL, TANK, TODAY, entry, read, stands

WATER = AmmoniaWater(7.5, 25.0)
WEEKS = [0.0, 7.0, 14.0, 21.0, 28.0]
TELLING = [read(21 - 3 * turn, "nitrate_mg_l", 12 + turn % 2) for turn in range(7)]


def computed(*log, **tank):
    """The answer with its series as they are drawn."""
    inputs = {"tank": {**TANK, **FULL, **tank}, "entries": list(log), "today": str(TODAY)}
    return compute("standing", inputs)


def course(levels, what="nitrate_mg_l", spread=0.5, error=1.0):
    """A course from today on."""
    count = len(levels)
    return FittedCourse(what, WEEKS[:count], list(levels), [spread] * count, [error] * count)


def weeks(*courses, readings=(), hungry=(), day=None):
    return FittedWeeks(tuple(courses), list(readings), [], hungry, day)


# --- the picture


def test_the_picture_has_readings_course_band_today_and_changes():
    found = computed(*TELLING, entry(5, "change", None, 25)).series
    line, dots = found["ahead_nitrate_mg_l"], found["ahead_nitrate_mg_l_read"]
    low, high = (found[f"ahead_nitrate_mg_l_{edge}"] for edge in ("low", "high"))
    assert (line.x[0], line.x[-1]) == (pytest.approx(-21, abs=1), 28)
    assert dots.dots
    assert len(dots.x) == len(TELLING)
    assert dots.step == 5  # that of a common kit, where the log does not say
    assert all(a <= b <= c for a, b, c in zip(low.y, line.y, high.y, strict=True))
    assert [mark.x for mark in line.marks if mark.is_now] == [0]
    changes = sorted(mark.x for mark in line.marks if not mark.is_now)
    assert changes[0] == pytest.approx(-5, abs=1)
    assert [b - a for a, b in itertools.pairwise(changes)] == pytest.approx([7] * 4)


def test_a_change_of_water_is_a_step_of_the_course_and_stands_at_one_place():
    line = computed(*TELLING, entry(5, "change", None, 50)).series["ahead_nitrate_mg_l"]
    (at,) = [place for place, day in enumerate(line.x[:-1]) if day < 0 and day == line.x[place + 1]]
    assert line.y[at + 1] < 0.9 * line.y[at]


def test_the_kits_own_step_stands_at_the_dots():
    log = [{**one, "step": 2} for one in TELLING]
    found = computed(*log).series
    assert found["ahead_nitrate_mg_l_read"].step == 2
    figure = next(one for one in plots(found) if "weeks ahead" in one)
    assert str(figure).count('class="whisker"') == len(log)
    assert re.search(r"with the kit(?:&#x27;|')s step of 2\smg/L", figure)
    assert 'class="now-line"' in figure


def test_the_band_is_that_of_a_normal_distribution():
    """80 % lie within 1.2816 standard deviations: scipy's own quantile."""
    one = course([10.0], spread=3.0, error=4.0)
    by = norm.interval(0.8, 10.0, 5.0)
    assert (one.edge(-1)[0], one.edge(1)[0]) == pytest.approx(by, rel=1e-4)
    assert one.edge(1, kit=False)[0] == pytest.approx(norm.interval(0.8, 10.0, 3.0)[1], rel=1e-4)


def test_whole_days_and_both_sides_of_a_change_are_worked_out():
    days = course_days(-2.4, 1, [Event(-1.5, "change", 20), Event(-0.5, "feed", 1)])
    assert days == pytest.approx([-2, -1.5, -1.5, -1, 0, 1], abs=1e-4)


# --- no picture of false promise


@pytest.mark.parametrize(
    ("log", "words"),
    [
        ([read(1, "nitrate_mg_l", 12)], r"Read nitrate 2 more times, the last on (\d+) December"),
        (
            [read(8, "nitrate_mg_l", 12), read(1, "nitrate_mg_l", 12)],
            r"Read nitrate on (\d+) December",
        ),
    ],
)
def test_where_readings_are_too_few_the_sentence_says_which_would_tell(log, words):
    """Three readings over ten days are asked for: not before day 10 after the first."""
    found = stands(*log, **FULL)
    assert not [key for key in found["all"].get("series", {}) if key.startswith("ahead")]
    (said,) = [note for note in found["notes"] if note.startswith("In four weeks")]
    day = int(re.search(words, said)[1])
    first = int(log[0]["at"][8:10])
    assert (TODAY.replace(month=12, day=day) - TODAY.replace(day=first)).days >= 10


def test_where_the_kit_is_too_coarse_a_finer_one_is_asked_for():
    rough = [{**one, "step": 100} for one in TELLING]
    found = stands(*rough, **FULL)
    assert not [key for key in found["all"].get("series", {}) if key.startswith("ahead")]
    assert any("A kit with a finer step than 100 mg/L would tell." in one for one in found["notes"])


def test_the_day_that_tells_is_the_first_on_which_the_ways_lie_further_apart_than_the_step():
    slow, fast = ([(float(day), pace * day) for day in range(29)] for pace in (0.0, 1.0))
    rows = [Reading(day, "nitrate_mg_l", 10.0) for day in (-12, -6, 0)]
    assert telling_reading(rows, [slow, fast], 5.0)[:2] == (1, 6)
    assert telling_reading(rows, [slow, fast], 0.5)[:2] == (1, 3)  # not the day after the last
    assert telling_reading(rows, [slow, fast], 30.0)[:2] == (1, None)
    assert telling_reading(rows[2:], [slow, fast], 5.0)[:2] == (2, 10)  # ten days from the first


# --- harm first


@given(ph=st.floats(5, 9.5), warmth=st.floats(10, 32))
def test_the_line_drawn_for_ammonia_is_the_one_by_which_a_reading_is_judged(ph, warmth):
    line = least_harmful_ammonia_mg_n_l(ph, warmth)
    assert ammonia_standing(line * 0.999, ph, warmth).level == "in-range"
    assert ammonia_standing(line * 1.001, ph, warmth).level != "in-range"


@given(ph=st.floats(5, 9.5), warmth=st.floats(10, 32))
def test_the_line_at_which_ammonia_can_kill_is_the_one_by_which_it_is_judged(ph, warmth):
    line = least_deadly_ammonia_mg_n_l(ph, warmth)
    assert ammonia_standing(line * 0.999, ph, warmth).level != "deadly"
    assert ammonia_standing(line * 1.001, ph, warmth).level == "deadly"


@pytest.mark.parametrize(("ph", "warmth"), [(6.6, 20), (7.5, 25), (8.4, 29)])
def test_both_forecasts_draw_ammonias_and_nitrites_lines_alike_in_words_and_figures(ph, warmth):
    """The forecast of feed and plants, and the weeks ahead on the page of a kept tank."""
    given = {"ph": ph, "temperature_c": warmth}
    forecast = compute("nitrogen-forecast", given).series
    for what in ("ammonia", "nitrite"):
        near = course([0.01, 9.0], f"{what}_mg_n_l")
        ahead = outlook_pictures(weeks(course([12, 12]), near), AmmoniaWater(ph, warmth))
        (line,) = ahead[f"ahead_{what}_mg_n_l"].lines
        first, second = forecast[what].lines
        assert first.label == f"{what}: {line.label}"
        assert first.value == pytest.approx(line.value)
        assert second.label == f"{what}: can kill"
        assert second.value > first.value


def test_the_line_of_water_that_nobody_tested_is_no_higher_than_that_of_water_that_was():
    assert least_harmful_ammonia_mg_n_l() <= least_harmful_ammonia_mg_n_l(8.0, 28.0)


@pytest.mark.parametrize(
    ("levels", "spread", "error", "by", "day"),
    [
        ([0.02, 0.07], 0.0, 0.0, "fit", 7.0),
        ([0.02, 0.05], 0.02, 0.0, "band", 7.0),
        ([0.02, 0.04], 0.001, 0.03, "kit", 7.0),
        ([0.0, 0.06], 0.0, 0.0, "fit", 7.0),  # the line itself harms
    ],
)
def test_what_reaches_nitrites_line_is_told_apart(levels, spread, error, by, day):
    """The line is 0.06 mg N/L: British Columbia's nitrite maximum at under 2 mg/L of chloride."""
    reach = reach_of(course(levels, "nitrite_mg_n_l", spread, error), WATER)
    assert (reach.by, reach.day, reach.line) == (by, day, 0.06)


def test_nothing_is_said_of_a_line_that_not_even_the_band_reaches():
    assert reach_of(course([0.0, 0.01], "nitrite_mg_n_l", 0.001, 0.001), WATER) is None


def test_the_caption_says_what_harms_before_all_else():
    nitrate = course([12, 6, 0.5], spread=0.2)
    toxic = course([0.02, 0.05, 0.2], "nitrite_mg_n_l", 0.01, 0.01)
    said = caption(weeks(nitrate, toxic, hungry=("rotala-rotundifolia",), day=16.0), WATER)
    assert said.startswith("Nitrite reaches 0.06 mg N/L in about 14 days, from which it harms")
    assert (
        said.index("Test it today") < said.index("Nitrate runs out") < said.index("starves first")
    )


def test_only_what_is_toxic_and_matters_has_a_picture_and_it_comes_first():
    nitrate, quiet = course([12, 12]), course([0, 0], "nitrite_mg_n_l", 0.0, 0.01)
    loud = course([0.05, 0.2], "ammonia_mg_n_l", 0.1, 0.1)
    rows = [Reading(-3, "nitrite_mg_n_l", 0), Reading(-3, "ammonia_mg_n_l", 0.1)]
    drawn = pictures(outlook_pictures(weeks(nitrate, quiet, loud, readings=rows), WATER))
    assert [one.title.split(":")[0] for one in drawn] == ["Ammonia", "Nitrate"]


def test_ammonia_that_the_weeks_may_bring_is_said_before_the_figures():
    """At pH 8.4 and 28 °C little ammonia harms; the readings lie below the line."""
    log = [
        *TELLING,
        *({**read(days, "ammonia_mg_n_l", 0.1), "step": 0.02} for days in (20, 13, 6, 1)),
    ]
    found = computed(*log, ph=8.4, temperature_c=28)
    captions = [one.caption for one in found.series.values() if one.caption]
    assert all(one.startswith(("Ammonia", "The kit cannot rule out ammonia")) for one in captions)


def test_readings_that_no_uptake_explains_are_no_forecast():
    """Ten times the feed of a tank whose nitrate stays at 12: the figures are wrong, not the water."""
    found = stands(*TELLING, **{**FULL, "feed_g_week": 40, "plants": []})
    assert not found["outlook"]["fitted"]
    assert any("do not go with the tank's figures" in note for note in found["notes"])
    assert not [key for key in found["all"]["series"] if key.startswith("ahead")]


# --- what it means


@pytest.mark.parametrize(
    ("levels", "spread", "words"),
    [
        ([10, 6, 2, 0.5], 0.1, "runs out in about 3 weeks."),
        ([10, 0.5], 0.1, "runs out in about 7 days."),
        ([10, 4, 0.9, 0.4], 1.0, "perhaps not within four weeks"),
        ([10, 8, 3], 2.0, "may run out, in 2 weeks at the soonest"),
        ([10, 12], 0.1, "goes from about 10 to 12 mg/L"),
        ([0.4, 0.3], 0.1, "about used up already"),
    ],
)
def test_the_sentence_on_nitrate(levels, spread, words):
    assert words in nitrate_sentence(course(levels, spread=spread))


def test_readings_and_other_pictures_are_behind_a_heading_that_says_the_result():
    found = computed(*TELLING, read(2, "ph", 7.2), read(9, "ph", 7.2), entry(20, "feed", None, 1))
    folded = {one.fold for one in found.series.values() if one.fold}
    assert any(one.startswith("Readings: nitrate 12 mg/L") for one in folded)
    shown = [key for key, one in found.series.items() if not one.fold]
    assert all(key.startswith("ahead_nitrate_mg_l") for key in shown)


def test_without_a_forecast_one_picture_of_readings_is_in_view():
    found = computed(read(20, "ph", 7.2), read(2, "ph", 7.4), tap=None).series
    in_view = {one.label for one in found.values() if isinstance(one, Series) and not one.fold}
    assert len(in_view) == 1
