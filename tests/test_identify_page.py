"""The page that names a plant, as the build writes it: usable with no script, and drawn throughout."""

import re

import pytest

from calculators.identify.drawn_answers import choices
from calculators.identify.label import NOTHING_SAID
from calculators.identify.plant_posterior import plant_chances
from calculators.identify.seen import SeenTraits
from calculators.identify.trait_evidence import EVIDENCE
from calculators.identify.trait_table import plant_book
from scripts.drawings.trait_symbols import trait_symbols
from scripts.pages.identify.identify_page import identify_page
from tests.effort import share_of

CHANCES = plant_chances(SeenTraits(), NOTHING_SAID)


@pytest.fixture(scope="module")
def page(library):
    return identify_page(library)


@pytest.fixture(scope="module")
def symbols(library):
    return dict(re.findall(r'<symbol id="([^"]+)"[^>]*>(.*?)</symbol>', trait_symbols(library)))


@pytest.mark.parametrize("trait", EVIDENCE)
def test_every_answer_has_a_drawing_of_its_own(trait, symbols):
    names = [choice.picture for choice in choices(trait, SeenTraits(), CHANCES)]
    assert set(names) <= symbols.keys()
    assert len(names) >= 2
    bodies = [re.sub(r'(id|href)="[^"]*"', "", symbols[name]) for name in names]
    assert len(set(bodies)) == len(bodies), trait
    assert all("<path" in body or "<ellipse" in body for body in bodies)


def test_no_id_stands_twice_and_every_drawing_that_is_used_is_there(page):
    ids = re.findall(r'\bid="([^"]+)"', page)
    assert len(ids) == len(set(ids))
    assert set(re.findall(r'<use href="#([^"]+)"', page)) <= set(ids)


def test_the_list_without_a_script_has_every_plant_and_marks_what_the_law_restricts(page):
    listed = page[page.index("{ #key }") :]
    for key, plant in plant_book().plants.items():
        [row] = re.findall(rf'<li><svg[^>]*><use href="[^"]*#{key}"/?>.*?</li>', listed)
        assert plant.name in row
        assert ("Restricted in" in row) == bool(plant.law)


def test_the_first_question_stands_in_the_page_with_its_answers_and_a_way_out(page):
    assert "How does it grow?" in page
    assert page.count("data-set=") >= 10
    assert "I cannot see it" in page


def test_other_pages_lead_to_it(library):
    from scripts.pages.generated import makers

    pages = makers(library)
    assert "identify/" in pages["plants/index.md"]()
    assert "identify/" in pages["names/index.md"]()
    assert "../../identify/?label=Hygro" in pages["names/hygro.md"]()
    alike = [slug for slug, plant in library.plants.items() if plant.look_alikes]
    assert len(alike) > 20
    for slug in share_of(alike, 7):
        assert "../../identify/" in pages[f"plants/{slug}.md"](), slug
