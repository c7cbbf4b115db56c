"""The forecast fitted to readings of the weeks before: when it is, what from, and what it never calms."""

import math
import random
import re
import subprocess
import sys

import pytest

from calculators.core.result import BadInput
from calculators.core.run import run
from calculators.science.fitting.fit_readings import Reading, between
from calculators.science.nitrogen.forecast_tank import Event, Rates, StandingPlant, Tank
from calculators.science.nitrogen.simulate import simulate
from scripts.setup.paths import ROOT
from tests.effort import long_run, thorough

PLANTS = [
    {"name": "stems", "wet_g": 120, "doubling_days": 14},
    {"name": "floaters", "wet_g": 40, "doubling_days": 8, "floating": True},
]
GIVEN = {
    "volume_l": 80, "feed_g_week": 5, "protein_percent": 45, "change_percent": 20, "change_every_days": 14,
    "tap_nitrate_mg_l": 5, "dli_mol": 4.0, "days": 21, "trimmings_g_week": 0, "temperature_c": 25,
    "plants": PLANTS,
}  # fmt: skip
BEFORE = 35
NITRATE = "nitrate_mg_l"


def asked(readings, **more):
    return run("nitrogen-forecast", {**GIVEN, "readings": readings, **more})


def row(day, value, what=NITRATE):
    return {"day": day, "what": what, "value": value}


def words(answer):
    return " ".join(note["text"] for note in answer["notes"])


def read_of_a_run(growth, draw=None):
    """What a kit reads each week of a tank whose plants take so many times what is entered."""
    tank = Tank(
        **{name: GIVEN[name] for name in GIVEN if name not in ("days", "plants")},
        plants=tuple(StandingPlant(**plant) for plant in PLANTS),
        nitrate_mg_l=20,
    )
    lines = simulate(tank, [], BEFORE + 0.5, Rates(growth=growth)).record.lines
    rows = []
    for day in range(0, BEFORE + 1, 7):
        level = between(lines, day, "nitrate")
        error = Reading(0, NITRATE, level).error
        rows.append(row(day - BEFORE, max(0.0, draw.gauss(level, error) if draw else level)))
    return rows


@pytest.mark.parametrize("growth", [0.6, 1.6])
def test_the_readings_tell_plants_that_take_more_or_less_than_was_entered(growth):
    """Against the same forecast that knows the true uptake: nearer to it than with what was entered."""
    readings = read_of_a_run(growth)
    now = readings[-1]["value"]
    true = simulate(
        Tank(
            **{name: GIVEN[name] for name in GIVEN if name not in ("days", "plants")},
            plants=tuple(StandingPlant(**plant) for plant in PLANTS), nitrate_mg_l=now,
        ), [], 21, Rates(growth=growth),
    ).last.nitrate  # fmt: skip
    fitted, plain = asked(readings), asked([], nitrate_mg_l=now)
    assert fitted["outputs"]["fitted"]
    assert not plain["outputs"]["fitted"]
    off, before = (abs(one["outputs"]["final_nitrate_mg_l"] - true) for one in (fitted, plain))
    assert off < before / 2
    assert "the plants take" in words(fitted)


@long_run()
def test_most_fits_to_kits_with_errors_stay_near_what_made_them():
    draw, near, count = random.Random(11), 0, 20 if thorough() else 5
    for _ in range(count):
        growth = math.exp(draw.gauss(0, 0.4))
        found = asked(read_of_a_run(growth, draw))["outputs"]
        assert found["balance_error_percent"] < 1e-6
        near += found["fitted"]
    assert near >= 0.6 * count


@pytest.mark.parametrize(
    "readings",
    [None, [], [row(-7, 5)], [row(-3, 5), row(-2, 6), row(-1, 7)], [row(-20, 0.1, "ammonia_mg_n_l")] * 3],
)  # fmt: skip
def test_too_few_readings_change_nothing_but_are_said(readings):
    found, plain = asked(readings, nitrate_mg_l=9), asked(None, nitrate_mg_l=9)
    assert not found["outputs"]["fitted"]
    assert found["outputs"] == plain["outputs"]
    assert found["series"] == plain["series"]
    assert ("Not fitted" in words(found)) == bool(readings)


def test_readings_that_nothing_explains_are_not_believed_by_halves():
    found = asked([row(-28, 5), row(-14, 200), row(-7, 5)], nitrate_mg_l=9)
    assert not found["outputs"]["fitted"]
    assert found["outputs"] == asked(None, nitrate_mg_l=9)["outputs"]
    (note,) = [note for note in found["notes"] if "Not fitted" in note["text"]]
    assert note["level"] == "caution"


@pytest.mark.parametrize(("entered", "read"), [(None, 2.0), (0.1, 2.0), (2.0, 0.1)])
def test_of_two_figures_for_what_harms_the_worse_is_taken(entered, read):
    given = {"start_ammonia_mg_n_l": entered, "ph": 8.0}
    found = asked([row(0, read, "ammonia_mg_n_l")], **given)["outputs"]
    alone = asked(None, start_ammonia_mg_n_l=2.0, ph=8.0)["outputs"]
    assert found["peak_unionised_mg_n_l"] == alone["peak_unionised_mg_n_l"]
    assert found["verdict"] == alone["verdict"]


def test_what_was_read_today_is_not_called_untested():
    both = [row(0, 0, "ammonia_mg_n_l"), row(0, 0, "nitrite_mg_n_l")]
    assert "No reading of" in words(asked(None))
    assert "No reading of" not in words(asked(both))


