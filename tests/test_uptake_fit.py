"""The uptake fitted to readings: against known uptakes, simulation, and the other calculators."""

import numpy as np
import pytest
from scipy.stats import theilslopes

from calculators.core.run import run
from calculators.science.nitrogen.balance import flows
from calculators.science.nitrogen.uptake_fit import fit

NITRATE_PER_N = 62.004 / 14.007
TANK = {"volume_l": 100.0, "feed_g_week": 7.0, "protein_percent": 45.0}
NO_SOIL = {"soil_area_cm2": 0.0, "denitrification_mg_n_m2_day": 0.0}
EXCRETED = 0.092 * 0.45 * 1000  # mg N a day for a gram of feed a day


def trend(days, values, changes=(), **more):
    rows = [{"day": float(d), "value": float(v)} for d, v in zip(days, values, strict=True)]
    cuts = [{"day": day, "percent": percent} for day, percent in changes]
    return run("trend", {"readings": rows, "changes": cuts, **TANK, **NO_SOIL, **more})


@pytest.mark.parametrize("uptake", [0.0, 15.0, 30.0, 60.0])
def test_gives_back_the_uptake_that_made_the_readings(uptake):
    """By hand: nitrate gains (41.4 − uptake) / 100 · 4.427 mg/L a day."""
    days = np.arange(0, 30, 5)
    gain = (EXCRETED - uptake) / 100 * NITRATE_PER_N
    found = trend(days, 80 + gain * days)["outputs"]
    assert found["uptake_mg_n_day"] == pytest.approx(uptake, abs=1e-6)


def test_the_soil_takes_its_share_first():
    days = np.arange(0, 30, 5)
    soil = {"soil_area_cm2": 5_000.0, "denitrification_mg_n_m2_day": 10.0}
    flat = trend(days, 40 + 0 * days, **soil)["outputs"]
    assert flat["uptake_mg_n_day"] == pytest.approx(EXCRETED - 5.0)


def test_reads_the_uptake_off_a_forecast_with_changes():
    """Readings of a simulated tank, whose uptake is known, with water changes between them."""
    given = TANK | {
        "plants": [], "soil_area_cm2": 0, "trimmings_g_week": 0, "retained_percent": 42.5,
        "plant_uptake_mg_n_day": 25.0, "nitrate_mg_l": 30, "days": 60, "change_percent": 25,
        "change_every_days": 14, "tap_nitrate_mg_l": 5,
    }  # fmt: skip
    series = run("nitrogen-forecast", given)["series"]["nitrate"]
    before = {}
    for day, value in zip(series["x"], series["y"], strict=True):
        before.setdefault(day, value)  # the first line of a day is before its change
    days = [day for day in range(15, 56) if day % 4 == 0]
    found = trend(days, [before[day] for day in days], [(28, 25), (42, 25)])["outputs"]
    assert found["uptake_mg_n_day"] == pytest.approx(25, rel=0.02)


def test_limits_are_scipys_turned_round():
    days = np.array([0, 3, 7, 10, 14, 17, 21.0])
    values = np.array([20, 21.5, 23, 25.5, 26, 28.2, 30.5])
    theirs = theilslopes(values, days)
    found = trend(days, values)["outputs"]
    for key, slope in (
        ("uptake_mg_n_day", theirs.slope),
        ("uptake_low_mg_n_day", theirs.high_slope),
        ("uptake_high_mg_n_day", theirs.low_slope),
    ):
        assert found[key] == pytest.approx(EXCRETED - slope * 100 / NITRATE_PER_N), key
    width = found["uptake_high_mg_n_day"] - found["uptake_low_mg_n_day"]
    assert found["uptake_width_next_mg_n_day"] == pytest.approx(width * found["next_reading_ratio"])


def test_limits_hold_the_true_uptake_as_often_as_they_claim():
    """300 simulated keepers with a kit that errs by 2 mg/L, and a change in the middle."""
    dice = np.random.default_rng(20)
    days, uptake, hits = np.array([0, 3, 6, 9, 12, 15, 18, 21.0]), 20.0, 0
    gain = (EXCRETED - uptake) / 100 * NITRATE_PER_N
    for _ in range(300):
        true = 40 + gain * days - np.where(days > 10, 12, 0)
        found = trend(days, true + dice.normal(0, 2, 8), [(10, 25)])["outputs"]
        hits += found["uptake_low_mg_n_day"] <= uptake <= found["uptake_high_mg_n_day"]
    assert 0.91 <= hits / 300 <= 0.995


def test_the_balance_says_the_same_and_settles_with_what_was_fitted():
    days, values = np.arange(0, 28, 4), [30, 31.5, 32, 34.5, 35, 37.5, 38]
    first = trend(days, values)["outputs"]
    slopes = {
        key: first[key]
        for key in ("slope_week", "slope_low_week", "slope_high_week", "next_reading_ratio")
    }
    second = run("nitrogen-balance", TANK | NO_SOIL | slopes)["outputs"]
    for part in ("", "_low", "_high"):
        ours, theirs = f"uptake{part}_mg_n_day", f"fitted_uptake{part}_mg_n_day"
        assert first[ours] == pytest.approx(second[theirs])
    back = TANK | NO_SOIL | {"plant_uptake_mg_n_day": first["uptake_mg_n_day"]}
    again = run("nitrogen-balance", back)["outputs"]
    assert again["nitrate_change_mg_l_week"] == pytest.approx(first["slope_week"])


def test_a_rise_that_the_feed_cannot_explain_is_said_and_not_called_no_uptake():
    answer = trend(range(0, 30, 5), [10 + 5 * day for day in range(0, 30, 5)])
    assert answer["outputs"]["uptake_mg_n_day"] is None
    assert any("faster than this feed explains" in note["text"] for note in answer["notes"])


def test_hardly_any_nitrate_left_is_said():
    days = np.arange(0, 30, 5)
    notes = trend(days, 1 + 0 * days, kit_step=5.0)["notes"]
    assert any("no more than comes in" in note["text"] for note in notes)


@pytest.mark.parametrize("missing", [{"volume_l": None}, {"feed_g_week": None}])
def test_without_volume_or_feed_there_is_a_trend_but_no_uptake(missing):
    answer = trend(range(6), [10, 11, 12, 13, 14, 15], **missing)
    assert answer["outputs"]["slope_week"] == pytest.approx(7)
    assert answer["outputs"]["uptake_mg_n_day"] is None
    assert not any("uptake" in note["text"] for note in answer["notes"])


def test_three_readings_fit_but_bear_no_limits():
    answer = trend([0, 5, 10], [10, 12, 14])
    assert answer["outputs"]["uptake_mg_n_day"] is not None
    assert answer["outputs"]["uptake_low_mg_n_day"] is None
    assert any("bear no limits yet" in note["text"] for note in answer["notes"])


def test_a_lower_limit_below_nothing_reads_nothing_but_the_width_stays():
    found = fit(flows(7, 45, 0.0, (0, 1), 0, (0, 0)), (5.0, 0.0, 20.0), 0.5, 100)
    assert found.low == 0
    assert found.width == pytest.approx(20 / 7 * 100 / NITRATE_PER_N)
    assert found.width_next == pytest.approx(found.width / 2)
