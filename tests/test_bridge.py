"""The door between page and Python: painted answers, units, addresses."""

import json

import pytest

from calculators.bridge import answer
from calculators.core.listing import load_all
from calculators.core.read import read_inputs
from calculators.core.run import run
from calculators.core.shown_units import from_shown, to_shown


def ask(calculator, given, **more):
    return json.loads(answer(json.dumps({"calculator": calculator, "given": given, **more})))


def test_answers_as_the_command_line_does():
    reply = ask("trimmings", {"wet_g": "250", "volume_l": "60"})
    assert reply["answer"] == json.loads(
        json.dumps(run("trimmings", {"wet_g": 250.0, "volume_l": 60.0}))
    )
    assert reply["address"] == {
        "wet_g": "250", "volume_l": "60", "dry_matter_percent": "8", "tissue_n_percent": "2.5",
        "tissue_p_percent": "0.3", "protein_percent": "45",
    }  # fmt: skip
    assert reply["painted"]["lines"][0].endswith(" g")


def test_says_what_is_wrong_in_the_unit_that_the_person_sees():
    reply = ask("free-ammonia", {"temperature_c": "120"}, units="us", given_in="us")
    assert "answer" not in reply
    assert "32 to 104 °F" in reply["problems"]["temperature_c"]
    reply = ask("floaters", {"ring_diameter_cm": "30"}, units="us", given_in="us")
    assert "0 to 13.7795 in" in reply["problems"]["ring_diameter_cm"]


def test_changes_the_fields_to_other_units_and_back():
    there = ask(
        "floaters", {"length_cm": "31.5", "cover_percent": "abc"}, units="us", given_in="metric"
    )
    assert there["given"] == {
        "length_cm": "12.4016",
        "cover_percent": "abc",
    }  # what is no number stays
    back = ask("floaters", there["given"], units="metric", given_in="us")
    assert back["given"]["length_cm"] == "31.5"


def test_a_limit_shown_in_us_units_can_be_typed_back():
    for name, spec in load_all().items():
        for field in spec.inputs:
            if field.quantity and field.quantity.us and field.low is not None:
                for end in (field.low, field.high):
                    shown = f"{to_shown(field, end, 'us'):.6g}"
                    read = read_inputs(spec.inputs, {field.key: shown}, typed=True, system="us")
                    assert field.low <= read[field.key] <= field.high, (name, field.key, shown)


def test_us_units_agree_with_their_definitions():
    # NIST SP 811, appendix B (from memory; exact by definition)
    volume = next(f for f in load_all()["water-change"].inputs if f.key == "volume_l")
    assert to_shown(volume, 3.785411784, "us") == pytest.approx(1)
    warm = next(f for f in load_all()["free-ammonia"].inputs if f.key == "temperature_c")
    assert to_shown(warm, 25, "us") == pytest.approx(77)
    wet = next(f for f in load_all()["trimmings"].inputs if f.key == "wet_g")
    assert from_shown(wet, 1, "us") == pytest.approx(28.349523125)
    area = next(f for f in load_all()["floaters"].inputs if f.key == "wet_g_m2")
    assert to_shown(area, 1000, "us") == pytest.approx(3.2771, abs=1e-4)  # oz per square foot


def test_a_plot_has_axes_units_and_a_sentence():
    html = ask("floaters", {})["painted"]["html"]
    assert 'role="img"' in html
    assert ">Cover, %<" in html
    assert ">Day<" in html
    assert 'aria-label="Cover: 40 % at day 0' in html
    assert "style=" not in html


def test_words_of_an_address_that_are_unknown_are_said_once():
    address = {"ph": "7", "reported_as": "nitrite", "fbclid": "x" * 60}
    reply = ask("free-ammonia", {"ph": "7"}, own=True, address=address)
    start = (
        "Left out, as this book does not know it: “fbclid”. What the kit reports: “nitrite” is not "
    )
    assert reply["left_out"].startswith(f"{start}a choice; allowed are ")
    assert ask("free-ammonia", {}, address={"ph": "7"})["left_out"] == ""
    rows = {"plants": '[{"name": "x", "colour": "red"}]', "events": "[{"}
    said = ask("nitrogen-forecast", {}, address=rows)["left_out"]
    assert "“colour”" in said
    assert "“events”" in said
    assert "left_out" not in ask("free-ammonia", {"ph": "7"})


def test_an_unknown_choice_of_an_address_is_said_with_its_field_and_what_it_takes():
    given = {
        "now_mg_l": "40",
        "tap_mg_l": "5",
        "target_mg_l": "20",
        "what": "nitrate",
    }  # as the form stands
    reply = ask("water-change", given, own=True, address={**given, "what": "gold"})
    assert reply["left_out"] == (
        "What is measured: “gold” is not a choice; allowed are nitrate, as NO₃; nitrite, as nitrogen (or "
        "not known); ammonia in total; phosphate, as PO₄; copper; something else. Nothing was taken from "
        "it: choose in the form."
    )
    assert reply["answer"]["outputs"]
    rows = {"events": '[{"day": 1, "kind": "explode", "value": 2}]'}
    said = ask("nitrogen-forecast", {}, address=rows)["left_out"]
    assert "What you do, and when 1: What: “explode” is not a choice; allowed are" in said
    many = ask("units", {}, address={"from": "gold"})["left_out"]
    assert "more. Nothing was taken" in many
    assert len(many) < 600
