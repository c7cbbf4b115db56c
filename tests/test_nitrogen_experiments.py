"""The forecast held against published experiments: with their conditions, tuned to no single one."""

from statistics import fmean

import pytest

from calculators.core.run import run
from calculators.science.nitrogen.edges import edges
from calculators.science.nitrogen.forecast_tank import Rates, StandingPlant, Tank
from calculators.science.nitrogen.simulate import simulate
from scripts.pages.calculators.nitrogen_model import model_page
from scripts.records.experiments import (
    Observation,
    compared,
    experiments,
    falling_day,
    held_against,
    predicted,
)
from tests.effort import long_run

ALL = experiments("nitrogen-forecast")


@pytest.mark.parametrize("experiment", ALL, ids=[one.name for one in ALL])
def test_the_words_say_whether_it_was_met(experiment):
    """So that a change of the model that mends or spoils an experiment changes the words, too."""
    found = held_against("nitrogen-forecast", experiment)
    assert all(one.predicted is not None for one in found)
    word = "Met" if all(one.is_met for one in found) else "Missed"
    assert experiment.says.startswith(word), [(one.predicted, one.error) for one in found]


@pytest.mark.parametrize("experiment", ALL, ids=[one.name for one in ALL])
def test_each_miss_says_on_which_side_it_lies(experiment):
    """A miss that calms and one that alarms are not the same to the animals."""
    if experiment.says.startswith("Missed"):
        sides = ("safe side", "dangerous side", "to the same side")
        assert any(side in experiment.says for side in sides)


def test_aquaria_that_ran_for_long_read_so_many_times_what_the_forecast_has():
    """Ten to twenty times without plants, twenty to forty with them, as the words say."""
    planted, bare = sorted(
        (
            [
                seen / look.predicted
                for look in held_against("nitrogen-forecast", one)
                for seen in look.look.observed
            ]
            for one in ALL
            if one.source == "bagchi-2014"
        ),
        key=max,
        reverse=True,
    )
    assert 10 < min(bare) < max(bare) < 20.5
    assert 15 < min(planted) < max(planted) < 45
    given = dict(
        next(one for one in ALL if "live plants" in one.name and "bagchi" in one.source).given
    )
    days, plants = given.pop("days"), [StandingPlant(**row) for row in given.pop("plants")]
    tank = Tank(protein_percent=45, plants=tuple(plants), **given)
    least, most = (
        fmean(line.ammonia for line in simulate(tank, [], days, rates).record.lines)
        for rates in edges(Rates())
    )
    assert 0.20 < most < 0.6 * 0.45  # reaches one of the two tanks, not the other
    assert least < most


def test_three_and_more_experiments_with_a_source_that_was_read(library):
    assert len({one.source for one in ALL}) >= 3
    read = {"abstract": "abstract", "quotation by another": "second-hand"}
    for one in ALL:
        assert library.sources[one.source].seen == read.get(one.read, "document")


@long_run()
def test_what_the_page_says_of_all_misses_together():
    """Each clause of its summary, against the errors of the experiments that it rests on."""
    of = {
        one.source: [look.error for look in held_against("nitrogen-forecast", one)] for one in ALL
    }
    warm = [
        (look.predicted, *look.look.observed)
        for one in ALL
        if one.source in ("mnyoro-2022", "hager-2021", "nootong-2011")
        for look in held_against("nitrogen-forecast", one)
    ]
    assert min(low - said for said, low, _ in warm) == 1
    assert round(max(high - said for said, _, high in warm)) == 20
    assert of["suantika-2016"][0] > 0  # ammonia goes later in the forecast
    assert min(of["carp-biofilter-2020"]) > 0  # and nitrite is higher and later there
    assert of["biofilter-start-2024"][0] > 0  # in the cold the filter was sooner
    assert of["kahlert-2017"][0] > 0 > of["nyanti-2010"][0]  # plants take too little; too much
    assert -0.2 < of["devlamynck-2021"][0] / 5.4 < -0.15
    assert -0.2 < of["chaiprapat-2005"][1] / 5.97 < -0.15


def test_what_the_page_says_of_duckweed_that_grows_and_of_the_last_ammonia():
    """The rest of that summary: who outgrew whom, and a last part that the forecast does not have."""
    grown = [
        look
        for one in ALL
        if one.source in ("lemna-fronds", "couture-2025")
        for look in held_against("nitrogen-forecast", one)
    ]
    assert all(look.predicted < 0.9 * look.look.observed[0] for look in grown if look.error < -1)
    assert len([look for look in grown if look.error < -1]) == len(grown) - 1  # day 4 is met
    slurry = next(one for one in ALL if one.source == "duckweed-slurry-2025")
    _, second, third = held_against("nitrogen-forecast", slurry)
    assert max(second.predicted, third.predicted) < 0.05 < 0.5 < third.look.observed[0]


def test_the_page_shows_observed_predicted_and_error(library):
    page = model_page(library)
    for one in ALL:
        assert one.name in page
        assert one.says.split(":")[0] in page
    assert page.index("{ #experiments }") < page.index("{ #left-out }")


def test_an_error_is_the_distance_to_what_was_observed():
    look = Observation(what="x", observed=[2.0, 4.0], unit="d", output="x")
    assert [compared(look, value).error for value in (1.0, 3.0, 7.0)] == [-1.0, 0.0, 3.0]
    assert compared(look, None).error is None
    assert falling_day([(0, 5.0), (2, 3.0), (4, 1.0)], 2.0) == 3.0
    assert falling_day([(0, 5.0), (2, 3.0)], 2.0) is None


