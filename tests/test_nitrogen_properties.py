"""What holds for any tank: nothing negative, nothing lost, more plants take more, more feed leaves more.

``NITROGEN_EXAMPLES=10000 python -m pytest tests/test_nitrogen_properties.py`` runs as many.
"""

import math
import os

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calculators.core.run import run
from calculators.science.nitrogen.budget import stored
from calculators.science.nitrogen.forecast_tank import Event, StandingPlant, Tank
from calculators.science.nitrogen.plant_constants import FLOATING_WET_G_M2
from calculators.science.nitrogen.right_side import right_side_and_sinks
from calculators.science.nitrogen.simulate import simulate
from tests.effort import how_many

EXAMPLES = int(os.environ.get("NITROGEN_EXAMPLES", how_many(250)))
many = settings(max_examples=EXAMPLES, suppress_health_check=list(HealthCheck))
SEEN_MG_L = 0.05  # a difference below that no kit can tell
UNSEEN_MG_L = 0.5  # of nitrate; kits begin with steps of 5: common practice, no source
SHARE = 0.01


def positive(low, high):
    """Numbers spread over their powers of ten, as sizes of tanks and plants are."""
    return st.floats(math.log(low), math.log(high)).map(lambda x: min(high, max(low, math.exp(x))))


def or_none(strategy):
    return st.one_of(st.just(0.0), strategy)


# Anything the form takes.
plant_rows = st.fixed_dictionaries(
    {"name": st.just("x"), "wet_g": or_none(positive(0.01, 100_000)),
     "doubling_days": st.floats(0.5, 1_000), "floating": st.booleans()}
)  # fmt: skip
event_rows = st.one_of(
    st.fixed_dictionaries(
        {"day": st.floats(0, 365), "kind": st.just(kind), "value": st.floats(0, most)}
    )
    for kind, most in (
        ("change", 100),
        ("trim", 10_000),
        ("feed", 5_000),
        ("dose", 1_000),
        ("dark", 365),
        ("die-off", 100),
    )
)
anything = st.fixed_dictionaries(
    {},
    optional={
        "volume_l": positive(0.1, 100_000), "feed_g_week": or_none(positive(0.01, 5_000)),
        "protein_percent": st.floats(1, 90), "plant_uptake_mg_n_day": or_none(positive(0.1, 1e5)),
        "floater_area_cm2": or_none(positive(1, 1e6)), "floater_doubling_days": st.floats(0.5, 1_000),
        "trimmings_g_week": or_none(positive(0.1, 1e5)), "soil_area_cm2": or_none(positive(1, 1e6)),
        "denitrification_mg_n_m2_day": st.floats(0, 1_000), "change_percent": st.floats(0, 100),
        "change_every_days": positive(0.25, 365), "tap_nitrate_mg_l": st.floats(0, 1_000),
        "nitrate_mg_l": st.floats(0, 1_000), "days": st.floats(1, 120), "ph": st.floats(4, 11),
        "temperature_c": st.floats(0, 40), "start_ammonia_mg_n_l": st.floats(0, 100),
        "start_nitrite_mg_n_l": st.floats(0, 100), "filter_maturity_percent": st.floats(0, 100),
        "plants": st.lists(plant_rows, max_size=6), "events": st.lists(event_rows, max_size=4),
        "uneaten_percent": st.floats(0, 100), "retained_percent": st.floats(0, 42.5),
        "soil_age_days": st.floats(0, 3_650), "plant_nitrogen_percent": st.floats(0.1, 10),
        "dli_mol": st.floats(0, 60), "kh_dh": st.floats(0, 30), "tap_kh_dh": st.floats(0, 30),
        "usual_ph": st.floats(4, 11),
        "surface_cm2": positive(1, 1e6), "thin_floaters_to_percent": st.floats(5, 100),
    },
)  # fmt: skip


