"""The model against scipy on the same right-hand side, against closed forms, and rate by rate."""

import math
from itertools import pairwise

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from calculators.science.conversions import PERCENT_TO_MG_PER_G
from calculators.science.light import plant_light
from calculators.science.light.plant_light import (
    dimmest_share,
    lone_growth,
    stand_growth,
    stand_loss,
)
from calculators.science.nitrogen import model as places
from calculators.science.nitrogen.budget import Ledger
from calculators.science.nitrogen.cohorts import MOST_COHORTS, gather
from calculators.science.nitrogen.constants import AMMONIA_LEFT_MG_L
from calculators.science.nitrogen.daily_record import DailyRecord, line
from calculators.science.nitrogen.events import Scene, apply, schedule
from calculators.science.nitrogen.forecast_tank import Event, Rates, StandingPlant, Tank
from calculators.science.nitrogen.nitrifiers import (
    acid_factor,
    temperature_factor,
    used_to_ph,
)
from calculators.science.nitrogen.plant_constants import CRITICAL_N, FULL_N_ROOTED
from calculators.science.nitrogen.plant_rates import starving_loss, store_growth
from calculators.science.nitrogen.right_side import right_side
from calculators.science.nitrogen.simulate import simulate
from calculators.science.nitrogen.start import build
from calculators.science.nitrogen.steady import nitrate_of
from calculators.science.nitrogen.transport import limited_rate
from calculators.science.water.chemistry import NITRATE_PER_N
from tests.effort import share_of
from tests.nitrogen_tanks import BARE, EVENTS, LEAN, NO_DROPPINGS, TANKS

DAYS = 60
PROMPT = Rates(retained_percent=NO_DROPPINGS)


def by_scipy(tank, events, days, method="LSODA", tight=1e-10):
    """Model and states of every day (before its events), from scipy's implicit solver, tight."""
    rates = Rates()
    scene = Scene(*build(tank, rates))
    ledger, now, found_days = Ledger(*scene), 0.0, {0: scene}
    for task in [*schedule(tank, events, days), None]:
        until = days if task is None else task.day
        if until > now:
            looks = [day for day in range(math.ceil(now), math.floor(until) + 1) if day > now]
            f = right_side(scene.model)
            found = solve_ivp(
                lambda t, y, f=f: f(t, list(y)), (now, until), scene.state, method=method,
                t_eval=[*looks, *([] if looks and looks[-1] == until else [until])],
                rtol=tight, atol=tight,
            )  # fmt: skip
            for day, state in zip(found.t, found.y.T, strict=True):
                found_days[day] = Scene(scene.model, list(state))
            scene, now = Scene(scene.model, list(found.y[:, -1])), until
        if task is not None:
            scene = apply(task, scene, tank, rates, ledger)
    return found_days


@pytest.fixture
def kept_states(monkeypatch):
    """Makes the forecast keep its states as well as its lines."""
    kept = []

    class Keeping(DailyRecord):
        def note(self, day, state):
            kept.append((day, self.model, list(state)))
            super().note(day, state)

    monkeypatch.setattr("calculators.science.nitrogen.simulate.DailyRecord", Keeping)
    return kept


BUSY = [
    Event(0, "change", 30), Event(3.25, "dose", 20), Event(12, "feed", 12), Event(12, "trim", 60),
    Event(12, "change", 40), Event(30, "feed", 1), Event(47.5, "trim", 200), Event(50, "dose", 5),
]  # fmt: skip


@pytest.mark.parametrize(
    ("name", "events"),
    share_of([(name, events) for name in TANKS for events in ([], EVENTS, BUSY)], 4),
)
def test_agrees_with_scipy_at_every_day(name, events, kept_states):
    """Every state, whether shown or not, within 0.1 %, or 0.00002 mg N/L for what no kit sees."""
    tank = TANKS[name]
    theirs = by_scipy(tank, events, DAYS)
    simulate(tank, events, DAYS)
    agree(kept_states, theirs, tank, DAYS)


