"""What lives in a tank now, and which figure of its water holds: the record, the log, and what is fresher.

The rule of growth, a mass that doubles every so many days, is checked with figures worked out by hand.
"""

import json

import pytest

from calculators.bridge import answer
from calculators.core.result import BadInput
from calculators.core.run import run
from calculators.science.shelf.both_units import span_in_both
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.recorded_plants import plants

TODAY = "2026-11-28"
FAST, SLOW = "hygrophila-polysperma", "anubias-barteri"
TETRA, SHRIMP = "paracheirodon-innesi", "neocaridina-davidi"
WRITTEN = "2026-11-01T12:00:00Z"


def entry(kind, what=None, value=None, at="2026-11-20T18:00:00Z", tank="t"):
    return {"id": f"{tank}-{kind}-{what}-{value}-{at}", "tank": tank, "at": at, "kind": kind,
            "what": what, "value": value}  # fmt: skip


def tank(**more):
    return {"id": "t", "name": "Alcove", **more}


def standing(shelf_tank, *log, today=TODAY):
    return run("standing", {"tank": shelf_tank, "entries": list(log), "today": today})


def lives(shelf_tank, *log):
    """``(plants by key, animals by key, notes)`` of today."""
    found = standing(shelf_tank, *log)
    now = found["outputs"]["lives"]
    return (
        {row["plant"]: row["wet_g"] for row in now["plants"] or []},
        {row["animal"]: row["count"] for row in now["animals"] or []},
        " ".join(note["text"] for note in found["notes"]),
    )


def filled(calculator, shelf_tank, *log):
    asked = {"message": "fill", "calculator": calculator, "tank": shelf_tank, "entries": list(log)}
    return json.loads(answer(json.dumps({**asked, "today": TODAY})))


# --- animals


def test_animals_in_out_and_dead_change_the_number():
    held = [{"animal": TETRA, "count": 10}, {"animal": SHRIMP, "count": 20}]
    log = [entry("animal", TETRA, 5), entry("animal", SHRIMP, -8), entry("death", TETRA, 2),
           entry("death", TETRA)]  # fmt: skip
    assert lives(tank(animals=held), *log)[1] == {TETRA: 12, SHRIMP: 12}
    assert lives(tank(animals=held), *log[:1])[1] == {TETRA: 15, SHRIMP: 20}  # the others undone


def test_what_was_logged_before_the_row_was_written_is_in_it_already():
    row = {"animal": TETRA, "count": 10, "entered": WRITTEN}
    before, after = "2026-11-01T11:00:00Z", "2026-11-01T13:00:00Z"
    assert lives(tank(animals=[row]), entry("death", TETRA, 2, before))[1] == {TETRA: 10}
    assert lives(tank(animals=[row]), entry("death", TETRA, 2, after))[1] == {TETRA: 8}


def test_a_kind_that_came_by_the_log_alone_lives_here_and_one_that_left_does_not():
    log = [entry("animal", SHRIMP, 12), entry("animal", TETRA, -6)]
    assert lives(tank(animals=[{"animal": TETRA, "count": 6}]), *log)[1] == {SHRIMP: 12}
    assert lives(tank(), entry("animal", SHRIMP, 12))[1] == {SHRIMP: 12}


def test_animals_that_move_leave_one_tank_and_live_in_the_other():
    log = [entry("animal", TETRA, -4), entry("animal", TETRA, 4, tank="u")]
    two = [tank(animals=[{"animal": TETRA, "count": 10}]), {"id": "u", "name": "Shelf end"}]
    assert [lives(one, *log)[1] for one in two] == [{TETRA: 6}, {TETRA: 4}]


def test_no_number_falls_below_zero_and_what_does_not_add_up_is_said():
    _, animals, notes = lives(
        tank(animals=[{"animal": TETRA, "count": 3}]), entry("death", TETRA, 5)
    )
    assert animals == {TETRA: 0}
    assert "count them" in notes
    _, animals, notes = lives(tank(animals=[]), entry("death", SHRIMP, 1))
    assert animals.get(SHRIMP, 0) == 0
    assert "count them" in notes


def test_a_number_that_nobody_knows_stays_unknown_and_a_death_of_no_kind_is_taken_off_none():
    held = [{"animal": TETRA, "count": None}, {"animal": SHRIMP, "count": 20}]
    _, animals, notes = lives(tank(animals=held), entry("death", TETRA, 2), entry("death", None, 3))
    assert animals == {TETRA: None, SHRIMP: 20}
    assert "3 died of no named kind" in notes
    alone = tank(animals=[{"animal": SHRIMP, "count": 20}])
    assert lives(alone, entry("death", None, 3))[1] == {SHRIMP: 17}


# --- plants