@given(anything)
@many
def test_nothing_is_negative_lost_or_not_a_number(given):
    answer = run("nitrogen-forecast", given)
    found = answer["outputs"]
    assert found["balance_error_percent"] < 0.001
    gap = not any(one.get("wet_g") for one in given.get("plants", [{"wet_g": 1}]))
    gap = gap and not given.get("floater_area_cm2")
    for key, series in answer["series"].items():
        for value in series["y"]:
            if (key == "plant_nitrogen_percent" and gap) or (key == "kh" and "kh_dh" not in given):
                assert value is None
            else:
                assert value is not None
                assert value >= 0 or key == "kh_drift", key
    for key, value in found.items():
        if isinstance(value, float) and key != "kh_drift_dh":
            assert value >= 0, key


# Tanks as people keep them. Where feed and floaters are compared, tap water brings no nitrate and
# nobody doses: the tests of the exceptions below say why.
def kept(draw, plants, tap=0.0):
    volume = draw(positive(10, 600))
    return Tank(
        volume_l=volume,
        feed_g_week=volume / 20 * draw(positive(0.2, 1.0)),
        protein_percent=draw(st.floats(25, 60)),
        plants=tuple(plants),
        soil_area_cm2=draw(st.sampled_from([0.0, 120 * volume ** (2 / 3)])),
        denitrification_mg_n_m2_day=draw(st.floats(0, 30)),
        trimmings_g_week=draw(or_none(positive(1, 200))),
        change_percent=draw(st.floats(0, 60)),
        change_every_days=draw(st.sampled_from([7.0, 14.0, 30.0])),
        tap_nitrate_mg_l=tap,
        nitrate_mg_l=draw(or_none(positive(0.1, 100))),
        ammonia_mg_n_l=draw(or_none(positive(0.01, 2))),
        ph=draw(st.floats(6, 8.5)),
        temperature_c=draw(st.floats(18, 30)),
        filter_maturity_percent=draw(st.sampled_from([0.0, 30.0, 100.0])),
    )


stems = st.builds(
    StandingPlant, st.just("stems"), positive(1, 600), positive(8, 60), st.just(False)
)
floaters = st.builds(
    StandingPlant, st.just("floaters"), positive(1, 600), positive(3, 15), st.just(True)
)
spans = st.sampled_from([14.0, 60.0, 120.0])


CARRIED_G_M2 = 700  # what the lamp of these tanks carries, wet
MOST_STANDS = 5  # three plants, one more, or one of them twice: together they are still carried


def final(tank, days, events=()):
    return simulate(tank, events, days, daily=False).last.nitrate


def no_more(after, before):
    """Not higher by what anyone could tell."""
    return after <= before + SEEN_MG_L + SHARE * before


@given(st.data())
@many
def test_more_feed_never_lowers_the_final_nitrate(data):
    draw = data.draw
    tank = kept(draw, draw(st.lists(st.one_of(stems, floaters), max_size=4)))
    more = tank._replace(feed_g_week=tank.feed_g_week * draw(st.sampled_from([1.1, 1.5, 3.0])))
    days = draw(spans)
    assert no_more(final(tank, days), final(more, days))


@given(st.data())
@many
def test_more_rooted_plants_never_raise_the_final_nitrate(data):
    """One plant more, or more of one, with nitrate in the tap and doses, too.

    As many as the light carries: what it does not carry dies and comes back, see the exceptions.
    """
    draw = data.draw
    tank = kept(draw, [], draw(or_none(st.floats(0, 50))))._replace(dli_mol=20.0)
    carried = st.builds(
        lambda plant, part: plant._replace(wet_g=CARRIED_G_M2 / MOST_STANDS * tank.surface_m2 * part),
        st.one_of(stems, floaters), positive(0.01, 1),
    )  # fmt: skip
    plants, days = draw(st.lists(carried, max_size=3)), draw(spans)
    tank = tank._replace(plants=tuple(plants))
    dose = st.builds(Event, st.floats(0, 60), st.just("dose"), st.floats(0, 20))
    doses = draw(st.lists(dose, max_size=2))
    before = final(tank, days, doses)
    one_more = draw(carried)._replace(floating=False, doubling_days=draw(positive(8, 60)))
    more = tank._replace(plants=(*plants, one_more))
    assert no_more(final(more, days, doses), before)
    if plants and not plants[0].floating:
        twice = plants[0]._replace(wet_g=2 * plants[0].wet_g)
        more = tank._replace(plants=(twice, *plants[1:]))
        assert no_more(final(more, days, doses), before)


