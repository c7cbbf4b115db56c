"""Answers at the edges of what may be asked: no calm word beside what kills, no rise too quick."""

import pytest

from calculators.core.run import run


def said(name, *levels, **given):
    """The notes of an answer as one text, of these levels alone where any are named."""
    notes = run(name, given)["notes"]
    return " ".join(note["text"] for note in notes if not levels or note["level"] in levels)


FISH = [{"kind": "paracheirodon-innesi", "count": 10, "mean_length_mm": 25}]
SNAILS = [{"kind": "vittina-turrita", "count": 5, "mean_length_mm": 20}]


@pytest.mark.parametrize(
    ("name", "given"),
    [
        ("free-ammonia", {"ammonia_mg_l": 0}),
        ("ammonia-change", {"ammonia_mg_l": 0, "kh_dh": 0}),
        ("ammonia-change", {"ammonia_mg_l": 2, "kh_dh": 0}),
        ("stocking", {"animals": SNAILS, "temperature_c": 22}),
        ("nitrogen-balance", {}),
        ("pick", {}),
    ],
)
def test_a_ph_that_kills_is_said_by_each_that_takes_it(name, given):
    assert "pH of 4.2 can kill animals" in said(name, "danger", **given, ph=4.2)
    assert "pH of 9.6 can kill animals" in said(name, "danger", **given, ph=9.6)


@pytest.mark.parametrize("name", ["free-ammonia", "ammonia-change", "nitrogen-balance", "pick"])
def test_warmth_that_kills_is_said_by_each_that_takes_it(name):
    assert "Water of 35 °C" in said(name, "danger", temperature_c=35)


def test_no_line_reached_is_not_said_beside_a_ph_that_kills():
    assert "No line of ours is reached" not in said(
        "stocking", animals=SNAILS, temperature_c=22, ph=4.2
    )


@pytest.mark.parametrize("name", ["free-ammonia", "ammonia-change"])
def test_ammonia_is_not_asked_for_where_it_was_given(name):
    assert "test ammonia" not in said(name, "danger", ammonia_mg_l=2, ph=4.2, temperature_c=22)


def test_new_water_with_ammonia_is_treated_before_it_goes_in():
    text = said(
        "ammonia-change", ammonia_mg_l=8, reported_as="nitrogen", ph=9, kh_dh=10, temperature_c=28,
        tap_ph=8.5, tap_kh_dh=10, tap_ammonia_mg_n_l=2,
    )  # fmt: skip
    assert "Change 50 % now" in text
    assert "brings 2 mg N/L of its own: treat it before it goes in" in text


def readings(*values):
    return [{"day": 7 * week, "value": value} for week, value in enumerate(values)]


@pytest.mark.parametrize("values", [(10, 200, 400), (300, 290, 280, 270), (400,)])
def test_a_trend_does_not_pass_over_a_last_reading_that_kills(values):
    text = said("trend", readings=readings(*values), changes=[])
    assert "can kill sensitive animals: do not wait for a trend" in text
    assert "feed a little more" not in text


def test_a_trend_that_falls_from_what_harms_is_not_fed():
    assert "feed a little more" not in said("trend", readings=readings(100, 90, 80, 70), changes=[])
    assert "feed a little more" in said("trend", readings=readings(40, 30, 20, 10), changes=[])


def test_a_harmful_reading_is_said_to_harm_whatever_the_plan():
    assert "Nitrite of 0.3 mg/L harms" in said("water-change", what="nitrite", now_mg_l=0.3)
    assert "Nitrate of 100 mg/L harms" in said(
        "water-change", what="nitrate", now_mg_l=100, tap_mg_l=60
    )


def test_no_change_is_ordered_with_water_that_kills():
    for target in ({}, {"target_mg_l": 0.4}):
        text = said("water-change", "danger", what="copper", now_mg_l=0.5, tap_mg_l=0.3, **target)
        assert "make the first change now, with other water than this" in text
        assert "do not use it" in text


