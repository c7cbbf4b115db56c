"""A name that is none of the book's is said beside its field, with the ones meant."""

import difflib
import io
import json
from unittest.mock import patch

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.__main__ import main
from calculators.bridge import answer
from calculators.core.data import read_table
from calculators.core.name_hints import KnownTexts, name_list
from scripts.tables import plant_names


def remarks(name, given):
    request = {"calculator": name, "given": given, "own": True}
    return json.loads(answer(json.dumps(request)))["remarks"]


def plants(name):
    return remarks("nitrogen-forecast", {"plants": [{"name": name, "wet_g": "5"}]})


def test_the_table_of_names_is_that_of_the_records(library):
    table = read_table("names-plants")
    assert table == plant_names.table(library)
    assert {"Rotala rotundifolia", "Rotala indica"} & set(table["names"])


@pytest.mark.parametrize("name", ["Rotala rotundifolia", "rotala rotundifolia ", "pink rotala"])
def test_a_name_of_the_book_passes_without_a_word(name):
    assert plants(name) == {}


def test_a_misspelt_name_is_said_with_what_is_meant():
    said = plants("Rotla")["plants[1].name"]
    assert said.startswith("No plant of the book is called ‘Rotla’. Meant: ")
    assert "Rotala rotundifolia" in said
    assert "how fast it grows is yours to give" in said
    assert "Lemna minor" in plants("Lemna minr")["plants[1].name"]


def test_a_name_of_ones_own_is_a_plain_name():
    assert "Meant" not in plants("Qqxyz")["plants[1].name"]


def test_upkeep_says_it_too_without_a_word_on_growth():
    given = {"tanks": [{"name": "A", "plants": [{"name": "Hygrofila polysperma"}]}]}
    said = remarks("upkeep", given)["tanks[1].plants[1].name"]
    assert "Hygrophila polysperma" in said
    assert "grows" not in said


def test_the_command_line_says_it_in_a_note(capsys):
    rows = [{"name": "Rotla", "wet_g": 5, "doubling_days": 14}]
    given = json.dumps({"plants": rows})
    with patch("sys.stdin", io.StringIO(given)):
        assert main(["nitrogen-forecast", "--json", "--input", "-"]) == 0
    notes = json.loads(capsys.readouterr().out)["notes"]
    [said] = [note for note in notes if "No plant of the book is called ‘Rotla’" in note["text"]]
    assert said["level"] == "caution"
    assert "Rotala rotundifolia" in said["text"]


@given(
    st.integers(0, 10_000), st.lists(st.tuples(st.integers(0, 60), st.text(max_size=2)), max_size=4)
)
def test_what_is_meant_is_what_difflib_finds_among_all_names(chosen, slips):
    """The library's own search, over every name, without the passing over by letters."""
    known = list(name_list("plants").by_folded)
    word = known[chosen % len(known)]
    for place, slip in slips:
        word = word[:place] + slip + word[place + 1 :]
    for texts, most, least_alike in ((known, 3, 0.6), ({one.split()[0] for one in known}, 1, 0.75)):
        found = KnownTexts(texts).near(word, most, least_alike)
        assert found == difflib.get_close_matches(word, texts, most, least_alike)
