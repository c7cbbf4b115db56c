"""What the forecast advises is safe in the very water that it speaks of, and its words agree."""

import re

import pytest

from calculators.core.run import run
from calculators.nitrogen_forecast.ensemble import run_all
from calculators.nitrogen_forecast.outlook import calm_from
from calculators.science.animals.toxic_lines import ammonia_grade
from calculators.science.nitrogen.edges import edges
from calculators.science.nitrogen.forecast_tank import Rates, StandingPlant, Tank
from calculators.science.nitrogen.simulate import simulate
from tests.effort import long_run

PLANTED = {
    "plants": [
        {"name": "Ambulia", "wet_g": 300, "doubling_days": 10},
        {"name": "Wendt's cryptocoryne", "wet_g": 150, "doubling_days": 45},
        {"name": "Frogbit", "wet_g": 60, "doubling_days": 7, "floating": True},
    ],
    "trimmings_g_week": 30,
}


def asked(**given):
    """The outputs of a planted tank, and all that is said of it."""
    answer = run("nitrogen-forecast", PLANTED | given)
    return answer["outputs"], [note["text"] for note in answer["notes"]]


def doses(*days, value=50.0):
    return [{"day": day, "kind": "dose", "value": value} for day in days]


# Nitrate that kills: what brings it there


def test_many_doses_that_kill_together_are_all_left_out_not_one_of_them():
    _, said = asked(events=doses(*range(1, 20)))
    step = next(text for text in said if text.startswith("Leave out"))
    assert step == "Leave out the 19 doses from day 1 to 19: they are what brings nitrate there."


def test_a_small_dose_is_not_blamed_for_what_the_tap_brings():
    given = {"tap_nitrate_mg_l": 500, "change_percent": 50, "change_every_days": 7}
    _, said = asked(**given, events=doses(5, value=5))
    step = next(text for text in said if text.startswith("Leave out"))
    assert "it helps to bring nitrate there" in step
    assert "less nitrate than this tap, which has 500 mg/L" in step
    assert not any("change more water" in text for text in said)


@pytest.mark.parametrize("tap", [45, 200, 500])
def test_no_keeper_is_told_to_change_more_with_a_tap_that_brings_the_nitrate(tap):
    given = {"tap_nitrate_mg_l": tap, "change_percent": 50, "change_every_days": 7}
    _, said = asked(**given, feed_g_week=400)
    assert not any("change more water" in text for text in said)
    assert any(f"this tap, which has {tap} mg/L" in text for text in said)
    _, clean = asked(**given | {"tap_nitrate_mg_l": 5}, feed_g_week=400)
    assert any("change more water" in text for text in clean)


@pytest.mark.parametrize(
    ("tap", "word"),
    [
        (5, "Go on until a test reads under 44 mg/L."),
        (120, "no change with it goes below that"),
        (600, "use other water for all changes"),
    ],
)
def test_the_end_of_the_changes_can_be_reached_with_the_water_that_is_named(tap, word):
    _, said = asked(nitrate_mg_l=500, tap_nitrate_mg_l=tap)
    assert word in next(text for text in said if text.startswith("Now: stop dosing"))


# Hungry plants beside animals in danger


def test_nobody_is_told_how_to_feed_more_while_ammonia_harms():
    hungry = {"feed_g_week": 0, "nitrate_mg_l": 0, "days": 60}
    _, said = asked(**hungry, start_ammonia_mg_n_l=1, start_nitrite_mg_n_l=0)
    assert any(text.startswith("Running short") for text in said)
    assert not any(text.startswith("Feed more only") for text in said)
    assert any("neither feed nor dose more for the plants" in text for text in said)
    _, calm = asked(**hungry, start_ammonia_mg_n_l=0, start_nitrite_mg_n_l=0)
    assert any(text.startswith("Feed more only") for text in calm)


# One word for calm


@pytest.mark.parametrize("ph", [4.5, 5.5, 6.0, 6.5, 7.0, 7.4, 8.0, 9.0])
def test_nothing_that_harms_is_said_to_stay_low(ph):
    """In acid water little ammonia is toxic, and the criterion for its total calls it harmful."""
    given = {
        "ph": ph, "start_ammonia_mg_n_l": 8, "start_nitrite_mg_n_l": 0, "temperature_c": 26,
        "feed_g_week": 1, "filter_maturity_percent": 30, "days": 40,
    }  # fmt: skip
    answer = run("nitrogen-forecast", PLANTED | given)
    calm = answer["outputs"]["calm_from_day"]
    ammonia = answer["series"]["ammonia"]
    late = [
        value for day, value in zip(ammonia["x"], ammonia["y"], strict=True) if day >= (calm or 1e9)
    ]
    assert ammonia_grade(8, ph, 26) in ("harmful", "deadly")
    assert calm is None or calm > 0
    assert all(ammonia_grade(value, ph, 26) in ("in-range", "watch") for value in late)