def test_a_fall_between_two_days_is_taken_from_the_curve():
    look = Observation(
        what="x", observed=[1, 1], unit="mg", series="nitrate", day=1, until=3, times=10
    )
    drawn = {"x": [0.0, 1.0, 2.0, 3.0], "y": [9.0, 7.0, 6.0, 4.5]}
    assert predicted(look, {"series": {"nitrate": drawn}}) == 25.0


def test_half_or_twice_the_feed_moves_the_cold_filter_little():
    """What its `not_said` claims."""
    cold = next(one for one in ALL if one.source == "biofilter-start-2024")
    fed = [cold.model_copy(update={"given": cold.given | {"feed_g_week": f}}) for f in (0.5, 2, 4)]
    days = [held_against("nitrogen-forecast", one)[0].predicted for one in fed]
    assert 0 <= days[1] - days[0] <= 8
    assert abs(days[2] - days[1]) <= 2


def test_the_edges_span_what_mature_tanks_read_and_not_the_last_of_the_slurry():
    """What the words of both say of the band."""
    mature = next(one for one in ALL if one.source == "bagchi-2014").given
    tank = Tank(
        mature["volume_l"], mature["feed_g_week"], 45, (), ph=mature["ph"],
        change_percent=mature["change_percent"], temperature_c=mature["temperature_c"],
    )  # fmt: skip
    least, most = (
        fmean(line.ammonia for line in simulate(tank, [], 79, rates).record.lines)
        for rates in edges(Rates())
    )
    assert least < 0.16
    assert most == pytest.approx(0.26, abs=0.03)  # the most of four tanks; this one read 0.18
    slurry = next(one for one in ALL if one.source == "duckweed-slurry-2025").given
    (mat,) = slurry["plants"]
    vessel = Tank(
        slurry["volume_l"], 0, 45, (StandingPlant(**mat),), surface_cm2=slurry["surface_cm2"],
        ammonia_mg_n_l=slurry["start_ammonia_mg_n_l"], dli_mol=slurry["dli_mol"],
        plant_nitrogen_percent=slurry["plant_nitrogen_percent"], filter_maturity_percent=0,
    )  # fmt: skip
    for rates in edges(Rates()):
        assert simulate(vessel, [], 21, rates).last.ammonia < 0.81


def test_with_ammonium_the_forecast_has_the_fronds_that_were_counted():
    """What its `not_said` and its words give as the cause: a store that nitrate alone leaves low."""
    counted = next(one for one in ALL if one.source == "lemna-fronds")
    fed = {"start_ammonia_mg_n_l": 20, "filter_maturity_percent": 0}
    weak = {"dli_mol": 8.6}
    on_day_7 = [
        held_against(
            "nitrogen-forecast", counted.model_copy(update={"given": counted.given | more})
        )[1].predicted
        for more in (fed, weak)
    ]
    assert [round(fronds) for fronds in on_day_7] == [170, 144]


@long_run()
def test_more_plants_or_deeper_water_on_the_slurry():
    """What its `not_said` claims."""
    slurry = next(one for one in ALL if one.source == "duckweed-slurry-2025")
    plant = slurry.given["plants"][0]
    for more, first, second in (
        ({"plants": [plant | {"wet_g": 200}]}, 2.5, 0.0),
        ({"volume_l": 200}, 27, 8.3),
    ):
        run = slurry.model_copy(update={"given": slurry.given | more})
        week, fortnight, _ = held_against("nitrogen-forecast", run)
        assert abs(week.predicted - first) < 0.3
        assert abs(fortnight.predicted - second) < 0.3


@long_run()
def test_other_feed_or_colder_water_leaves_the_tilapia_tank_too_soon():
    """What its `not_said` claims."""
    tank = next(one for one in ALL if one.source == "nootong-2011")
    changes = ({"feed_g_week": 3}, {"feed_g_week": 30}, {"temperature_c": 25})
    runs = [tank.model_copy(update={"given": tank.given | more}) for more in changes]
    days = [held_against("nitrogen-forecast", run)[0].predicted for run in runs]
    assert [round(day) for day in days] == [27, 32, 36]


def test_the_guppy_tanks_stand_as_their_words_say():
    """The feed from the tanks without plants, the mass from those with them, and a slower doubling."""
    tanks = next(one for one in ALL if one.source == "csontos-2024")

    def ran(**more):
        answer = run("nitrogen-forecast", tanks.given | more)["outputs"]
        return answer["final_nitrate_mg_l"], answer["times_grown"]

    assert ran(plants=[])[0] == pytest.approx(34.4, abs=0.3)
    grass = tanks.given["plants"][0]
    nitrate, grown = ran()
    assert nitrate == pytest.approx((8.75 + 11.5) / 2, abs=0.3)
    assert grown == pytest.approx(2 * 1.6, rel=0.07)
    slow = grass | {"wet_g": 2.5 * grass["wet_g"], "doubling_days": 20}
    nitrate, grown = ran(plants=[slow])
    assert nitrate == pytest.approx(10.1, abs=0.5)
    assert grown == pytest.approx(1.8, abs=0.05)
    assert grown / 1.6 - 1 < 1 / 8
