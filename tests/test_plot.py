"""Pictures: what stands together, dashes, bands, named lines, and names that do not cover anything."""

import json
import re
import xml.etree.ElementTree as ET
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.bridge import answer
from calculators.core.listing import load_all
from calculators.core.plot.labels import place_names
from calculators.core.plot.plot_units import in_units
from calculators.core.plot.scale import Scale, scale, spread
from calculators.core.plot.series_pictures import pictures, plots
from calculators.core.quantity import UsUnit
from calculators.core.result import Line, Mark, Series
from calculators.core.run import compute

SMALL = 5  # units of the picture: a narrow letter at the size of a phone
DAYS = [0.0, 1.0, 2.0, 3.0]


def series(label="A", y=(1.0, 2.0, 3.0, 4.0), **more):
    return Series(label, "mg/L", "Day", "days", DAYS, list(y), **more)


def drawn(shown):
    found = plots(shown)
    closed = (re.sub(r"(<input [^>]*)>", r"\1/>", figure) for figure in found)
    return [ET.fromstring(figure) for figure in closed]


def of_class(figure, name, tag="*"):
    within = figure.find("svg")
    return [
        one
        for one in within.iter()
        if name in one.get("class", "").split() and tag in ("*", one.tag)
    ]


def test_series_of_one_picture_share_it_and_others_stand_alone():
    shown = {
        "a": series("A", picture="Both"),
        "c": series("C"),
        "b": series("B", picture="Both"),
    }
    assert [[one.label for one in picture.curves] for picture in pictures(shown)] == [
        ["A", "B"],
        ["C"],
    ]
    both, alone = drawn(shown)
    assert [one.get("class") for one in of_class(both, "curve")] == [
        "curve curve-1",
        "curve curve-2",
    ]
    assert [one.text for one in of_class(both, "name")] == ["A", "B"]
    assert [one.text for one in both.find("ul").iter("li")] == [
        None,
        None,
    ]  # the text follows the sample
    assert "".join(both.find("ul").itertext()) == "AB"
    assert not of_class(alone, "name")
    assert alone.find("ul") is None


def test_each_curve_has_a_dash_of_its_own_in_the_style_sheet():
    from scripts.setup.paths import ROOT

    css = (ROOT / "docs" / "assets" / "style.css").read_text(encoding="utf-8")
    dashes = {
        number: (
            re.search(rf"\.curve-{number} {{[^}}]*stroke-dasharray: ([\d ]+)", css) or [0, ""]
        )[1]
        for number in (1, 2, 3)
    }
    assert dashes[1] == ""
    assert len(set(dashes.values())) == 3


def test_a_band_is_shaded_between_its_edges_and_is_no_curve():
    shown = {
        "a": series(),
        "a_low": series("A low", (0.5, 1, 1.5, 2), edge_of="a"),
        "a_high": series("A high", (2, 4, 6, 8), edge_of="a"),
    }
    (figure,) = drawn(shown)
    assert len(of_class(figure, "curve")) == 1
    (band,) = of_class(figure, "band", "polygon")
    assert len(band.get("points").split()) == 2 * len(DAYS)
    up = [tick for tick in of_class(figure, "tick") if tick.get("class") == "tick end"]
    assert float(up[-1].text) >= 8  # the axis reaches the upper edge
    assert "Shaded, how unsure it is: 2 to 8 mg/L at the end." in figure.find("svg").get(
        "aria-label"
    )


def test_a_line_is_drawn_where_the_curve_comes_near_it_or_always():
    far, near, always = Line("far", 100), Line("near", 7), Line("always", 40, always=True)
    assert names_of(drawn({"a": series(lines=(far, near))})) == ["near"]
    assert names_of(drawn({"a": series(lines=(far, always))})) == ["always"]
    assert names_of(drawn({"a": series(lines=(Line("below", -3),))})) == ["below"]


def names_of(figures):
    return [one.text for figure in figures for one in of_class(figure, "level-name")]


def test_marks_are_drawn_once_and_named_where_there_is_room():
    marks = (Mark(1, "trim"), Mark(1.01, "dose"), Mark(9, "outside"))
    shown = {"a": series(picture="P", marks=marks), "b": series("B", picture="P", marks=marks)}
    (figure,) = drawn(shown)
    assert len(of_class(figure, "mark-line")) == 2
    assert [one.text for one in of_class(figure, "mark-name")] == ["trim"]