@pytest.mark.parametrize("name", ["new", "rich"])
def test_agrees_with_scipys_backward_differences(name, kept_states):
    """A second solver of theirs, of another kind: implicit formulas of several steps."""
    tank = TANKS[name]._replace(kh_dh=3.0, tap_kh_dh=3.0, usual_ph=7.4)
    theirs = by_scipy(tank, EVENTS, 30, "BDF", 1e-8)
    simulate(tank, EVENTS, 30)
    agree(kept_states, theirs, tank, 30)


def agree(kept_states, theirs, tank, days):
    """Every state of every day within 0.1 %, or 0.00002 mg N/L."""
    seen = set()
    for day, model, state in kept_states:
        if day in seen or day not in theirs:
            continue  # the second line of a day is after its events
        seen.add(day)
        least = 2e-5 * tank.volume_l
        assert state == pytest.approx(theirs[day].state, rel=1e-3, abs=least), f"day {day}"
        for ours, exact in zip(line(day, model, state), line(day, *theirs[day]), strict=True):
            if not math.isnan(exact):
                assert ours == pytest.approx(exact, rel=1e-3, abs=1e-4), f"day {day}"
    assert len(seen) >= days


def dissolved(found):
    return sum(found.state[: places.NITRATE + 1])


def test_without_plants_and_soil_it_piles_up_as_timmons_and_ebeling_say():
    """0.092 g of nitrogen for each gram of protein (second-hand), whatever form it is in by then."""
    found = simulate(BARE, [], 90, PROMPT)
    assert dissolved(found) == pytest.approx(0.092 * 0.45 * 1000 * 90, rel=1e-9)
    assert found.last.nitrate == pytest.approx(nitrate_of(0.092 * 0.45 * 1000 * 90, 100), rel=0.01)


@pytest.mark.parametrize("maturity", [0, 100])
def test_droppings_rot_first_order(maturity):
    """e t + s (t − (1 − exp(−kt))/k) for a clean start; a tank in balance gives e t + s t."""
    tank = BARE._replace(filter_maturity_percent=maturity)
    found = simulate(tank, [], 40)
    k, fate = found.model.mineralisation, found.model.fate
    late = 0 if maturity else (1 - math.exp(-40 * k)) / k
    expected = 40 * fate.excreted + fate.rotting * (40 - late)
    assert dissolved(found) == pytest.approx(expected, rel=1e-4)
    assert fate.fed == pytest.approx(7000 * 0.45 * 0.16 / 7)


def test_water_changes_settle_where_the_fixed_point_is():
    """high = c + a/f for all dissolved nitrogen together, after forty changes."""
    tank = BARE._replace(change_percent=25, change_every_days=7, tap_nitrate_mg_l=5)
    found = simulate(tank, [], 7 * 41, PROMPT)
    a, f, c = 0.092 * 0.45 * 1000 * 7, 0.25, 5 / NITRATE_PER_N * 100
    assert dissolved(found) == pytest.approx(c + a / f, rel=1e-4)


@pytest.mark.parametrize("day", [7, 14, 30])
def test_a_well_fed_mat_grows_logistically(day):
    """The closed form of the logistic, at the growth that a full store allows."""
    surface_cm2, start_g_m2, limit = 2_000.0, 9.0, 180.0
    wet = start_g_m2 * surface_cm2 / 1e4 / 0.06
    tank = BARE._replace(
        plants=(StandingPlant("mat", wet, 4.0, True),), surface_cm2=surface_cm2, plant_nitrogen_percent=5.0,
        volume_l=10_000, nitrate_mg_l=900, dli_mol=60.0, ammonia_mg_n_l=100, filter_maturity_percent=0,
    )  # fmt: skip
    found = simulate(tank, [], day)
    dry_g_m2 = found.last.plant_mass * 0.06 / (surface_cm2 / 1e4)
    rate = math.log(2) / 4 * 0.98  # the store stays just short of full
    closed = limit / (1 + (limit / start_g_m2 - 1) * math.exp(-rate * day))
    assert dry_g_m2 == pytest.approx(closed, rel=0.015)


