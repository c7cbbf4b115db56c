"""Events on their day: several a day, fractions, the first day, the last; and extreme tanks."""

import math

import pytest

from calculators.core.run import run
from calculators.science.nitrogen.forecast_tank import Event, StandingPlant
from calculators.science.nitrogen.model import ALKALINITY
from calculators.science.nitrogen.simulate import simulate
from calculators.science.nitrogen.start import build
from tests.effort import long_run, share_of
from tests.nitrogen_tanks import LEAN, TANKS
from tests.own_records import own_records

STILL = {
    "plants": [], "soil_area_cm2": 0, "change_percent": 0, "trimmings_g_week": 0,
    "feed_g_week": 0, "nitrate_mg_l": 40, "tap_nitrate_mg_l": 0, "days": 20, "volume_l": 100,
}  # fmt: skip


def forecast(*events, **given):
    rows = [dict(zip(("day", "kind", "value"), event, strict=True)) for event in events]
    return run("nitrogen-forecast", STILL | given | {"events": rows})


def end(*events, **given):
    return forecast(*events, **given)["outputs"]["final_nitrate_mg_l"]


def test_two_changes_a_day_are_both_made():
    assert end((10, "change", 50), (10, "change", 50)) == pytest.approx(10)


def test_a_dose_on_the_day_of_a_change_comes_after_it():
    """One changes the water and then doses, whatever the order in the list."""
    both = [(10, "dose", 10), (10, "change", 50)]
    assert end(*both) == end(*both[::-1]) == pytest.approx(30)


def test_a_fraction_of_a_day_is_kept():
    series = forecast((10.4, "dose", 10))["series"]["nitrate"]
    at = [y for x, y in zip(series["x"], series["y"], strict=True) if x == 10.4]
    assert at == pytest.approx([40, 50])


def test_an_event_on_the_first_day_counts():
    assert end((0, "change", 25)) == pytest.approx(30)
    assert end((0, "feed", 7)) == pytest.approx(end((1e-6, "feed", 7)), rel=1e-4)
    assert end((0, "feed", 7)) > 45


def test_an_event_on_the_last_day_or_later_is_left_out_and_said():
    late = forecast((20, "change", 50), (21, "dose", 5))
    assert late["outputs"]["final_nitrate_mg_l"] == pytest.approx(40)
    assert any(note["text"].startswith("2 of the events") for note in late["notes"])


def test_a_new_ration_lasts_until_the_next():
    """From 3.5 g from day 5 on, none from day 15 on: ten days at half a gram a day, all excreted or kept."""
    fed = end((5, "feed", 3.5), (15, "feed", 0), retained_percent=42.5, days=60)
    gained = 10 * 0.5 * 0.45 * 0.092 * 1000 / 100 * 62.004 / 14.007
    assert fed == pytest.approx(40 + gained, rel=0.005)


def test_help_says_what_lasts_and_in_which_unit():
    given = {one["key"]: one for one in run_description()["inputs"]}
    row = {part["key"]: part for part in given["events"]["row"]}
    for word in ("%", "g wet", "mg/L", "until the next new feed"):
        assert word in row["value"]["help"], word


def run_description():
    from calculators.core.describe import describe
    from calculators.core.run import find

    return describe(find("nitrogen-forecast"))


HARSH = {
    "huge feed": {"feed_g_week": 5_000, "volume_l": 10},
    "much feed, all left to rot": {"feed_g_week": 500, "uneaten_percent": 100},
    "acid": {"ph": 4.0}, "alkaline": {"ph": 11.0}, "freezing": {"temperature_c": 0.0},
    "hot": {"temperature_c": 40.0}, "a thimble": {"volume_l": 0.1}, "a pond": {"volume_l": 100_000},
    "all changed every six hours": {"change_percent": 100, "change_every_days": 0.25},
    "thinned and cut": {"thin_floaters_to_percent": 5, "trimmings_g_week": 100_000},
    "soil that gives and takes most": {
        "soil_release_mg_n_m2_day": 1_000, "denitrification_mg_n_m2_day": 1_000,
        "soil_area_cm2": 1_000_000, "soil_age_days": 0,
    },
    "thirty plants": {
        "plants": [
            {"name": str(n), "wet_g": 10.0**(n % 6), "doubling_days": 0.5 + n * n, "floating": n % 3 == 0}
            for n in range(30)
        ]
    },
    "nothing at all": {"feed_g_week": 0, "plants": [], "soil_area_cm2": 0, "nitrate_mg_l": 0},
}  # fmt: skip
BUSY = [
    {"day": day, "kind": kind, "value": value}
    for day in (0, 0.5, 30, 30, 200, 364.99)
    for kind, value in (
        ("change", 100),
        ("trim", 10_000),
        ("feed", 50),
        ("dose", 1_000),
        ("feed", 1),
    )
]


@long_run()
@pytest.mark.parametrize("name", share_of([*HARSH], 4))
def test_no_nitrogen_is_lost_in_a_year_of_a_harsh_tank(name):
    answer = run("nitrogen-forecast", {"days": 365, "events": BUSY} | HARSH[name])
    assert answer["outputs"]["balance_error_percent"] < 0.001
    for key, series in answer["series"].items():
        values = [value for value in series["y"] if value is not None]
        assert all(math.isfinite(value) for value in values)
        assert key == "kh_drift" or min(values, default=0) >= 0, key


