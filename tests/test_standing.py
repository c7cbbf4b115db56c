"""How a tank stands: the published lines, the trend's own outside judge, and what no log may ever do."""

import itertools
import json
import math
import random
import re
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import theilslopes

from calculators.bridge import answer
from calculators.core.dates import read_moment
from calculators.core.result import BadInput
from calculators.core.run import run
from calculators.science.nitrogen.forecast_tank import Rates, StandingPlant, Tank
from calculators.science.nitrogen.simulate import simulate
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.recorded_plants import plants
from calculators.science.shelf.tank_verdict import FIRST_HOUR, FIRST_TESTS, WORST_FIRST
from scripts.benches.season import TODAY as SEASON_END
from scripts.benches.season import season
from scripts.pages.shelf.shelf_downloads import DEMO_DAY, demo_file
from scripts.records.load import read_records
from scripts.setup import paths
from tests.effort import how_many, long_run

TODAY = date(2026, 11, 28)
TANK = {"id": "vat", "name": "Vat", "ph": 7.2, "temperature_c": 24}
numbers = itertools.count()


def entry(days_ago, kind, what=None, value=None, **more):
    """An entry of the vat, so many days ago at noon."""
    at = f"{TODAY - timedelta(days=days_ago)}T12:00:00Z"
    made = {"id": f"e{next(numbers)}", "tank": "vat", "at": at, "kind": kind, "what": what}
    return {**made, "value": value, **more}


def read(days_ago, what, value, **more):
    """A reading."""
    return entry(days_ago, "reading", what, value, **more)


def stands(*entries, today=TODAY, **tank):
    """The outputs and notes of a tank with this log."""
    inputs = {"tank": {**TANK, **tank}, "entries": list(entries), "today": today.isoformat()}
    found = run("standing", inputs)
    return {**found["outputs"], "notes": [note["text"] for note in found["notes"]], "all": found}


# --- verdict


def test_nothing_read_is_unknown_and_says_so():
    found = stands()
    assert found["verdict"] == "unknown"
    assert "nothing was ever read" in found["sentence"]


@pytest.mark.parametrize(
    ("days_ago", "verdict"), [(0, "calm"), (60, "calm"), (61, "unknown"), (400, "unknown")]
)
def test_after_sixty_days_without_a_reading_a_tank_is_not_known(days_ago, verdict):
    assert stands(read(days_ago, "nitrate_mg_l", 10))["verdict"] == verdict


def test_a_deadly_reading_of_long_ago_is_still_said_where_nothing_was_read_since():
    found = stands(read(100, "nitrite_mg_n_l", 3))
    assert found["verdict"] == "unknown"
    assert "nitrite of 3 mg N/L, read 100 days ago, can kill" in found["sentence"]
    assert any(FIRST_HOUR[0] in note for note in found["notes"])


# The lines of standards, as published: US EPA 2013 (acute, pH 8.0 and 20 °C: 5.6 mg N/L, mussels present),
# British Columbia's nitrite maximum at under 2 mg/L of chloride (0.06), Camargo 2005 for nitrate (44 mg/L
# as NO3), EPA 1986 for oxygen (3), EIFAC 1969 for pH (5 to 9); quoted from the sources' tables.
@pytest.mark.parametrize(
    ("what", "value", "verdict"),
    [
        ("ammonia_mg_n_l", 6.0, "act"), ("ammonia_mg_n_l", 0.0, "calm"),
        ("nitrite_mg_n_l", 0.05, "calm"), ("nitrite_mg_n_l", 0.07, "act"), ("nitrite_mg_n_l", 0.7, "act"),
        ("nitrate_mg_l", 43, "calm"), ("nitrate_mg_l", 45, "watch"), ("nitrate_mg_l", 300, "act"),
        ("oxygen_mg_l", 2.5, "act"), ("oxygen_mg_l", 4.5, "watch"), ("oxygen_mg_l", 8, "calm"),
        ("ph", 4.9, "watch"), ("ph", 9.1, "watch"), ("ph", 4.4, "act"), ("ph", 9.6, "act"),
        ("copper_ug_l", 25, "act"), ("copper_ug_l", 5, "watch"),
        ("temperature_c", 34, "act"), ("temperature_c", 31, "watch"), ("temperature_c", 11, "act"),
    ],
)  # fmt: skip
def test_the_latest_reading_decides_by_the_published_lines(what, value, verdict):
    assert stands(read(1, what, value), ph=8, temperature_c=20)["verdict"] == verdict