def test_a_mature_biofilm_leaves_no_more_than_the_published_ammonia():
    """0.07 mg N/L, the least a biofilm reactor settled at (abstract), with few fish and no plants."""
    tank = BARE._replace(feed_g_week=0.5, ph=7.5)
    assert AMMONIA_LEFT_MG_L < simulate(tank, [], 365).last.ammonia < 0.07


def test_a_new_tank_peaks_in_ammonia_first_and_nitrite_after():
    """Common practice, no source: ammonia in the second week or so, nitrite in the fourth, then calm."""
    record = simulate(BARE._replace(filter_maturity_percent=0), [], 60).record
    assert 7 <= record.ammonia.day <= 21
    assert record.ammonia.day < record.nitrite.day <= 35
    assert record.lines[-1].nitrite < 0.1


def test_an_unplanted_tank_loses_hardness_and_plants_give_it_back():
    """From protein to nitrate one equivalent a mole; taken up as nitrate it comes back."""
    bare = simulate(BARE, [], 90, PROMPT)
    oxidised = bare.state[places.NITRATE] + bare.state[places.NITRITE]
    still = bare.state[places.AMMONIUM]  # made with one equivalent, not yet oxidised with two
    assert bare.state[places.ALKALINITY] == pytest.approx((still - oxidised) / 14.007, rel=1e-6)
    planted = simulate(BARE._replace(other_uptake_mg_n_day=41.4), [], 90, PROMPT)
    assert abs(planted.last.kh_drift) < abs(bare.last.kh_drift) / 10


def test_the_right_side_is_the_sum_of_the_named_rates():
    """One plant of each kind, at a state in the middle of things, each flow put together anew."""
    tank = LEAN._replace(
        plants=(StandingPlant("stems", 300, 10), StandingPlant("floaters", 60, 7, True)),
        dli_mol=30.0,
    )
    model, y = build(tank)
    y[:7] = [30.0, 10.0, 200.0, 50.0, 60.0, 40.0, 500.0]
    first = places.FIRST_COHORT
    y[first + 1], y[first + 3] = 3.6 * 11, 24 * 20  # floaters starve, stems do well
    slopes = right_side(model)(0.0, y)
    volume, r_stems, r_floats = 120, math.log(2) / 10, math.log(2) / 7
    room_f, room_s = (50 - 11) / (50 - 6.2), (40 - 20) / (40 - 6.2)
    rooted = 24 * r_stems * 40 * room_s
    demand = 3.6 * r_floats * 50 * room_f + rooted
    taken_a = limited_rate(30, 7.2 * demand, 0.1 * volume, 24)
    taken_n = limited_rate(200, 1.2 * demand * 0.3 / (0.3 + 0.25), 0.2 * volume, 24)
    step_1 = limited_rate(30, y[places.OXIDISERS], 0.1 * volume, 24)
    step_2 = limited_rate(10, y[places.NITRITE_OXIDISERS], 0.084 * volume, 24)
    gas = limited_rate(200, model.denitrification, 10 * volume, 24)
    k, k_litter = 0.05 * 1.07**5, 0.02 * 1.07**5
    slowly = math.log(2) / 240 * 500
    roots = slowly * rooted / (rooted + slowly)
    made = model.fate.excreted + k * 50 + k_litter * 60 + math.log(2) / 30 * 40 + slowly - roots
    assert slopes[places.AMMONIUM] == pytest.approx(made - taken_a - step_1)
    assert slopes[places.NITRITE] == pytest.approx(step_1 - step_2)
    assert slopes[places.NITRATE] == pytest.approx(step_2 - taken_n - gas)
    lone = 30 / 30.72 - 0.216 / 0.936
    top = 30 * (1 - 0.9 * 3.6 / (60 * model.surface_m2))
    depth = 0.02 * 24 / model.surface_m2
    gain, shaded = stand_growth(top, top * math.exp(-depth), depth)
    assert slopes[first + 2] == pytest.approx((store_growth(20, 40) * gain - shaded) / lone)
    mat = 3.6 / (180 * model.surface_m2)
    lost = starving_loss(11)
    assert slopes[first] == pytest.approx(store_growth(11, 50) * (1 - mat) - lost)
    shed = 3.6 * r_floats * (store_growth(11, 50) * mat * 11 + lost * 6.2)
    share = 3.6 * r_floats * 50 * room_f / demand
    assert slopes[first + 1] == pytest.approx((taken_a + taken_n) * share - shed)
    shed += 24 * r_stems * shaded / lone * 20
    back = 0.95 * shed
    assert slopes[places.SOLIDS] == pytest.approx(model.fate.rotting - k * 50 + 0.3 * back)
    assert slopes[places.LITTER] == pytest.approx(0.7 * back - k_litter * 60)


