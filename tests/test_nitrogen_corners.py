"""The corners where tanks fail: what comes back, what light pays for, acid and soft water, a new filter."""

import itertools
import math
import os
import random

import pytest

from calculators.core.run import run
from calculators.nitrogen_forecast.doubts import slow_food
from calculators.nitrogen_forecast.ensemble import MOST_STEPS, band, run_all
from calculators.nitrogen_forecast.outlook import NITRITE_WATCH_MG_N_L, calm_from
from calculators.science.light.plant_light import DRY_G_PER_MOL, most_growth_g_m2_day
from calculators.science.nitrogen.edges import edges
from calculators.science.nitrogen.forecast_tank import Event, Rates, StandingPlant, Tank
from calculators.science.nitrogen.model import BURIED, FIRST_COHORT
from calculators.science.nitrogen.nitrifiers import acid_factor
from calculators.science.nitrogen.ode import Effort
from calculators.science.nitrogen.plant_constants import DRY_SHARE_FLOATING, DRY_SHARE_ROOTED
from calculators.science.nitrogen.simulate import COARSE, simulate
from calculators.science.nitrogen.start import build
from tests.effort import how_many, long_run, share_of

MAT = StandingPlant("mat", 400, 7, True)
PLAIN = Tank(volume_l=60, feed_g_week=2, protein_percent=45, plants=(), ph=7.4)


def test_unharvested_plants_return_nearly_everything():
    """Published decay, 0.008 to 0.03 a day and more, leaves under a twentieth of a leaf after a year."""
    tank = PLAIN._replace(plants=(MAT,), nitrate_mg_l=10)
    found = simulate(tank, [], 365)
    assert found.last.nitrate > 20  # a closed mat holds what it holds, and feed goes on
    fed = 365 * found.model.fate.fed
    assert found.state[BURIED] < 0.15 * fed  # what is taken up again can be buried again
    dead = simulate(tank._replace(feed_g_week=0), [Event(0, "die-off", 90)], 0.5)
    held = 0.9 * 400 * 0.06 * 25
    assert dead.state[BURIED] == pytest.approx(0.05 * held, rel=0.1)


@pytest.mark.parametrize(("dli", "most"), [(2.33, 4.4), (1.0, 1.9)])
def test_a_mat_grows_no_more_than_the_lamp_pays_for(dli, most):
    """2.33 mol/m²/day pay for 4.4 g dry/m²/day at 1/16 mol of carbon a photon, 40 % carbon in dry mass."""
    assert most_growth_g_m2_day(dli) == pytest.approx(most, abs=0.05)
    assert pytest.approx(12.011 / 16 / 0.4) == DRY_G_PER_MOL
    plant = StandingPlant("mat", 60 * 0.1 / 0.06, 3.0, True)  # a tenth of a layer on a square metre
    tank = PLAIN._replace(
        volume_l=1_000, plants=(plant,), surface_cm2=10_000, dli_mol=dli, nitrate_mg_l=300,
        plant_nitrogen_percent=5.0,
    )  # fmt: skip
    mass = [line.plant_mass * 0.06 for line in simulate(tank, [], 60).record.lines]
    gained = [after - before for before, after in itertools.pairwise(mass)]
    assert max(gained) <= most_growth_g_m2_day(dli)
    assert max(gained) > 0.3 * most_growth_g_m2_day(dli)


def test_in_full_sun_the_published_uptake_of_a_mat_is_met():
    """0.1 to 1 g N a m² and day: floating plants in the open, at some 40 mol a m² and day."""
    per_day = most_growth_g_m2_day(40) * 0.03
    assert per_day > 1
    assert most_growth_g_m2_day(2.9) * 0.03 < 0.2