WEEKS = [row(-28, 20), row(-14, 20), row(0, 20)]


@pytest.mark.parametrize(("what", "value"), [("ammonia_mg_n_l", 4.0), ("nitrite_mg_n_l", 2.0)])
def test_a_harmful_reading_of_yesterday_is_not_forgotten_today(what, value):
    found = asked([*WEEKS, row(-1, value, what)], ph=8.0)
    assert found["outputs"]["verdict"] == "deadly"
    assert found["series"][what.split("_")[0]]["y"][0] == value
    assert "was last read a day ago" in words(found)
    clean = asked([*WEEKS, row(-1, value, what), row(0, 0, what)], ph=8.0)
    assert clean["series"][what.split("_")[0]]["y"][0] == 0
    assert "was last read" not in words(clean)


def test_a_harmful_reading_of_long_ago_is_named_and_not_called_missing():
    said = words(asked([*WEEKS, row(-20, 4.0, "ammonia_mg_n_l")], ph=8.0))
    assert "Ammonia was last read 20 days ago, 4 mg N/L: too long ago to go by" in said
    assert "No reading of nitrite was given" in said


def test_ammonia_of_today_is_not_put_into_the_weeks_before():
    """It would have become nitrate long ago, and the readings would contradict it."""
    rows = read_of_a_run(1.0)
    plain, found = (
        asked(rows, start_ammonia_mg_n_l=entered, filter_maturity_percent=100)
        for entered in (0.0, 8.0)
    )
    (fitted,) = [note["text"] for note in plain["notes"] if "itted" in note["text"]]
    assert fitted in [note["text"] for note in found["notes"]]
    assert found["outputs"]["fitted"] == plain["outputs"]["fitted"]


def test_ammonia_that_stays_says_that_the_filter_is_younger_and_nothing_is_calm_for_it():
    toxic = [row(day, 1.0, "ammonia_mg_n_l") for day in (-14, -7, 0)]
    nitrate = [row(-14, 20), row(-7, 20), row(0, 20)]
    found = asked([*nitrate, *toxic], filter_maturity_percent=100)
    plain = asked(None, nitrate_mg_l=20, start_ammonia_mg_n_l=1.0, filter_maturity_percent=100)
    peak = "peak_unionised_mg_n_l"
    assert found["outputs"][peak] >= 0.99 * plain["outputs"][peak]
    calm = found["outputs"]["calm_from_day"]
    assert calm is None or calm >= plain["outputs"]["calm_from_day"]


def test_the_forecast_loads_nothing_of_the_shelf():
    """Its start on a phone would wait for all that a tank's page needs."""
    code = "import sys, calculators.nitrogen_forecast.calculator; print(*sorted(sys.modules))"
    loaded = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True)
    assert "calculators.science.fitting.fit" in loaded.stdout
    assert "calculators.science.shelf" not in loaded.stdout


@pytest.mark.parametrize(
    ("readings", "field"),
    [
        ([row(1, 5)], "readings[1].day"),
        ([row(-400, 5)], "readings[1].day"),
        ([row(-3, 5, "ph")], "readings[1].what"),
        ([row(-3, 500, "nitrite_mg_n_l")], "readings[1].value"),
        ([row(-3, -1)], "readings[1].value"),
        ([{"day": -3}], "readings[1]"),
    ],
)
def test_a_bad_reading_is_named_with_what_is_allowed(readings, field):
    with pytest.raises(BadInput, match=r"allowed|missing|needs|must") as told:
        asked(readings)
    assert str(told.value).startswith(field)


def read_beside_dated_changes(changes):
    """What a kit reads each week of a tank whose water was changed on these days before today."""
    tank = Tank(
        **{name: GIVEN[name] for name in GIVEN if name not in ("days", "plants", "change_percent")},
        plants=tuple(StandingPlant(**plant) for plant in PLANTS), nitrate_mg_l=40,
    )  # fmt: skip
    events = [Event(day + BEFORE, "change", percent) for day, percent in changes]
    lines = simulate(tank, events, BEFORE + 0.5, Rates()).record.lines
    return [row(day - BEFORE, between(lines, day, "nitrate")) for day in range(0, BEFORE + 1, 7)]


def test_changes_that_were_dated_are_not_taken_for_uptake():
    """Three large changes, where a fifth each fortnight was entered: the plants took what was said."""
    changes = [(-31, 60), (-17, 60), (-3, 60)]
    readings = read_beside_dated_changes(changes)
    dated = asked(readings, past_changes=[{"day": day, "percent": share} for day, share in changes])
    undated = asked(readings)
    assert "Of the weeks before it counts the 3 changes of water that you dated." in words(dated)
    factors = [
        float(re.search(r"plants take ([\d.]+) times", words(one))[1]) for one in (dated, undated)
    ]
    assert factors[0] == pytest.approx(1, abs=0.1)
    assert factors[1] > 1.2
    said = words(undated)
    assert "20 % every 14 days, counted from your first reading" in said
    final = [one["outputs"]["final_nitrate_mg_l"] for one in (dated, undated)]
    tank = Tank(
        **{name: GIVEN[name] for name in GIVEN if name not in ("days", "plants")},
        plants=tuple(StandingPlant(**plant) for plant in PLANTS),
        nitrate_mg_l=readings[-1]["value"],
    )
    true = simulate(tank, [], GIVEN["days"], Rates()).last.nitrate
    assert abs(final[0] - true) < abs(final[1] - true)


def test_no_change_at_all_is_said_too():
    readings = read_beside_dated_changes([])
    assert "counts no change of water" in words(asked(readings, change_percent=0))