def test_a_gap_stays_a_gap_and_nothing_at_all_is_no_picture():
    (figure,) = drawn({"a": series(y=(1, float("nan"), 3, 4))})
    assert len(of_class(figure, "curve")[0].get("points").split()) == 3
    assert plots({"a": series(y=[float("nan")] * 4)}) == []


@pytest.mark.parametrize("name", load_all())
def test_every_picture_of_every_calculator_is_sound(name):
    spec = load_all()[name]
    found = compute(spec.name, {})
    for picture in pictures(found.series):
        assert len({(one.unit, one.x_unit) for one in picture.curves}) == 1, picture.title
    for figure in drawn(found.series):
        svg, caption = figure.find("svg"), figure.find("figcaption")
        assert len(svg.get("aria-label")) > len(caption.text) > 10
        assert re.fullmatch(r"[^\n]+[\w”)%]\.", caption.text)
        assert "style" not in {key for one in figure.iter() for key in one.attrib}
        width, height = map(float, svg.get("viewBox").split()[2:])
        for one in svg.iter("text"):
            assert 0 <= float(one.get("x")) <= width, one.text
            assert right_end(one) <= width, one.text
            assert 10 <= float(one.get("y")) <= height, one.text


def right_end(text):
    """Where a text ends at the least, by the width of a narrow letter and by which end its place is."""
    share = {"end": 0, "mid": 0.5}.get(text.get("class").split()[-1], 1)
    return float(text.get("x")) + share * SMALL * len(text.text)


def test_captions_name_every_curve_and_line():
    shown = {"a": series(picture="Two", lines=(Line("mind", 2),)), "b": series("B", picture="Two")}
    (figure,) = drawn(shown)
    words = figure.find("svg").get("aria-label")
    assert words.startswith("Two. A: 1 mg/L at day 0")
    assert "B: 1 mg/L" in words
    assert "Line at 2 mg/L: mind." in words


def test_ticks_are_round_and_a_tight_scale_ends_with_the_data():
    loose, tight = Scale(0, 90, 0, 100), Scale(0, 90, 0, 100, tight=True)
    assert loose.ticks == [*tight.ticks, 100]
    assert tight.at(90) == 100
    assert scale([3.0, 3.0], 0, 10).high > 3  # a flat curve has some height


@given(st.lists(st.floats(0, 150), min_size=1, max_size=6))
def test_labels_are_kept_apart_and_inside(places):
    found = spread(places, 13, 0, 150)
    assert all(abs(one - other) >= 13 - 1e-6 for one, other in combinations(found, 2))
    assert all(-1e-6 <= one <= 150 + 1e-6 for one in found)
    if len(places) == 1:
        assert found == places


def test_a_name_leaves_the_curve_free_where_it_can():
    along = [(float(x), 90.0) for x in range(50, 180)]  # a curve just above the line, on the left
    (box,) = place_names([("browning", 94.0)], [along], 50, 284, 186)
    assert not any(box.holds(x, y) for x, y in along)
    boxes = place_names([("one", 94.0), ("two", 95.0), ("three", 96.0)], [along], 50, 284, 186)
    assert not any(one.meets(other) for one, other in combinations(boxes, 2))


def us_words(name):
    request = {"calculator": name, "given": {}, "units": "us"}
    return json.loads(answer(json.dumps(request)))["painted"]["html"]


def test_pictures_follow_the_units_and_series_stay_metric():
    """50 °F are 10 °C, by definition; 510 g are 18 oz of 28.35 g."""
    assert "at water temperature 50," in us_words("oxygen")
    assert "Water temperature, °F" in us_words("oxygen")
    assert "Plants, wet: 18 oz at day 0" in us_words("nitrogen-forecast")
    assert "Depth, in" in us_words("light")
    found = compute("oxygen", {})
    assert found.answer["series"]["saturation"]["x_unit"] == "°C"
    assert found.answer["series"]["saturation"]["x"][0] == 10


def test_named_lines_and_marks_change_with_their_axis():
    metric = series(us=UsUnit("oz", 2.0), x_us=UsUnit("°F", 1.8, 32.0))._replace(
        lines=(Line("line", 3.0),), marks=(Mark(1.0, "trim"),)
    )
    us = in_units({"a": metric}, "us")["a"]
    assert (us.unit, us.x_unit) == ("oz", "°F")
    assert us.y == [2, 4, 6, 8]
    assert us.x == pytest.approx([32, 33.8, 35.6, 37.4])
    assert us.lines[0].value == 6
    assert us.marks[0].x == pytest.approx(33.8)
    assert in_units({"a": metric}, "metric")["a"] == metric
