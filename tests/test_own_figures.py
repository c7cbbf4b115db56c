"""No example's figure passes for the keeper's: what is needed, assumed or the example's is said."""

import json
import re

import pytest

from calculators.__main__ import main
from calculators.bridge import answer
from calculators.core.listing import load_all
from calculators.core.result import StillNeeded
from calculators.core.run import run
from scripts.pages.calculators.form import example_texts, form


def ask(calculator, given, **more):
    request = {"calculator": calculator, "given": given, "own": True, **more}
    return json.loads(answer(json.dumps(request)))


def test_a_nitrite_of_1_is_not_answered_with_the_examples_target():
    reply = ask("water-change", {"now_mg_l": "1"})
    assert "answer" not in reply
    assert reply["problems"] == {}
    assert reply["needed"]["paths"] == ["what"]
    assert reply["needed"]["text"].startswith("Still needed: ")
    assert reply["address"] == {"now_mg_l": "1", "max_change_percent": "30"}
    outputs = ask("water-change", {"what": "nitrite", "now_mg_l": "1"})["answer"]["outputs"]
    assert outputs["target_used_mg_l"] == 0.06  # British Columbia's line, not the example's 20
    assert outputs["changes"] > 1


def test_what_is_wrong_is_told_apart_from_what_is_needed():
    with pytest.raises(StillNeeded) as still:
        run("oxygen", {"oxygen_mg_l": 99.0}, own=True)
    assert still.value.needed == (("temperature_c", "Water temperature"),)
    assert [key for key, _ in still.value.problems] == ["oxygen_mg_l"]


def test_what_may_be_assumed_stands_in_and_is_said():
    reply = ask("oxygen", {"temperature_c": "25"})
    assert reply["answer"]["inputs"]["pressure_hpa"] == 1013.25
    assert reply["answer"]["inputs"]["oxygen_mg_l"] is None  # the example's 6.4 is not the keeper's
    assert reply["answer"]["assumed"] == ["pressure_hpa"]
    assert "Air pressure 1013\u00a0hPa" in reply["painted"]["html"]
    assert reply["address"] == {"temperature_c": "25", "pressure_hpa": "1013.25"}


def test_an_address_opened_again_gives_the_same_answer():
    first = ask("hardness", {"gh_dh": "9", "kh_dh": "4", "ph": "7", "temperature_c": "24"})
    again = ask("hardness", first["address"])
    assert again["answer"]["outputs"] == first["answer"]["outputs"]
    assert "assumed" not in again["answer"]  # the link says all of it
    assert first["answer"]["outputs"]["mix_litres"] is None  # nothing to mix was asked


def test_a_row_that_lacks_something_names_it_and_an_empty_row_is_no_row():
    reply = ask("stocking", {"animals": [{"kind": "", "count": ""}], "volume_l": "60"})
    assert "animals" in reply["needed"]["paths"]
    reply = ask("nitrogen-forecast", {"plants": [{"name": "Lemna minor", "wet_g": "20"}]})
    assert "plants[1].doubling_days" in reply["needed"]["paths"]


def test_a_photo_is_needed_and_never_goes_into_an_address():
    reply = ask("surface-cover", {"length_cm": "80", "width_cm": "35"})
    assert reply["needed"]["paths"] == ["pixels"]
    assert not {"pixels", "corners", "width_px"} & reply["address"].keys()


def test_an_answer_of_both_says_which_figures_are_the_examples():
    given = {
        "what": "nitrate",
        "now_mg_l": "90",
        "tap_mg_l": "5",
        "target_mg_l": "20",
        "max_change_percent": "30",
        "volume_l": "54",
    }
    borrowed = {"keys": ["tap_mg_l", "target_mg_l"], "source": "the worked example"}
    painted = ask("water-change", given, borrowed=borrowed)["painted"]
    assert painted["borrowed"]["text"] == (
        "From the worked example, not yours: Reading wanted 20 mg/L; Reading of the new water 5 mg/L."
    )
    assert not painted["borrowed"]["all"]
    assert painted["brief"]["text"].startswith("Not all your figures: ")
    borrowed["keys"] = list(given)
    assert ask("water-change", given, borrowed=borrowed)["painted"]["borrowed"]["all"]


def lines(capsys, *words):
    assert main([*words, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_the_command_line_names_the_examples_figures(capsys):
    found = lines(capsys, "oxygen", "oxygen_mg_l=5")
    assert found["from_example"] == ["temperature_c"]
    assert found["assumed"] == ["pressure_hpa"]
    texts = [note["text"] for note in found["notes"]]
    assert texts[0] == "From the worked example, not yours: Water temperature 25 °C."
    assert texts[1] == "Assumed: Air pressure 1013 hPa."
    whole = lines(capsys, "oxygen")
    assert "from_example" not in whole
    assert whole["notes"][0]["text"].startswith("This is the worked example.")


def test_danger_stands_before_the_note_on_figures(capsys):
    found = lines(capsys, "oxygen", "oxygen_mg_l=1")
    assert found["notes"][0]["level"] == "danger"
    assert any(note["text"].startswith("From the worked example") for note in found["notes"])


@pytest.mark.parametrize("name", load_all())
def test_a_form_starts_empty_and_its_example_is_the_worked_one(name):
    spec = load_all()[name]
    html = form(spec)
    typed = re.findall(r'<input [^>]*type="text"[^>]* value="([^"]*)"', html.split("<template")[0])
    assert not any(typed)
    texts = example_texts(spec)
    if not any(field.octets for field in spec.inputs):
        reply = ask(name, texts)
        assert reply["answer"]["outputs"] == json.loads(json.dumps(run(name, {})["outputs"]))


def test_a_ratings_box_takes_its_level():
    given = {"ammonia_mg_l": "5", "reported_as": "nitrogen", "ph": "8.5", "temperature_c": "25"}
    painted = ask("free-ammonia", given)["painted"]
    assert painted["brief"]["level"] == "danger"
    low = ask("oxygen", {"temperature_c": "25", "oxygen_mg_l": "4"})["painted"]
    assert low["brief"]["level"] == "caution"
    assert '<li class="info' not in low["html"].partition("</ul>")[0]