def test_ammonia_is_judged_by_its_toxic_share_at_the_tanks_water():
    """Toxic share by Emerson 1975: 0.4 % at pH 7 and 20 °C, 5.38 % at pH 8 and 25 °C; 0.05 mg N/L is deadly.

    The US chronic criterion at pH 7 and 20 °C is 1.9 mg N/L (EPA 2013, table): half of it is no calm.
    """
    log = read(0, "ammonia_mg_n_l", 0.94)
    cool = stands(log, ph=7.0, temperature_c=20)
    assert cool["verdict"] == "watch"
    assert "little of it is toxic now" in cool["sentence"]
    warm = stands(log, ph=8.0, temperature_c=25)
    assert warm["verdict"] == "act"
    assert "at pH 8 and 25 °C" in warm["sentence"]


def test_ammonia_is_judged_at_the_worst_where_the_ph_is_not_known_and_this_is_said():
    found = stands(read(0, "ammonia_mg_n_l", 0.5), ph=None, temperature_c=None)
    assert found["verdict"] == "act"
    assert "taking the worst since its pH and temperature are not known" in found["sentence"]


def test_a_new_reading_of_ph_goes_before_the_tanks_figure():
    log = [read(0, "ammonia_mg_n_l", 0.5), read(0, "ph", 6.5)]
    assert stands(*log, ph=8.4)["verdict"] == "watch"
    old = [log[0], read(40, "ph", 6.5)]
    assert stands(*old, ph=8.4)["verdict"] == "act"


def test_a_later_good_reading_ends_the_alarm():
    log = [read(3, "nitrite_mg_n_l", 2), read(0, "nitrite_mg_n_l", 0)]
    assert stands(*log)["verdict"] == "calm"
    assert stands(*log[:1])["verdict"] == "act"


def test_of_two_readings_of_one_moment_the_worse_counts():
    log = [read(0, "nitrite_mg_n_l", 2), read(0, "nitrite_mg_n_l", 0)]
    assert stands(*log)["verdict"] == stands(*log[::-1])["verdict"] == "act"


def at_hour(hour, what, value=None, kind="reading"):
    return entry(0, kind, what, value, at=f"{TODAY}T{hour:02}:00:00Z")


@pytest.mark.parametrize(
    ("what", "one", "other", "verdict", "named"),
    [
        # 30 mg N/L of ammonia and 2 mg N/L of nitrite are over the published lines above.
        ("ammonia_mg_n_l", 0, 30, "act", "Ammonia was read as 0 and as 30 mg N/L on one day"),
        ("nitrite_mg_n_l", 0, 2, "act", "Nitrite was read as 0 and as 2 mg N/L on one day"),
        ("ph", 6.2, 8.1, "watch", "pH was read as 6.2 and as 8.1 on one day"),
    ],
)
def test_readings_of_one_day_that_contradict_are_both_named_and_the_worse_is_taken(
    what, one, other, verdict, named
):
    for pair in ((one, other), (other, one)):
        hours = zip((8, 20), pair, strict=True)
        found = stands(*(at_hour(hour, what, value) for hour, value in hours))
        assert found["verdict"] == verdict
        assert named in found["sentence"]
        assert "the worse is taken" in found["sentence"]


def test_of_two_readings_of_ph_on_one_day_ammonia_is_judged_at_the_higher():
    log = [at_hour(8, "ph", 8.1), at_hour(20, "ph", 6.2), at_hour(20, "ammonia_mg_n_l", 0.9)]
    found = stands(*log, ph=None, temperature_c=25)
    assert found["verdict"] == "act"
    assert "at pH 8.1" in found["sentence"]


@pytest.mark.parametrize("done", ["change", "dose", "top-up"])
def test_a_reading_after_something_was_done_to_the_water_contradicts_none_before(done):
    before, after = at_hour(8, "nitrite_mg_n_l", 2), at_hour(20, "nitrite_mg_n_l", 0)
    found = stands(before, at_hour(9, "kno3" if done == "dose" else None, 30, done), after)
    assert found["verdict"] == "calm"
    assert "on one day" not in found["sentence"]


