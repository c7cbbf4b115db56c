"""The round through all tanks: the worst first, what is due, and a calendar that an outside library reads."""

import json
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from icalendar import Calendar

from calculators.core.result import BadInput
from calculators.core.run import run
from scripts.benches.season import TODAY as SEASON_END
from scripts.benches.season import season

TODAY = date(2026, 11, 28)


def tank(name, **more):
    """A tank of that name, its water changed each week."""
    return {"id": name, "name": name.title(), "change": {"percent": 25, "every_days": 7}, **more}


def entry(name, days_ago, kind, what=None, value=None):
    """An entry of a tank, so many days ago."""
    at = f"{TODAY - timedelta(days=days_ago)}T12:00:00Z"
    key = f"{name}-{days_ago}-{kind}-{what}"
    return {"id": key, "tank": name, "at": at, "kind": kind, "what": what, "value": value}


def read(name, days_ago, what, value):
    """A reading."""
    return entry(name, days_ago, "reading", what, value)


def go_round(tanks, entries, **more):
    """The outputs of a round."""
    inputs = {"tanks": tanks, "entries": entries, "today": TODAY.isoformat(), **more}
    return run("round", inputs)["outputs"]


TANKS = [tank("calm"), tank("late"), tank("never"), tank("harm"), tank("kill")]
LOG = [
    read("calm", 1, "nitrate_mg_l", 5), entry("calm", 3, "change", None, 25),
    read("late", 1, "nitrate_mg_l", 5), entry("late", 12, "change", None, 25),
    read("harm", 1, "nitrate_mg_l", 60), entry("harm", 3, "change", None, 25),
    read("kill", 1, "nitrite_mg_n_l", 2), entry("kill", 3, "change", None, 25),
]  # fmt: skip


def test_the_worst_comes_first_and_then_the_latest():
    found = go_round(TANKS, LOG)
    assert [one["tank"] for one in found["order"]] == ["kill", "harm", "never", "late", "calm"]
    assert [one["verdict"] for one in found["order"]] == ["act", "watch", "unknown", "calm", "calm"]


def test_what_is_due_today_is_what_is_late_or_of_today():
    today = go_round(TANKS, LOG)["today"]
    changes = {one["tank"]: one["late_days"] for one in today if one["task"] == "change water"}
    assert changes == {"never": 0, "late": 5}
    assert all(one["minutes"] > 0 for one in today)


def test_of_tanks_in_danger_the_one_that_dies_first_goes_first_however_late_another_is():
    tanks = [tank("nitrate"), tank("dead"), tank("ammonia", ph=8.2), tank("air")]
    log = [
        entry("nitrate", 40, "change", None, 25), read("nitrate", 0, "nitrate_mg_l", 300),
        entry("dead", 20, "change", None, 25), entry("dead", 1, "death", "neocaridina-davidi", 6),
        read("ammonia", 0, "ammonia_mg_n_l", 3), read("air", 0, "oxygen_mg_l", 1.5),
    ]  # fmt: skip
    found = go_round(tanks, log)
    assert {one["verdict"] for one in found["order"]} == {"act"}
    assert [one["tank"] for one in found["order"]] == ["air", "dead", "ammonia", "nitrate"]


LEAFY = {"plants": [{"plant": "rotala-rotundifolia"}, {"plant": "salvinia-natans"}], "ph": 8.2}


@pytest.mark.parametrize(
    "trouble",
    [
        read("a", 0, "ammonia_mg_n_l", 3), read("a", 0, "nitrite_mg_n_l", 2),
        read("a", 0, "copper_ug_l", 40), entry("a", 0, "death", "neocaridina-davidi", 6),
    ],
)  # fmt: skip
def test_where_animals_are_in_danger_leaves_wait_tests_stand_first_and_no_usual_change_is_due(
    trouble,
):
    before = [entry("a", 60, "trim", "rotala-rotundifolia", 20), entry("a", 60, "change", None, 25)]
    calm = go_round([tank("a", **LEAFY)], [*before, read("a", 0, "nitrate_mg_l", 5)])
    assert {"thin the floaters", "trim Rotala rotundifolia"} <= {
        one["task"] for one in calm["today"]
    }
    found = go_round([tank("a", **LEAFY)], [*before, trouble])
    tasks = [one["task"] for one in found["today"]]
    assert tasks[0].startswith("test ")
    assert tasks[1:] == ["change water only by the first step"]
    assert "DTSTART;VALUE=DATE:20261129" in found["calendar"]  # leaves, on the day after


def test_floaters_are_still_thinned_where_oxygen_is_short():
    log = [entry("a", 60, "change", None, 25), read("a", 0, "oxygen_mg_l", 1.5)]
    tasks = [one["task"] for one in go_round([tank("a", **LEAFY)], log)["today"]]
    assert tasks[0] == "test oxygen"
    assert "thin the floaters" in tasks