def test_a_label_with_its_figures_swapped_is_questioned_before_any_dose():
    text = said("conditioner", "danger", label_ml=40, label_treats_l=10, water_l=40, tank_l=120)
    assert text.startswith("4 mL for each litre is more than a label asks for")
    text = said("conditioner", "danger", label_ml=1, label_treats_l=1000, water_l=40, tank_l=120)
    assert text.startswith("1 mL for 1000 L is less than a label asks for")
    usual = said("conditioner", label_ml=10, label_treats_l=40, water_l=40, tank_l=120)
    assert "a label asks for" not in usual
    assert usual.startswith("Give 10 mL to 40 L of new water")
    assert "dose for the whole tank first, 30 mL for 120 L" in usual


@pytest.mark.parametrize(
    "label", [{"label_ml": 40, "label_treats_l": 10}, {"label_ml": 1, "label_treats_l": 1000}]
)
def test_no_dose_is_ordered_by_a_label_that_cannot_be(label):
    text = said("conditioner", **label, water_l=40, tank_l=120)
    assert "Give " not in text
    assert "give that only if the label, read again, says so" in text
    assert "dose for the whole tank first, then let it in slowly" in text


def test_harmless_free_ammonia_is_not_called_deadly_for_the_total():
    text = said(
        "conditioner", "danger", kind="chloramine", chlorine_mg_l=4, water_l=40, tank_l=40, ph=6,
        temperature_c=28, label_ml=10, label_treats_l=40,
    )  # fmt: skip
    assert "above the US limit for lasting exposure" in text
    assert "above the line at which it can kill" not in text


def test_salt_is_refused_for_the_chloride_that_is_there():
    text = said("chloride", nitrite_mg_n_l=0.05, chloride_mg_l=900)
    assert "Give no salt: the chloride in the water harms already." in text


def test_a_dose_that_hardens_at_once_is_split_by_what_animals_bear():
    dose = {"source": "cacl2_2h2o", "nutrient": "calcium", "schedule": "once", "volume_l": 60}
    text = said("dosing", "danger", **dose, rise_mg_l=200)
    assert "raises hardness by 28 °dH at once. Split it over 14 days or more" in text


def test_nothing_dosed_is_not_told_to_dose_less():
    text = said(
        "dosing", source="kno3", nutrient="nitrate", schedule="once", now_mg_l=60, target_mg_l=20,
        rise_mg_l=None,
    )  # fmt: skip
    assert "The water holds 60 mg/L of nitrate." in text
    assert "Dose less" not in text


BAG = {
    "hours_in_bag": 1, "bag_l": 1, "bag_temperature_c": 25, "tank_temperature_c": 25, "tank_ph": 7.5,
    "bag_ph": 7, "bag_ammonia_mg_n_l": 0, "bag_kh_dh": 6, "tank_kh_dh": 4, "bag_gh_dh": 8, "tank_gh_dh": 7,
}  # fmt: skip


@pytest.mark.parametrize(("drops", "word"), [(10_000, "too quick"), (0.5, "too slow")])
def test_drops_far_from_an_hour_are_not_advised(drops, word):
    text = said("acclimate", **BAG, drip_ml_min=drops)
    assert f"These drops are {word}" in text
    assert "Let about 50 mL fall a minute, which takes an hour" in text
    assert "Drip about" not in text


def test_a_wide_gap_of_hardness_is_not_bridged_in_an_hour():
    text = said("acclimate", "caution", **{**BAG, "bag_gh_dh": 1, "tank_gh_dh": 25})
    assert "The waters are too far apart for a drip alone" in text
    assert "about 2 °dH a day" in text


def test_a_tank_whose_readings_do_not_fit_is_said_before_animals_go_in():
    assert "do not fit together" in said("acclimate", **{**BAG, "tank_ph": 5.5, "tank_kh_dh": 25})


def test_a_plan_that_lifts_kh_at_once_says_so():
    plan = {"volume_l": 60, "nitrified_mg_n_day": 30, "change_every_days": 7}
    text = said("kh-budget", "caution", **plan, kh_dh=0.5, tap_kh_dh=15, change_percent=100)
    assert "raises KH by 14 °dH at once" in text
    gentle = said("kh-budget", **plan, kh_dh=4, tap_kh_dh=6, change_percent=20)
    assert "at once. Animals bear" not in gentle