def test_what_ends_the_alarm_of_a_worse_reading_is_said_and_ends_it():
    bad, good = at_hour(8, "nitrite_mg_n_l", 2), at_hour(20, "nitrite_mg_n_l", 0)
    said = " ".join(stands(bad, good)["notes"])
    assert "Log that with its time, before the later reading" in said
    assert "take the reading that was wrong out of the log" in said
    # a change that is logged as of now comes after both, and a third reading of the day undoes nothing
    assert stands(bad, good, at_hour(21, None, 30, "change"))["verdict"] == "act"
    assert stands(bad, good, at_hour(22, "nitrite_mg_n_l", 0))["verdict"] == "act"
    assert stands(bad, at_hour(19, None, 30, "change"), good)["verdict"] == "calm"
    assert stands(good)["verdict"] == "calm"


def test_of_two_readings_of_warmth_one_in_a_kinds_own_range_both_are_named():
    animals = [{"animal": "neocaridina-davidi", "count": 20}]
    found = stands(
        at_hour(8, "temperature_c", 29), at_hour(20, "temperature_c", 26), animals=animals
    )
    assert found["verdict"] == "watch"
    assert "was read as 26 and as 29" in found["sentence"]


def test_readings_that_a_kit_can_confuse_contradict_nothing():
    log = [at_hour(8, "nitrate_mg_l", 10), at_hour(20, "nitrate_mg_l", 20), at_hour(9, "ph", 7.2)]
    assert stands(*log, at_hour(21, "ph", 7.8))["verdict"] == "calm"


def test_the_test_that_contradicts_itself_comes_next():
    found = stands(at_hour(8, "ph", 6.2), at_hour(20, "ph", 8.1), at_hour(8, "ammonia_mg_n_l", 0))
    assert found["next_test"]["what"] == "ph"


# --- a clock that is behind, or a date that is wrong

BEHIND = TODAY - timedelta(days=365)


def test_with_the_clock_a_year_behind_the_newest_reading_is_named_and_nothing_is_calm():
    found = stands(read(2, "nitrate_mg_l", 10), read(2, "ammonia_mg_n_l", 0), today=BEHIND)
    assert found["verdict"] == "unknown"
    assert "nothing was ever read" not in found["sentence"]
    assert "the newest reading is dated 26 November 2026, later than" in found["sentence"]
    assert found["sentence"].endswith("check the clock.")


def test_with_the_clock_behind_a_deadly_reading_stays_deadly_and_has_its_date_and_its_steps():
    found = stands(read(2, "nitrite_mg_n_l", 3), today=BEHIND)
    assert found["verdict"] == "act"
    assert "Nitrite of 3 mg N/L, dated 26 November 2026, can kill" in found["sentence"]
    assert found["sentence"].endswith("check the clock.")
    assert any(FIRST_HOUR[0] in note for note in found["notes"])


def test_with_the_clock_behind_deaths_count():
    log = [entry(0, "death", "danio-rerio", 5), read(0, "nitrate_mg_l", 5)]
    assert stands(*log, today=BEHIND)["verdict"] == "act"


def test_a_good_reading_with_a_wrong_date_ends_no_alarm_of_today():
    log = [read(0, "nitrite_mg_n_l", 2), read(-300, "nitrite_mg_n_l", 0)]
    found = stands(*log)
    assert found["verdict"] == "act"
    assert "Nitrite of 2 mg N/L, read today, can kill" in found["sentence"]
    assert "check the clock" in found["sentence"].lower()


def test_tomorrow_by_another_zone_is_no_wrong_clock():
    found = stands(read(-1, "nitrate_mg_l", 10))
    assert found["verdict"] == "calm"
    assert "clock" not in found["sentence"]


def test_the_round_says_it_of_the_tank_too():
    given = {"tanks": [TANK], "entries": [read(2, "nitrite_mg_n_l", 3)], "today": str(BEHIND)}
    (row,) = run("round", given)["outputs"]["order"]
    assert row["verdict"] == "act"
    assert "check the clock" in row["sentence"]


def test_a_reading_older_than_its_use_says_its_age():
    notes = stands(read(1, "nitrate_mg_l", 10), read(30, "ammonia_mg_n_l", 0))["notes"]
    assert any("ammonia 30 days ago" in note and "Older" in note for note in notes)


