"""No forecast, budget or stock calms a keeper while something harms, and the words follow the course."""

import re
from itertools import product

import pytest

from calculators.core.listing import load_all
from calculators.core.paint.notes import brief, lead
from calculators.core.run import compute, run
from calculators.science.animals.reading_lines import standing
from calculators.science.nitrogen.hunger import Hunger
from calculators.science.water.ammonia import acute_limit_mg_n_l, rate, unionised_share
from calculators.science.water.ammonia import chronic_limit_mg_n_l as chronic
from tests.effort import share_of

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
    grid = share_of(GRID, 11)  # no step of the grid is of eleven: each value stays
    for given in grid:
        out, notes, text = asked("nitrogen-forecast", **given)
        if harms(given, out):
            harmful += 1
            assert not CALMING.search(text), (given, text)
            assert notes[0].level in ("caution", "danger"), given
            assert out["verdict"] in ("deadly", "harmful", "watch"), given
            assert "Animals already in it:" in text
            assert "No animals yet:" in text
    assert harmful > len(grid) // 2


def test_the_search_for_calming_words_can_find_one():
    calm = {"nitrate_mg_l": 10, "plants": [], "feed_g_week": 0, "soil_area_cm2": 0}
    out, _, text = asked("nitrogen-forecast", **calm, days=20.0)
    assert out["verdict"] == "level"
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
    growing = [{"name": "stems", "wet_g": 150, "doubling_days": 12}]
    out, _, text = asked("nitrogen-forecast", nitrate_mg_l=20, plants=growing, days=50)
    assert out["nitrate_course"] == "falling"
    assert out["times_grown"] > 2
    assert "Falling: nitrate goes from about 20 mg/L to" in text
    assert "-fold" in text
    assert not CALMING.search(text)
    assert out["verdict"] != "level"


def doses(*spans):
    days = [day for start, end in spans for day in range(start, end, 3)]
    return [{"day": day, "kind": "dose", "value": 4} for day in days]


def test_a_second_shortage_after_weeks_of_enough_is_told_as_it_was():
    """The store comes back for weeks in between: it is not said that it never does."""
    plants = [{"name": "stems", "wet_g": 120, "doubling_days": 9}]
    given = {"feed_g_week": 0, "plants": plants, "nitrate_mg_l": 5, "soil_area_cm2": 0}
    given |= {"trimmings_g_week": 80, "days": 150, "events": doses((40, 82))}
    out, _, text = asked("nitrogen-forecast", **given)
    store = run("nitrogen-forecast", given)["series"]["plant_nitrogen_percent"]
    enough = [day for day, value in zip(store["x"], store["y"], strict=True) if value >= 1.3]
    assert {50, 60, 70} <= set(enough)
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
    """Stores typed in by hand: below 13 mg/g from day 1.5 to 3, and again from day 9."""
    from calculators.science.nitrogen import hunger

    typed = {0: 20.0, 1: 14.0, 2: 12.0, 3: 13.0, 4: 15.0, 8: 15.0, 9: 13.0, 10: 11.0}
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
    assert [(one.start, one.end) for one in follow.spells] == [(1.5, 3.0), (9.0, None)]


def test_crowded_water_is_called_overstocked_first_with_the_figure_that_says_why():
    neons = [{"kind": "paracheirodon-innesi", "count": 200, "mean_length_mm": 30}]
    out, notes, text = asked("stocking", animals=neons, volume_l=20)
    assert out["burden"] == "overstocked"
    assert notes[0].level == "danger"
    assert notes[0].text.startswith("Overstocked.")
    assert "mg/L" in notes[0].text
    assert "hours" in notes[0].text
    assert not CALMING.search(text)
    few = asked("stocking", animals=[neons[0] | {"count": 8}], volume_l=60)
    assert few[0]["burden"] == "no-line-reached"
    assert few[1][0].level == "info"


def test_hours_without_air_are_the_oxygen_held_over_the_oxygen_used():
    """By hand: 8.42 mg/L at 24 °C (Benson and Krause, as in EN 25814) in 20 L over the need at rest."""
    neons = [{"kind": "paracheirodon-innesi", "count": 200, "mean_length_mm": 30}]
    out = run("stocking", {"animals": neons, "volume_l": 20})["outputs"]
    held = 8.418 * 20
    assert out["hours_to_no_oxygen"] == pytest.approx(held / out["oxygen_mg_h"], rel=0.002)
    assert out["hours_to_low_oxygen"] < out["hours_to_no_oxygen"]


@pytest.mark.parametrize(
    ("kind", "warm", "burden", "level"),
    [
        ("neocaridina-davidi", 36, "wrong-temperature", "danger"),
        ("neocaridina-davidi", 29, "wrong-temperature", "caution"),
        ("neocaridina-davidi", 24, "no-line-reached", "info"),
        ("tanichthys-albonubes", 15, "no-line-reached", "info"),  # its own range begins at 14
        ("betta-splendens", 15, "wrong-temperature", "danger"),
    ],
)
def test_warmth_is_judged_by_each_kinds_own_range(kind, warm, burden, level):
    stock = [{"kind": kind, "count": 1 if kind == "betta-splendens" else 10, "mean_length_mm": 20}]
    out, notes, text = asked("stocking", animals=stock, volume_l=120, temperature_c=warm)
    assert out["burden"] == burden
    assert notes[0].level == level
    if level == "danger":
        assert not CALMING.search(text)


