"""No answer asks for more of a change, of salt, of feed or of warmth at once than animals bear; where two
calculators speak of one water, they do not contradict each other.
"""

import random

import pytest

from calculators.core.run import run
from calculators.science.water.ammonia import free_kills
from calculators.science.water.change_choice import CHANGING, choose, outcome, outcomes
from calculators.science.water.water_mix import Water
from tests.effort import how_many


def texts(calculator, **given):
    return [note["text"] for note in run(calculator, given)["notes"]]


def levels(calculator, start, **given):
    notes = run(calculator, given)["notes"]
    return [note["level"] for note in notes if note["text"].startswith(start)]


# --- trends: what was read is not asked, so that no step may be right for one thing and harm for another

FALLING = [(7 * week, 5 - 0.8 * week) for week in range(6)]


def trend(readings):
    given = [{"day": day, "value": value} for day, value in readings]
    return " ".join(texts("trend", readings=given, changes=[], kit_step=0.5))


def test_a_falling_hardness_is_not_fed():
    """Nitrification uses up alkalinity, 7.1 mg of calcium carbonate a mg of nitrogen (US EPA 1975)."""
    said = trend(FALLING)
    assert "If it is nitrate or phosphate: before it reaches zero, thin fast plants or feed" in said
    assert "If it is carbonate hardness (KH): feed no more for it" in said


@pytest.mark.parametrize("last", [60, 220, 260])
def test_high_nitrate_is_not_changed_out_before_ammonia_and_acid_water_are_looked_at(last):
    said = trend([(7 * week, last - 10 * (5 - week)) for week in range(6)])
    assert "no ammonia shows change" in said.replace("\n", " ")
    assert "change no more than 10 % at a time" in said


# --- changes of water


def test_a_plan_that_is_none_says_what_the_water_bears_and_asks_for_no_larger_change():
    acid = {"ph": 4.9, "kh_dh": 0, "tap_kh_dh": 8, "target_mg_l": 5, "tap_mg_l": 0}
    said = " ".join(texts("water-change", what="nitrate", now_mg_l=200, **acid))
    assert "which is no plan" in said
    assert "allow a larger change" not in said
    assert "change a tenth of the water, slowly" in said
    assert "If a test shows ammonia too, do not change yet" in said


@pytest.mark.parametrize(("most", "said"), [(10, True), (30, False)])
def test_a_larger_change_is_only_offered_where_it_stays_a_usual_one(most, said):
    plain = {"ph": 7.6, "kh_dh": 6, "tap_kh_dh": 6, "gh_dh": 8, "tap_gh_dh": 8, "tap_mg_l": 0}
    told = texts(
        "water-change",
        what="nitrate",
        now_mg_l=200,
        target_mg_l=5,
        max_change_percent=most,
        **plain,
    )
    assert any("allow a larger change" in text for text in told) == said


def test_a_smaller_beginning_is_not_followed_by_a_larger_one():
    given = {"gh_dh": 4, "tap_gh_dh": 40, "kh_dh": 4, "tap_kh_dh": 4, "ph": 7.4, "tap_mg_l": 5}
    told = texts("water-change", what="nitrate", now_mg_l=300, **given)
    [kills] = [text for text in told if "can kill" in text]
    assert "begin with 5 % at a time" in kills
    assert kills.index("Test ammonia first") < kills.index("begin with 5 %")
    assert "a quarter" not in " ".join(told)
    assert any("counts dilution alone" in text for text in told)


def test_half_is_changed_only_with_water_like_the_tanks_where_readings_are_missing():
    """The other calculator forbids half of far softer water of a lower pH: its gas frees ammonia."""
    told = " ".join(
        texts("free-ammonia", ammonia_mg_l=0.7, reported_as="nitrogen", ph=8.0, temperature_c=25)
    )
    assert "its KH and GH lie within 2 °dH of them, change half now" in told
    tank = {"ammonia_mg_l": 0.7, "reported_as": "nitrogen", "ph": 8.0, "temperature_c": 25}
    softer = run("ammonia-change", {**tank, "kh_dh": 10, "tap_ph": 7, "tap_kh_dh": 3})["notes"]
    assert not any("Change 50 % now" in note["text"] for note in softer)


@pytest.mark.parametrize(("ph", "said"), [(7.1, True), (7.4, True), (7.6, False)])
def test_up_to_the_pH_of_the_other_doors_a_change_is_asked_about_first(ph, said):
    told = texts("free-ammonia", ammonia_mg_l=0.2, reported_as="nitrogen", ph=ph, temperature_c=22)
    assert any("ask before you change water" in text for text in told) == said


def random_waters(draw):
    tank = Water(
        draw.uniform(6, 9), draw.uniform(0.3, 15), draw.uniform(18, 30), draw.uniform(0.1, 4), None
    )
    tap = Water(
        draw.uniform(6, 9), draw.uniform(0, 15), tank.temperature_c, draw.choice((0, 0.5, 3)), None
    )
    return tank, tap


