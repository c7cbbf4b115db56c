"""One water, one first step: whichever door a keeper asks, the same water gets the same answer."""

import re
from itertools import product

import pytest

from calculators.core.run import run
from calculators.science.animals.reading_lines import edge_of
from calculators.science.water.air_and_ammonia import BIND_BEFORE_AIR
from calculators.science.water.ammonia import ACT_NH3_MG_N_L
from calculators.science.water.careful_change import IN_ACID_WATER, NO_AMMONIA_MG_N_L
from calculators.science.water.change_choice import KH_JUMP_DH
from calculators.science.water.gentle import STEP_DH_A_DAY
from scripts.setup.paths import ROOT
from tests.effort import share_of
from tests.plain_yaml import read_yaml

READ = (
    "ammonia_mg_n_l",
    "nitrite_mg_n_l",
    "nitrate_mg_l",
    "ph",
    "kh_dh",
    "temperature_c",
    "oxygen_mg_l",
    "gh_dh",
)
FORECAST = {
    "ammonia_mg_n_l": "start_ammonia_mg_n_l", "nitrite_mg_n_l": "start_nitrite_mg_n_l",
    **{key: key for key in ("nitrate_mg_l", "ph", "kh_dh", "gh_dh", "temperature_c", "tap_ph", "tap_kh_dh",
                               "tap_gh_dh")},
}  # fmt: skip
SHARE = re.compile(r"[Cc]hange (?:no more than |at most )?(?:a tenth|a quarter|a third|half|\d+ %)")
WITH_THIS_TAP = re.compile(r"^Change a third of the water now")

# Soft and acid, hard and alkaline, with much gas and with little; cold and warm.
TANKS = ((6.0, 0.0), (6.8, 5.0), (7.4, 2.0), (7.5, 5.0), (8.2, 10.0), (8.6, 16.0))
TAPS = ((6.5, 1.0), (7.5, 4.0), (8.2, 15.0), (None, None))
WATERS = [
    {"ph": ph, "kh_dh": kh, "temperature_c": warmth, "ammonia_mg_n_l": ammonia, "nitrite_mg_n_l": nitrite,
     "tap_ph": tap_ph, "tap_kh_dh": tap_kh}
    for (ph, kh), (tap_ph, tap_kh), warmth, ammonia, nitrite in product(
        TANKS, TAPS, (12.0, 25.0, 31.0), (0.04, 0.1, 1.0, 8.0), (0.3, 2.0)
    )
]  # fmt: skip


def known(water):
    return {key: value for key, value in water.items() if value is not None}


def diagnosis(water, findings=()):
    readings = {key: value for key, value in known(water).items() if key in READ}
    tap = {key: value for key, value in known(water).items() if key.startswith("tap_")}
    return run("diagnose", {"readings": readings, "findings": list(findings), **tap})["outputs"]


def standing(water):
    entries = [
        {"id": key, "at": "2026-11-28T12:00:00Z", "kind": "reading", "what": key, "value": value}
        for key, value in known(water).items()
        if key in READ
    ]
    tap = {key[4:]: value for key, value in known(water).items() if key.startswith("tap_")}
    tank = {"id": "jar", "name": "Jar"} | ({"tap": tap} if tap else {})
    return run("standing", {"tank": tank, "entries": entries, "today": "2026-11-28"})


def forecast(water):
    given = {FORECAST[key]: value for key, value in known(water).items() if key in FORECAST}
    return run("nitrogen-forecast", {**given, "days": 1})


def ammonia_change(water):
    given = {
        key: value
        for key, value in known(water).items()
        if key not in ("ammonia_mg_n_l", "nitrite_mg_n_l")
    }
    return run(
        "ammonia-change",
        {**given, "ammonia_mg_l": water["ammonia_mg_n_l"], "reported_as": "nitrogen"},
    )


def said(answer):
    return " ".join(note["text"] for note in answer["notes"])


