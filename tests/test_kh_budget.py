"""The budget of carbonate hardness: against molar masses, the forecast's own sums, and in its words."""

import pytest
from molmass import Formula

from calculators.core.listing import load_all
from calculators.core.run import compute, run

CACO3_PER_N = Formula("CaCO3").mass / Formula("N").mass
CACO3_MG_PER_DH = 10 * Formula("CaCO3").mass / Formula("CaO").mass  # 10 mg of CaO a litre
PLAIN = {"volume_l": 100, "kh_dh": 6, "nitrate_taken_mg_n_day": None, "change_percent": None}


def budget(**given):
    return run("kh-budget", PLAIN | given)


def texts(answer, level=None):
    return " ".join(note["text"] for note in answer["notes"] if level in (None, note["level"]))


@pytest.mark.parametrize("nitrified", [1, 30, 400])
def test_nitrification_uses_what_molar_masses_say(nitrified):
    used = budget(nitrified_mg_n_day=nitrified)["outputs"]["used_dh_week"]
    assert used == pytest.approx(7 * nitrified * CACO3_PER_N / 100 / CACO3_MG_PER_DH, rel=2e-4)
    assert pytest.approx(7.14, abs=0.01) == CACO3_PER_N


def test_a_filters_measured_range_holds_the_figure():
    """6.3 to 7.4 mg of alkalinity a mg of nitrogen, in attached growth (US EPA 1975, second-hand)."""
    used = budget(nitrified_mg_n_day=100)["outputs"]["used_dh_week"] / 7  # 1 mg/L a day
    assert 6.3 < used * CACO3_MG_PER_DH < 7.4


def test_nitrate_taken_gives_half_back():
    used = [
        budget(nitrified_mg_n_day=40, nitrate_taken_mg_n_day=taken)["outputs"]["used_dh_week"]
        for taken in (None, 0, 40, 80)
    ]
    assert used[0] == used[1]
    assert used[2] == pytest.approx(used[0] / 2)
    assert used[3] == pytest.approx(0, abs=1e-12)


def test_plants_that_give_back_more_make_it_last():
    answer = budget(nitrified_mg_n_day=10, nitrate_taken_mg_n_day=40)
    assert answer["outputs"]["verdict"] == "lasts"
    assert answer["outputs"]["weeks_to_1_dh"] is None
    assert answer["outputs"]["settled_high_dh"] is None  # it rises without an end
    assert "give back" in texts(answer)


@pytest.mark.parametrize(
    ("given", "verdict"),
    [
        ({"nitrified_mg_n_day": 0}, "lasts"),
        ({"change_percent": 20, "change_every_days": 7, "tap_kh_dh": 8}, "lasts"),
        ({"change_percent": 20, "change_every_days": 7, "tap_kh_dh": 5}, "runs-low"),
        ({"change_percent": 20, "change_every_days": 7, "tap_kh_dh": 1}, "runs-out"),
        ({}, "runs-out"),
        ({"kh_dh": 1, "tap_kh_dh": 8}, "nearly-gone"),
    ],
)
def test_verdicts(given, verdict):
    answer = budget(**({"nitrified_mg_n_day": 30} | given))
    outputs = answer["outputs"]
    assert outputs["verdict"] == verdict
    runs_dry = verdict == "runs-out" or (verdict == "nearly-gone" and "change_percent" not in given)
    assert (outputs["settled_low_dh"] is None) == runs_dry
    assert (outputs["weeks_to_1_dh"] is None) == (verdict == "lasts")


def test_the_change_that_holds_it_does():
    given = {"nitrified_mg_n_day": 30, "tap_kh_dh": 8, "change_every_days": 7.0}
    percent = budget(**given, change_percent=10)["outputs"]["change_to_hold_percent"]
    held = budget(**given, change_percent=percent)["outputs"]
    assert held["settled_low_dh"] == pytest.approx(2)


def test_no_change_holds_it_with_water_that_has_none():
    answer = budget(nitrified_mg_n_day=30, tap_kh_dh=0, change_percent=50)
    assert answer["outputs"]["change_to_hold_percent"] is None
    assert "brings next to no KH" in texts(answer, "caution")


@pytest.mark.parametrize("kh_dh", [0, 0.5, 1, 3])
def test_low_hardness_never_tells_to_raise_ph_over_stored_ammonium(kh_dh):
    found = compute("kh-budget", PLAIN | {"kh_dh": kh_dh, "nitrified_mg_n_day": 60})
    said = texts(found.answer)
    assert "raise neither pH nor KH" in said
    assert "ammonium piles up unseen" in said
    assert ("ammonia-change",) in [note.leads for note in found.notes]
    [lead] = [one for one in found.answer["leads"] if one["calculator"] == "ammonia-change"]
    assert lead["inputs"]["kh_dh"] == kh_dh
    assert run("ammonia-change", lead["inputs"])["outputs"]


def test_hardness_nearly_gone_is_a_danger_before_all_else():
    first = budget(kh_dh=0.4, nitrified_mg_n_day=30)["notes"][0]
    assert first["level"] == "danger"
    assert "Test pH and ammonia now" in first["text"]


def test_the_milder_figure_is_the_forecasts():
    """The nitrogen forecast counts what excretion gives back: half of the use, with none taken."""
    outputs = budget(nitrified_mg_n_day=40)["outputs"]
    assert outputs["used_least_dh_week"] == pytest.approx(outputs["used_dh_week"] / 2)


def test_the_picture_never_goes_below_nothing():
    series = budget(nitrified_mg_n_day=300)["series"]["kh"]
    assert min(series["y"]) == 0
    assert series["y"][0] == 6


def test_a_change_left_empty_is_said_to_be_none():
    assert "no water change is entered" in texts(budget(nitrified_mg_n_day=30))
    assert "since you entered none" in texts(budget(nitrified_mg_n_day=30))
    changed = budget(nitrified_mg_n_day=30, change_percent=20, tap_kh_dh=1)
    assert "these changes do not hold it" in texts(changed)


def test_the_help_for_a_gram_of_feed_is_that_of_the_nitrogen_balance():
    feed = run("nitrogen-balance", {"feed_g_week": 7, "protein_percent": 40})["outputs"]
    [nitrified] = [one for one in load_all()["kh-budget"].inputs if one.key == "nitrified_mg_n_day"]
    assert f"about {feed['ammonia_n_mg_day']:.0f} mg" in nitrified.help