def test_stand_growth_is_the_mean_of_its_layers():
    """Against numerical integration of the net growth over a stand that takes light exponentially."""
    for top, depth in ((3.0, 0.5), (3.0, 6.0), (0.3, 2.0), (0.1, 1.0)):
        light = top * np.exp(-np.linspace(0, depth, 200_001))
        net = light / (light + 0.72) - 0.216 / 0.936
        layers = np.linspace(0, depth, 200_001)
        gain = np.trapezoid(np.maximum(net, 0), layers) / depth
        loss = np.trapezoid(np.maximum(-net, 0), layers) / depth
        assert stand_growth(top, top * math.exp(-depth), depth) == pytest.approx(
            (gain, loss), rel=1e-4, abs=1e-7
        )
    assert plant_light.net_growth(0.216) == pytest.approx(0.0)


def test_growth_at_the_critical_store_is_well_below_full():
    """Gerloff and Krombholz's 1.3 % (MEM) is where growth starts to suffer, not where it ends."""
    assert 0.5 < store_growth(CRITICAL_N, 40) < 0.8
    assert store_growth(6.2, 40) == 0
    assert store_growth(40, 40) == pytest.approx(1)


def test_factors_are_one_where_they_should_be():
    assert temperature_factor(25) == 1
    assert temperature_factor(20) == pytest.approx(0.681, abs=0.001)  # 1.08^-5
    assert acid_factor(7.2, 7.2) == acid_factor(8.5, 7.2) == acid_factor(7.2, 8.5) == 1
    assert acid_factor(6.7, 7.2) == pytest.approx(1 - 0.833 * 0.5)
    assert acid_factor(4, 7.2) == 0.15
    assert acid_factor(4.3, 4.3) == 1  # Tarre and Green 2004: as fast as others at neutral pH
    assert used_to_ph(5.0, 7.0, 60) == pytest.approx(5.1, abs=0.01)


def test_a_well_fed_plant_settles_inside_published_tissue_values():
    """Submerged 2.35 to 3.5 % nitrogen, small floaters 3.0 to 5.3 % (FAO table; Reddy and DeBusk)."""
    for plant, low, high in (
        (StandingPlant("s", 50, 20), 2.3, 3.6),
        (StandingPlant("f", 50, 10, True), 2.8, 5.3),
    ):
        tank = BARE._replace(plants=(plant,), nitrate_mg_l=50, volume_l=2_000)
        assert low < simulate(tank, [], 40).last.plant_nitrogen_percent < high


def test_a_published_mean_of_rooted_water_plants_lies_between_browning_and_full():
    """Seagrasses of 27 species hold 1.92 % nitrogen on the mean (Duarte 1990, abstract read).

    The means for freshwater plants of Duarte 1992 stand in its text, which was not opened.
    """
    percent = (CRITICAL_N / PERCENT_TO_MG_PER_G, FULL_N_ROOTED / PERCENT_TO_MG_PER_G)
    assert percent[0] < 1.92 < percent[1]


def test_a_floating_mat_takes_nitrogen_at_a_published_areal_rate():
    """0.09 to 0.46 g N a m² and day, from yields and protein of Azolla to Salvinia (full sun)."""
    plant = StandingPlant("mat", 300.0, 5.0, True)  # 0.3 of a layer on a square metre
    tank = BARE._replace(
        plants=(plant,), volume_l=1_000, nitrate_mg_l=60, surface_cm2=10_000, dli_mol=40.0
    )
    runs = [simulate(tank, [], days).state for days in (20, 27)]
    store = places.FIRST_COHORT + 1
    gained = runs[1][store] - runs[0][store]
    assert 0.05 < gained / 7 / 1000 < 0.46