@pytest.mark.parametrize(
    ("log", "verdict"),
    [
        ([(0, None)], "watch"), ([(0, 3)], "act"), ([(20, 1)], "calm"), ([(20, 4)], "watch"),
        ([(60, 9)], "calm"), ([(1, 1), (2, 2)], "act"), ([(1, 0)], "calm"),
    ],
)  # fmt: skip
def test_deaths_weigh(log, verdict):
    deaths = [entry(days, "death", "danio-rerio", number) for days, number in log]
    assert stands(read(0, "nitrate_mg_l", 5), *deaths)["verdict"] == verdict


def test_deaths_weigh_where_nothing_was_read_at_all():
    found = stands(entry(0, "death", None, 3))
    assert found["verdict"] == "act"
    assert FIRST_TESTS in found["sentence"]


def test_new_soil_with_animals_asks_for_a_test_of_ammonia():
    young = {"flooded_on": (TODAY - timedelta(days=10)).isoformat()}
    assert stands(read(0, "nitrate_mg_l", 5), **young)["verdict"] == "watch"
    assert stands(read(0, "ammonia_mg_n_l", 0), **young)["verdict"] == "calm"
    assert stands(read(0, "nitrate_mg_l", 5), **young, animals=[])["verdict"] == "calm"


# --- first steps


def test_the_first_steps_are_the_danger_pages_own_words():
    page = (Path(paths.ROOT) / "docs" / "danger.md").read_text(encoding="utf-8")
    assert all(f"**{step}**" in page for step in FIRST_HOUR)
    assert "ammonia, nitrite, pH, temperature" in page


def test_a_deadly_reading_leads_with_the_first_steps_and_the_danger_page():
    reply = json.loads(
        answer(json.dumps({"calculator": "standing", "given": {
            "tank": TANK, "entries": [read(0, "nitrite_mg_n_l", 3)], "today": TODAY.isoformat()},
            "own": True}))
    )  # fmt: skip
    html = reply["painted"]["html"]
    assert html.index("Make the water move") < html.index("<svg") if "<svg" in html else True
    assert "danger/" in html
    assert reply["painted"]["brief"]["level"] == "danger"
    assert reply["address"] == {"today": TODAY.isoformat()}, "the tank stays off the address"


def test_acid_water_with_ammonia_is_never_told_to_change_much():
    """At pH 4.4 the fish die of acid; hard new water would turn the ammonium into ammonia."""
    found = stands(read(0, "ph", 4.4), read(0, "ammonia_mg_n_l", 3))
    text = " ".join(found["notes"])
    assert found["verdict"] == "act"
    assert not re.search("change (half|a third)", text, re.IGNORECASE)
    change = next(one for one in stands(
        read(0, "ammonia_mg_n_l", 3), ph=6.5, change={"percent": 40, "every_days": 7},
    )["due"] if one["task"].startswith("change water"))  # fmt: skip
    assert change["task"] == "change water only by the first step"  # a list shows the task alone
    assert "before you change any water" in change["why"]


def test_nitrite_without_a_test_of_ammonia_asks_for_it_before_water_is_changed():
    text = " ".join(stands(read(0, "nitrite_mg_n_l", 3), ph=6.8)["notes"])
    assert text.index("test ammonia before") < text.index("change a third of the water")


def nitrite_with_tap(tap_mg_l, nitrate_mg_l=10):
    """The first step against nitrite that kills, where the tap holds so much nitrate."""
    log = [
        read(0, "nitrite_mg_n_l", 2),
        read(0, "ammonia_mg_n_l", 0),
        read(0, "nitrate_mg_l", nitrate_mg_l),
    ]
    return " ".join(stands(*log, tap={"nitrate_mg_l": tap_mg_l}, ph=7.8)["notes"])


def test_against_nitrite_a_tap_that_is_rich_in_nitrate_is_changed_with_all_the_same():
    plain, rich, strong = (nitrite_with_tap(tap) for tap in (10, 60, 400))
    assert "Your tap" not in plain
    third = "Change a third of the water now"
    assert third in plain
    assert third in rich
    assert (
        "nitrate of 60 mg/L is by itself no reason against a change: it harms over weeks, nitrite kills "
        "sooner" in rich
    )
    assert "can kill by itself: for a change take other dechlorinated water" in strong
    assert "one change with it and no more" in strong
    # where one change alone would bring nitrate to the deadly line, there is none with that water
    assert "can kill: do not change with it" in nitrite_with_tap(400, nitrate_mg_l=240)


