"""What was chosen in a form for a tank the last time fills it again; a reading never comes from there."""

import json

import pytest

from calculators.bridge import answer
from calculators.core.listing import load_all
from calculators.science.shelf.entries import READINGS
from calculators.shelf.again import AGAIN

TODAY = "2026-11-28"
TANK = {"id": "mine", "name": "Lobby", "net_l": 96, "change": {"percent": 20, "every_days": 7}}
CHOSEN = {"schedule": "weekly", "nutrient": "nitrate", "source": "kno3", "rise_mg_l": "5"}


def dosing(again, *entries):
    """The form of a dose as it is filled in."""
    asked = {"message": "fill", "calculator": "dosing", "tank": TANK, "entries": entries}
    return json.loads(answer(json.dumps({**asked, "today": TODAY, "again": again})))


def read(value, on):
    """A reading of nitrate."""
    at = f"{on}T18:00:00Z"
    return {"tank": "mine", "kind": "reading", "what": "nitrate_mg_l", "value": value, "at": at}


@pytest.mark.parametrize("calculator", AGAIN)
def test_what_is_taken_again_are_inputs_and_no_readings(calculator):
    inputs = {field.key for field in load_all()[calculator].inputs}
    assert set(AGAIN[calculator]) <= inputs
    assert set(AGAIN[calculator]).isdisjoint({"now_mg_l", "tap_mg_l", "use_mg_l_week", *READINGS})


def test_a_dose_is_whole_from_the_tank_and_what_was_chosen_last():
    found = dosing(CHOSEN)
    assert found["from"]["schedule"] == "as last time for Lobby"
    assert found["from"]["volume_l"] == "from Lobby"
    given = {"calculator": "dosing", "given": found["fields"], "own": True, "units": "metric"}
    reply = json.loads(answer(json.dumps({**given, "given_in": "metric"})))
    # 5 mg/L of NO3 in 96 L: by mass KNO3 101.102 to NO3 62.004 (IUPAC 2021, abridged)
    assert reply["answer"]["outputs"]["grams_per_dose"] == pytest.approx(
        5 * 96 / 1000 * 101.102 / 62.004, rel=1e-3
    )


def test_the_level_now_is_the_logs_latest_reading_and_no_old_one():
    again = {**CHOSEN, "now_mg_l": "0"}
    assert "now_mg_l" not in dosing(again)["fields"]
    assert dosing(again, read(40, "2026-11-27"))["fields"]["now_mg_l"] == 40
    assert "now_mg_l" not in dosing(again, read(40, "2026-01-01"))["fields"]


def test_the_tanks_own_figures_go_before_what_was_typed_last():
    assert dosing({**CHOSEN, "volume_l": "500"})["fields"]["volume_l"] == 96


def test_a_tank_without_a_last_time_is_filled_as_ever():
    assert set(dosing({})["fields"]) == {"volume_l", "change_percent", "change_every_days"}
    assert set(dosing({"schedule": None, "source": ["kno3"]})["fields"]) == set(
        dosing({})["fields"]
    )
