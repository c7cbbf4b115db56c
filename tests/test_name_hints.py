"""A name that is none of the book's is said beside its field, with the ones meant."""

import io
import json
from unittest.mock import patch

import pytest

from calculators.__main__ import main
from calculators.bridge import answer
from calculators.core.data import read_table
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
