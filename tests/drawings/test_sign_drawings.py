"""The drawings of signs: small, in the book's own colours, and said in words wherever they stand."""

import re
from xml.etree import ElementTree

import pytest

from scripts.drawings.signs.sign_symbols import sign_drawings, sign_symbols
from scripts.pages.problems.drawn_signs import SHOWN, drawn, drawn_at
from scripts.pages.problems.problem_page import all_problems_page, problem_page
from scripts.setup.paths import ROOT

MOST_OCTETS = 2_000
CARD = re.compile(
    r'<li><a class="with-thumb" href="\.\./([\w-]+)/"><svg class="thumb" role="img" aria-label="([^"]+)"'
    r'[^>]*><use href="\.\./\.\./assets/signs\.svg#([\w-]+)"/></svg>.*?</a></li>'
)


@pytest.mark.parametrize("key", sorted(sign_drawings()))
def test_a_drawing_is_small_and_takes_its_colours_from_the_style_sheet(key, library):
    drawing = sign_drawings()[key]
    assert key in library.findings
    assert len(drawing.encode()) < MOST_OCTETS
    ElementTree.fromstring(f"<g>{drawing}</g>")
    style = (ROOT / "docs/assets/style.css").read_text(encoding="utf-8")
    colours = re.findall(r'(?:fill|stroke)="([^"]*)"', drawing)
    assert colours
    for colour in colours:
        assert colour == "none" or re.fullmatch(r"var\(--([\w-]+)\)", colour), colour
        assert colour == "none" or f"{colour[4:-1]}:" in style, colour


def test_each_drawn_sign_looks_unlike_the_others_but_for_readings(library):
    seen = {key: body for key, body in sign_drawings().items()}
    plain = [body for key, body in seen.items() if library.findings[key].where != "readings"]
    assert len(set(plain)) == len(plain)
    assert sign_symbols().count("<symbol") == len(seen)


def test_every_problems_page_shows_its_signs_with_their_words(library):
    for slug, problem in library.problems.items():
        page = problem_page(slug, library)
        figures = re.findall(r"<figure>(.*?)<figcaption>(.*?)</figcaption></figure>", page)
        keys = drawn(problem, library)[:SHOWN]
        assert 1 <= len(figures) == len(keys), slug
        for (picture, caption), key in zip(figures, keys, strict=True):
            assert sign_drawings()[key] in picture
            assert caption.replace("\u00a0", " ").lower() == library.findings[key].label.lower()
        assert page.index("<b>First:</b>") < page.index("<figure>"), (
            "first what to do, then what one sees"
        )


def test_the_list_of_problems_shows_a_sign_of_the_place_where_one_looks(library):
    page = all_problems_page(library)
    cards = CARD.findall(page)
    assert (
        len(cards)
        == page.count("<li>")
        == sum(len({sign.where for sign in problem.signs}) for problem in library.problems.values())
    )
    for slug, label, key in cards:
        assert key in drawn(library.problems[slug], library)
        assert label.replace("\u00a0", " ") == library.findings[key].label
    magnesium = library.problems["magnesium-starvation"]
    assert drawn_at(magnesium, "old-leaves", library) == "old-leaves-yellow-between-veins"
    assert drawn_at(magnesium, "water", library) == "gh-very-low"
    assert drawn_at(library.problems["black-brush"], "whole-plant", library) == "coat-black-tufts"


def test_what_shows_nearly_always_is_drawn_first(library):
    for slug, problem in library.problems.items():
        marks = {row.finding for row in problem.evidence if row.hallmark} & sign_drawings().keys()
        assert set(drawn(problem, library)[: len(marks)]) == marks, slug
