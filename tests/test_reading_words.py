"""A pH, warmth or oxygen that kills is said first, and its first action can do no harm in any water."""

import pytest

from calculators.core.run import run
from calculators.science.animals.reading_lines import LINES, standing
from calculators.science.animals.reading_words import reading_notes
from tests import harm_predicates as predicates

DEADLY = [
    ("hardness", {"ph": 4.0}, "A pH of 4 can kill"),
    ("hardness", {"ph": 9.8}, "A pH of 9.8 can kill"),
    ("hardness", {"temperature_c": 8}, "Water of 8 °C (46.4 °F) can kill"),
    ("oxygen", {"oxygen_mg_l": 1}, "Oxygen of 1 mg/L can kill"),
    ("oxygen", {"temperature_c": 36, "oxygen_mg_l": None}, "Water of 36 °C"),
]


@pytest.mark.parametrize(("name", "given", "words"), DEADLY)
def test_a_deadly_reading_is_said_first(name, given, words):
    notes = run(name, given)["notes"]
    assert notes[0]["level"] == "danger"
    assert words in notes[0]["text"]


@pytest.mark.parametrize("key", ["ph", "temperature_c", "oxygen_mg_l"])
def test_the_lines_are_those_of_the_table(key):
    lines = LINES[key]
    for value in (lines.deadly_low, lines.harmful_low, lines.harmful_high, lines.deadly_high):
        if value is None:
            continue
        [note] = reading_notes(**{key: value})
        expected = "danger" if standing(key, value).level == "deadly" else "caution"
        assert note.level == expected


def test_readings_in_range_are_not_spoken_of():
    assert reading_notes(ph=7.2, temperature_c=24, oxygen_mg_l=8, nitrate_mg_l=None) == []


def test_the_deadlier_comes_first():
    levels = [note.level for note in reading_notes(ph=9.1, temperature_c=40)]
    assert levels == ["danger", "caution"]


@pytest.mark.parametrize(("name", "given", "_"), DEADLY)
def test_no_large_change_and_no_product_is_asked_for_unless_ammonia_is_out_of_the_way(
    name, given, _
):
    for note in run(name, given)["notes"]:
        text = note["text"]
        if note["level"] == "danger" and "change" in text:
            assert "ammonia" in text, text
            assert text.index("ammonia") < text.index("change"), (
                text
            )  # the test comes before the change
            made = {"outputs": {"first_action": text}, "notes": []}
            assert not [one for one in predicates.sentences(made) if predicates.orders(one)]
        assert "Pour in acid" not in text


def test_a_low_ph_by_gas_is_aired_first_and_ammonia_is_thought_of():
    notes = run("hardness", {"kh_dh": 10, "ph": 6.5})["notes"]
    said = " ".join(note["text"] for note in notes if note["level"] == "danger")
    assert "add air and move the surface first" in said
    assert "test ammonia before you change water" in said


def test_the_oxygen_rating_is_never_milder_than_the_table():
    for tenth in range(80):
        rating = run("oxygen", {"oxygen_mg_l": tenth / 10})["outputs"]["rating"]
        level = standing("oxygen_mg_l", tenth / 10).level
        if level == "deadly":
            assert rating == "act"
        if level == "harmful":
            assert rating in ("act", "watch")


def test_mixing_is_left_out_where_nothing_was_asked_of_it():
    answer = run("hardness", {"mix_gh_dh": None, "target_gh_dh": None})
    assert answer["outputs"]["mix_litres"] is None
    assert not any("No mix" in note["text"] for note in answer["notes"])


def test_the_lamp_stays_on_in_warm_water_that_is_short_of_oxygen():
    warm = {"temperature_c": 34, "oxygen_mg_l": 2}
    assert not any("lamp" in note.text for note in reading_notes(**warm))
    assert any("lamp" in note.text for note in reading_notes(temperature_c=34, oxygen_mg_l=7))
    assert any("lamp" in note.text for note in reading_notes(temperature_c=34, oxygen_mg_l=None))