def test_plants_in_and_out_change_the_weight():
    held = [{"plant": FAST, "wet_g": 100, "entered": WRITTEN}]
    at = "2026-11-28T09:00:00Z"
    assert lives(tank(plants=held), entry("plant", FAST, 40, at))[0] == {FAST: 140}
    assert lives(tank(plants=held), entry("plant", FAST, -100, at))[0] == {}
    assert lives(tank(plants=held), entry("plant", SLOW, 30, at))[0] == {FAST: 100, SLOW: 30}
    assert lives(tank(plants=held), entry("plant", SLOW, None, at))[0] == {FAST: 100, SLOW: None}


def test_a_cut_right_after_weighing_is_missing_and_grows_back_at_the_records_pace():
    held = [{"plant": FAST, "wet_g": 100, "entered": "2026-11-01T18:00:00Z"}]
    days = plants()[FAST].doubling_days
    cut = entry("trim", FAST, 80, "2026-11-01T18:30:00Z")
    at_once = run("standing", {"tank": tank(plants=held), "entries": [cut], "today": "2026-11-01"})
    assert at_once["outputs"]["lives"]["plants"][0]["wet_g"] == pytest.approx(20, rel=0.02)
    later = run("standing", {"tank": tank(plants=held), "entries": [cut], "today": "2026-11-08"})
    grown = 20 * 2 ** (7.23 / days)
    assert later["outputs"]["lives"]["plants"][0]["wet_g"] == pytest.approx(grown, rel=0.01)
    long_after = run(
        "standing", {"tank": tank(plants=held), "entries": [cut], "today": "2027-09-08"}
    )
    assert long_after["outputs"]["lives"]["plants"][0]["wet_g"] == 100


def test_cuts_of_what_had_grown_leave_the_listed_weight():
    held = [{"plant": FAST, "wet_g": 100, "since": "2026-01-01"}]
    cuts = [entry("trim", FAST, 60, f"2026-{month:02}-10T18:00:00Z") for month in range(3, 11)]
    assert lives(tank(plants=held), *cuts)[0] == {FAST: 100}


def test_a_cut_of_more_than_there_can_have_been_is_said_and_takes_nothing_below_zero():
    held = [{"plant": FAST, "wet_g": 10, "entered": "2026-11-27T18:00:00Z"}]
    weights, _, notes = lives(tank(plants=held), entry("trim", FAST, 500, "2026-11-28T10:00:00Z"))
    assert weights == {FAST: 10}
    assert "weigh it" in notes
    weights, _, notes = lives(tank(plants=held), entry("plant", FAST, -500, "2026-11-28T10:00:00Z"))
    assert weights == {FAST: None}
    assert "weigh what is left" in notes


def test_a_plant_that_is_in_no_record_stays_as_it_was_written():
    held = [{"plant": "no-such-plant", "wet_g": 50}]
    weights, _, notes = lives(tank(plants=held), entry("trim", "no-such-plant", 20))
    assert weights == {"no-such-plant": 50}
    assert "Not in this book: no-such-plant" in notes


# --- everyone who asks gets the same


def test_forms_paper_and_standing_take_the_lists_of_today():
    shelf_tank = tank(animals=[{"animal": TETRA, "count": 10}], net_l=60, protein_percent=45)
    log = [entry("death", TETRA, 2), entry("animal", SHRIMP, 15)]
    stocking = filled("stocking", shelf_tank, *log)
    assert stocking["fields"]["animals"] == [
        {"kind": TETRA, "count": 8}, {"kind": SHRIMP, "count": 15},
    ]  # fmt: skip
    assert stocking["from"]["animals"] == "from Alcove and its log"
    assert set(filled("pick", shelf_tank, *log)["fields"]["animals"]) == {TETRA, SHRIMP}
    card = {"message": "paper", "kind": "card", "tank": shelf_tank, "entries": log, "today": TODAY}
    html = json.loads(answer(json.dumps(card)))["html"]
    assert "8 × " in html
    assert "15 × " in html
    assert "10 × " not in html


def test_the_forecast_rests_on_the_plants_of_today():
    shelf_tank = tank(
        net_l=120, feed_g_week=6, protein_percent=45, change={"percent": 10, "every_days": 14},
        tap={"nitrate_mg_l": 5}, temperature_c=24, ph=7.2,
        plants=[{"plant": FAST, "wet_g": 100, "entered": WRITTEN}],
    )  # fmt: skip
    read = entry("reading", "nitrate_mg_l", 20, "2026-11-27T18:00:00Z")
    out = entry("plant", FAST, -90, "2026-11-27T19:00:00Z")
    with_all, with_few = (
        standing(shelf_tank, *log)["outputs"]["outlook"] for log in ([read], [read, out])
    )
    assert with_few["nitrate_in_28_days_mg_l"] > with_all["nitrate_in_28_days_mg_l"] + 2


# --- a figure of the tank, or a fresher reading

