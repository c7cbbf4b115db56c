"""Upkeep: minutes and days against dateutil's rules, the calendar file against a parser that others wrote."""

from datetime import date, datetime, timedelta

import pytest
from dateutil.rrule import DAILY, rrule
from hypothesis import given
from hypothesis import strategies as st
from icalendar import Calendar

from calculators.core.calendar_file import CalendarTask, calendar_file, fnv, fold
from calculators.core.dates import read_date
from calculators.core.listing import load_all
from calculators.core.paint.answer import rows
from calculators.core.result import BadInput
from calculators.core.run import compute, run
from calculators.science.growth.rounds import due_days
from tests.effort import examples

TODAY = "2026-12-07"


def one_tank(**changes):
    return {"name": "Jar", "plants": [], "change_every_days": 7, "change_minutes": 10} | changes


def events(text):
    return list(Calendar.from_ical(text).walk("VEVENT"))


@given(st.integers(1, 60), st.integers(0, 60))
def test_days_are_those_of_an_independent_rule(every, since):
    start = datetime(2026, 12, 7)
    first = start + timedelta(days=max(1, every - since))
    rule = rrule(DAILY, interval=every, dtstart=first, until=start + timedelta(days=28))
    assert due_days(every, since, 28) == [(day - start).days for day in rule]


@given(st.floats(1, 365), st.floats(0, 365))
def test_parts_of_days_keep_the_rhythm(every, since):
    days = due_days(every, since, 28)
    assert all(1 <= day <= 28 for day in days)
    first = max(1.0, every - since)
    assert all(abs(day - (first + turn * every)) < 1 for turn, day in enumerate(days))
    assert first + len(days) * every > 28 - 1e-6  # none is left out


def test_minutes_add_up_by_tank():
    plants = [
        {"name": "Rotala", "trim_every_days": 14, "minutes": 10},
        {"name": "Moss", "trim_every_days": 28, "minutes": 8},
    ]
    tanks = [one_tank(plants=plants, floaters_minutes_week=5), one_tank(name="Bowl")]
    found = run("upkeep", {"tanks": tanks})["outputs"]
    assert found["per_tank"] == pytest.approx({"Jar": 5 + 2 + 10 + 5, "Bowl": 10})
    assert found["minutes_week"] == pytest.approx(32)
    assert found["heaviest"] == "Jar"
    jar = [task["day"] for task in found["next_days"] if task["task"] == "trim Rotala"]
    assert jar == [14, 28]
    assert sum(task["minutes"] for task in found["next_days"]) == 4 * (10 + 5 + 10) + 2 * 10 + 8


def test_the_day_series_holds_every_minute_of_the_list():
    answer = run("upkeep", {})
    listed = sum(task["minutes"] for task in answer["outputs"]["next_days"])
    assert sum(answer["series"]["minutes_by_day"]["y"]) == pytest.approx(listed)
    assert max(answer["series"]["minutes_by_day"]["y"]) == answer["outputs"]["busiest_minutes"]


def test_an_independent_parser_reads_every_task_on_its_day():
    found = run("upkeep", {"today": TODAY})["outputs"]
    read = events(found["calendar"])
    assert [
        ((event.decoded("DTSTART") - date(2026, 12, 7)).days, str(event["SUMMARY"]))
        for event in read
    ] == [(task["day"], f"{task['tank']}: {task['task']}") for task in found["next_days"]]
    for event in read:
        assert not event.errors
        assert event.decoded("DTEND") - event.decoded("DTSTART") == timedelta(days=1)
        assert {"UID", "DTSTAMP", "DTSTART", "SUMMARY"} <= event.keys()
    assert not Calendar.from_ical(found["calendar"]).errors


def test_identifiers_are_unique_and_stay_the_same():
    once = run("upkeep", {"today": TODAY})["outputs"]["calendar"]
    assert once == run("upkeep", {"today": TODAY})["outputs"]["calendar"]
    names = [str(event["UID"]) for event in events(once)]
    assert len(set(names)) == len(names) > 10
    # the same day, tank and task keep their name when the list is made a day later
    later = run("upkeep", {"today": "2026-12-08", "tanks": [one_tank(days_since_change=1)]})
    sooner = run("upkeep", {"today": TODAY, "tanks": [one_tank()]})
    first, second = (events(one["outputs"]["calendar"])[0] for one in (sooner, later))
    assert first["UID"] == second["UID"]


def test_two_groups_of_one_plant_are_two_events():
    group = {"name": "Rotala", "trim_every_days": 14, "minutes": 10}
    tanks = [one_tank(plants=[group, group], change_every_days=None)]
    read = events(run("upkeep", {"tanks": tanks, "today": TODAY})["outputs"]["calendar"])
    assert len(read) == 4
    assert len({str(event["UID"]) for event in read}) == 4


names = st.text(st.characters(exclude_categories=("Cs",)), min_size=1, max_size=80)


@examples(200)
@given(names, names, st.dates(date(1900, 1, 1), date(2999, 12, 1)))
def test_any_text_comes_back_as_it_went_in(where, task, day):
    text = calendar_file([CalendarTask(day, where, task, 5.0)], day)
    lines = text.split("\r\n")
    assert lines[-1] == ""
    assert not any("\n" in line or "\r" in line for line in lines)
    assert all(len(line.encode()) <= 75 for line in lines)
    (event,) = events(text)
    assert event.decoded("DTSTART") == day
    lines_in = f"{where}: {task}".splitlines()
    tidy = "\n".join(
        "".join(s if s >= " " and s != "\x7f" else " " for s in one) for one in lines_in
    )
    assert str(event["SUMMARY"]) == tidy