def sentences(text):
    return re.split(r"(?<=[.;]) ", text)


def test_nitrite_beside_ammonia_is_changed_out_by_every_door():
    """No door leaves nitrite in for the sake of harmless ammonia, nor says that no change is needed."""
    wrong = []
    for number, water in enumerate(share_of(WATERS, 23)):
        told = {"diagnose": diagnosis(water)["first_action"], "standing": said(standing(water))}
        if number % 4 == 0:
            told["forecast"] = said(forecast(water))
        wrong += [
            (door, water, text) for door, text in told.items()
            if not SHARE.search(text) or "no change is needed" in text
        ]  # fmt: skip
    assert wrong == []


def test_no_door_changes_more_with_a_tap_than_the_ammonia_allows():
    wrong = []
    for water in share_of([one for one in WATERS if one["tap_ph"] is not None], 6):
        if water["ammonia_mg_n_l"] <= NO_AMMONIA_MG_N_L:
            continue
        largest = ammonia_change(water)["outputs"]["largest_percent"]
        ordered = [one for one in sentences(said(standing(water))) if WITH_THIS_TAP.search(one)]
        if ordered and largest < 100 / 3:
            wrong.append((water, largest, ordered))
    assert wrong == []


def test_the_tanks_page_acts_where_the_toxic_share_says_so_and_is_calm_only_with_none():
    for water in share_of(WATERS, 23):
        alone = water | {"nitrite_mg_n_l": 0.0}
        given = {"ammonia_mg_l": alone["ammonia_mg_n_l"], "reported_as": "nitrogen",
                 "ph": alone["ph"], "temperature_c": alone["temperature_c"]}  # fmt: skip
        rating = run("free-ammonia", given)["outputs"]["rating"]
        verdict = standing(alone)["outputs"]["verdict"]
        if rating == "act":
            assert verdict == "act", alone
        if alone["ammonia_mg_n_l"] > NO_AMMONIA_MG_N_L:
            assert verdict != "calm", alone


def test_ammonia_that_harms_nobody_yet_has_its_first_step_on_the_tanks_page():
    """The list of the tank says "by the first step": then one must stand there."""
    answer = standing({"ammonia_mg_n_l": 0.3, "ph": 6.2, "kh_dh": 1.0, "temperature_c": 24.0})
    assert answer["outputs"]["verdict"] == "watch"
    assert "Do not change water" in said(answer)


FULL_OF_GAS = {
    "ph": 6.8,
    "kh_dh": 5.0,
    "temperature_c": 24.0,
    "ammonia_mg_n_l": 8.0,
    "nitrite_mg_n_l": 2.0,
}


def test_air_waits_for_the_binder_where_it_would_free_ammonia_that_kills():
    """By the carbonate equilibrium 0.025 mg N/L is free now, and 0.46 once the gas has left."""
    told = [
        diagnosis(FULL_OF_GAS)["first_action"],
        said(standing(FULL_OF_GAS | {"tap_ph": 8.2, "tap_kh_dh": 15.0})),
        said(forecast(FULL_OF_GAS)),
    ]
    for text in told:
        assert BIND_BEFORE_AIR in text
        assert "Make the water move" not in text
        assert "stop feeding, add air" not in text
    assert "before you add air" in standing(FULL_OF_GAS)["outputs"]["sentence"]
    assert "Bind the ammonia before you add air" in said(ammonia_change(FULL_OF_GAS))


def test_air_waits_where_it_would_free_many_times_what_kills_already():
    """0.17 mg N/L is free now, and 1 once the gas has left; without the gas air does no such thing."""
    deadly = FULL_OF_GAS | {"ph": 7.4, "kh_dh": 6.4, "temperature_c": 32.3, "nitrite_mg_n_l": 0.0}
    assert BIND_BEFORE_AIR in said(standing(deadly))
    assert "Make the water move" in said(standing(deadly | {"ph": 8.3}))