@pytest.mark.parametrize("dli", [0.0, 0.1, 0.2])
def test_below_the_compensation_light_a_plant_loses_mass(dli):
    """7.5 µmol/m²/s for 8 hours, 0.216 mol a day: the least that Egeria was measured to need."""
    tank = PLAIN._replace(plants=(StandingPlant("stems", 200, 12),), nitrate_mg_l=50, dli_mol=dli)
    assert simulate(tank, [], 60).last.plant_mass < 200
    assert simulate(tank._replace(dli_mol=3.0), [], 60).last.plant_mass > 200


def test_stems_under_a_closed_mat_dwindle_and_untrimmed_ones_reach_a_ceiling():
    below = StandingPlant("stems", 200, 12)
    mat = StandingPlant("mat", 1_000 * PLAIN.surface_m2, 6, True)
    tank = PLAIN._replace(plants=(below, mat), nitrate_mg_l=50)
    after = simulate(tank, [], 365)
    stems = after.model.cohorts[1].mass(after.state[-6]) / 0.08
    assert stems < 200
    alone = PLAIN._replace(plants=(below,), nitrate_mg_l=200, tap_nitrate_mg_l=200, feed_g_week=20)
    year, longer = (simulate(alone, [], days).last.plant_mass for days in (365, 730))
    assert longer < 1.3 * year
    assert year * 0.08 / alone.surface_m2 < 1_000  # g dry a m²: published standing crops


@pytest.mark.parametrize("dli_mol", [1.0, 2.9, 4.0, 6.0, 12.0])
def test_stems_below_a_mat_that_nobody_thins_lose_mass_under_any_lamp(dli_mol):
    """A full mat is three closed layers: what one lets through would still feed stems under a bright lamp."""
    stems, mat = StandingPlant("stems", 200, 14), StandingPlant("mat", 900, 7, True)
    tank = Tank(120, 3, 45, (stems, mat), nitrate_mg_l=30, dli_mol=dli_mol)
    found = simulate(tank, [], 180)
    afloat, below = (
        cohort.members[0][0]
        * math.exp(cohort.members[0][1] * found.state[FIRST_COHORT + 2 * place])
        for place, cohort in enumerate(found.model.cohorts)
    )
    assert below < 0.5 * stems.wet_g * DRY_SHARE_ROOTED
    assert afloat > 0.9 * mat.wet_g * DRY_SHARE_FLOATING


def test_dark_and_die_off_let_ammonia_rise():
    tank = PLAIN._replace(
        plants=(StandingPlant("stems", 600, 12),), nitrate_mg_l=20, feed_g_week=0.5
    )
    calm = simulate(tank, [], 40).record.ammonia.value
    crash = simulate(tank, [Event(10, "die-off", 80)], 40).record.ammonia.value
    assert crash > 3 * calm
    dark = simulate(tank, [Event(10, "dark", 25)], 40)
    assert dark.last.plant_mass < simulate(tank, [], 40).last.plant_mass


FEEDS = (0.05, 0.1, 0.25, 0.5, 1.0, 1.5, 2.0, 3.0)
NEW = PLAIN._replace(filter_maturity_percent=0, temperature_c=25)


def exposure(record, line):
    """Nitrite above a line, times days: what the animals meet."""
    return sum(max(0.0, one.nitrite - line) for one in record.lines)


@pytest.mark.parametrize("volume", [20, 60, 120, 300])
@pytest.mark.parametrize("soil", [0, 1])
def test_more_feed_raises_the_peaks_of_a_new_filter_and_harms_more(volume, soil):
    new = NEW._replace(volume_l=volume, soil_area_cm2=soil * 120 * volume ** (2 / 3))
    records = [simulate(new._replace(feed_g_week=feed), [], 120).record for feed in FEEDS]
    for poison in ("ammonia", "nitrite"):
        peaks = [getattr(one, poison).value for one in records]
        assert peaks == sorted(peaks)
    exposures = [exposure(one, NITRITE_WATCH_MG_N_L) for one in records]
    assert exposures == sorted(exposures)


