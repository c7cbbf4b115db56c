"""An answer is one piece of HTML, escaped by construction, the same in the page and live."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.bridge import answer
from calculators.core.listing import load_all
from calculators.core.paint.element import Html, element, escaped, joined
from calculators.core.paint.fragment import fragment
from calculators.core.paint.note_list import MOST_IN_VIEW, is_background
from calculators.core.paint.notes import rest
from calculators.core.run import compute
from scripts.pages.calculators.calculator_page import calculator_page
from tests.test_site import Page


def test_texts_are_escaped_and_html_is_not():
    made = element("p", {"title": 'a"<b', "hidden": True, "lang": None}, "x < y & z", Html("<b>"))
    assert made == '<p title="a&quot;&lt;b" hidden>x &lt; y &amp; z<b></p>'
    assert element("input", {"value": 0, "checked": False}) == '<input value="0">'
    assert joined(["a&b", element("br")], "<") == "a&amp;b&lt;<br>"


@given(st.text())
def test_no_text_makes_a_tag_or_a_line(text):
    made = escaped(text)
    assert not set(made) & set("<>\"'\n\r")


@pytest.mark.parametrize("name", load_all())
def test_the_page_holds_the_live_answer_to_its_worked_example(name, library):
    live = json.loads(answer(json.dumps({"calculator": name, "given": {}})))["painted"]["html"]
    page = calculator_page(name, library)
    assert f'<div id="answer">{live}</div>' in page
    assert "\n" not in live
    assert "style=" not in live
    checked = Page(f"<main>{live}</main>")
    assert not checked.problems


@pytest.mark.parametrize("name", load_all())
def test_notes_of_background_are_folded_and_no_caution_is(name):
    spec = load_all()[name]
    found = compute(name, {})
    later = rest(spec, found)
    in_view, _, folded = fragment(spec, found).partition('<details id="more-notes">')
    background = [note for note in later if is_background(note)]
    for note in later:
        hidden = len(background) > MOST_IN_VIEW and note in background
        assert (escaped(note.text) in folded) == hidden, note
        assert (escaped(note.text) in in_view) != hidden, note


def test_links_lead_from_where_the_page_is():
    spec = load_all()["pick"]
    found = compute("pick", {})
    assert 'href="../../plants/' in fragment(spec, found)
    assert 'href="/book/plants/' in fragment(spec, found, root="/book/")


def test_a_file_is_carried_whole():
    given = {
        "today": "2026-12-07",
        "tanks": [{"name": "A", "plants": [], "change_every_days": "7", "change_minutes": "10"}],
    }
    reply = json.loads(answer(json.dumps({"calculator": "upkeep", "given": given, "own": True})))
    text = reply["answer"]["outputs"]["calendar"]
    assert "\r\n" in text
    assert f'data-text="{escaped(text)}"' in reply["painted"]["html"]
    assert "&#13;&#10;" in escaped(text)