CALM, DEADLY = 6.4, 9.0  # pH; at 0.5 mg N/L the toxic share tells them apart (US EPA 2013)
READ = "2026-11-27T18:00:00Z"
AMMONIA = entry("reading", "ammonia_mg_n_l", 0.5, READ)


@pytest.mark.parametrize(
    ("entered_at", "holds"),
    [(None, DEADLY), ("2026-11-20T08:00:00Z", DEADLY), ("2026-11-28T08:00:00Z", CALM),
     ("2026-11-27T08:00:00Z", DEADLY)],
)  # fmt: skip
def test_a_calm_entry_never_goes_before_a_fresher_deadly_reading(entered_at, holds):
    shelf_tank = tank(ph=CALM, temperature_c=25, entered={"ph": entered_at})
    log = [AMMONIA, entry("reading", "ph", DEADLY, READ)]
    found = standing(shelf_tank, *log)
    assert found["outputs"]["water"]["ph"] == holds
    assert (found["outputs"]["verdict"] == "act") == (holds == DEADLY)
    for calculator in ("free-ammonia", "ammonia-change", "nitrogen-forecast", "hardness"):
        assert filled(calculator, shelf_tank, *log)["fields"]["ph"] == holds
    lead = next(one for one in found["leads"] if one["calculator"] == "ammonia-change")
    assert lead["inputs"]["ph"] == holds


def test_a_dated_entry_that_is_later_and_deadly_goes_before_a_calm_reading():
    shelf_tank = tank(ph=DEADLY, temperature_c=25, entered={"ph": "2026-11-28T08:00:00Z"})
    log = [AMMONIA, entry("reading", "ph", CALM, READ)]
    assert standing(shelf_tank, *log)["outputs"]["verdict"] == "act"
    assert filled("free-ammonia", shelf_tank, *log)["fields"]["ph"] == DEADLY


def test_a_warm_reading_goes_into_the_forecast_and_on_paper_before_the_tanks_own_figure():
    shelf_tank = tank(ph=7.2, temperature_c=22)
    log = [entry("reading", "temperature_c", 31, READ)]
    assert filled("nitrogen-forecast", shelf_tank, *log)["fields"]["temperature_c"] == 31
    holiday = {"message": "paper", "kind": "holiday", "tank": shelf_tank, "entries": log, "today": TODAY,
               "from": TODAY, "to": "2026-12-05"}  # fmt: skip
    assert "The water is at 31\u00a0°C" in json.loads(answer(json.dumps(holiday)))["html"]


def test_a_reading_past_its_use_goes_before_an_undated_entry_but_not_to_make_ammonia_look_harmless():
    old = entry("reading", "ph", CALM, "2026-10-20T18:00:00Z")
    assert filled("hardness", tank(ph=7.0), old)["fields"]["ph"] == 7.0
    assert filled("hardness", tank(ph=6.0), old)["fields"]["ph"] == CALM
    assert filled("hardness", tank(kh_dh=8), entry("reading", "kh_dh", 2, "2026-09-20T18:00:00Z"))[
        "fields"
    ]["kh_dh"] == 2  # fmt: skip


def test_a_moment_that_is_none_is_refused():
    with pytest.raises(BadInput, match="entered"):
        standing(tank(ph=7, entered={"ph": "yesterday"}))


# --- units


def test_a_span_says_each_unit_once():
    warmth, nitrate = READINGS["temperature_c"], READINGS["nitrate_mg_l"]
    assert span_in_both(18, 24, warmth.unit, warmth.us) == "18 to 24 °C (64.4 to 75.2 °F)"
    assert span_in_both(5, 20, nitrate.unit, nitrate.us) == "5 to 20 mg/L"


def test_sentences_give_warmth_and_weight_in_both_units():
    """Fahrenheit is 1.8 times Celsius and 32, an ounce 28.349 523 g: NIST SP 811, appendix B.8."""
    shelf_tank = tank(temperature_c=25, ph=7.2, net_l=75.708)
    warm = [
        entry("reading", "temperature_c", 35, READ),
        entry("reading", "ammonia_mg_n_l", 0.1, READ),
    ]
    found = standing(shelf_tank, *warm)
    assert "35 °C (95 °F)" in found["outputs"]["sentence"]
    [row] = [one for one in found["outputs"]["trends"] if one["what"] == "temperature_c"]
    assert row["read"] == "35 °C (95 °F), yesterday"
    held = [{"plant": FAST, "wet_g": 85.05, "since": "2026-01-01"}]
    cuts = [entry("trim", FAST, 60, f"2026-{month:02}-10T18:00:00Z") for month in range(6, 11)]
    assert "85 g (3 oz)" in lives({**shelf_tank, "plants": held}, *cuts)[2]
    card = {"message": "paper", "kind": "card", "tank": shelf_tank, "entries": [], "today": TODAY}
    html = json.loads(answer(json.dumps(card)))["html"].replace("\u00a0", " ")
    assert "75.7 L (20 US gal), 25 °C (77 °F)" in html
