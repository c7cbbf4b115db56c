"""No forecast, budget or stock calms a keeper while something harms, and the words follow the course."""

import re
from itertools import product

import pytest

from calculators.core.listing import load_all
from calculators.core.paint_notes import brief, lead
from calculators.core.run import compute, run
from calculators.nitrogen.hunger import Hunger
from calculators.science.animals.reading_lines import standing
from calculators.water.ammonia import acute_limit_mg_n_l, rate, unionised_share
from calculators.water.ammonia import chronic_limit_mg_n_l as chronic

CALMING = re.compile(r"\b(steady|calm|level|fine|safe|keeps? level)\b", re.IGNORECASE)
NITRITE_SHORT_TERM = 0.06  # mg N/L at under 2 mg/L chloride: British Columbia's guideline


def asked(name, **given):
    spec, found = load_all()[name], compute(name, given)
    text = " ".join(note.text for note in lead(spec, found))
    return found.answer["outputs"], lead(spec, found), f"{text} {brief(spec, found)['text']}"


def harms(given, out):
    """Whether a start or a peak lies in a harmful band, worked out beside the model's own judging."""
    ph, warm = given["ph"], given["temperature_c"]
    start = given.get("start_ammonia_mg_n_l", 0.0)
    peak = out["peak_unionised_mg_n_l"] / unionised_share(ph, warm)
    for total in (start, peak):
        if total > acute_limit_mg_n_l(ph, warm):
            return True
        if rate(total / chronic(ph, warm), total * unionised_share(ph, warm)) == "act":
            return True
    nitrites = (given.get("start_nitrite_mg_n_l", 0.0), out["peak_nitrite_mg_n_l"])
    nitrates = (given["nitrate_mg_l"], out["peak_nitrate_mg_l"])
    return (
        max(nitrites) >= NITRITE_SHORT_TERM
        or any(standing("nitrate_mg_l", one).level != "in-range" for one in nitrates)
        or standing("temperature_c", warm).level != "in-range"
        or standing("ph", ph).level != "in-range"
    )


GRID = [
    {
        "nitrate_mg_l": nitrate, "start_ammonia_mg_n_l": ammonia, "start_nitrite_mg_n_l": nitrite,
        "feed_g_week": feed, "temperature_c": warm, "ph": ph, "filter_maturity_percent": mature,
        "days": 30.0, "events": [{"day": 5, "kind": "dose", "value": dose}] if dose else [],
    }
    for (nitrate, dose), (ammonia, nitrite), (feed, mature), (warm, ph) in product(
        ((15, 0), (15, 1_000), (60, 0), (300, 0)), ((0, 0), (5, 0), (0, 1)),
        ((3, 100), (30, 0)), ((25, 7.4), (36, 7.4), (8, 6.0), (25, 9.8)),
    )
]  # fmt: skip


def test_no_calming_word_stands_in_a_lead_while_anything_harms():
    harmful = 0
    for given in GRID:
        out, notes, text = asked("nitrogen-forecast", **given)
        if harms(given, out):
            harmful += 1
            assert not CALMING.search(text), (given, text)
            assert notes[0].level in ("caution", "danger"), given
            assert out["verdict"] in ("deadly", "harmful", "watch"), given
            assert "Animals already in it:" in text
            assert "None yet:" in text
    assert harmful > len(GRID) // 2


def test_the_search_for_calming_words_can_find_one():
    calm = {"nitrate_mg_l": 10, "plants": [], "feed_g_week": 0, "soil_area_cm2": 0}
    out, _, text = asked("nitrogen-forecast", **calm, days=20.0)
    assert out["verdict"] == "steady"
    assert CALMING.search(text)
    assert asked("nitrogen-forecast", **calm, trimmings_g_week=0)[0]["nitrate_course"] == "level"


def test_five_of_ammonia_in_a_mature_tank_harms_now_and_is_acted_on_first():
    out, notes, text = asked("nitrogen-forecast", start_ammonia_mg_n_l=5.0, ph=7.4)
    assert out["verdict"] in ("harmful", "deadly")
    assert notes[0].text.startswith("Animals first: ammonia that you read now ")
    assert notes[1].text.startswith("Now, within the hour: ")
    assert "Put in no animals" not in text
    pages = [link.page for link in notes[1].links]
    assert "calculators/ammonia-change/" in pages


@pytest.mark.parametrize("nitrite", [0.0, 2.0])
def test_acid_soft_water_is_not_told_to_change_at_once(nitrite):
    """Held elsewhere to a speciation library: half of a tap at pH 7.8 and 8 °dH frees ammonia here."""
    given = {"start_ammonia_mg_n_l": 3.0, "start_nitrite_mg_n_l": nitrite, "ph": 6.0, "kh_dh": 0.0}
    given |= {"tap_ph": 7.8, "tap_kh_dh": 8.0, "filter_maturity_percent": 0.0}
    _, _, text = asked("nitrogen-forecast", **given)
    assert "hange a third to a half" not in text
    assert "Change 50 %" not in text
    if nitrite:
        assert "Do not change water with this tap yet" in text