def test_calm_is_never_before_the_verdict_is():
    line = run("nitrogen-forecast", {"ph": 5.5, "start_ammonia_mg_n_l": 8, "days": 2})
    assert line["outputs"]["verdict"] in ("harmful", "deadly")
    assert not any("stay low from about day 0" in note["text"] for note in line["notes"])
    assert calm_from([], 7, 25) is None


@pytest.mark.parametrize("maturity", [1, 3, 5, 7, 10, 20])
def test_the_verdict_does_not_hang_on_whether_the_band_is_drawn(maturity):
    plain, band = (
        asked(filter_maturity_percent=maturity, spread=shown)[0] for shown in ("none", "band")
    )
    assert (plain["verdict"], plain["calm_from_day"]) == (band["verdict"], band["calm_from_day"])


def test_where_no_day_of_calm_is_given_it_is_said_why():
    for maturity in (7, 10, 20):
        out, said = asked(filter_maturity_percent=maturity)
        settled = any(text.startswith("No day is given from which") for text in said)
        harms = any("animals" in text.lower() or "worse than the middle" in text for text in said)
        assert out["calm_from_day"] is not None or settled or harms


def test_nitrite_that_reads_in_a_mature_tank_is_said_not_to_go_together():
    _, said = asked(start_ammonia_mg_n_l=0, start_nitrite_mg_n_l=5)
    doubt = next(text for text in said if text.startswith("These figures do not go together"))
    assert "nitrite reads 5 mg N/L" in doubt
    assert "would leave about 0.01" in doubt
    _, both = asked(start_ammonia_mg_n_l=8, start_nitrite_mg_n_l=5)
    assert any("ammonia reads 8 and nitrite reads 5" in text for text in both)
    _, new = asked(start_ammonia_mg_n_l=0, start_nitrite_mg_n_l=5, filter_maturity_percent=10)
    assert not any("do not go together" in text for text in new)


# Small words


def test_no_peak_ahead_is_on_day_0_and_nothing_is_near_about():
    for given in (
        {"start_ammonia_mg_n_l": 1, "start_nitrite_mg_n_l": 0},
        {"plants": [], "feed_g_week": 0, "days": 10},
        {"start_ammonia_mg_n_l": 8, "start_nitrite_mg_n_l": 0, "ph": 5.5},
    ):
        said = " ".join(asked(**given)[1])
        assert "peaks about day 0" not in said
        assert "near about" not in said
        assert "reaches about day 0" not in said


@long_run()
def test_plants_that_all_die_do_not_grow_again():
    """And no share of a die-off makes less ammonia than a smaller one."""
    peaks = []
    for share in (0, 30, 60, 90, 95, 99, 100):
        event = {"day": 5, "kind": "die-off", "value": share}
        out, said = asked(events=[event], start_ammonia_mg_n_l=0, start_nitrite_mg_n_l=0)
        peaks.append(out["peak_unionised_mg_n_l"])
        assert out["balance_error_percent"] < 1e-6
    assert peaks[1:] == sorted(peaks[1:])
    assert len(set(peaks)) == len(peaks)
    assert out["times_grown"] == 0
    assert any("dwindle from 510 to 0 g" in text for text in said)


@pytest.mark.parametrize("maturity", [0, 5, 50])
def test_the_edges_are_followed_closely_enough_for_a_guess(maturity):
    """Their peaks lie within a tenth of those of a run as close as the middle."""
    plants = (StandingPlant("stems", 200, 12), StandingPlant("Frogbit", 40, 7, True))
    tank = Tank(
        100, 3, 45, plants, soil_area_cm2=2_500, nitrate_mg_l=15, change_percent=30,
        trimmings_g_week=30, filter_maturity_percent=maturity,
    )  # fmt: skip
    ran = run_all(tank, [], 90, Rates(), with_edges=True)
    for rates, found in zip(edges(Rates()), ran.at_edges, strict=True):
        close = simulate(tank, [], 90, rates)
        for poison in ("ammonia", "nitrite"):
            peak = getattr(close.record, poison).value
            assert getattr(found.record, poison).value == pytest.approx(peak, rel=0.1, abs=0.002)
        assert found.last.nitrate == pytest.approx(close.last.nitrate, rel=0.01, abs=0.05)


