"""Pictures of animals: as long and deep as their records say, marks inside the body, lists in one scale."""

import re

import pytest

from scripts.drawings.animals.outline import extent
from scripts.drawings.animals.pattern_marks import marks
from scripts.drawings.animals.picture import OUTLINES, picture, pieces, small_picture
from scripts.drawings.geometry import flattened
from scripts.drawings.scene import Symbols, bounds
from scripts.records.animal import BodyShape
from scripts.records.vocabulary import allowed
from tests.own_records import own_records

LIBRARY = own_records()
FISH_FORMS = [
    form for form in OUTLINES if form not in ("shrimp", "crayfish") and OUTLINES[form]().eye
]


def test_each_form_of_the_records_has_an_outline_and_a_word():
    forms = set(allowed(BodyShape, "form"))
    assert OUTLINES.keys() == forms == LIBRARY.vocabulary["body_form"].keys()
    assert {animal.body.shape.form for animal in LIBRARY.animals.values()} == forms


@pytest.mark.parametrize("form", OUTLINES)
def test_a_body_starts_at_the_nose_and_is_one_depth_deep(form):
    points = list(flattened(OUTLINES[form]().body))
    assert min(x for x, _ in points) == pytest.approx(0, abs=0.02)
    deep = max(y for _, y in points) - min(y for _, y in points)
    assert deep == pytest.approx(1, abs=0.15)


@pytest.mark.parametrize("form", FISH_FORMS)
def test_a_fish_is_one_length_long_with_its_tail(form):
    outline = OUTLINES[form]()
    ends = [x for path in (outline.body, *outline.behind) for x, _ in flattened(path)]
    assert max(ends) == pytest.approx(1, abs=0.02)


@pytest.mark.parametrize("slug", LIBRARY.animals)
def test_the_picture_keeps_the_recorded_proportions(slug):
    """At twice the length all is twice as long and twice as deep."""
    animal = LIBRARY.animals[slug]
    one, two = (bounds(pieces(animal, length), Symbols()) for length in (100.0, 200.0))
    assert two.right - two.left == pytest.approx(2 * (one.right - one.left), rel=0.02)
    assert two.top - two.bottom == pytest.approx(2 * (one.top - one.bottom), rel=0.02)
    body = [item for item in pieces(animal, 100.0) if item.css == "blade"]
    box = bounds(body, Symbols())
    assert box.top - box.bottom == pytest.approx(animal.body.shape.depth_percent, rel=0.15)


@pytest.mark.parametrize("kind", ["stripe", "bars", "spots", "blotch"])
@pytest.mark.parametrize("form", OUTLINES)
def test_marks_lie_inside_the_body(form, kind):
    outline = OUTLINES[form]()
    drawn = marks(outline, kind)
    assert drawn
    for mark in drawn:
        for x, y in mark.runs[0].points:
            ends = extent(outline.body, x)
            assert ends, (form, x)
            assert ends[0] - 0.06 <= y <= ends[1] + 0.06, (form, kind, x, y)


def test_the_rule_is_as_long_as_the_greatest_length_and_all_lists_have_one_scale():
    animal = LIBRARY.animals["carassius-auratus"]
    html = picture("carassius-auratus", animal, "a fish")
    assert f"h{animal.body.length_mm.high:g}" in html
    assert "250 mm" in html
    scales = set()
    for slug, one in LIBRARY.animals.items():
        small = small_picture(slug, one)
        view, width = re.search(r'viewBox="0 0 ([\d.]+) [\d.]+" width="(\d+)"', small).groups()
        if float(view) > 40:
            scales.add(round(int(width) / float(view), 1))
    assert scales == {0.8}