@pytest.mark.parametrize("volume", share_of([60, 240], 2))
@pytest.mark.parametrize("warmth", share_of([12, 18, 25], 2))
def test_less_feed_never_brings_a_new_filter_to_rest_later(volume, warmth):
    """With a seed that does not depend on the load, and no plants that take the food away.

    Two days are lines of whole days, and the slower growth that is left between the half-saturations.
    """
    given = {
        "volume_l": volume, "filter_maturity_percent": 0, "temperature_c": warmth, "days": 250,
        "soil_area_cm2": 0, "nitrate_mg_l": 5, "plants": [],
    }  # fmt: skip
    days = [
        run("nitrogen-forecast", given | {"feed_g_week": feed})["outputs"]["calm_from_day"]
        for feed in (*FEEDS, 4.0, 8.0)
    ]
    assert None not in days
    assert max(days) > 30
    assert all(sooner <= later + 2 for sooner, later in itertools.combinations(days, 2)), days


@long_run()
@pytest.mark.parametrize("soil", [0, 1])
@pytest.mark.parametrize("warmth", [18, 25])
def test_what_plants_leave_can_end_later_with_less_feed_and_then_the_answer_says_so(warmth, soil):
    """The bacteria grow on what is left. Beside soil enough is left, and the rule holds as without plants."""
    stems = StandingPlant("stems", 30, 14)
    new = NEW._replace(plants=(stems,), soil_area_cm2=soil * 1_800, temperature_c=warmth)
    days = {
        feed: calm_from(
            simulate(new._replace(feed_g_week=feed), [], 150).record.lines, new.ph, warmth
        )
        for feed in FEEDS
    }
    for sooner, later in itertools.combinations(days.values(), 2):
        assert sooner <= later + (14 if slow_food(new, sooner) else 2), days
    assert not slow_food(new._replace(plants=()), 40.0)
    assert not slow_food(new._replace(filter_maturity_percent=90), 40.0)


CUT_MOST = [
    (300, 15.8, 0, [(950, 8, False), (240, 7, True)]), (120, 5.3, 0, [(312, 15, False)]),
    (60, 1.6, 0, [(95, 15, False), (24, 7, True)]), (10, 0.175, 0, [(13, 15, False)]),
    (30, 1.07, 0, [(20, 8, False), (5, 7, True)]), (120, 3.4, 5, [(135, 8, False), (34, 7, True)]),
]  # fmt: skip


@long_run()
@pytest.mark.parametrize(("volume", "feed", "maturity", "plants"), CUT_MOST)
def test_the_three_weeks_that_less_feed_can_cost_a_planted_young_filter(
    volume, feed, maturity, plants
):
    """Tanks, found among seventy made up, in which more feed comes to rest soonest before less."""
    rows = [dict(zip(("wet_g", "doubling_days", "floating"), one, strict=True)) for one in plants]
    given = {
        "volume_l": volume, "filter_maturity_percent": maturity, "days": 150, "soil_area_cm2": 0,
        "nitrate_mg_l": 5, "temperature_c": 25,
        "plants": [{"name": f"plant {number}"} | row for number, row in enumerate(rows)],
    }  # fmt: skip
    answers = [run("nitrogen-forecast", given | {"feed_g_week": feed * k}) for k in (1, 1.5, 3)]
    days = [answer["outputs"]["calm_from_day"] for answer in answers]
    known = [day for day in days[1:] if day is not None]
    assert known
    assert days[0] is not None
    assert days[0] <= min(known) + 21
    said = [any("share the food" in n["text"] for n in one["notes"]) for one in answers]
    assert said == [True] * 3


@pytest.mark.parametrize("edge", range(3))
def test_at_each_edge_less_feed_never_brings_a_new_filter_to_rest_later(edge):
    rates = (Rates(), *edges(Rates()))[edge]
    days = [
        calm_from(simulate(tank, [], 150, rates).record.lines, tank.ph, tank.temperature_c)
        for tank in (NEW._replace(feed_g_week=feed) for feed in FEEDS)
    ]
    assert None not in days
    assert all(sooner <= later + 2 for sooner, later in itertools.combinations(days, 2)), days