def test_plants_of_which_nothing_is_left_have_no_store_and_are_not_called_hungry():
    """A year without light: the mass falls below any trace, and no store is worked out from one."""
    given = {"dli_mol": 0, "days": 365, "feed_g_week": 4, "ph": 7.0, "spread": "band"}
    answer = run("nitrogen-forecast", PLANTED | given)
    for key in ("plant_nitrogen_percent", "plant_nitrogen_percent_low", "plant_nitrogen_taken"):
        values = [value for value in answer["series"][key]["y"] if value is not None]
        assert all(value >= 0 for value in values)
        if key != "plant_nitrogen_taken":
            assert all(value <= 5 for value in values if value == value)
    assert answer["outputs"]["shortages"] == 0


# The weekly budget


@pytest.mark.parametrize("tap", [60, 120, 500])
def test_the_budget_sends_nobody_to_a_tap_that_brings_the_nitrate(tap):
    given = {
        "tap_nitrate_mg_l": tap,
        "change_percent": 50,
        "change_every_days": 7,
        "feed_g_week": 20,
    }
    for now in (15, 450):
        answer = run("nitrogen-balance", given | {"nitrate_mg_l": now})
        said = " ".join(note["text"] for note in answer["notes"])
        assert f"less nitrate than this tap's {tap} mg/L" in said
        assert "change more" not in said
    clean = run("nitrogen-balance", given | {"tap_nitrate_mg_l": 5, "feed_g_week": 100})
    assert any("change more" in note["text"] for note in clean["notes"])


def test_the_budget_names_no_feed_to_match_that_the_water_cannot_bear():
    """Stems of a large tank in 2 litres would take 4 g of feed a week."""
    cup = run("nitrogen-balance", {"feed_g_week": 0, "volume_l": 2})
    said = " ".join(note["text"] for note in cup["notes"])
    assert cup["outputs"]["verdict"] == "running-short"
    assert "Never feed for the plants here" in said
    assert "Feed that would just match" not in said
    assert "Feed more only" not in said
    tank = run("nitrogen-balance", {"feed_g_week": 0, "volume_l": 240})
    assert any("Feed that would just match" in note["text"] for note in tank["notes"])


def test_air_waits_for_a_binder_in_warm_water_as_well():
    """Lid, fan and air drive off the carbon dioxide that keeps the ammonia of such water harmless."""
    warm = {"temperature_c": 34, "start_ammonia_mg_n_l": 8.0, "ph": 7.4}
    orders = ("lift the lid", "add air, since")
    for kh, binds in ((5.0, True), (None, False)):
        notes = run("nitrogen-forecast", {**PLANTED, **warm, "kh_dh": kh})["notes"]
        (text,) = [note["text"] for note in notes if "switch off heater and lamp" in note["text"]]
        assert all(order in text for order in orders)
        assert ("binds ammonia" in text) == binds
        if binds:
            assert text.index("binds ammonia") < min(text.index(order) for order in orders)


STARVED = [{"name": "stems", "wet_g": 955, "doubling_days": 7}]
NEW_SOIL = {
    "days": 30, "volume_l": 250, "feed_g_week": 7.28, "nitrate_mg_l": 2, "ph": 7.5, "temperature_c": 26,
    "soil_age_days": 0, "soil_release_mg_n_m2_day": 200, "change_percent": 50, "change_every_days": 3,
    "plants": [{"name": "ferns", "wet_g": 87, "doubling_days": 90}],
}  # fmt: skip


@pytest.mark.parametrize(
    "given",
    [
        {"days": 180},
        {"days": 180, "volume_l": 60, "feed_g_week": 1, "plants": STARVED, "ph": 7.8},
        {"days": 30, "plants": [], "ph": 8.4, "feed_g_week": 2, "volume_l": 200},
        NEW_SOIL,
    ],
)
def test_the_verdict_is_no_calmer_where_no_band_was_asked_for(given):
    """A mature filter that starved beside plants, alkaline water, new soil below an old filter."""
    calm = {"start_ammonia_mg_n_l": 0.0, "start_nitrite_mg_n_l": 0.0, "nitrate_mg_l": 15}
    middle, band = (
        run("nitrogen-forecast", {**calm, **given, "spread": spread})["outputs"]
        for spread in ("none", "band")
    )
    assert band["verdict"] == "may-harm"
    assert middle["verdict"] == band["verdict"]
    assert middle["calm_from_day"] == band["calm_from_day"]