def test_a_hardness_that_no_water_keeps_is_doubted():
    text = said(
        "kh-budget", volume_l=60, kh_dh=20, nitrified_mg_n_day=0, nitrate_taken_mg_n_day=1000,
        tap_kh_dh=20,
    )  # fmt: skip
    assert "So much KH does not stay in water" in text
    soon = said("kh-budget", volume_l=1, kh_dh=4, nitrified_mg_n_day=1000, tap_kh_dh=4)
    assert "it is at 1 °dH within a day" in soon


def test_where_nothing_is_to_be_dissolved_nobody_is_told_how():
    water = {"start_gh_dh": 10, "start_kh_dh": 10, "target_gh_dh": 3, "target_kh_dh": 1}
    text = said("remineralise", **water)
    assert "Nothing is to be added" in text
    assert "Dissolve" not in text


def test_feed_that_would_kill_is_forbidden_though_plants_would_take_it():
    tank = {"volume_l": 60, "feed_g_week": 1, "protein_percent": 45, "nitrate_mg_l": 2}
    text = said("nitrogen-balance", "danger", **tank, plant_uptake_mg_n_day=5000)
    assert "Never feed for the plants here" in text
    few = said("nitrogen-balance", "danger", **tank, plant_uptake_mg_n_day=8)
    assert "Never feed" not in few


def test_short_times_are_said_in_minutes():
    crowd = [{"kind": "neocaridina-davidi", "count": 1000, "mean_length_mm": 25}]
    text = said("stocking", animals=crowd, volume_l=10, temperature_c=24)
    assert "empty saturated water of oxygen in 66 minutes" in text


def test_kinds_are_named_whose_own_water_this_is_not():
    assert "Keepers have Cherry shrimp (Neocaridina davidi) at 5 to 20 °dH" in said(
        "pick", gh_dh=0, ph=7, animals=["neocaridina-davidi"]
    )
    assert "Keepers have" not in said("pick", gh_dh=0, ph=6, animals=["boraras-brigittae"])
    acid = said("stocking", animals=SNAILS, temperature_c=24, ph=5.5)
    assert (
        "Keepers have Nerite snail (Vittina turrita) at pH 7 to 8.5, and this water has 5.5" in acid
    )
    assert "No line of ours is reached" not in acid
    unread = said(
        "stocking", animals=FISH, temperature_c=24
    )  # pH 8 stands in, for the ammonia alone
    assert "Keepers have" not in unread


def test_where_several_kinds_are_together_each_says_whom_it_bears():
    puffer = {"kind": "carinotetraodon-travancoricus", "count": 1, "mean_length_mm": 25}
    shrimp = {"kind": "neocaridina-davidi", "count": 20, "mean_length_mm": 20}
    both = said("stocking", "caution", animals=[puffer, shrimp], volume_l=60, temperature_c=25)
    assert "its company: One, or six and more" in both
    assert "No other fish, no shrimp." in both
    assert "its company" not in said("stocking", animals=[shrimp], temperature_c=25)


def test_each_pair_of_ion_and_element_warns_of_the_other():
    for given in (("nitrate-n", "nitrate"), ("phosphate-p", "phosphate"), ("nitrite", "nitrite-n")):
        assert "Guides differ in which unit they mean" in said(
            "units", **{"from": given[0], "to": given[1]}
        )


def of_shelf(readings=(), **tank):
    """How a tank of the shelf stands, with readings of today."""
    entries = [
        {"id": what, "at": "2026-11-28T12:00:00Z", "kind": "reading", "what": what, "value": value}
        for what, value in readings
    ]
    jar = {"id": "jar", "name": "Jar", **tank}
    return run("standing", {"tank": jar, "entries": entries, "today": "2026-11-28"})