def test_nitrite_that_harms_is_changed_out_as_its_own_page_says():
    log = [read(0, "nitrite_mg_n_l", 0.2), read(0, "ammonia_mg_n_l", 0)]
    found = stands(*log, ph=7.8, change={"percent": 20, "every_days": 7})
    assert "Change a third of the water now" in " ".join(found["notes"])
    assert "change water only by the first step" in [one["task"] for one in found["due"]]
    # where another reading kills, its own step says how
    both = " ".join(stands(*log, read(0, "ph", 4.3))["notes"])
    assert "Change a third" not in both


def test_against_nitrate_no_change_is_made_with_a_tap_that_holds_as_much():
    log = [read(0, "nitrate_mg_l", 300), read(0, "ammonia_mg_n_l", 0)]
    better, worse = (
        " ".join(stands(*log, tap={"nitrate_mg_l": tap}, ph=7.8)["notes"]) for tap in (60, 320)
    )
    assert "Change a quarter of the water now" in better
    assert "Change a quarter" not in worse
    assert "do not change with it" in worse


def test_a_water_change_long_overdue_is_taken_slowly():
    log = [entry(90, "change", None, 30), read(1, "nitrate_mg_l", 10)]
    [change] = [
        one for one in stands(*log, change={"percent": 30, "every_days": 7})["due"]
        if one["task"] == "change water, a little at a time"
    ]  # fmt: skip
    assert change["late_days"] == 83
    assert "a little every day or two" in change["why"]


# --- due, tests


def test_what_is_due_follows_the_tanks_own_change_and_what_was_logged():
    log = [entry(9, "change", None, 25), read(1, "nitrate_mg_l", 10)]
    [change] = [
        one for one in stands(*log, change={"percent": 25, "every_days": 7})["due"]
        if one["task"] == "change water"
    ]  # fmt: skip
    assert (change["on"], change["late_days"]) == ("2026-11-26", 2)


def test_no_change_is_due_where_the_tank_has_none():
    for change in (None, {"percent": 0, "every_days": 7}, {"percent": 30}):
        tasks = [one["task"] for one in stands(change=change)["due"]]
        assert not [task for task in tasks if task.startswith("change water")]


def test_trims_follow_the_record_until_the_log_knows_better():
    plants = [{"plant": "rotala-rotundifolia", "wet_g": 80}]
    early = stands(entry(10, "trim", "rotala-rotundifolia", 40), plants=plants)["due"]
    assert "its record says" in next(one["why"] for one in early if one["task"].startswith("trim"))
    log = [entry(days, "trim", "rotala-rotundifolia", 80) for days in (60, 40, 20)]
    found = stands(*log, plants=plants)
    [trim] = [one for one in found["due"] if one["task"].startswith("trim")]
    assert (trim["on"], trim["late_days"]) == (TODAY.isoformat(), 0)
    assert "you cut it about every 20 days" in trim["why"]
    # 80 g kept, 80 g cut every 20 days: it doubles in 20 days
    assert any("doubles in about 20 days here" in note for note in found["notes"])


def test_feeding_is_never_due():
    tasks = [one["task"] for one in stands(entry(30, "feed", None, 1), feed_g_week=3)["due"]]
    assert not [task for task in tasks if "feed" in task]


def test_the_next_test_is_the_one_that_harms_then_the_one_never_taken():
    assert stands()["next_test"]["what"] == "ammonia_mg_n_l"
    assert stands(read(2, "nitrate_mg_l", 60))["next_test"]["what"] == "nitrate_mg_l"
    routine = [read(1, what, value) for what, value in
               {"ammonia_mg_n_l": 0, "nitrite_mg_n_l": 0, "temperature_c": 24, "ph": 7.2,
                "kh_dh": 4, "gh_dh": 8}.items()]  # fmt: skip
    assert stands(*routine, read(40, "nitrate_mg_l", 10))["next_test"]["what"] == "nitrate_mg_l"


def test_minutes_are_those_of_upkeeps_own_sum():
    """A change of 25 % of 100 L: 5 + 0.7 · 25 = 22.5 minutes every 7 days; tests 5 every 14."""
    found = stands(net_l=100, change={"percent": 25, "every_days": 7})
    assert found["minutes_week"] == pytest.approx(22.5 + 2.5)


# --- trends


def trend(found, what):
    return next(one for one in found["trends"] if one["what"] == what)


