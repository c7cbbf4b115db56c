"""Nitrogen in and out of a tank over 30 days: each flow by a sum of its own; what is left out is said."""

import pytest
from molmass import Formula

from calculators.core.run import run

N_OF_NITRATE = Formula("N").mass / Formula("NO3").mass  # molmass, IUPAC weights
N_OF_PROTEIN = 0.16  # FAO Food and Nutrition Paper 77: protein is nitrogen times 6.25
TODAY = "2026-11-29"
TANK = {
    "id": "mine",
    "name": "Lobby",
    "net_l": 100,
    "soil_area_cm2": 2_000,
    "feed_g_week": 7,
    "protein_percent": 40,
    "change": {"percent": 50, "every_days": 14},
    "tap": {"nitrate_mg_l": 10},
}


def entry(day, kind, value=None, what=None):
    return {"id": f"{day}{kind}{what}", "at": f"2026-{day}T09:00:00Z", "kind": kind, "value": value,
            "what": what}  # fmt: skip


LOG = [
    entry("09-01", "reading", 8, "gh_dh"),
    entry("10-10", "change", 90),  # before the month
    entry("11-10", "reading", 40, "nitrate_mg_l"),
    entry("11-11", "change", 50),
    entry("11-12", "trim", 100, "rotala-rotundifolia"),
    entry("11-13", "plant", 20, "rotala-rotundifolia"),
]


def standing(tank=TANK, log=LOG):
    return run("standing", {"tank": tank, "entries": log, "today": TODAY})


def month_words(answer):
    return next((n["text"] for n in answer["notes"] if n["text"].startswith("Nitrogen of")), None)


def test_each_flow_is_the_sum_of_its_own():
    series = standing()["series"]
    come, gone = series["nitrogen_in"], series["nitrogen_out"]
    assert (come["x"][0], come["y"][0], come["x"][-1]) == (-30, 0, 0)
    fed = 7 / 7 * 1_000 * 0.40 * N_OF_PROTEIN * 30
    held = run("trimmings", {"wet_g": 100, "volume_l": 100})["outputs"]["n_mg"]
    assert come["y"][-1] == pytest.approx(fed + 10 * N_OF_NITRATE * 50 + held / 5, rel=1e-3)
    gas = 0.2 * 5 * 30  # m² x mg N/m² a day, the model's own rate
    assert gone["y"][-1] == pytest.approx(40 * N_OF_NITRATE * 50 + held + gas, rel=1e-3)


def test_what_had_come_in_or_gone_out_never_grows_less():
    for key in ("nitrogen_in", "nitrogen_out"):
        curve = standing()["series"][key]
        assert curve["x"] == sorted(curve["x"])
        assert curve["y"] == sorted(curve["y"])


def test_the_words_name_each_flow_and_the_doubt_about_the_soil():
    words = month_words(standing())
    assert "last 30 days" in words
    assert "feed 1920" in words
    assert "as gas, 6 to 180" in words  # a fifth to six times 30
    assert "Not counted" not in words


@pytest.mark.parametrize(
    ("more", "tank", "said"),
    [
        ([entry("11-14", "trim", None, "rotala-rotundifolia")], {}, "plants that were not weighed"),
        ([entry("11-28", "change", 30)], {}, "no reading of nitrate"),
        ([entry("11-14", "dose", 2, "kno3")], {}, "doses"),
        ([], {"tap": None}, "the new water"),
        ([], {"soil_area_cm2": None}, "gas from the soil"),
    ],
)
def test_what_cannot_be_counted_is_said(more, tank, said):
    words = month_words(standing({**TANK, **tank}, [*LOG, *more]))
    assert said in words.partition("Not counted: ")[2]


@pytest.mark.parametrize("key", ["net_l", "feed_g_week", "protein_percent"])
def test_no_month_is_made_up_for_a_tank_that_does_not_say(key):
    answer = standing({**TANK, key: None})
    assert "nitrogen_in" not in answer.get("series", {})
    assert month_words(answer) is None


def test_a_young_log_counts_from_its_first_day_and_a_few_days_are_no_month():
    begun = [entry("11-15", "reading", 20, "nitrate_mg_l")]
    assert "last 15 days" in month_words(standing(log=begun))
    flooded = {**TANK, "flooded_on": "2026-11-19"}
    assert "last 10 days" in month_words(standing(flooded))
    assert month_words(standing(log=[entry("11-25", "reading", 20, "nitrate_mg_l")])) is None
    assert month_words(standing(log=[])) is None


def test_the_kits_step_is_a_band_around_the_readings():
    log = [{**entry("11-10", "reading", 2, "nitrate_mg_l"), "step": 10},
           entry("11-20", "reading", 20, "nitrate_mg_l")]  # fmt: skip
    series = standing(log=log)["series"]
    assert series["nitrate_mg_l_least"]["y"] == [0, 15]  # no reading lies below nothing
    assert series["nitrate_mg_l_most"]["y"] == [7, 25]