def test_hardness_that_is_not_known_but_used_up_is_no_peace():
    """Without it the forecast shows a calm that the same tank with its hardness has not."""
    given = {"days": 180, "plants": [], "volume_l": 60, "feed_g_week": 2, "ph": 7.0}
    known = run("nitrogen-forecast", {**given, "kh_dh": 3.0})
    blind = run("nitrogen-forecast", given)
    assert known["outputs"]["verdict"] == "deadly"
    assert max(blind["series"]["ammonia"]["y"]) < 0.1
    said = [note["text"] for note in blind["notes"]]
    place = next(
        n for n, text in enumerate(said) if text.startswith("Carbonate hardness was not given")
    )
    assert place < said.index(next(text for text in said if text.startswith("A forecast from")))


@pytest.mark.parametrize("kh", [0.5, 2.0, 3.0, 4.0, 8.0, 20.0])
def test_hardness_is_asked_to_be_tested_at_one_pace(kh):
    given = {"days": 60, "plants": [], "volume_l": 60, "feed_g_week": 2, "kh_dh": kh}
    said = " ".join(note["text"] for note in run("nitrogen-forecast", given)["notes"])
    assert said.count("Carbonate hardness ") == 1
    assert ("each month" in said) + ("each week" in said) + ("stops growing" in said) <= 1


def test_one_that_stays_low_is_not_called_high_beside_the_other():
    """Ammonia is low on every day here; only nitrite is left to wait for."""
    given = {
        "days": 7,
        "plants": [],
        "volume_l": 100,
        "feed_g_week": 1,
        "ph": 7.0,
        "nitrate_mg_l": 5,
    }
    answer = run(
        "nitrogen-forecast", {**given, "start_nitrite_mg_n_l": 5.0, "filter_maturity_percent": 5}
    )
    assert answer["outputs"]["calm_from_day"] is None
    assert max(answer["series"]["ammonia"]["y"]) < 0.6
    said = " ".join(note["text"] for note in answer["notes"])
    assert "That both stay low is not forecast" in said
    assert "Neither" not in said


def test_how_much_longer_a_lean_planted_tank_takes_is_not_promised_in_weeks():
    """With a quarter of the feed it takes more than three months longer, at an edge of the band."""
    given = {
        "volume_l": 200,
        "days": 200,
        "filter_maturity_percent": 0,
        "soil_area_cm2": 0,
        "ph": 7.2,
    }
    stems = [{"name": "stems", "wet_g": 300, "doubling_days": 14}]
    water = {"nitrate_mg_l": 5, "tap_nitrate_mg_l": 0, "temperature_c": 25, "trimmings_g_week": 0}
    lean, fed = (
        run("nitrogen-forecast", {**given, **water, "plants": stems, "feed_g_week": feed})
        for feed in (4, 16)
    )
    longer = lean["outputs"]["calm_from_day"] - fed["outputs"]["calm_from_day"]
    assert longer > 60
    assert any("weeks longer, now and then months" in note["text"] for note in lean["notes"])


def test_hunger_that_flickers_around_its_line_is_one_spell():
    """A change every three days lifts and drops the store by a hair; that is no recovery each time."""
    given = {
        "volume_l": 20,
        "feed_g_week": 0.376,
        "days": 120,
        "temperature_c": 18,
        "nitrate_mg_l": 5,
    }
    more = {"change_percent": 25, "change_every_days": 3, "dli_mol": 30, "soil_area_cm2": 400}
    water = {
        "filter_maturity_percent": 30,
        "kh_dh": 8,
        "protein_percent": 60,
        "start_ammonia_mg_n_l": 0,
    }
    plants = [
        {"name": "quick", "wet_g": 62, "doubling_days": 4.6},
        {"name": "slow", "wet_g": 36, "doubling_days": 22.5},
    ]
    answer = run("nitrogen-forecast", {**given, **more, **water, "plants": plants})
    out = answer["outputs"]
    assert out["first_shortage_day"] is not None
    assert out["shortages"] <= 3
    (said,) = [note["text"] for note in answer["notes"] if "ran short" in note["text"]]
    for start, end in re.findall(r"about day (\d+) and had enough again from day (\d+)", said):
        assert start != end