def test_a_trend_without_changes_is_scipys():
    dice = random.Random(7)
    log = [
        read(60 - 5 * turn, "nitrate_mg_l", round(10 + turn + dice.gauss(0, 1), 1))
        for turn in range(12)
    ]
    days = [-float(60 - 5 * turn) for turn in range(12)]
    outside = theilslopes([one["value"] for one in log], days)
    found = trend(stands(*log), "nitrate_mg_l")
    assert found["slope_week"] == pytest.approx(7 * outside.slope)
    assert found["slope_low_week"] <= 7 * outside.slope <= found["slope_high_week"]
    assert found["verdict"] == "building"


def test_a_change_of_water_makes_no_slope():
    """It rises by 1 a day and is halved each week: the slope is 7 a week all the same."""
    log, level = [], 10.0
    for day in range(28):
        log.append(read(28 - day, "nitrate_mg_l", level))
        if day % 7 == 6:
            log.append(entry(28 - day, "change", None, 50))
            level /= 2
        level += 1
    assert trend(stands(*log), "nitrate_mg_l")["slope_week"] == pytest.approx(7)
    flat = [one for one in log if one["kind"] == "reading"]
    assert trend(stands(*flat), "nitrate_mg_l")["slope_week"] != pytest.approx(7)


def test_temperature_goes_on_across_a_change_and_cover_across_none_of_the_thinnings():
    log = [read(20 - day, "temperature_c", 22 + 0.1 * day) for day in range(10)]
    assert trend(stands(*log, entry(15, "change", None, 30)), "temperature_c")[
        "slope_week"
    ] == pytest.approx(0.7)
    cover = [read(20, "cover_percent", 20), read(15, "cover_percent", 40), entry(15, "thin", None, 20),
             read(14, "cover_percent", 20), read(9, "cover_percent", 40)]  # fmt: skip
    assert trend(stands(*cover), "cover_percent")["slope_week"] == pytest.approx(28)


def test_the_kits_step_limits_what_is_told():
    """0.4 in ten days is less than a kit of 5 can tell, and more than one of 0.1 can."""
    log = [read(10 - day, "nitrate_mg_l", 10 + 0.04 * day) for day in range(11)]
    assert trend(stands(*log), "nitrate_mg_l")["verdict"] == "steady"
    fine = [{**one, "step": 0.1} for one in log]
    assert trend(stands(*fine), "nitrate_mg_l")["verdict"] == "building"


def test_too_few_readings_are_said_to_be_too_few():
    found = trend(stands(read(3, "ph", 7.0), read(1, "ph", 7.6)), "ph")
    assert found["verdict"] == "too-few-readings"
    assert found["slope_low_week"] is None


# --- outlook

FULL = {
    "net_l": 100, "soil_area_cm2": 2_400, "feed_g_week": 4, "protein_percent": 45,
    "tap": {"nitrate_mg_l": 5}, "change": {"percent": 25, "every_days": 7},
    "plants": [{"plant": "rotala-rotundifolia", "wet_g": 60}],
}  # fmt: skip


def test_the_outlook_is_there_where_the_tank_carries_it_and_brackets_its_middle():
    log = [read(21 - 3 * turn, "nitrate_mg_l", 12 + turn % 2) for turn in range(7)]
    outlook = stands(*log, **FULL)["outlook"]
    assert outlook["fitted"]
    assert 0 <= outlook["low"] <= outlook["nitrate_in_28_days_mg_l"] <= outlook["high"] < 200


def logged_course(times):
    """Readings of this tank every four days, its plants growing so many times what they promise."""
    planted = StandingPlant("rotala-rotundifolia", 60.0, engine_doubling_days())
    tank = Tank(
        100.0, 4.0, 45.0, (planted,), soil_area_cm2=2_400.0, denitrification_mg_n_m2_day=5.0,
        nitrate_mg_l=20.0, ph=7.0, temperature_c=24.0,
    )  # fmt: skip
    lines = simulate(tank, [], 28.5, Rates(growth=times)).record.lines
    found = {line.day: line.nitrate for line in lines}
    return [
        {**read(28 - day, "nitrate_mg_l", round(found[float(day)], 1)), "step": 0.5}
        for day in range(0, 29, 4)
    ]


def engine_doubling_days():
    """What the plant's record says, as the engine takes it."""
    return plants()["rotala-rotundifolia"].doubling_days