@pytest.mark.parametrize("oxygen", [1.5, 4.0])
def test_air_never_waits_where_oxygen_is_short(oxygen):
    short = FULL_OF_GAS | {"oxygen_mg_l": oxygen}
    assert BIND_BEFORE_AIR not in said(standing(short))
    assert BIND_BEFORE_AIR not in diagnosis(short)["first_action"]


def test_air_never_waits_where_animals_gasp():
    action = diagnosis(FULL_OF_GAS, ("fish-gasping",))["first_action"]
    assert BIND_BEFORE_AIR not in action
    assert re.search(r"\b(air|ripple)\b", action[:160])


@pytest.mark.parametrize(("tap_kh", "moves"), [(18.0, "raise"), (2.0, "lower")])
def test_new_water_of_another_hardness_is_told_apart_on_the_tanks_page_as_in_the_budget(
    tap_kh, moves
):
    water = {
        "ph": 7.8,
        "kh_dh": 10.0,
        "temperature_c": 24.0,
        "ammonia_mg_n_l": 0.0,
        "nitrite_mg_n_l": 2.0,
    }
    told = said(standing(water | {"tap_ph": 7.9, "tap_kh_dh": tap_kh}))
    assert f"would {moves} it by 2.7 °dH at once" in told
    assert "begin with 25 % at a time" in told
    budget = run("kh-budget", {"kh_dh": 10, "tap_kh_dh": tap_kh, "change_percent": 100 / 3})
    assert f"The first of these changes {moves}s KH by 2.7 °dH" in said(budget)
    assert "at once, where animals" not in said(
        standing(water | {"tap_ph": 7.8, "tap_kh_dh": 12.0})
    )


def test_ammonia_that_does_not_kill_yet_is_no_reason_for_a_large_change_of_another_hardness():
    wrong = []
    for water in share_of([one for one in WATERS if one["tap_ph"] is not None], 6):
        if abs(water["tap_kh_dh"] - water["kh_dh"]) <= KH_JUMP_DH:
            continue
        outputs = ammonia_change(water)["outputs"]
        free = outputs["now_nh3_mg_n_l"]
        step = outputs["advised_percent"] / 100 * abs(water["tap_kh_dh"] - water["kh_dh"])
        if free is not None and free < ACT_NH3_MG_N_L and step > STEP_DH_A_DAY:
            wrong.append((water, outputs["advised_percent"]))
    assert wrong == []


@pytest.mark.parametrize("oxygen", [2.0, None])
def test_no_door_asks_for_a_test_that_was_given(oxygen):
    water = {"ph": 8.4, "kh_dh": 8.0, "temperature_c": 26.0, "ammonia_mg_n_l": 3.0, "nitrite_mg_n_l": 1.0,
             "nitrate_mg_l": 300.0, "oxygen_mg_l": oxygen, "tap_ph": 7.5, "tap_kh_dh": 6.0,
             "tap_nitrate_mg_l": 10.0}  # fmt: skip
    told = said(standing(water))
    told = told[: told.index("Test next")]
    assert not re.search(r"[Tt]est (?:the other|ammonia|nitrite|pH|KH|the tap)", told)


def test_none_of_ammonia_is_one_line_for_the_diagnosis_and_the_tanks_page():
    none = read_yaml(ROOT / "species" / "findings.yml")["ammonia-none"]
    assert none["derived_from"]["up_to"] == NO_AMMONIA_MG_N_L
    water = {
        "ph": 7.5,
        "kh_dh": 5.0,
        "temperature_c": 24.0,
        "ammonia_mg_n_l": 0.04,
        "nitrite_mg_n_l": 2.0,
    }
    for text in (diagnosis(water)["first_action"], said(standing(water)), said(forecast(water))):
        assert re.search("change a third of the water", text, re.IGNORECASE)
        assert "Do not change water" not in text