def test_cohorts_are_exact_for_few_plants_and_few_for_many():
    few = [StandingPlant(str(days), 10, days) for days in (5, 9, 17, 30)] + [
        StandingPlant("f", 10, 6, True)
    ]
    assert [cohort.names for cohort in gather(few)] == [("f",), ("5",), ("9",), ("17",), ("30",)]
    many = [StandingPlant(str(n), 10, 5 + 3 * n, n % 4 == 0) for n in range(12)]
    cohorts = gather(many)
    assert len(cohorts) == MOST_COHORTS
    assert sorted(name for cohort in cohorts for name in cohort.names) == sorted(
        map(str, range(12))
    )
    dry = sum(10 * (0.06 if plant.floating else 0.08) for plant in many)
    assert sum(cohort.mass(0) for cohort in cohorts) == pytest.approx(dry)


def test_joining_cohorts_changes_little(monkeypatch):
    """Twelve plants in five cohorts against each in its own."""
    many = tuple(StandingPlant(str(n), 40, 6 + 3 * n, n % 4 == 0) for n in range(12))
    tank = LEAN._replace(plants=many)
    joined = simulate(tank, [], 90)
    monkeypatch.setattr("calculators.science.nitrogen.cohorts.MOST_COHORTS", 99)
    apart = simulate(tank, [], 90)
    assert len(apart.model.cohorts) == 12
    assert joined.last.plant_mass == pytest.approx(apart.last.plant_mass, rel=0.05)
    assert joined.last.nitrate == pytest.approx(apart.last.nitrate, abs=0.5)


@pytest.mark.parametrize(
    ("name", "cover"),
    [("Common duckweed", 74), ("lemna-minor", 74), (" spirodela polyrhiza", 50), ("frogbit", 12.5)],
)
def test_a_flat_duckweed_closes_with_a_quarter_of_the_mass_that_others_need(name, cover):
    """125 g wet on a square metre: dry over area, fronds have 6 to 17 and 8 to 29 g a square metre."""
    mat = StandingPlant(name, 125, 7, floating=True)
    tank = Tank(100, 0, 45, (mat,), surface_cm2=10_000, nitrate_mg_l=20)
    first = simulate(tank, [], 1).record.lines[0]
    assert first.floating_cover == pytest.approx(cover, rel=0.03)
    assert first.light_below_floaters == pytest.approx(100 - 0.9 * cover, rel=0.03)


def test_kinds_that_close_differently_are_thinned_by_what_they_cover_together():
    """Each keeps its own store, however alike they grow, and both lose the same share."""
    mats = (StandingPlant("Duckweed", 200, 7, True), StandingPlant("Salvinia", 800, 7, True))
    tank = Tank(100, 0, 45, mats, surface_cm2=10_000, nitrate_mg_l=20, thin_to_percent=40)
    found = simulate(tank, [], 7.001)
    assert len(found.model.cohorts) == 2
    assert found.last.floating_cover == pytest.approx(40, abs=0.1)
    assert found.balance_error_percent < 1e-9


@pytest.mark.parametrize("depth", [0.0, 0.1, 1.0, 3.0, 10.0])
@pytest.mark.parametrize("let_through", [1.0, 0.5, 0.1])
def test_more_light_never_kills_faster_nor_lets_less_grow(depth, let_through):
    """In a stand, open or below floaters, of which one doubling time is given, whatever the light."""

    def rates(light):
        top = light * let_through
        gain, lost = stand_growth(top, top * math.exp(-depth), depth)
        lone, share = lone_growth(light), dimmest_share(light)
        dim = top * share
        least = stand_growth(dim, dim * math.exp(-depth), depth)[1]
        return gain / lone, stand_loss(lost, lone, least) if share else lost / lone

    lights = [0.01 * 1.02**step for step in range(400)]  # 0.01 to 27 mol a m² and day
    both = [rates(light) for light in lights]
    for (less_gain, more_lost), (more_gain, less_lost) in pairwise(both):
        assert more_gain >= less_gain - 1e-9
        assert less_lost <= more_lost + 1e-9