def test_no_change_that_is_advised_brings_ammonia_or_throws_the_pH():
    draw, changed = random.Random(3), 0
    for _ in range(how_many(4_000)):
        tank, tap = random_waters(draw)
        steps = outcomes(tank, tap)
        choice = choose(tank, tap, steps)
        if choice.way not in CHANGING:
            continue
        changed += 1
        after = outcome(tank, tap, choice.percent)
        assert after.total_mg_n_l <= tank.ammonia_mg_n_l, (tank, tap, choice)
        if not free_kills(choice.now.nh3_mg_n_l):
            assert abs(after.at_once.ph - choice.now.ph) <= 1, (tank, tap, choice)
    assert changed


def test_new_water_with_more_ammonia_than_the_tank_is_treated_before_any_of_it_goes_in():
    told = texts(
        "ammonia-change", ammonia_mg_l=2, reported_as="nitrogen", ph=6.1, kh_dh=1.4,
        temperature_c=26, tap_ph=6.8, tap_kh_dh=0, tap_ammonia_mg_n_l=3,
    )  # fmt: skip
    assert told[0].startswith("Before any change, give a conditioner that binds ammonia")
    assert not any("Change 50 % now" in text for text in told)


# --- hardness


def test_a_change_that_holds_KH_by_a_jump_is_not_recommended():
    tank = {
        "volume_l": 10, "kh_dh": 4, "nitrified_mg_n_day": 18, "nitrate_taken_mg_n_day": 5,
        "tap_kh_dh": 7.5, "change_percent": 20, "change_every_days": 7,
    }  # fmt: skip
    [held] = [text for text in texts("kh-budget", **tank) if text.startswith("To keep it at")]
    assert "79 %, which moves KH by 4.3 °dH at once" in held
    assert held.endswith("Change less and more often, or feed less.")


def test_a_jump_of_KH_is_said_where_GH_stays():
    told = texts(
        "top-up", kh_dh=1, tap_kh_dh=20, gh_dh=12, tap_gh_dh=12, top_up_gh_dh=0, top_up_kh_dh=0,
        change_percent=50,
    )  # fmt: skip
    assert any(text.startswith("The first of these changes raises KH by 9.5 °dH") for text in told)


# --- warmth and gas


@pytest.mark.parametrize(
    ("room_c", "lid", "level"),
    [
        (29.9, True, None), (30, True, "caution"), (33, True, "danger"), (32.5, True, "caution"),
        (30.9, False, None), (31, False, "caution"), (34, False, "danger"),
    ],
)  # fmt: skip
def test_a_room_that_warms_the_water_to_harm_is_told_by_the_warm_end(room_c, lid, level):
    """An open tank stays one to three degrees below its room; the lines are those of the readings."""
    found = levels("warmth", "In a room of", water_c=26, room_c=room_c, lid=lid)
    assert found == ([level] if level else [])


def test_in_a_warm_room_too_a_power_cut_is_told_of():
    assert any(
        "In a power cut warm water soon lacks oxygen" in text
        for text in texts("warmth", water_c=24, room_c=29)
    )


@pytest.mark.parametrize(
    ("oxygen_mg_l", "calm"), [(10.5, True), (12.0, True), (12.5, False), (30, False)]
)
def test_no_calm_word_stands_beside_gas_that_makes_bubbles(oxygen_mg_l, calm):
    """At 25 °C water holds 8.26 mg/L (Benson and Krause 1984): 1.48 times as much is 110 % of all gas."""
    told = texts("oxygen", temperature_c=25, oxygen_mg_l=oxygen_mg_l)
    assert any("harmless for hours" in text for text in told) == calm
    assert any("Move the surface now" in text for text in told) != calm


@pytest.mark.parametrize(("bag_c", "level"), [(6, "danger"), (17, "danger"), (19, "caution")])
def test_animals_from_far_colder_water_are_not_dripped_at_once(bag_c, level):
    assert levels(
        "acclimate", "Bag and tank are", bag_temperature_c=bag_c, tank_temperature_c=26
    ) == [level]


def test_a_mix_without_carbonate_hardness_is_told_of():
    thin = {"gh_dh": 30, "kh_dh": 9, "ph": 7.8, "target_gh_dh": 1.5, "mix_gh_dh": 0, "mix_kh_dh": 0}
    told = texts("hardness", **thin)
    assert any("next to no carbonate hardness (0.45 °dH)" in text for text in told)
    told = texts("hardness", **(thin | {"target_gh_dh": 6}))
    assert not any("next to no carbonate hardness" in text for text in told)


def test_nitrite_under_the_line_for_hours_is_not_left_for_days():
    told = texts("chloride", nitrite_mg_n_l=0.59, chloride_mg_l=10)
    [under] = [text for text in told if "under the line" in text]
    assert "the most for a short time" in under
    assert "If it has not fallen by tomorrow, and a test shows no ammonia, change" in under
