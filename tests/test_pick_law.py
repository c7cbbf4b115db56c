"""The picker and the law: what a list bars is never offered, and what changes where it is forbidden."""

import re

import pytest

from calculators.core.run import run
from calculators.pick.plant_law import BASIS, PLACES, forbids, warnings
from calculators.pick.plant_table import Listed, book
from scripts.records.rule import ListedName

OPEN = {
    "light_class": None, "height_cm": None, "temperature_c": None, "ph": None, "gh_dh": None,
    "minutes_week": None, "animals": None, "demand_mg_n_day": None, "count": 40,
}  # fmt: skip


MISTAKEN = re.compile(r"\((misapplied|trade|in trade|spelling)")  # an old name that is no synonym


def two_words(name):
    """Genus and species as this test reads them, apart from the code that it checks."""
    return tuple(re.findall(r"[a-z-]+", name.replace("×", " ").lower())[:2])


def named_by(plant, entry):
    """Whether an entry names a plant by its accepted or an old name, or by its genus alone."""
    own = {two_words(name) for name in (plant.name, *plant.old_names) if not MISTAKEN.search(name)}
    for name in (entry.name, *entry.also):
        words = two_words(name)
        if len(words) == 1 or words[1] in ("spp", "species"):
            if words[0] == two_words(plant.name)[0]:
                return True
        elif words in own:
            return True
    return False


@pytest.mark.parametrize("place", PLACES)
def test_every_plant_that_a_list_of_the_place_bars_is_left_out(place, library):
    rules = [
        rule
        for rule in library.rules.values()
        if rule.place == place and rule.forbids != ["release"] and rule.holds_in == "whole"
    ]
    assert rules
    named = {
        slug: entry
        for slug, plant in library.offered().items()
        for rule in rules
        for entry in rule.entries
        if named_by(plant, entry)
    }
    assert named, "a place whose list names none of our plants would test nothing"
    outputs = run("pick", OPEN | {"place": place})["outputs"]
    gone = {row["plant"]: row["because"] for row in outputs["excluded"]}
    assert gone.keys() == named.keys()
    assert outputs["forbidden_count"] == len(named)
    assert not {row["plant"] for row in outputs["ranked"]} & named.keys()
    for slug, entry in named.items():
        text = " ".join(gone[slug])
        assert entry.name in text
        assert BASIS[entry.basis] in text
        assert "The authority's word is final." in text
        assert any(rule.instrument in text and rule.short_effect in text for rule in rules)


def test_this_test_reads_a_genus_and_an_old_name(library):
    sagittaria = library.plants["sagittaria-subulata"]
    assert named_by(sagittaria, ListedName(name="Sagittaria spp.", basis="memory"))
    assert named_by(sagittaria, ListedName(name="Sagittaria", basis="memory"))
    assert not named_by(sagittaria, ListedName(name="Sagittaria platyphylla", basis="memory"))
    egeria = library.plants["egeria-densa"]
    assert named_by(egeria, ListedName(name="Elodea densa", basis="memory"))


def test_us_says_that_states_have_their_own():
    notes = " ".join(note["text"] for note in run("pick", {"place": "us"})["notes"])
    assert "Only the federal list leaves plants out. States have their own" in notes


def test_a_list_that_is_not_whole_says_so():
    for place, told in (("gb", True), ("nz", True), ("eu", False)):
        notes = " ".join(note["text"] for note in run("pick", {"place": place})["notes"])
        assert ("Not all of it is held here" in notes) is told


@pytest.mark.parametrize("place", ["other", None])
def test_with_no_place_the_authority_is_to_be_asked_and_each_plant_says_where_it_is_listed(place):
    answer = run("pick", OPEN | {"place": place, "habits": ["stem", "floater"]})
    assert any("Ask your local authority" in note["text"] for note in answer["notes"])
    said = {row["plant"]: " ".join(row["because"]) for row in answer["outputs"]["ranked"]}
    assert (
        "restricted in the European Union, New Zealand, single states of the United States (Florida, North "
        "Carolina, Wisconsin, South Carolina) and single states of Australia (several states, Northern "
        "Territory); ask your own authority" in said["pistia-stratiotes"]
    )
    assert (
        "restricted in the United States and single states of Australia (New South Wales (a council on its "
        "north coast));" in said["hygrophila-polysperma"]
    )
    assert (
        "restricted in single states of Australia (Tasmania, parts of other states);"
        in said["elodea-canadensis"]
    )
    assert "Law:" not in said["rotala-rotundifolia"]
    assert answer["outputs"]["forbidden_count"] == 0


def bars(listed):
    return book().rules[listed.rule].bars and not listed.doubtful


def test_a_list_that_forbids_release_alone_and_a_mistaken_name_warn_only(library):
    schedule = library.rules["gb-schedule-9"]
    assert schedule.forbids == ["release"]
    plants = book().plants
    for key, place, word in (
        ("pistia-stratiotes", "gb", "Never let it out"),
        ("vallisneria-americana", "nz", "make sure which one it is"),
    ):
        assert not forbids(plants[key], place, book())
        (text,) = warnings(plants[key], place, book())
        assert word in text
        given = OPEN | {"place": place, "habits": [plants[key].habit]}
        rows = {row["plant"]: row for row in run("pick", given)["outputs"]["ranked"]}
        assert text in rows[key]["because"]