def test_the_outlook_runs_on_from_the_fit_to_the_readings():
    """Readings of a tank whose plants take little, and of one whose plants take much."""
    still = {**FULL, "change": {"percent": 0, "every_days": 7}}
    known = [read(1, "ph", 7.0), read(1, "temperature_c", 24.0)]
    slow, fast = (stands(*known, *logged_course(times), **still) for times in (0.3, 2.5))
    for found in (slow, fast):
        assert found["outlook"]["fitted"]
        assert any("fitted to your readings" in note for note in found["notes"])
    ends = [one["outlook"]["nitrate_in_28_days_mg_l"] for one in (slow, fast)]
    assert ends[0] > ends[1] + 5
    assert fast["outlook"]["uptake_times"] > 1.2
    assert (
        slow["outlook"]["uptake_times"] or 0
    ) < 1  # little uptake may pass for more feed: then None
    assert any("times what their growth promises" in note for note in fast["notes"])


def test_readings_that_cannot_tell_leave_the_outlook_unfitted_and_say_so():
    for log in (
        [read(1, "nitrate_mg_l", 12)],
        [read(12 - 6 * n, "nitrate_mg_l", 12) for n in range(3)],
    ):
        rough = [{**one, "step": 100} for one in log]
        found = stands(*rough, **FULL)
        assert not found["outlook"]["fitted"]
        assert found["outlook"]["uptake_times"] is None
        assert any("your readings cannot tell yet" in note for note in found["notes"])


def test_a_fit_that_would_take_long_is_given_up(monkeypatch):
    monkeypatch.setattr("calculators.standing.nitrogen_outlook.MOST_STEPS", 20)
    log = [read(21 - 3 * turn, "nitrate_mg_l", 12 + turn % 2) for turn in range(7)]
    assert not stands(*log, **FULL)["outlook"]["fitted"]


@pytest.mark.parametrize(
    "key", ["net_l", "feed_g_week", "protein_percent", "change", "plants", "tap"]
)
def test_no_outlook_is_made_up_for_a_tank_that_does_not_say(key):
    found = stands(read(1, "nitrate_mg_l", 12), **{**FULL, key: None})
    assert found["outlook"] is None
    assert any(note.startswith("No forecast: it needs") for note in found["notes"])


def test_no_outlook_rests_on_an_old_reading():
    assert stands(read(30, "nitrate_mg_l", 12), read(0, "ph", 7), **FULL)["outlook"] is None


def test_a_tank_with_more_feed_has_more_nitrate_ahead():
    log = [read(1, "nitrate_mg_l", 12)]
    little, much = (stands(*log, **{**FULL, "feed_g_week": feed})["outlook"] for feed in (1, 12))
    assert little["nitrate_in_28_days_mg_l"] < much["nitrate_in_28_days_mg_l"]


# --- what no log may do

DEADLY = {"ph": 10, "nitrite_mg_n_l": 5, "oxygen_mg_l": 1, "temperature_c": 36, "ammonia_mg_n_l": 40,
          "copper_ug_l": 500, "nitrate_mg_l": 600}  # fmt: skip
any_reading = st.sampled_from(sorted(READINGS)).flatmap(
    lambda what: st.tuples(
        st.just("reading"), st.just(what),
        st.floats(READINGS[what].low, READINGS[what].high).map(lambda value: round(value, 2)),
    )
)  # fmt: skip
any_other = st.sampled_from(
    [("change", None, 30), ("death", "danio-rerio", 1), ("trim", None, 20), ("thin", None, 10),
     ("dose", "kno3", 1), ("feed", None, 0.4), ("plant", "rotala-rotundifolia", 30)]
)  # fmt: skip
any_log = st.lists(
    st.tuples(st.integers(0, 120), st.one_of(any_reading, any_other)), max_size=12
).map(lambda rows: [entry(days, *what) for days, what in rows])


def badness(found):
    """How bad a verdict is, 0 the worst."""
    return WORST_FIRST.index(found["verdict"])


@settings(max_examples=how_many(150), deadline=None)
@given(log=any_log, what=st.sampled_from(sorted(DEADLY)), days_ago=st.integers(0, 120))
def test_a_deadly_reading_never_betters_a_verdict(log, what, days_ago):
    before, after = stands(*log), stands(*log, read(days_ago, what, DEADLY[what]))
    if after["verdict"] != "unknown" or before["verdict"] != "unknown":
        assert badness(after) <= badness(before)


