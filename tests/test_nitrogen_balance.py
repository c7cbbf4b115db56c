"""The weekly budget against brute force, published ranges and the forecast."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.core.result import BadInput
from calculators.core.run import run
from calculators.science.animals.reading_lines import LINES
from calculators.science.nitrogen.steady import Cycle, days_to_nothing, settled_high, settled_low

NONE = {
    "plant_uptake_mg_n_day": 0,
    "floater_area_cm2": 0,
    "trimmings_g_week": 0,
    "soil_area_cm2": 0,
}


def balance(**given):
    return run("nitrogen-balance", given)["outputs"]


def by_steps(now, cycle, changes):
    """Readings just before each change, one change after the other."""
    found = []
    for _ in range(changes):
        now += cycle.rise_day * cycle.every
        found.append(now)
        now -= cycle.share * (now - cycle.tap)
    return found


@given(
    st.floats(0, 200), st.floats(0.01, 20), st.floats(0.05, 1), st.floats(1, 60), st.floats(0, 50)
)
def test_settles_where_a_thousand_changes_lead(now, rise, share, every, tap):
    cycle = Cycle(rise, share, every, tap)
    high = settled_high(cycle)
    assert high == pytest.approx(by_steps(now, cycle, 1_000)[-1], rel=1e-6)
    low = high - share * (high - tap)
    assert settled_low(cycle, high) == pytest.approx(low)
    assert high == pytest.approx(low + rise * every)


@given(
    st.floats(0, 100), st.floats(-20, -0.01), st.floats(0, 1), st.floats(1, 60), st.floats(0, 50)
)
def test_runs_out_on_the_day_that_stepping_finds(now, rise, share, every, tap):
    cycle = Cycle(rise, share, every, tap)
    found = days_to_nothing(now, cycle)
    level, day = now, 0.0
    while day < 3_650:
        if level + rise * every <= 0:
            day += level / -rise
            break
        level += rise * every
        level -= share * (level - tap)
        day += every
    if day < 3_600:
        assert found == pytest.approx(day, abs=max(1e-6 * day, 1e-6) + 1e-3 * every)
    else:
        assert found is None or found > 3_550


def test_the_flows_add_up_to_the_change():
    found = balance()
    net = found["ammonia_n_mg_day"] - found["plants_n_mg_day"] - found["denitrified_n_mg_day"]
    assert found["nitrate_change_mg_l_week"] == pytest.approx(7 * net / 120 * 62.004 / 14.007)


def test_floaters_take_nitrogen_at_a_published_areal_rate():
    """0.09 to 0.46 g N a m² and day: Azolla to Salvinia, yields times protein (Reddy and DeBusk 1985)."""
    found = balance(**NONE | {"plant_uptake_mg_n_day": None, "floater_area_cm2": 10_000})
    assert 90 < found["plants_n_mg_day"] < 460


def test_trimmings_carry_what_the_trimmings_calculator_says():
    taken = run("trimmings", {"wet_g": 70, "dry_matter_percent": 8, "tissue_n_percent": 2.5})
    found = balance(**NONE | {"plant_uptake_mg_n_day": None, "trimmings_g_week": 70})
    assert found["plants_n_mg_day"] == pytest.approx(taken["outputs"]["n_mg"] / 7)


def test_a_climbing_tank_turns_to_falling_after_floaters_are_added():
    """Common practice, no source."""
    before = balance(floater_area_cm2=0, trimmings_g_week=0)
    after = balance(floater_area_cm2=1_500, trimmings_g_week=0)
    assert before["verdict"] == "building"
    assert before["nitrate_change_mg_l_week"] > 0 > after["nitrate_change_mg_l_week"]


def test_shrimp_alone_feed_too_little_for_fast_plants():
    """Common practice, no source: 0.3 g a week against 60 g of cuttings."""
    found = balance(
        volume_l=54, feed_g_week=0.3, protein_percent=35, floater_area_cm2=0, trimmings_g_week=60,
        soil_area_cm2=1_800, nitrate_mg_l=10,
    )  # fmt: skip
    assert found["verdict"] == "running-short"
    assert found["settled_nitrate_high_mg_l"] is None
    assert found["days_to_shortage"] < 60
    assert found["feed_to_balance_g_week"] > 0.3


def test_the_feed_to_balance_balances():
    found = balance(feed_g_week=balance()["feed_to_balance_g_week"])
    assert found["nitrate_change_mg_l_week"] == pytest.approx(0, abs=1e-9)
    assert found["verdict"] == "steady"


@pytest.mark.parametrize("target", [10, 25, 40])
def test_the_feed_for_a_target_settles_at_it(target):
    feed = balance(target_nitrate_mg_l=target)["feed_for_target_g_week"]
    assert balance(feed_g_week=feed)["settled_nitrate_high_mg_l"] == pytest.approx(target)


def test_more_stems_or_more_cover_settle_at_the_target():
    """Each answer, given back as the uptake it stands for, leads to the target."""
    start = {"feed_g_week": 12, "target_nitrate_mg_l": 20}
    found = balance(**start)
    covered = balance(**start, floater_area_cm2=600 + found["extra_floater_area_cm2"])
    assert covered["settled_nitrate_high_mg_l"] == pytest.approx(20)
    cut = 7 * found["extra_stems_g"] * math.log(2) / 14  # g a week, if what grows is cut
    trimmed = balance(**start, trimmings_g_week=50 + cut)
    assert trimmed["settled_nitrate_high_mg_l"] == pytest.approx(20)


def test_no_feed_can_be_the_answer():
    """The tap alone reads higher than the target, and nothing takes it up."""
    found = balance(**NONE, tap_nitrate_mg_l=40, target_nitrate_mg_l=10)
    assert found["feed_for_target_g_week"] is None


def test_fits_the_uptake_to_readings():
    """A slope that a known uptake makes gives that uptake back; limits come the other way round."""
    truth = balance(plant_uptake_mg_n_day=22)
    slope = truth["nitrate_change_mg_l_week"]
    found = balance(
        slope_week=slope,
        slope_low_week=slope - 1,
        slope_high_week=slope + 1,
        next_reading_ratio=0.8,
    )
    assert found["fitted_uptake_mg_n_day"] == pytest.approx(22)
    low, high = found["fitted_uptake_low_mg_n_day"], found["fitted_uptake_high_mg_n_day"]
    assert low < 22 < high
    assert high - low == pytest.approx(2 * 120 / 7 * 14.007 / 62.004)
    assert found["fitted_width_next_mg_n_day"] == pytest.approx(0.8 * (high - low))


def test_without_changes_it_never_settles():
    found = balance(feed_g_week=20, change_percent=0)
    assert found["settled_nitrate_high_mg_l"] is None
    assert found["verdict"] == "building"
    still = balance(feed_g_week=0, **NONE, change_percent=0)
    assert still["settled_nitrate_high_mg_l"] == still["settled_nitrate_low_mg_l"] == 15
    assert still["verdict"] == "steady"


def test_the_taps_nitrate_can_hold_a_hungry_tank():
    found = balance(tap_nitrate_mg_l=40, change_percent=50, change_every_days=7)
    assert found["nitrate_change_mg_l_week"] < 0
    assert found["verdict"] == "steady"
    assert found["days_to_shortage"] is None
    assert found["settled_nitrate_high_mg_l"] > 0


def test_agrees_with_the_forecast_where_both_are_simple():
    """A measured uptake, no droppings, no soil, a mature filter: the same nitrate for twelve weeks."""
    given = {
        "volume_l": 100, "feed_g_week": 7, "plant_uptake_mg_n_day": 25, "soil_area_cm2": 0,
        "change_percent": 20, "change_every_days": 14, "tap_nitrate_mg_l": 5, "nitrate_mg_l": 20,
    }  # fmt: skip
    budget = run("nitrogen-balance", given)["series"]["nitrate"]
    simple = {"plants": [], "days": 84, "retained_percent": 42.5, "trimmings_g_week": 0}
    forecast = run("nitrogen-forecast", given | simple)["series"]["nitrate"]
    for day in (13, 27, 41, 55, 69, 83):
        before = next(n for n, x in enumerate(forecast["x"]) if x == day + 1)
        steps = [n for n, x in enumerate(budget["x"]) if x == day + 1]
        assert forecast["y"][before] == pytest.approx(budget["y"][steps[0]], abs=1.0)


def test_the_verdict_comes_first_and_short_tanks_are_warned_about_feeding():
    said = run("nitrogen-balance", {})["notes"]
    assert said[0]["text"].startswith("Running short:")
    assert any("ammonia and nitrite twice a week" in note["text"] for note in said)
    building = run("nitrogen-balance", {"feed_g_week": 25})["notes"]
    assert building[0]["text"].startswith("Animals first: nitrate settles near")
    assert any(note["text"].startswith("Building:") for note in building)
    assert any("harm" in note["text"] for note in building)


def test_refuses_limits_the_wrong_way_round():
    with pytest.raises(BadInput) as bad:
        run("nitrogen-balance", {"slope_week": 1, "slope_low_week": 2, "slope_high_week": 0})
    assert [key for key, _ in bad.value.problems] == ["slope_low_week", "slope_high_week"]


def texts(**given):
    return " ".join(note["text"] for note in run("nitrogen-balance", given)["notes"])


@pytest.mark.parametrize(
    ("given", "empty", "why"),
    [
        ({}, "settled_nitrate_high_mg_l", "settles nowhere above zero"),
        (
            {"change_percent": 0, "feed_g_week": 20},
            "settled_nitrate_low_mg_l",
            "climbs without end",
        ),
        (
            NONE | {"tap_nitrate_mg_l": 40, "target_nitrate_mg_l": 10},
            "feed_for_target_g_week",
            "No feed holds your target",
        ),
        (
            NONE | {"plant_uptake_mg_n_day": 18, "change_percent": 0, "nitrate_mg_l": 1_000},
            "days_to_shortage",
            "lasts for more than a year",
        ),
        (
            {"tap_nitrate_mg_l": 40, "change_percent": 50, "change_every_days": 7},
            "days_to_shortage",
            "The tap's own nitrate makes up for",
        ),
        ({"slope_week": 80}, "fitted_uptake_mg_n_day", "faster than this feed explains"),
    ],
)
def test_what_is_left_empty_is_explained(given, empty, why):
    assert balance(**given)[empty] is None
    assert why in texts(**given)


def test_the_soils_gas_is_a_range_and_moves_the_answer():
    """A fifth to six times what was entered: 1 to 30 around 5 mg N a m² and day."""
    found = balance(soil_area_cm2=10_000, denitrification_mg_n_m2_day=5)
    gas = [found[f"denitrified{part}_n_mg_day"] for part in ("_low", "", "_high")]
    assert gas == pytest.approx([1, 5, 30])
    most = balance(soil_area_cm2=10_000, denitrification_mg_n_m2_day=30)
    assert found["nitrate_change_at_least_mg_l_week"] == pytest.approx(
        most["nitrate_change_mg_l_week"]
    )
    assert (
        found["nitrate_change_at_least_mg_l_week"]
        < found["nitrate_change_mg_l_week"]
        < found["nitrate_change_at_most_mg_l_week"]
    )
    assert "within a factor of thirty" in texts()


@pytest.mark.parametrize("feed", [6.0, 12.0, 30.0])
@pytest.mark.parametrize("target", [8.0, 25.0])
def test_each_answer_put_back_settles_at_the_target(feed, target):
    """Feed, stems and cover, one at a time, in tanks of several rations; 0 where it is met already."""
    start = {"feed_g_week": feed, "target_nitrate_mg_l": target}
    found = balance(**start)
    fed = balance(feed_g_week=found["feed_for_target_g_week"])
    assert fed["settled_nitrate_high_mg_l"] == pytest.approx(target)
    if found["extra_stems_g"] == 0:
        high = found["settled_nitrate_high_mg_l"]
        assert high is None or high <= target
        return
    cut = 7 * found["extra_stems_g"] * math.log(2) / 14
    assert balance(**start, trimmings_g_week=50 + cut)[
        "settled_nitrate_high_mg_l"
    ] == pytest.approx(target)
    area = 600 + found["extra_floater_area_cm2"]
    assert balance(**start, floater_area_cm2=area)["settled_nitrate_high_mg_l"] == pytest.approx(
        target
    )


def test_days_to_shortage_put_into_the_curve_is_where_it_ends():
    answer = run("nitrogen-balance", {})
    day, series = answer["outputs"]["days_to_shortage"], answer["series"]["nitrate"]
    at = [y for x, y in zip(series["x"], series["y"], strict=True) if abs(x - day) < 1e-6]
    assert at == pytest.approx([0], abs=1e-9)
    assert min(y for x, y in zip(series["x"], series["y"], strict=True) if x < day - 1e-6) > 0


def test_high_nitrate_is_warned_of_at_a_published_line():
    """10 mg N/L can harm sensitive freshwater animals (Camargo and others 2005): 44.3 mg/L as nitrate."""
    assert pytest.approx(10 * 62.004 / 14.007, abs=0.5) == LINES["nitrate_mg_l"].harmful_high


def test_limits_with_no_middle_must_be_in_order_too():
    with pytest.raises(BadInput, match="slope_low_week"):
        run("nitrogen-balance", {"slope_low_week": 5, "slope_high_week": 2})