def test_hot_and_cold_and_dosed_tanks_say_what_to_do_first():
    for warm, word in ((36.0, "switch off heater"), (8.0, "whether the heater works")):
        out, notes, _ = asked("nitrogen-forecast", temperature_c=warm)
        assert out["verdict"] == "deadly"
        assert word in notes[1].text
    dose = [{"day": 5, "kind": "dose", "value": 1_000}]
    out, notes, text = asked("nitrogen-forecast", events=dose)
    assert out["verdict"] == "deadly"
    assert "Leave out the dose of day 5" in notes[1].text
    assert out["peak_nitrate_mg_l"] > 1_000
    assert "can kill" in text


def test_nitrate_that_falls_and_plants_that_multiply_are_told_as_that():
    growing = [{"name": "stems", "wet_g": 60, "doubling_days": 12}]
    out, _, text = asked(
        "nitrogen-forecast", nitrate_mg_l=20, feed_g_week=1, plants=growing, days=50
    )
    assert out["nitrate_course"] == "falling"
    assert out["times_grown"] > 2
    assert "Falling: nitrate goes from about 20 mg/L to" in text
    assert "-fold" in text
    assert not CALMING.search(text)
    assert out["verdict"] != "steady"


def doses(*spans):
    days = [day for start, end in spans for day in range(start, end, 3)]
    return [{"day": day, "kind": "dose", "value": 12} for day in days]


def test_a_second_shortage_after_weeks_of_enough_is_told_as_it_was():
    """The store comes back for weeks in between: it is not said that it never does."""
    plants = [{"name": "stems", "wet_g": 120, "doubling_days": 9}]
    given = {"feed_g_week": 0, "plants": plants, "nitrate_mg_l": 5, "soil_area_cm2": 0}
    given |= {"trimmings_g_week": 80, "days": 150, "events": doses((40, 82))}
    out, _, text = asked("nitrogen-forecast", **given)
    store = run("nitrogen-forecast", given)["series"]["plant_nitrogen_percent"]
    enough = [day for day, value in zip(store["x"], store["y"], strict=True) if value >= 1.3]
    assert any(a <= 45 and b >= 70 for a in enough for b in enough if {50, 60, 70} <= set(enough))
    assert out["shortages"] == 2
    assert out["first_shortage_day"] < 40
    assert out["recovery_day"] is None
    assert out["verdict"] == "running-short"
    assert "Running short again: stems ran short about day" in text
    assert "does not come back" not in text


def test_a_shortage_that_ends_is_not_called_running_short():
    plants = [{"name": "stems", "wet_g": 120, "doubling_days": 9}]
    out, _, text = asked(
        "nitrogen-forecast", feed_g_week=0, plants=plants, nitrate_mg_l=5, soil_area_cm2=0,
        trimmings_g_week=80, days=80, events=doses((40, 80)),
    )  # fmt: skip
    assert out["verdict"] == "recovered"
    assert out["shortages"] == 1
    assert "ran short about day" in text
    assert "had enough again" in text
    assert "Running short" not in text


def test_spells_of_hunger_open_and_close_at_the_line(monkeypatch):
    """Stores typed in by hand: below 13 mg/g from day 1.5 to 3, and again from day 5."""
    from calculators.nitrogen import hunger

    typed = {0: 20.0, 1: 14.0, 2: 12.0, 3: 13.0, 4: 15.0, 5: 13.0, 6: 11.0}
    monkeypatch.setattr(hunger, "stores", lambda _, day: [typed[day]])

    class Cohort:
        names = ("x",)
        members = (("x", 0.1),)
        full = 30.0

    class OneCohort:
        cohorts = (Cohort(),)

    follow = Hunger()
    for day in typed:
        follow.look(day, OneCohort(), day)
    assert [(one.start, one.end) for one in follow.spells] == [(1.5, 3.0), (5.0, None)]


def test_the_forecast_asks_for_at_most_six_figures():
    spec = load_all()["nitrogen-forecast"]
    needed = [
        field.key
        for field in spec.inputs
        if not field.assumed and field.default is not None and field.key != "events"
    ]
    assert needed == [
        "volume_l", "feed_g_week", "nitrate_mg_l", "ph", "filter_maturity_percent", "plants",
    ]  # fmt: skip


def test_an_assumed_figure_lies_on_the_animals_side():
    """Warmer water and no changes never make the peak of toxic ammonia or nitrate less."""
    new = {"filter_maturity_percent": 0, "feed_g_week": 8, "ph": 7.8, "plants": []}
    assumed = run("nitrogen-forecast", new)["outputs"]
    for given in ({"temperature_c": 22}, {"temperature_c": 25}):
        other = run("nitrogen-forecast", new | given)["outputs"]
        assert assumed["peak_unionised_mg_n_l"] >= other["peak_unionised_mg_n_l"]
    changed = {"change_percent": 30, "change_every_days": 7, "tap_nitrate_mg_l": 10}
    other = run("nitrogen-forecast", new | changed)["outputs"]
    assert assumed["peak_nitrate_mg_l"] >= other["peak_nitrate_mg_l"]