def test_the_shelf_is_not_calm_where_a_kind_of_the_tank_is_too_warm():
    goldfish = {"animals": [{"animal": "carassius-auratus", "count": 2}]}
    warm = of_shelf([("temperature_c", 29)], **goldfish)
    assert warm["outputs"]["verdict"] == "watch"
    assert (
        "outside the 10 to 24 °C (50 to 75.2 °F) at which Goldfish" in warm["outputs"]["sentence"]
    )
    assert any("cool by about 1 °C (2 °F) an hour" in note["text"] for note in warm["notes"])
    cool = of_shelf([("temperature_c", 20)], **goldfish)
    assert cool["outputs"]["verdict"] == "calm"
    nobody = of_shelf([("temperature_c", 29)], animals=[])
    assert nobody["outputs"]["verdict"] == "calm"


@pytest.mark.parametrize(
    ("figures", "words"),
    [
        ({"temperature_c": 34}, "which can kill. Read it today."),
        ({"ph": 4.2}, "which can kill. Read it today."),
        ({"gh_dh": 0.5}, "which harms many animals over time. Read it today."),
        ({"ph": 5.5, "kh_dh": 25}, "do not fit together"),
    ],
)
def test_the_shelf_says_what_stands_with_a_tank_and_kills_though_it_was_never_read(figures, words):
    assert any(words in note["text"] for note in of_shelf(**figures)["notes"])
    read = of_shelf([("temperature_c", 24), ("ph", 7), ("gh_dh", 6), ("kh_dh", 4)], **figures)
    assert not any("The tank says" in note["text"] for note in read["notes"])


def test_changes_with_much_harder_water_are_said_to_be_a_jump_for_animals():
    tank = {"volume_l": 60, "evaporation_l_week": 0, "top_up_gh_dh": 0, "change_every_days": 7}
    text = said("top-up", "caution", **tank, gh_dh=3, tap_gh_dh=20, change_percent=50)
    assert "raises GH by 8.5 °dH at once. Animals bear about 2 °dH a day" in text
    assert "GH rises with the new water of each change" in text
    softer = said("top-up", "caution", **tank, gh_dh=20, tap_gh_dh=2, change_percent=50)
    assert "lowers GH by 9 °dH at once" in softer
    assert "at once" not in said("top-up", **tank, gh_dh=10, tap_gh_dh=12, change_percent=20)


@pytest.mark.parametrize(
    ("gh_dh", "words"), [(0, "troubles shrimp and snails"), (40, "soft-water kinds")]
)
def test_hardness_that_troubles_animals_is_said_by_its_own_calculator(gh_dh, words):
    assert words in said("hardness", "caution", gh_dh=gh_dh, kh_dh=4, ph=7.4)
    assert words not in said("hardness", gh_dh=8, kh_dh=4, ph=7.4)


def test_a_label_that_treats_a_lake_is_questioned():
    text = said("conditioner", "danger", label_ml=10, label_treats_l=4000, water_l=40, tank_l=120)
    assert "1 mL for 400 L is less than a label asks for" in text


def test_oxygen_that_no_water_holds_is_not_called_harmless():
    text = said("oxygen", temperature_c=25, oxygen_mg_l=50)
    assert "No water holds so much" in text
    assert "harmless" not in text
    assert "No water holds so much" not in said("oxygen", temperature_c=25, oxygen_mg_l=15)


@pytest.mark.parametrize(("room_c", "level"), [(38, "danger"), (33.5, "caution")])
def test_a_room_that_overheats_the_water_is_said(room_c, level):
    tank = {"length_cm": 60, "width_cm": 30, "height_cm": 30, "net_l": None, "water_c": 24}
    text = said("warmth", level, **tank, room_c=room_c)
    assert "many animals. Lamp and heater off" in text
    assert "Lamp and heater off" not in said("warmth", **tank, room_c=28)


def test_a_quick_fall_of_warmth_is_said_in_minutes():
    tank = {
        "length_cm": 60,
        "width_cm": 30,
        "height_cm": 30,
        "net_l": None,
        "water_c": 28,
        "room_c": 5,
    }
    assert "in about 2 minutes" in said("warmth", **tank, lid=True, fall_c=0.1)