def test_as_little_ammonia_counts_where_it_is_toxic():
    water = {
        "ph": 9.2,
        "kh_dh": 12.0,
        "temperature_c": 28.0,
        "ammonia_mg_n_l": 0.04,
        "nitrite_mg_n_l": 0.0,
    }
    assert standing(water)["outputs"]["verdict"] != "calm"


def test_acid_water_bears_a_tenth_at_every_door():
    """A reading of nitrite, none of ammonia, at a pH that troubles animals by itself."""
    water = {"ph": 4.9, "ammonia_mg_n_l": 0.0, "nitrite_mg_n_l": 2.0, "temperature_c": 24.0}
    assert f"At pH {edge_of('ph', 'harmful_low'):g} or below" in IN_ACID_WATER
    for text in (diagnosis(water)["first_action"], said(standing(water))):
        assert "hange a tenth of the water" in text
        assert "hange a third of the water now" not in text
    pages = [
        said(run("chloride", {"nitrite_mg_n_l": 2})),
        said(run("water-change", {"what": "nitrite", "now_mg_l": 2})),
        (ROOT / "docs" / "danger.md").read_text(encoding="utf-8").replace("&nbsp;", " "),
        (ROOT / "species" / "problems" / "nitrite-emergency.yml").read_text(encoding="utf-8"),
    ]
    assert all(IN_ACID_WATER in page for page in pages)


def test_in_acid_water_with_ammonia_nitrite_asks_for_a_tenth():
    water = {
        "ph": 4.9,
        "kh_dh": 0.0,
        "ammonia_mg_n_l": 1.0,
        "nitrite_mg_n_l": 2.0,
        "temperature_c": 24.0,
    }
    for text in (diagnosis(water)["first_action"], said(standing(water)), said(forecast(water))):
        assert "a tenth of the water" in text
        assert "a third of the water" not in text


def test_nitrite_is_not_forgotten_beside_a_reading_that_asks_for_no_change():
    """Cold kills, nitrite harms: the step against cold has no change, and nitrite asks for one."""
    water = {"ph": 7.6, "ammonia_mg_n_l": 0.0, "nitrite_mg_n_l": 0.3, "temperature_c": 11.0}
    for text in (diagnosis(water)["first_action"], said(standing(water))):
        assert text.index("heater") < text.index("hange a third of the water")


@pytest.mark.parametrize("ammonia", [0.0, 0.1])
def test_new_water_with_ammonia_of_its_own_is_no_calmer_at_one_door_than_at_the_other(ammonia):
    """Chloramine of 4 mg/L leaves up to 1.3 mg N/L, which in half of an alkaline tank can kill."""
    treated = run("conditioner", {"kind": "chloramine", "chlorine_mg_l": 4, "water_l": 30, "tank_l": 60,
                                  "ph": 8.3, "temperature_c": 28})  # fmt: skip
    brings = treated["outputs"]["most_ammonia_mg_n_l"]
    assert any("toxic" in one["text"] and one["level"] == "danger" for one in treated["notes"])
    water = {"ph": 8.2, "kh_dh": 8.0, "temperature_c": 28.0, "tap_ph": 8.3, "tap_kh_dh": 9.0}
    answer = ammonia_change({**water, "ammonia_mg_n_l": ammonia, "tap_ammonia_mg_n_l": brings})
    dangers = [one["text"] for one in answer["notes"] if one["level"] == "danger"]
    assert any("would end above the line" in text for text in dangers)
    assert "1.3 mg N/L of its own: treat it before it goes in" in said(answer)
    assert "of its own" not in said(ammonia_change({**water, "ammonia_mg_n_l": ammonia}))