def test_a_mature_film_keeps_the_half_saturation_of_plenty_however_little_is_fed():
    """Real tanks show more ammonia than the forecast: what it leaves is made no less."""
    old, new = (
        NEW._replace(feed_g_week=0.05, filter_maturity_percent=100),
        NEW._replace(feed_g_week=0.05),
    )
    most = edges(Rates())[1]
    assert build(old, most)[0].ammonia_half == most.ammonia_half
    assert build(new, most)[0].ammonia_half < 0.1
    assert build(new._replace(ammonia_mg_n_l=1.0), most)[0].ammonia_half == most.ammonia_half
    fed = simulate(new, [Event(5, "feed", 5)], 6, most)
    assert fed.model.ammonia_half == most.ammonia_half


@pytest.mark.parametrize("days", [5, 10, 20, 30])
@pytest.mark.parametrize("feed", [0.1, 1.0])
def test_a_short_run_calls_no_new_filter_calm_that_a_longer_run_does_not(days, feed):
    """Nitrite that is low on the last day only since the run ends before it rises is no calm."""
    given = {
        "volume_l": 60, "feed_g_week": feed, "plants": [], "soil_area_cm2": 0,
        "filter_maturity_percent": 0, "start_ammonia_mg_n_l": 0, "start_nitrite_mg_n_l": 0,
    }  # fmt: skip
    calm, in_time = (
        run("nitrogen-forecast", given | {"days": span})["outputs"]["calm_from_day"]
        for span in (days, 120)
    )
    assert in_time is not None
    assert in_time > 0
    assert calm is None or calm >= in_time


@pytest.mark.parametrize("ph", [6.0, 6.4, 6.8])
def test_an_established_acid_tank_shows_no_permanent_nitrite_and_a_sudden_fall_slows(ph):
    """Biofilms that are used to it nitrify at pH 4.3 as others do at 7 (Tarre and Green 2004)."""
    old = simulate(PLAIN._replace(ph=ph, feed_g_week=4), [], 90)
    assert old.last.nitrite < 0.06
    assert old.record.nitrite.value < 0.06
    fallen = simulate(PLAIN._replace(ph=ph, usual_ph=7.6, feed_g_week=4), [], 90)
    assert fallen.record.ammonia.value > 1.1 * old.record.ammonia.value
    assert acid_factor(ph, 7.6) < acid_factor(ph, ph) == 1
    assert fallen.last.ammonia < 1.1 * old.last.ammonia  # and the film gets used to it


def test_low_ammonia_keeps_a_filter_alive_beside_plants():
    """With the half-saturation of complete oxidisers in the band, feed that doubles is not deadly at once."""
    tank = PLAIN._replace(plants=(StandingPlant("stems", 300, 10),), dli_mol=8.0)
    found = simulate(tank, [Event(60, "feed", 4)], 90)
    assert found.record.ammonia.value < 0.3


def test_hardness_never_falls_below_nothing_and_stops_the_filter():
    tank = PLAIN._replace(kh_dh=1.5, tap_kh_dh=1.5, feed_g_week=6, filter_maturity_percent=0)
    lines = simulate(tank, [], 180).record.lines
    assert min(line.kh for line in lines) >= 0
    assert lines[-1].kh_drift >= -1.5
    assert (
        lines[-1].ammonia
        > simulate(tank._replace(kh_dh=15.0, tap_kh_dh=15.0), [], 180).last.ammonia + 1
    )
    given = {
        "kh_dh": 1.5,
        "tap_kh_dh": 1.5,
        "feed_g_week": 6,
        "plants": [],
        "soil_area_cm2": 0,
        "days": 180,
    }
    texts = [note["text"] for note in run("nitrogen-forecast", given)["notes"]]
    assert any("below 1 °dH: the filter stops growing" in text for text in texts)