@pytest.mark.parametrize("name", TANKS)
def test_hardness_drifts_by_the_balance_of_charges(name):
    """Feed, leaves and gas carry no charge: alkalinity gains what ammonium does, less nitrite and nitrate.

    Electroneutrality, which knows nothing of the rates; nitrification's 7.14 g follows from it.
    """
    tank = TANKS[name]._replace(change_percent=0)
    _, first = build(tank)
    found = simulate(tank, [], 60)
    last = found.state
    gained = (last[0] - first[0]) - (last[1] - first[1]) - (last[2] - first[2])
    assert found.nitrified_mg > 0
    assert last[ALKALINITY] == pytest.approx(gained / 14.007, abs=1e-6)
    degrees = gained / 14.007 / tank.volume_l / 0.35665
    assert found.last.kh_drift == pytest.approx(degrees, rel=1e-4, abs=1e-9)


STEPS = [Event(60 + 7 * n, "feed", 2 * 1.25 ** (n + 1)) for n in range(6)]


def test_feed_raised_by_a_quarter_a_week_makes_healthy_growth_in_about_four_weeks():
    """Common practice, no source: about four weeks. Raised at once it is sooner; no rate is bent for it."""
    rows = [one._asdict() for one in STEPS]
    given = {"days": 200, "feed_g_week": 2, "dli_mol": 12.0, "soil_area_cm2": 0.0}
    given["thin_floaters_to_percent"] = (
        50.0  # below a mat that nobody thins no stem has new growth to judge
    )
    slowly = run("nitrogen-forecast", given | {"events": rows})["outputs"]
    assert slowly["first_shortage_day"] < 60
    assert 21 <= slowly["healthy_after_feeding_days"] <= 42
    assert slowly["healthy_after_feeding_days"] == pytest.approx(slowly["healthy_growth_day"] - 60)
    at_once = [{"day": 60, "kind": "feed", "value": 8}]
    fast = run("nitrogen-forecast", given | {"events": at_once})["outputs"]
    assert 0 < fast["healthy_after_feeding_days"] < slowly["healthy_after_feeding_days"]


@pytest.mark.parametrize(
    ("doubling", "wet_g", "dli"), [(7, 150, 3), (7, 150, 12), (7, 300, 12), (10, 150, 6)]
)
def test_the_pages_three_to_eight_weeks_are_what_the_model_gives(doubling, wet_g, dli):
    """The page of stems that brown gives the model's range; common practice, no source: about four weeks."""
    feed = wet_g / 150
    rows = [one._replace(value=one.value * feed / 2)._asdict() for one in STEPS]
    plants = [{"name": "stems", "wet_g": wet_g, "doubling_days": doubling}]
    found = run(
        "nitrogen-forecast",
        {
            "days": 250,
            "feed_g_week": feed,
            "dli_mol": dli,
            "soil_area_cm2": 0.0,
            "plants": plants,
            "events": rows,
        },
    )["outputs"]
    span = own_records().problems["fast-stems-brown-lean"].expect[-1].by_days
    assert span.low <= found["healthy_after_feeding_days"] <= span.high


@pytest.mark.parametrize("doubling", [6.0, 9.0])
def test_healthy_growth_waits_until_a_third_of_the_stand_is_new(doubling):
    """Growth of ln 1.5 at most: a plant in full light with a full store cannot be sooner."""
    tank = LEAN._replace(
        plants=(StandingPlant("x", 250, doubling),), feed_g_week=0.3, trimmings_g_week=0
    )
    hunger = simulate(tank, [Event(90, "feed", 30)], 200).record.hunger
    assert hunger.first_day is not None
    assert hunger.first_day < 90 < hunger.recovery_day
    waited = hunger.healthy_day - hunger.recovery_day
    assert doubling * math.log2(1.5) < waited < 3 * doubling


def test_without_hunger_or_new_feed_there_is_no_such_answer():
    assert (
        run("nitrogen-forecast", {"feed_g_week": 20})["outputs"]["healthy_after_feeding_days"]
        is None
    )
    dosed = {
        "feed_g_week": 2,
        "dli_mol": 12.0,
        "soil_area_cm2": 0.0,
        "days": 200,
        "events": [{"day": 60, "kind": "dose", "value": 80}],
    }
    found = run("nitrogen-forecast", dosed)["outputs"]
    assert found["first_shortage_day"] is not None
    assert found["healthy_after_feeding_days"] is None


def mass_of_stems(*events, **given):
    """The course of the plants' mass."""
    plants = [{"name": "stems", "wet_g": 500, "doubling_days": 14, "floating": False}]
    return forecast(*events, plants=plants, days=60, **given)["series"]["plant_mass"]["y"]


@pytest.mark.parametrize("dli", [None, 0.1, 0.5, 1.0, 2.9, 10.0])
def test_no_light_at_all_and_a_lamp_that_is_off_all_the_time_are_one(dli):
    off = mass_of_stems((0, "dark", 60), dli_mol=dli)
    assert off[-1] == pytest.approx(mass_of_stems(dli_mol=0)[-1])
    assert 0 < off[-1] < off[0] / 2  # and leaves are lost in it


@pytest.mark.parametrize("wet_g", [500, 3_000, 8_000])
def test_a_dense_stand_in_dim_light_outlives_one_in_the_dark(wet_g):
    plants = [{"name": "stems", "wet_g": wet_g, "doubling_days": 14, "floating": False}]
    left = [
        forecast(plants=plants, days=60, dli_mol=light)["series"]["plant_mass"]["y"][-1]
        for light in (0, 0.3, 0.54, 0.56, 0.8, 1.0, 2.9, 10)
    ]
    assert left == sorted(left)


def test_a_week_without_light_takes_no_stand_away():
    # a keeper's week in the dark, against an algae bloom, leaves most of the plants (common practice)
    for off in (mass_of_stems((0, "dark", 7)), mass_of_stems(dli_mol=0)):
        assert off[7] > 0.7 * off[0]