# Which states, as the texts named in sources.yml say: Connecticut 22a-381d, North Carolina 15A 02G .0602,
# Wisconsin NR 40.04, Vermont's noxious weeds; California's ratings of 2021.
@pytest.mark.parametrize(
    ("key", "states"),
    [
        ("egeria-densa", ["Connecticut", "North Carolina", "Wisconsin", "Vermont"]),
        ("cabomba-caroliniana", ["Connecticut", "Washington", "New York"]),
        ("hydrocharis-laevigata", ["California"]),
    ],
)
def test_a_plant_of_single_states_is_warned_of_by_state_before_all_else_and_not_barred(key, states):
    given = OPEN | {"place": "us", "habits": [book().plants[key].habit]}
    answer = run("pick", given)
    rows = {row["plant"]: row for row in answer["outputs"]["ranked"]}
    assert rows[key]["because"][0].startswith("Law: single states name")
    note = next(note for note in answer["notes"] if note["text"].startswith("Single states name"))
    assert note["level"] == "caution"
    assert book().plants[key].name in note["text"]
    for state in states:
        assert state in rows[key]["because"][0]
        assert state in note["text"]


def test_a_federal_list_bars_what_states_name_besides():
    """Hygrophila polysperma: 7 CFR 360.200(a), and Florida and North Carolina."""
    outputs = run("pick", OPEN | {"place": "us", "habits": ["stem"]})["outputs"]
    gone = {row["plant"]: " ".join(row["because"]) for row in outputs["excluded"]}
    assert "7 CFR 360.200(a)" in gone["hygrophila-polysperma"]


def test_says_for_each_place_what_drops_out_and_what_takes_its_place():
    given = {"place": "other", "habits": ["stem", "floater"], "count": 12, "animals": None}
    answer = run("pick", given)
    shown = [row["plant"] for row in answer["outputs"]["ranked"]]
    plants = book().plants
    changes = 0
    for place, name in PLACES.items():
        there = run("pick", given | {"place": place})
        lawful = [row["plant"] for row in there["outputs"]["ranked"]]
        lost = [key for key in shown if key not in lawful]
        notes = [n["text"] for n in answer["notes"] if n["text"].startswith(f"In {name} ")]
        assert bool(lost) == bool(notes), place
        for key in lost:
            assert f"{plants[key].name} drops out" in notes[0]
            changes += 1
        assert "takes its place" in notes[0] if lost else True
        for stand_in in re.findall(r"and ([A-Z][a-z]+ [a-z-]+) takes its place", " ".join(notes)):
            key = next(key for key, plant in plants.items() if plant.name.startswith(stand_in))
            assert key not in shown
            barred = {book().rules[one.rule].place for one in plants[key].law if bars(one)}
            assert place not in barred
    assert changes


def test_the_set_changes_too_where_the_law_forbids_one_of_it(monkeypatch):
    """With a listing made up for this test: the set is then the one that a keeper there would get."""
    given = {"habits": ["stem", "floater"], "demand_mg_n_day": 4}
    first = run("pick", given)["outputs"]["together"][0]
    listed = (
        book()
        .plants[first["plant"]]
        ._replace(law=(Listed("nz-pest-plant-accord", first["name"], "memory"),))
    )
    monkeypatch.setitem(book().plants, first["plant"], listed)
    answer, there = run("pick", given), run("pick", given | {"place": "nz"})
    assert answer["outputs"]["together"][0]["plant"] == first["plant"]
    names = [row["name"] for row in there["outputs"]["together"]]
    assert first["name"] not in names
    (note,) = [n["text"] for n in answer["notes"] if n["text"].startswith("In New Zealand ")]
    assert f"the set becomes {' and '.join(names)}." in note


def test_a_set_for_which_the_law_leaves_no_plant_says_so(monkeypatch):
    """With made-up listings of every plant: nothing is left to make a set of."""
    for key, plant in list(book().plants.items()):
        law = (Listed("nz-pest-plant-accord", plant.name, "memory"),)
        monkeypatch.setitem(book().plants, key, plant._replace(law=law))
    answer, there = run("pick", {}), run("pick", {"place": "nz"})
    assert answer["outputs"]["together"]
    assert there["outputs"]["ranked"] == []
    (note,) = [n["text"] for n in answer["notes"] if n["text"].startswith("In New Zealand ")]
    assert "nothing else of its kind fits" in note
    assert "no set for the nitrogen is left" in note


def test_the_places_and_the_basis_are_those_of_the_records(library):
    assert PLACES.keys() == library.vocabulary["place"].keys()
    assert BASIS.keys() == {
        entry.basis for rule in library.rules.values() for entry in rule.entries
    }
