"""A listed plant that has no page of its own is found by what people call it too."""

import pytest

from calculators.core.run import run
from scripts.pages.law.law_page import rule_page
from scripts.pages.search import entries
from scripts.records.law_matches import without_record


@pytest.mark.parametrize(
    ("label", "place", "names"),
    [
        # Indiana's commission, report of 2019 on 312 IAC 18-3-23: Nitellopsis obtusa (starry stonewort)
        ("starry stonewort", "us", ["Nitellopsis obtusa"]),
        ("Live starry-stonewort, one bunch", None, ["Nitellopsis obtusa"]),
        # Indiana's rule as proposed in 2012 calls both so
        ("false pickerelweed", "us", ["Monochoria hastata", "Monochoria vaginalis"]),
        # Washington's quarantine of 2005: Glossostigma diandrum, mud mat
        ("Mud mat", "us", ["Glossostigma diandrum"]),
        # the federal list: Solanum tampicense (wetland nightshade), Sparganium erectum (exotic bur-reed)
        ("wetland nightshade", "us", ["Solanum tampicense"]),
        ("exotic bur reed", "us", ["Sparganium erectum"]),
        # the government's table for England and Wales
        ("american skunk cabbage", "gb", ["Lysichiton americanus"]),
        # a risk assessment of the United States' plant health service
        ("water poppy", "nz", ["Hydrocleys nymphoides"]),
    ],
)
def test_a_label_with_a_common_name_has_the_law_first(label, place, names):
    note = run("identify", {"label": label, "place": place})["notes"][0]["text"]
    assert note.startswith("The law first")
    for name in names:
        assert name in note


def test_half_a_common_name_is_none():
    """Starry alone, or poppy, names no plant: the first word of a common name is no genus."""
    for label in ("starry", "poppy", "mud", "common"):
        notes = run("identify", {"label": label, "place": None})["notes"]
        assert "with no page here" not in " ".join(note["text"] for note in notes), label


def test_search_finds_the_list_by_either_name(library):
    found = {entry.address: entry.names for entry in entries(library, {})}
    assert {"Nitellopsis obtusa", "starry stonewort"} <= set(found["rules/us-states/"])
    assert "yellow floating heart" in found["rules/nz-pest-plant-accord/"]
    assert "Egeria densa" not in found["rules/us-states/"]  # it has a page of its own


def test_the_page_of_the_list_calls_it_so_and_names_the_source(library):
    page = rule_page("us-states", library)
    line = next(line for line in page.splitlines() if "Nitellopsis obtusa" in line)
    assert "called starry stonewort" in line
    assert 'href="#source-us-in-18-508-2019"' in line
    assert "LSA Document 18-508" in page


def test_common_names_stand_where_no_record_has_them(library):
    """A plant with a record has its names there."""
    without = {
        (one.slug, one.entry.name) for one in without_record(library.plants.values(), library.rules)
    }
    for slug, rule in library.rules.items():
        for entry in rule.entries:
            assert not entry.common or (slug, entry.name) in without, (slug, entry.name)