@given(st.data())
@many
def test_more_floaters_never_raise_the_final_nitrate(data):
    """Over bare water, or over stems that grow at most half as fast, thinned each week.

    Not by what a kit could tell: twice the mat leaves the stems smaller, and some tenths can remain.
    A closed mat lays down as much as it takes, and over faster stems it can raise nitrate: see the
    exceptions below.
    """
    draw = data.draw
    below = draw(st.lists(stems, max_size=2))
    below = [one._replace(doubling_days=max(one.doubling_days, 16.0)) for one in below]
    tank, days = kept(draw, below)._replace(thin_to_percent=50.0), draw(spans)
    layer_g = FLOATING_WET_G_M2 * tank.surface_m2
    mat = StandingPlant("floaters", layer_g * draw(positive(0.01, 0.2)), draw(positive(3, 8)), True)
    some, more = (
        tank._replace(plants=(*below, mat._replace(wet_g=g))) for g in (mat.wet_g, 2 * mat.wet_g)
    )
    assert no_more(final(some, days), final(tank, days))
    assert final(more, days) <= final(some, days) + UNSEEN_MG_L


# The exceptions, each as a tank that shows it. They hold in real tanks, too, and the page of the
# model says so under "What surprises".

JUNGLE = Tank(
    volume_l=80, feed_g_week=8, protein_percent=45, plants=(StandingPlant("fast stems", 150, 5),),
    change_percent=20, change_every_days=7, nitrate_mg_l=20,
)  # fmt: skip


def test_a_closed_mat_over_faster_stems_raises_the_final_nitrate():
    mat = StandingPlant("slow floaters", 400, 40, True)
    covered = JUNGLE._replace(plants=(*JUNGLE.plants, mat))
    assert final(covered, 60) > final(JUNGLE, 60) + 5
    grown = [simulate(tank, [], 60).last.plant_mass for tank in (covered, JUNGLE)]
    assert grown[0] < grown[1]  # the stems that are missing took more than the mat does


def test_a_thinned_mat_twice_as_large_can_leave_a_little_more():
    """The stems below it stay smaller, and it sheds as much as it takes."""
    tank = Tank(
        volume_l=339, feed_g_week=10, protein_percent=59, plants=(StandingPlant("stems", 44, 16),),
        change_percent=14, change_every_days=7, ph=6, temperature_c=18, filter_maturity_percent=30,
        thin_to_percent=50,
    )  # fmt: skip
    mats = [
        StandingPlant("mat", part * FLOATING_WET_G_M2 * tank.surface_m2, 4.9, True)
        for part in (0.13, 0.26)
    ]
    some, more = (final(tank._replace(plants=(*tank.plants, mat)), 120) for mat in mats)
    assert some < more < some + UNSEEN_MG_L


def test_a_mat_that_closes_sooner_gives_back_its_dead_fronds_sooner():
    """Both are closed by the end and take alike; the one that closed first has shed more by then."""
    tank = JUNGLE._replace(volume_l=36, feed_g_week=5, plants=(StandingPlant("mat", 2, 12, True),))
    sooner = tank._replace(plants=(StandingPlant("mat", 4, 12, True),))
    late, early = (simulate(one, [], 180) for one in (tank, sooner))
    assert early.last.floating_cover == late.last.floating_cover == 100
    assert early.state[3] > late.state[3]  # what rots
    assert final(sooner, 60) < final(tank, 60)  # while it grows it takes more, as one expects