def test_much_feed_in_little_water_is_said_first_with_air_ammonia_and_hardness():
    out, notes, text = asked("nitrogen-balance", volume_l=60, feed_g_week=15)
    assert out["verdict"] == "building"
    assert notes[0].level == "danger"
    assert notes[0].text.startswith("Animals first: nitrate settles near")
    assert any(note.text.startswith("Too much for this water.") for note in notes)
    assert "if the filter stops" in text
    assert not CALMING.search(text)
    assert out["load_mg_n_l_day"] == pytest.approx(15 / 7 * 0.45 * 92 / 60)
    assert out["oxygen_low_mg_l"] < out["oxygen_high_mg_l"]


def test_hardness_used_is_that_of_the_stoichiometry():
    """By hand: 7.146 g of CaCO3 a g of N (two equivalents), 17.848 mg/L a degree; a plant gives half back."""
    bare = {"plant_uptake_mg_n_day": 0, "soil_area_cm2": 0, "volume_l": 100, "feed_g_week": 7}
    out = run("nitrogen-balance", bare | {"kh_dh": 4})["outputs"]
    per_week = 41.4 / 100 * 7.146 / 17.848 * 7
    assert out["kh_used_dh_week"] == pytest.approx(per_week, rel=0.001)
    assert out["weeks_to_low_kh"] == pytest.approx(3 / per_week, rel=0.001)
    all_taken = run("nitrogen-balance", bare | {"plant_uptake_mg_n_day": 1_000})["outputs"]
    assert all_taken["kh_used_dh_week"] == pytest.approx(per_week / 2, rel=0.001)


def test_a_film_turns_over_ammonia_as_the_reactor_did():
    """R = 1859 (S - 0.07)/(S + 1.93) mg N/m2/day gives 154, 329, 590 and 913 at S of 0.25, 0.5, 1, 2."""
    from calculators.science.nitrogen.filter_load import settles_at

    for rate_m2, level in ((154, 0.25), (329, 0.5), (590, 1.0), (913, 2.0)):
        assert settles_at(rate_m2) == pytest.approx(level, rel=0.01)
    assert settles_at(1_900) is None


def test_a_budget_whose_nitrate_moves_is_not_called_steady():
    falling, _, text = asked(
        "nitrogen-balance", tap_nitrate_mg_l=5, change_percent=80, change_every_days=7,
        nitrate_mg_l=40, feed_g_week=4.4,
    )  # fmt: skip
    assert falling["verdict"] == "steady"
    assert "Falling: nitrate goes from 40" in text
    assert not CALMING.search(text)
    deadly, notes, text = asked("nitrogen-balance", nitrate_mg_l=400)
    assert notes[0].level == "danger"
    assert "Animals already in it:" in notes[0].text
    assert not CALMING.search(text)
    assert deadly["verdict"] in ("building", "steady", "running-short")


def test_trimmings_of_the_budget_are_without_floaters():
    """Floaters that are thinned are counted by their cover; both would be one too many."""
    fields = {field.key: field for field in load_all()["nitrogen-balance"].inputs}
    assert fields["trimmings_g_week"].label == "Trimmings a week, wet, without floaters"
    assert "cover" in fields["trimmings_g_week"].help


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
    """Warmer water and no changes never make the peak of toxic ammonia or nitrate less.

    By two in a hundred they may: in warmth the filter grows sooner, too.
    """
    new = {"filter_maturity_percent": 0, "feed_g_week": 8, "ph": 7.8, "plants": []}
    assumed = run("nitrogen-forecast", new)["outputs"]
    for given in ({"temperature_c": 22}, {"temperature_c": 25}):
        other = run("nitrogen-forecast", new | given)["outputs"]
        assert assumed["peak_unionised_mg_n_l"] >= 0.98 * other["peak_unionised_mg_n_l"]
    changed = {"change_percent": 30, "change_every_days": 7, "tap_nitrate_mg_l": 10}
    other = run("nitrogen-forecast", new | changed)["outputs"]
    assert assumed["peak_nitrate_mg_l"] >= other["peak_nitrate_mg_l"]


SLOW_PLANTS = [{"name": "Anubias", "wet_g": 200, "doubling_days": 60, "floating": False}]
NEAR_THE_LINE = {
    "feed_g_week": 4, "days": 200, "nitrate_mg_l": 20, "plants": SLOW_PLANTS,
    "change_percent": 25, "change_every_days": 7,
}  # fmt: skip


def test_an_upper_edge_that_harms_is_said_though_the_middle_does_not():
    """Nitrate of 44 mg/L harms over time (camargo-2005); only the edge of the band gets there."""
    out, notes, _ = asked("nitrogen-forecast", **NEAR_THE_LINE, spread="band")
    assert out["peak_nitrate_mg_l"] < 44 < out["final_nitrate_high_mg_l"]
    assert notes[0].level == "caution"
    assert "At the edge of what is not known: Nitrate reaches about" in notes[0].text
    _, _, alone = asked("nitrogen-forecast", **NEAR_THE_LINE, spread="none")
    assert "At the edge" not in alone


def test_an_edge_as_harmless_as_the_middle_is_not_spoken_of():
    _, _, text = asked("nitrogen-forecast", nitrate_mg_l=20, days=60, spread="band")
    assert "At the edge" not in text


@pytest.mark.parametrize(
    ("nitrite", "nitrate", "what"), [(2.0, 10, "nitrite"), (0, 400, "nitrate")]
)
def test_a_link_to_the_change_says_what_is_measured(nitrite, nitrate, what):
    """A nitrite of 2 taken as nitrate would be answered with no change at all."""
    given = {"start_nitrite_mg_n_l": nitrite, "nitrate_mg_l": nitrate, "days": 5}
    _, notes, _ = asked("nitrogen-forecast", **given)
    links = [one.given for note in notes for one in note.links if "water-change" in one.page]
    assert [one["what"] for one in links] == [what]