def test_no_usual_change_is_due_where_animals_died_or_soil_is_young_and_ammonia_is_unread():
    young = tank("a", flooded_on=(TODAY - timedelta(days=9)).isoformat())
    died = [entry("b", 1, "death", "neocaridina-davidi", 1)]
    tasks = {one["tank"]: one["task"] for one in go_round([young, tank("b")], died)["today"]
             if one["task"].startswith("change")}  # fmt: skip
    assert tasks == dict.fromkeys("ab", "change water only by the first step")
    read_since = [*died, read("b", 0, "ammonia_mg_n_l", 0)]
    assert "change water" in [one["task"] for one in go_round([tank("b")], read_since)["today"]]


def test_no_note_sends_anybody_to_change_water_whatever_a_tank_shows():
    """In acid water with ammonia a change can kill: the round leaves it to each tank's own task."""
    tank = {"id": "acid", "name": "Acid", "ph": 6.2, "change": {"percent": 40, "every_days": 7}}
    found = go_round([tank], [read("acid", 0, "ammonia_mg_n_l", 3)])
    assert [one["task"] for one in found["today"]][:1] == ["change water only by the first step"]
    said = " ".join(note["text"] for note in run("round", {
        "tanks": [tank], "entries": [read("acid", 0, "ammonia_mg_n_l", 3)], "today": TODAY.isoformat(),
    })["notes"])  # fmt: skip
    assert "change water only as the tank's own task says" in said
    assert "change water;" not in said


def test_minutes_are_those_of_each_standing_added_up():
    alone = [
        run("standing", {"tank": one, "entries": LOG, "today": TODAY.isoformat()})["outputs"]
        for one in TANKS
    ]
    found = go_round(TANKS, LOG)
    assert found["minutes_week"] == pytest.approx(sum(one["minutes_week"] for one in alone))
    sentences = {one["tank"]: one["sentence"] for one in found["order"]}
    assert sentences == {
        tank["id"]: one["sentence"] for tank, one in zip(TANKS, alone, strict=True)
    }


def events(text):
    """What an outside library reads in a calendar: (day, summary)."""
    calendar = Calendar.from_ical(text)
    assert not calendar.errors
    return [(one.decoded("dtstart"), str(one["summary"])) for one in calendar.walk("VEVENT")]


def test_the_calendar_has_each_change_of_four_weeks():
    found = events(go_round([TANKS[0]], LOG)["calendar"])
    changes = [(day - TODAY).days for day, text in found if text == "Calm: change water"]
    assert changes == [4, 11, 18, 25]
    late = events(go_round([TANKS[1]], LOG)["calendar"])
    assert [(day - TODAY).days for day, text in late if "change" in text] == [0, 7, 14, 21, 28]


def test_a_tanks_name_cannot_write_lines_of_its_own():
    odd = tank("odd") | {"name": "A; b, c\\d BEGIN:VEVENT"}
    found = events(go_round([odd], [])["calendar"])
    assert {text.partition(":")[0] for _, text in found} == {"A; b, c\\d BEGIN"}


@given(days=st.integers(1, 365), every=st.integers(1, 60), ago=st.integers(0, 120))
def test_the_calendar_stays_within_its_days_and_in_step(days, every, ago):
    one = tank("vat") | {"change": {"percent": 20, "every_days": every}}
    log = [entry("vat", ago, "change", None, 20), read("vat", 0, "ph", 7)]
    found = [(day - TODAY).days for day, text in events(
        go_round([one], log, days=days)["calendar"] or "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n"
    ) if "change" in text]  # fmt: skip
    first = max(0, every - ago)
    assert found == list(range(first, days + 1, every))


def test_an_order_that_nothing_decides_is_the_keepers():
    names = ["c", "a", "b"]
    log = [read(name, 0, "ph", 7) for name in names]
    found = go_round([tank(name, change=None) for name in names], log)
    assert [one["tank"] for one in found["order"]] == names


def test_no_tank_is_said_and_two_of_one_id_are_refused():
    found = run("round", {"tanks": [], "entries": [], "today": TODAY.isoformat()})
    assert found["outputs"]["calendar"] is None
    assert any("no tank yet" in note["text"] for note in found["notes"])
    with pytest.raises(BadInput, match="another tank has that id"):
        go_round([tank("a"), tank("a")], [])


def test_a_season_of_ten_tanks_runs_through():
    tanks, entries = season()
    assert (len(tanks), len(entries)) == (10, 2_000)
    found = run("round", {"tanks": tanks, "entries": entries, "today": SEASON_END})
    json.dumps(found, allow_nan=False)
    assert len(found["outputs"]["order"]) == 10
    assert len(events(found["outputs"]["calendar"])) > 40