def test_a_mature_filter_with_much_ammonia_is_said_to_be_inconsistent():
    texts = [n["text"] for n in run("nitrogen-forecast", {"start_ammonia_mg_n_l": 3.0})["notes"]]
    assert any(text.startswith("These figures do not go together") for text in texts)
    calm = [n["text"] for n in run("nitrogen-forecast", {"start_ammonia_mg_n_l": 0.0})["notes"]]
    assert not any("do not go together" in text for text in calm)


RISKS = [
    {"filter_maturity_percent": maturity, "feed_g_week": feed, "ph": ph, "plants": plants, "days": 60}
    for maturity in (0, 5, 60) for feed in (0.5, 6) for ph in (7.0, 8.2)
    for plants in ([], [{"name": "stems", "wet_g": 400, "doubling_days": 10}])
]  # fmt: skip
CALM = {
    "level",
    "growing",
    "falling",
    "building",
    "swinging",
    "running-short",
    "recovered",
    "dwindling",
}


def test_nothing_is_called_calm_that_an_edge_of_the_band_lets_become_deadly():
    """With the band shown and without."""
    near, tried = 0, share_of(RISKS, 5)
    for given in tried:
        shown, plain = (run("nitrogen-forecast", given | {"spread": s}) for s in ("band", "none"))
        texts = [note["text"] for note in shown["notes"]]
        if any(note["level"] == "danger" for note in shown["notes"]):
            near += 1
            for answer in (shown, plain):
                assert answer["outputs"]["verdict"] not in CALM | {"watch"}, (given, texts)
    assert near > len(tried) / 5


def random_tank(draw):
    plants = tuple(
        StandingPlant("p", 10 ** draw.uniform(0, 3), draw.uniform(3, 60), draw.random() < 0.4)
        for _ in range(draw.randrange(4))
    )
    volume = 10 ** draw.uniform(1, 2.8)
    return Tank(
        volume_l=volume, feed_g_week=volume / 20 * draw.random(), protein_percent=45, plants=plants,
        soil_area_cm2=120 * volume ** (2 / 3), change_percent=draw.uniform(0, 60),
        change_every_days=7.0, nitrate_mg_l=draw.uniform(0, 80), ammonia_mg_n_l=draw.random(),
        ph=draw.uniform(6, 8.5), filter_maturity_percent=draw.choice([0.0, 50.0, 100.0]),
        kh_dh=draw.choice([None, draw.uniform(0, 12)]), dli_mol=draw.choice([None, draw.uniform(0, 20)]),
        trimmings_g_week=draw.choice([0.0, 30.0]), soil_age_days=draw.uniform(0, 400),
    )  # fmt: skip


def test_random_tanks_lose_nothing():
    """Against the ledger, which knows no rate; with dark spells, die-off and changes on the way."""
    draw = random.Random(11)
    for _ in range(int(os.environ.get("NITROGEN_EXAMPLES", how_many(300)))):
        tank = random_tank(draw)
        events = [Event(5, "die-off", draw.uniform(0, 100)), Event(8, "dark", draw.uniform(0, 9))]
        found = simulate(tank, events, 15, relative=COARSE, daily=False)
        assert found.balance_error_percent < 1e-9, tank


def test_the_band_spans_the_published_half_saturations():
    tank = PLAIN._replace(feed_g_week=4)
    ran = run_all(tank, [], 60, Rates(), with_edges=True)
    low, high = (one.lines[-1].ammonia for one in band(ran.middle, ran.at_edges).edges)
    assert low < ran.middle.last.ammonia < high


CHANGED_OFTEN = {"days": 365, "change_percent": 50, "change_every_days": 0.25, "plants": []}


