"""What a picture says: its caption, the values at each place, and the table of them."""

import csv
import io
import json
import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.core.listing import load_all
from calculators.core.plot.curve_words import turning_points
from calculators.core.plot.meaning import meaning
from calculators.core.plot.series_pictures import pictures, plots
from calculators.core.plot.values import places, spoken, table
from calculators.core.result import Line, Mark, Series
from calculators.core.run import compute
from tests.test_plot import drawn

HARMS = Line("harms", 5)


def series(y, label="Nitrate", x_label="Day", x_unit="days", x=None, **more):
    return Series(label, "mg/L", x_label, x_unit, x or list(range(len(y))), list(y), **more)


@pytest.mark.parametrize(
    ("y", "words"),
    [
        ((1, 2, 3, 4), "Nitrate rises, below “harms” all along."),
        ((9, 8, 7, 6), "Nitrate falls, above “harms” all along."),
        ((1, 2, 6, 7), "Nitrate rises, above “harms” from day 2 on."),
        ((7, 6, 4, 3), "Nitrate falls, below “harms” from day 2 on."),
        ((1, 8, 7, 2), "Nitrate rises to the highest at day 1, then falls, "
            "above “harms” from day 1 to day 3."),
        ((4, 1, 2, 3), "Nitrate falls to the lowest at day 1, then rises, below “harms” all along."),
        ((1, 9, 1, 9, 1, 8), "Nitrate goes up and down, higher at the end, now above, now below “harms”."),
        ((3, 3, 3.01, 3), "Nitrate stays about level, below “harms” all along."),
        ((0, 0, 0, 0), "Nitrate stays about level, below “harms” all along."),
        ((1, 2, 4, 5), "Nitrate rises, below “harms” (and reaches it) all along."),
    ],
)  # fmt: skip
def test_the_caption_says_the_course_and_the_side_of_a_line(y, words):
    assert meaning([series(y, lines=(HARMS,))], [], [HARMS]) == words


def test_what_is_shaded_past_a_line_is_not_kept_back():
    edges = [series((0, 1, 2, 2)), series((2, 4, 6, 7))]
    said = meaning([series((1, 2, 3, 4), lines=(HARMS,))], [edges], [HARMS])
    assert said == "Nitrate rises, below “harms” (what is shaded reaches past it) all along."


def test_readings_are_counted_and_several_curves_are_one_sentence():
    read = series((1, 6, 7, 2), dots=True, lines=(HARMS,))
    trend = series((3, 3.5, 4, 4.5), "Line", subject="The line of the trend")
    said = meaning([read, trend], [], [HARMS])
    assert (
        said
        == "Nitrate lies between 1 and 7 mg/L, 2 of 4 above “harms”; the line of the trend rises."
    )
    gas = series((9, 5, 2), "Carbon dioxide", "pH", "")
    assert meaning([gas], [], []) == "Carbon dioxide falls with rising pH."
    assert meaning([series((1, 2, 3), "Minutes a day")], [], []) == "Minutes a day rise."


@given(st.lists(st.floats(-100, 100), min_size=2, max_size=30), st.floats(0.5, 20))
def test_turns_alternate_and_are_as_large_as_asked(values, least):
    points = list(enumerate(values))
    turns = turning_points(points, least)
    heights = [y for _, y in turns]
    steps = [after - before for before, after in pairwise(heights)]
    assert all(abs(step) >= least for step in steps)
    assert all((one > 0) != (other > 0) for one, other in pairwise(steps))
    assert set(turns) <= set(points)


def test_each_place_is_said_with_all_that_stands_there():
    first = series((1, 2, 3), "Ammonia", short="ammonia", marks=(Mark(1, "trim"),))
    second = series((4, 5), "Nitrite", x=[1, 2.5])
    found = places([first, second])
    assert [place.x for place in found] == [0, 1, 2, 2.5]
    said = [spoken(place, [first, second], first.marks) for place in found]
    assert said == [
        "Day 0: ammonia 1 mg/L",
        "Day 1: ammonia 2 mg/L; Nitrite 4 mg/L; trim",
        "Day 2: ammonia 3 mg/L",
        "Day 2.5: Nitrite 5 mg/L",
    ]
    alone = series((1, 2), x_label="Depth", x_unit="cm")
    assert spoken(places([alone])[0], [alone], ()) == "Depth 0 cm: 1 mg/L"
    log = series((1, 2), x=[-3, 0], x_unit="today is 0", marks=(Mark(0, "today"),))
    earlier, now = (spoken(place, [log], log.marks) for place in places([log]))
    assert earlier == "Day \N{MINUS SIGN}3 (today is 0): 1 mg/L"
    assert now == "Day 0 (today): 2 mg/L"


def test_a_jump_keeps_both_of_its_values():
    jump = series((5, 2), x=[1, 1])
    assert [place.values for place in places([jump])] == [[5], [2]]


def read_back(text):
    """A table of text as Python's own reader has it."""
    return list(csv.reader(io.StringIO(text, newline="")))


@pytest.mark.parametrize("name", load_all())
def test_the_tables_of_every_calculator_hold_its_series(name):
    """RFC 4180: each row has as many cells as the first; the reader is Python's own."""
    for picture in pictures(compute(name, {}).series):
        head, *rows = read_back(table(picture.of_all()))
        assert all(len(row) == len(head) == len(picture.of_all()) + 1 for row in rows)
        for column, curve in enumerate(picture.of_all(), start=1):
            assert curve.unit in head[column]
            held = [(float(row[0]), float(row[column])) for row in rows if row[column]]
            given_points = sorted(
                (x, y) for x, y in zip(curve.x, curve.y, strict=True) if math.isfinite(y)
            )
            assert sorted(held) == [
                pytest.approx(pair, rel=1e-5, abs=1e-9) for pair in given_points
            ]


def test_a_label_is_no_formula_and_keeps_its_quotes():
    head, *_ = read_back(table([series((1, 2), '=HYPERLINK("x"), y')]))
    assert head[1].startswith('\'=HYPERLINK("x"), y')


@pytest.mark.parametrize("name", load_all())
def test_a_slider_has_a_place_for_each_of_its_steps(name):
    series_of = compute(name, {}).series
    for figure in drawn(series_of):
        slider = figure.find("div/input") if figure.find("div") is not None else None
        shown = json.loads(slider.get("data-places"))
        assert int(slider.get("max")) == len(shown) - 1
        begun = int(slider.get("value"))
        assert begun == len(shown) - 1 or "today" in shown[begun][1]
        assert slider.get("aria-valuetext") == shown[begun][1] == figure.find("div/p").text
        width = float(figure.find("svg").get("viewBox").split()[2])
        assert all(0 <= x <= width for x, _ in shown)
        assert [x for x, _ in shown] == sorted(x for x, _ in shown)
    assert len(plots(series_of)) == len(pictures(series_of))
