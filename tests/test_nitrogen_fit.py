"""The fit to a keeper's readings: coverage by simulation, honesty, bad input."""

import math
import random

import pytest

from calculators.science.fitting.fit import BELIEVED, fit_to_readings
from calculators.science.fitting.fit_linear import inverse
from calculators.science.fitting.fit_readings import Reading, between
from calculators.science.nitrogen.forecast_tank import Rates, StandingPlant, Tank
from calculators.science.nitrogen.simulate import simulate
from tests.effort import thorough

TANK = Tank(
    volume_l=80, feed_g_week=5, protein_percent=45, nitrate_mg_l=20, change_percent=20,
    change_every_days=14, tap_nitrate_mg_l=5, dli_mol=4.0,
    plants=(StandingPlant("stems", 120, 14), StandingPlant("floaters", 40, 8, True)),
)  # fmt: skip
BEFORE, AHEAD = 35, 21


def simulated(draw):
    """A tank whose true uptake and feed are drawn, its readings a week apart, and two later ones."""
    uptake, feed = (math.exp(draw.gauss(0, BELIEVED[name])) for name in ("uptake", "feed"))
    truth = simulate(TANK, [], BEFORE + AHEAD + 0.5, Rates(growth=uptake, feed=feed)).record.lines

    def read(day):
        level = between(truth, day, "nitrate")
        error = Reading(0, "nitrate_mg_l", level).error
        return max(0.0, draw.gauss(level, error))

    early = [Reading(day - BEFORE, "nitrate_mg_l", read(day)) for day in range(0, BEFORE + 1, 7)]
    return early, [(day, read(BEFORE + day)) for day in (9, AHEAD)]


def test_the_band_holds_at_least_eighty_per_cent_of_later_readings():
    """It holds more where nitrate lies near nothing, which no reading can fall below: too wide there."""
    draw, inside, count = random.Random(7), 0, 40 if thorough() else 8
    for _ in range(count):
        early, later = simulated(draw)
        found = fit_to_readings(TANK, early, days_ahead=AHEAD)
        inside += sum(found.low[day] <= value <= found.high[day] for day, value in later)
    assert inside / (2 * count) > 0.75


def test_many_readings_tell_and_one_does_not():
    early, _ = simulated(random.Random(3))
    told = fit_to_readings(TANK, early)
    assert told.enough
    alone = fit_to_readings(TANK, early[:1])
    assert not alone.enough
    assert not any(one.told for one in alone.parameters if one.name != "start")
    narrow, wide = ({one.name: one.high / one.low for one in f.parameters} for f in (told, alone))
    assert narrow["uptake"] < wide["uptake"]


def test_the_fit_finds_what_made_the_readings():
    """Readings with next to no error, made with twice the feed: the feed or the uptake explains it."""
    truth = simulate(TANK, [], 36, Rates(feed=1.6)).record.lines
    rows = [
        Reading(day - 35, "nitrate_mg_l", between(truth, day, "nitrate"), 0.5)
        for day in range(0, 36, 5)
    ]
    found = fit_to_readings(TANK, rows)
    again = {one.name: one.factor for one in found.parameters}
    assert again["feed"] / again["uptake"] > 1.2
    assert found.nitrate[0] == pytest.approx(between(truth, 35, "nitrate"), rel=0.1)


def test_refuses_what_lies_ahead_and_nothing_at_all():
    with pytest.raises(ValueError, match="ahead"):
        fit_to_readings(TANK, [Reading(1, "nitrate_mg_l", 5)])
    with pytest.raises(ValueError, match="at least one"):
        fit_to_readings(TANK, [])


def test_inverse_is_an_inverse():
    matrix = [[4.0, 1.0, 0.5], [1.0, 3.0, 0.2], [0.5, 0.2, 2.0]]
    back = inverse(matrix)
    for i in range(3):
        for j in range(3):
            product = sum(matrix[i][k] * back[k][j] for k in range(3))
            assert product == pytest.approx(float(i == j), abs=1e-12)