def test_folds_between_characters_and_unfolds_to_the_same():
    line = "SUMMARY:" + "Wasserpflänzchen 水草 " * 12
    folded = fold(line)
    assert folded.replace("\r\n ", "") == line
    assert all(len(part.encode()) <= 75 for part in folded.split("\r\n"))
    assert fold("X" * 75) == "X" * 75
    assert fold("X" * 76) == "X" * 75 + "\r\n X"


@pytest.mark.parametrize(
    ("text", "value"),  # test values of the FNV draft (Eastlake and others); from memory
    [("", "cbf29ce484222325"), ("a", "af63dc4c8601ec8c"), ("foobar", "85944171f73967e8")],
)
def test_short_names_are_fnv(text, value):
    assert fnv(text) == value


@pytest.mark.parametrize(
    "text", ["2026-13-01", "2026-02-29", "20261207", "7.12.2026", "2026-W50-1", "x"]
)
def test_refuses_what_is_no_day(text):
    with pytest.raises(ValueError, match=r"."):
        read_date(text)
    with pytest.raises(BadInput) as bad:
        run("upkeep", {"today": text})
    assert [key for key, _ in bad.value.problems] == ["today"]


@pytest.mark.parametrize(
    ("tanks", "keys"),
    [
        ([{}], ["tanks[1].name"]),
        (
            [one_tank(plants=[{"name": "x"}])],
            ["tanks[1].plants[1].trim_every_days", "tanks[1].plants[1].minutes"],
        ),
        ([one_tank(plants={"name": "x"})], ["tanks[1].plants"]),
        ([one_tank(plants=["x"])], ["tanks[1].plants[1]"]),
        ([one_tank(), one_tank()], ["tanks[2].name"]),
        ([one_tank(change_every_days=0)], ["tanks[1].change_every_days"]),
        ([one_tank(name="\ud800")], ["tanks[1].name"]),
        ([one_tank(name="a\nb")], ["tanks[1].name"]),
        ([one_tank(name=str(number)) for number in range(501)], ["tanks"]),
        ("Jar", ["tanks"]),
        (None, ["tanks"]),
    ],
)  # fmt: skip
def test_names_every_bad_row(tanks, keys):
    with pytest.raises(BadInput) as bad:
        run("upkeep", {"tanks": tanks})
    assert [key for key, _ in bad.value.problems] == keys


def test_no_tanks_and_no_minutes_are_said():
    answer = run("upkeep", {"tanks": []})
    assert answer["outputs"]["minutes_week"] == 0
    assert answer["outputs"]["heaviest"] is None
    assert answer["outputs"]["next_days"] == []
    assert any("nothing to add up" in note["text"] for note in answer["notes"])


def test_a_change_without_minutes_is_still_due():
    answer = run("upkeep", {"tanks": [one_tank(change_minutes=0)]})
    assert [task["day"] for task in answer["outputs"]["next_days"]] == [7, 14, 21, 28]


# What is overdue. Common practice, no source.


def test_a_round_that_was_missed_is_told_first_with_the_days():
    plants = [{"name": "Rotala", "trim_every_days": 14, "minutes": 10, "days_since_trim": 90}]
    tanks = [one_tank(days_since_change=60, plants=plants), one_tank(name="Bowl")]
    found = compute("upkeep", {"tanks": tanks})
    first, second = found.notes[:2]
    assert first.first
    assert first.level == "caution"
    assert first.text == (
        "Long overdue: Jar, change water, 53 days late; Jar, trim Rotala, 76 days late."
    )
    assert "change a little every day or two rather than all at once" in second.text
    late = found.answer["outputs"]["overdue"]
    assert [(one["task"], one["late_days"], one["long"]) for one in late] == [
        ("trim Rotala", 76, True), ("change water", 53, True),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("since", "late", "long"), [(7, [], False), (8, [1], False), (13, [6], False), (14, [7], True)]
)
def test_a_little_late_is_listed_and_not_called_long(since, late, long):
    answer = run("upkeep", {"tanks": [one_tank(days_since_change=since)]})
    assert [one["late_days"] for one in answer["outputs"]["overdue"]] == late
    said = " ".join(note["text"] for note in answer["notes"])
    assert ("Long overdue" in said) == long
    assert ("rather than all at once" in said) == long


def test_leaves_that_are_long_overdue_say_nothing_of_old_water():
    plants = [{"name": "Moss", "trim_every_days": 14, "minutes": 8, "days_since_trim": 40}]
    answer = run("upkeep", {"tanks": [one_tank(plants=plants, change_every_days=None)]})
    said = " ".join(note["text"] for note in answer["notes"])
    assert "Long overdue: Jar, trim Moss, 26 days late." in said
    assert "pH and KH" not in said


def test_many_late_tasks_are_named_up_to_four():
    tanks = [one_tank(name=f"Tank {number}", days_since_change=20) for number in range(7)]
    answer = run("upkeep", {"tanks": tanks})
    assert answer["notes"][0]["text"].endswith("; 3 more.")
    assert len(answer["outputs"]["overdue"]) == 7


def test_minutes_are_whole_in_the_words_the_table_and_the_calendar():
    tanks = [one_tank(change_every_days=9, change_minutes=12.4)]
    answer = run("upkeep", {"tanks": tanks, "today": TODAY})
    shown = {row["key"]: row["value"] for row in rows(load_all()["upkeep"], answer["outputs"])}
    assert shown["minutes_week"] == "10"  # 12.4 * 7 / 9 = 9.64
    assert answer["notes"][0]["text"].startswith("About 10 minutes a week")
    assert "About 12 minutes." in answer["outputs"]["calendar"]