def test_food_and_air_come_before_the_change_that_nitrite_asks_for():
    water = {
        "ph": 7.5,
        "kh_dh": 5.0,
        "temperature_c": 25.0,
        "ammonia_mg_n_l": 0.1,
        "nitrite_mg_n_l": 2.0,
    }
    for text in (diagnosis(water)["first_action"], said(standing(water)), said(forecast(water))):
        change = text.index("change a third of the water")
        assert re.search("stop feeding", text[:change], re.IGNORECASE)
        assert re.search(r"\b(air|water move)\b", text[:change])


def test_the_plan_that_the_nitrite_page_hands_on_is_in_thirds():
    record = read_yaml(ROOT / "species" / "problems" / "nitrite-emergency.yml")
    plans = [one for one in record["calculators"] if one["calculator"] == "water-change"]
    assert plans
    assert all(one["inputs"]["max_change_percent"] == 33 for one in plans)


@pytest.mark.parametrize("ammonia", [0.0, 0.1])
def test_where_nitrite_and_nitrate_kill_every_door_changes_a_quarter(ammonia):
    water = {"ph": 7.8, "kh_dh": 6.0, "temperature_c": 25.0, "ammonia_mg_n_l": ammonia,
             "nitrite_mg_n_l": 2.0, "nitrate_mg_l": 300.0}  # fmt: skip
    tap = {"tap_ph": 7.6, "tap_kh_dh": 5.0}
    told = (
        diagnosis(water)["first_action"],
        said(standing(water | tap)),
        said(forecast(water | tap)),
    )
    for text in told:
        assert re.search(r"change (a quarter|25 %) of the water", text, re.IGNORECASE)
        assert not re.search("change (a third|half)", text, re.IGNORECASE)


@pytest.mark.parametrize("ph", [4.4, 9.7])
def test_the_forecast_asks_for_no_test_of_ammonia_that_was_read(ph):
    water = {"ph": ph, "temperature_c": 25.0, "nitrite_mg_n_l": 0.0}
    assert "test ammonia" in said(forecast({**water, "ammonia_mg_n_l": 0.0}))
    told = [
        one
        for one in sentences(said(forecast({**water, "ammonia_mg_n_l": 1.0})))
        if "second kit" in one
    ]
    assert told
    assert not [one for one in told if "test ammonia" in one]


def test_the_bands_of_oxygen_are_those_of_the_one_table_of_lines():
    records = read_yaml(ROOT / "species" / "findings.yml")
    kills, harms = (edge_of("oxygen_mg_l", edge) for edge in ("deadly_low", "harmful_low"))
    assert records["oxygen-low"]["derived_from"]["up_to"] == kills
    assert records["oxygen-short"]["derived_from"]["above"] == kills
    assert records["oxygen-short"]["derived_from"]["up_to"] == harms
    assert "danger" not in records["oxygen-short"]


@pytest.mark.parametrize("oxygen", [2.9, 3.0, 3.1, 3.9, 4.0, 4.1, 5.0, 5.1, 8.0])
def test_oxygen_has_one_verdict_at_every_door(oxygen):
    """The one-day minima of the US criteria: 3 mg/L for grown warm-water fish, 5 for young ones."""
    water = {"oxygen_mg_l": oxygen}
    verdict = standing(water)["outputs"]["verdict"]
    rating = run("oxygen", water)["outputs"]["rating"]
    entry = {"id": "o", "tank": "jar", "at": "2026-11-28T12:00:00Z", "kind": "reading",
             "what": "oxygen_mg_l", "value": oxygen}  # fmt: skip
    board = run("round", {"tanks": [{"id": "jar", "name": "Jar"}], "entries": [entry],
                          "today": "2026-11-28"})  # fmt: skip
    assert board["outputs"]["order"][0]["verdict"] == verdict
    assert {"act": "act", "watch": "watch", "good": "calm"}[rating] == verdict
    assert diagnosis(water)["urgent"] == (verdict == "act")
    if verdict == "watch":
        for text in (diagnosis(water)["first_action"], said(standing(water))):
            assert "falls further until dawn" in text
            assert "If animals gasp" in text