@settings(max_examples=how_many(100), deadline=None)
@given(log=any_log, later=st.integers(0, 400))
def test_time_alone_never_makes_a_tank_calm(log, later):
    now, then = stands(*log), stands(*log, today=TODAY + timedelta(days=later))
    if now["verdict"] == "unknown":
        assert then["verdict"] != "calm"
    if later > 61:
        assert then["verdict"] != "calm"


@settings(max_examples=how_many(100), deadline=None)
@given(log=any_log, dice=st.randoms(use_true_random=False))
def test_the_order_of_the_log_and_copies_in_it_change_nothing(log, dice):
    mixed = [*log, *dice.sample(log, len(log) // 2)]
    dice.shuffle(mixed)
    first, second = stands(*log)["all"], stands(*mixed)["all"]
    assert first["outputs"] == second["outputs"]
    assert first["notes"] == second["notes"]


@settings(max_examples=how_many(100), deadline=None)
@given(log=any_log, behind=st.integers(122, 4_000))
def test_a_clock_that_is_behind_betters_no_verdict(log, behind):
    now, then = stands(*log), stands(*log, today=TODAY - timedelta(days=behind))
    assert badness(then) <= badness(now)
    assert then["verdict"] != "calm"


def test_entries_without_an_id_are_each_their_own():
    log = [{**entry(0, "death", None, 1), "id": None} for _ in range(3)]
    assert "3 animals died" in stands(*log)["sentence"]
    assert "one animal died" in stands(*[{**one, "id": "x"} for one in log])["sentence"].lower()


def test_entries_of_other_tanks_do_not_count():
    other = read(0, "nitrite_mg_n_l", 5) | {"tank": "jar"}
    assert stands(read(0, "nitrate_mg_l", 5), other)["verdict"] == "calm"


def test_an_entry_of_a_later_day_is_said_and_nothing_due_follows_from_it():
    plan = {"change": {"percent": 20, "every_days": 7}}
    late = [entry(-9, "change", None, 20), read(-9, "nitrate_mg_l", 5)]
    found = stands(read(0, "nitrate_mg_l", 5), *late, **plan)
    assert any("2 entries are of a later day" in note for note in found["notes"])
    assert found["due"] == stands(read(0, "nitrate_mg_l", 5), **plan)["due"]


def test_a_moments_zone_decides_the_order_not_the_letters():
    early = read(0, "nitrite_mg_n_l", 5) | {"at": "2026-11-29T02:00:00+14:00"}  # noon in UTC
    late = read(0, "nitrite_mg_n_l", 0) | {"at": "2026-11-28T13:00:00Z"}
    assert read_moment(early["at"]) < read_moment(late["at"])
    assert stands(early, late)["verdict"] == "calm"


# --- doors


def test_unknown_keys_are_let_pass_and_bad_values_are_named():
    assert (
        stands(read(0, "ph", 7, hand="left"), colour="green", tap={"odd": 1})["verdict"] == "calm"
    )
    with pytest.raises(BadInput) as bad:
        stands(read(0, "ph", 70), read(0, "mood", 1), entry(0, "reading", "ph"), net_l=-1)
    assert {path for path, _ in bad.value.problems} == {"tank.net_l"}
    with pytest.raises(BadInput) as bad:
        stands(read(0, "ph", 70), read(0, "mood", 1), entry(0, "reading", "ph"))
    assert {path for path, _ in bad.value.problems} == {
        "entries[1].value", "entries[2].what", "entries[3].value",
    }  # fmt: skip


def test_the_demo_tanks_show_each_verdict_but_the_alarm():
    demo = demo_file(read_records(paths.SPECIES).library.demo)
    verdicts = {
        tank["id"]: run("standing", {"tank": tank, "today": DEMO_DAY.isoformat(),
                                     "entries": demo["entries"]})["outputs"]["verdict"]
        for tank in demo["tanks"]
    }  # fmt: skip
    assert verdicts == {
        "reading-room": "calm", "foyer": "watch", "childrens-corner": "calm", "propagation-jar": "unknown",
    }  # fmt: skip


@long_run()
def test_a_season_runs_through_and_all_of_it_is_finite():
    tanks, entries = season()
    for tank in tanks[:3]:
        found = run("standing", {"tank": tank, "entries": entries, "today": SEASON_END})
        json.dumps(found, allow_nan=False)
        assert found["outputs"]["verdict"] in WORST_FIRST
        assert math.isfinite(found["outputs"]["minutes_week"])
