"""The law of single states is never said to be that of the whole country, at any door."""

import re

import pytest

from calculators.core.run import run
from calculators.science.law.restricted import Restricted, once_a_place, places_in_words
from scripts.pages.identify.identify_page import groups
from scripts.pages.plants.all_plants_table import law_cell
from scripts.pages.plants.plant_page import plant_page, plants_page
from scripts.records.law_matches import listings, listings_of, restricted_at


def of_states_alone(library):
    """Our plants that no law of a whole place names, only single states of the United States or Australia."""
    for slug, plant in library.plants.items():
        listed = listings(plant, library.rules)
        if listed and all(one.rule.holds_in == "parts" for one in listed):
            yield slug, plant, [state for one in listed for state in one.entry.states]


def test_states_are_named_and_a_whole_place_takes_its_states_in():
    maine, ohio = Restricted("us", ("Maine",)), Restricted("us", ("Ohio", "Maine"))
    assert once_a_place([maine, Restricted("eu"), ohio]) == [
        Restricted("us", ("Maine", "Ohio")),
        Restricted("eu"),
    ]
    assert once_a_place([maine, Restricted("us")]) == [Restricted("us")]
    assert places_in_words([maine]) == "single states of the United States (Maine)"
    assert (
        places_in_words([Restricted("gb", ("England",)), Restricted("nz")])
        == "parts of Great Britain (England) and New Zealand"
    )


def test_every_entry_of_a_list_that_is_gathered_from_states_names_them(library):
    for slug, rule in library.rules.items():
        for entry in rule.entries:
            assert bool(entry.states) == (rule.holds_in == "parts"), (slug, entry.name)


def test_the_pages_name_the_states_of_a_plant_that_no_whole_place_restricts(library):
    found = list(of_states_alone(library))
    assert found
    index = plants_page(library)
    for slug, plant, states in found:
        page = plant_page(slug, library)
        for text in (page, index):
            assert states[0] in text, plant.name
        assert re.search(r"Restricted by law in single states of [^:]+: <a href", page)
        assert "Restricted by law in the United States" not in page


def test_a_name_on_a_label_is_marked_with_the_states(library):
    (listed,) = listings_of("Nitellopsis obtusa", library.rules)
    assert places_in_words([restricted_at(listed)]) == (
        "single states of the United States (Indiana, Michigan, Minnesota, Wisconsin)"
    )


@pytest.mark.parametrize("place", ["us", None])
def test_the_first_line_on_the_law_names_the_states(place):
    note = run("identify", {"label": "Nitellopsis obtusa", "place": place})["notes"][0]["text"]
    assert "Nitellopsis obtusa in single states of the United States (Indiana, Michigan" in note


def test_where_plants_differ_each_has_its_own_place():
    note = run("identify", {"label": "Caulerpa taxifolia", "place": "us"})["notes"][0]["text"]
    assert "Caulerpa in single states of the United States (California)" in note
    assert "and Caulerpa taxifolia in the United States" in note


def test_the_list_of_forms_names_the_states(library):
    marks = {row.slug: row.law for group in groups() for row in group.plants}
    for slug, _, states in of_states_alone(library):
        if slug in marks:
            assert states[0] in marks[slug]
            assert "in the United States" not in marks[slug]
    assert any("single states of Australia (Tasmania" in mark for mark in marks.values())


def test_the_table_marks_a_place_of_which_single_states_alone_restrict_a_plant(library):
    plants = library.plants
    egeria = law_cell(
        [restricted_at(one) for one in listings(plants["egeria-densa"], library.rules)],
        plants["egeria-densa"],
    )
    assert egeria.shown.split(",")[0] == "AU* NZ US*"
    assert "single states of Australia (Tasmania)" in egeria.whole
    hygro = plants["hygrophila-polysperma"]
    cell = law_cell([restricted_at(one) for one in listings(hygro, library.rules)], hygro)
    assert "US*" not in cell.shown  # federal law names it