@pytest.mark.parametrize("more", [{}, {"spread": "band"}, {"target_nitrate_mg_l": 10.0}])
def test_a_forecast_that_would_take_long_stops_and_says_on_which_day(more, monkeypatch):
    monkeypatch.setattr("calculators.nitrogen_forecast.ensemble.MOST_STEPS", 300)
    answer = run("nitrogen-forecast", CHANGED_OFTEN | more)
    last = answer["series"]["nitrate"]["x"][-1]
    assert 1 <= last < 365
    assert last == int(last)
    said = [
        note for note in answer["notes"] if note["text"].startswith("The forecast stops on day")
    ]
    assert said
    assert said[0]["level"] == "caution"
    assert answer["notes"].index(said[0]) < len(answer["notes"]) - 1
    assert f"day {last:g} of 365" in said[0]["text"]
    if "target_nitrate_mg_l" in more:
        assert answer["outputs"]["feed_for_target_g_week"] is None
        assert any(n["text"].startswith("Not all ways to that target") for n in answer["notes"])
    assert answer["outputs"]["balance_error_percent"] < 0.001


STAND = tuple(
    StandingPlant(f"plant {days}", 42.5, days, days in (6, 8, 10))
    for days in (6, 8, 10, 12, 14, 18, 22, 28, 35, 45, 60, 90)
)
DAILY = [Event(day, "change", 20) for day in range(1, 365)]


@long_run()
def test_a_change_every_day_for_a_year_is_followed_in_few_steps_and_as_a_kit_would_see_it():
    """Traces that no kit shows are no reason for two steps more a day."""
    tank = PLAIN._replace(
        volume_l=120, feed_g_week=3, plants=STAND, soil_area_cm2=2_900, nitrate_mg_l=15
    )
    for rates in (Rates(), *edges(Rates())):
        effort = Effort(1_600)  # each change counts as one, too
        coarse = simulate(tank, DAILY, 365, rates, relative=COARSE, effort=effort)
        assert coarse.day == 365
        fine = simulate(tank, DAILY, 365, rates)
        assert coarse.last.nitrate == pytest.approx(fine.last.nitrate, rel=1e-3, abs=0.01)
        assert coarse.last.plant_mass == pytest.approx(fine.last.plant_mass, rel=1e-4)
        for poison in ("ammonia", "nitrite"):
            seen, close = (getattr(one.record, poison).value for one in (coarse, fine))
            assert seen == pytest.approx(close, rel=0.01, abs=0.003)


@long_run()
def test_a_year_of_daily_changes_with_twelve_plants_and_the_band_is_forecast_whole():
    rows = [plant._asdict() for plant in STAND]
    answer = run("nitrogen-forecast", {
        "days": 365, "plants": rows, "events": [one._asdict() for one in DAILY], "spread": "band",
    })  # fmt: skip
    assert answer["series"]["nitrate"]["x"][-1] == 365


def test_runs_that_are_cut_short_have_the_same_lines(monkeypatch):
    """Whatever is done on the day on which one of them ends, and however little may be tried."""
    draw, cut = random.Random(5), 0
    kinds = ("change", "trim", "feed", "dose", "dark", "die-off")
    for _ in range(how_many(60)):
        steps = draw.choice([30, 100, 200, 400])
        monkeypatch.setattr("calculators.nitrogen_forecast.ensemble.MOST_STEPS", steps)
        days = [draw.choice([draw.uniform(0, 99), float(draw.randrange(99))]) for _ in range(40)]
        events = [Event(day, draw.choice(kinds), draw.uniform(1, 40)) for day in days]
        tank = random_tank(draw)._replace(change_every_days=draw.choice([0.5, 1.0, 7.0]))
        ran = run_all(tank, events, 100, Rates(), with_edges=True)
        lines = {
            tuple(line.day for line in one.record.lines) for one in (ran.middle, *ran.at_edges)
        }
        assert len(lines) == 1
        cut += ran.days < 100
    assert cut


@long_run()
def test_an_ordinary_year_is_forecast_whole():
    for given in (
        {"days": 365, "spread": "band"},
        {"days": 365, "kh_dh": 4.0, "filter_maturity_percent": 0},
    ):
        assert run("nitrogen-forecast", given)["series"]["nitrate"]["x"][-1] == 365
    assert MOST_STEPS >= 3_000