def test_more_stems_than_the_lamp_carries_die_and_come_back():
    full = JUNGLE._replace(plants=(StandingPlant("stems", 600, 20),), dli_mol=2.0, feed_g_week=1)
    fuller = full._replace(plants=(StandingPlant("stems", 2_400, 20),))
    assert final(fuller, 60) > final(full, 60) + 5


def test_plants_that_were_fed_more_take_a_pulse_up_faster():
    """Stems alone: a mat that was fed more also shades the stems below it more."""
    hungry = Tank(
        volume_l=14, feed_g_week=0.1, protein_percent=59, nitrate_mg_l=2, dli_mol=40.0,
        plants=(StandingPlant("stems", 100, 13),),
    )  # fmt: skip
    fed = hungry._replace(feed_g_week=0.4)
    pulse = [Event(60, "dose", 10)]
    after = (simulate(tank, pulse, 60.5, daily=False).last.nitrate for tank in (fed, hungry))
    assert next(after) < 0.9 * next(after)


@given(st.data())
@many
def test_trims_and_changes_lose_nothing(data):
    draw = data.draw
    tank = kept(draw, draw(st.lists(st.one_of(stems, floaters), max_size=3)))
    kinds = st.sampled_from(["change", "trim", "feed", "dose", "dark", "die-off"])
    events = draw(
        st.lists(st.builds(Event, st.floats(0, 60), kinds, st.floats(0, 100)), max_size=6)
    )
    assert simulate(tank, events, 60, daily=False).balance_error_percent < 1e-9


def everything(tank, days):
    """Nitrogen in water, mulm, soil and plants on the last day, mg."""
    found = simulate(tank, [], days, daily=False)
    return stored(found.model, found.state)


@given(st.data())
@many
def test_more_feed_never_leaves_less_nitrogen_in_the_tank(data):
    """With nothing trimmed: what is cut out leaves with what it holds."""
    draw = data.draw
    tank = kept(draw, draw(st.lists(st.one_of(stems, floaters), max_size=3)))
    tank = tank._replace(trimmings_g_week=0.0)
    more = tank._replace(feed_g_week=tank.feed_g_week * draw(st.sampled_from([1.1, 2.0])))
    days = draw(spans)
    assert everything(more, days) >= (1 - 1e-4) * everything(tank, days)


@given(st.data())
@many
def test_more_light_never_makes_less_plant_where_nothing_else_limits(data):
    """Of one kind, with nitrogen in plenty: a lone plant's doubling time is asked for in its light."""
    draw = data.draw
    plant = draw(st.one_of(stems, floaters))
    tank = kept(draw, [plant])._replace(
        nitrate_mg_l=400.0, tap_nitrate_mg_l=400.0, trimmings_g_week=0.0, ammonia_mg_n_l=0.0
    )
    dim = draw(positive(0.05, 20))
    lit = dim * draw(st.sampled_from([1.1, 2.0, 5.0]))
    days = draw(spans)
    less, more = (
        simulate(tank._replace(dli_mol=dli), [], days, daily=False).last.plant_mass
        for dli in (dim, lit)
    )
    assert more >= less * (1 - 1e-3)


def test_a_vast_feed_in_a_cup_of_water_is_followed_in_few_steps(monkeypatch):
    """A slip of the finger may say so; what bacteria use of hardness must not need tiny steps."""
    looks = 0

    def counting(model):
        whole = right_side_and_sinks(model)

        def derivatives(time, state):
            nonlocal looks
            looks += 1
            return whole(time, state)

        return derivatives

    monkeypatch.setattr("calculators.science.nitrogen.simulate.right_side_and_sinks", counting)
    tank = Tank(0.1, 3_500.0, 29.0, (), kh_dh=0.5, ph=7.4, temperature_c=27.0)
    ran = simulate(tank, [], 60.0)
    assert ran.balance_error_percent < 0.001
    assert 100 < looks < 6_000
