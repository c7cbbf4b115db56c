"""New water of far other hardness: one rule at every door, and what kills meanwhile comes first."""

import re
from itertools import product

import pytest

from calculators.core.run import run
from calculators.science.water.change_choice import choose, outcomes
from calculators.science.water.first_change import A_DAY_PERCENT, daily_rise, hardness_jump
from calculators.science.water.gentle import STEP_DH_A_DAY
from calculators.science.water.hardness_gap import bearable_percent, hardness_gaps
from calculators.science.water.water_mix import Water
from scripts.setup.paths import ROOT
from tests.effort import share_of
from tests.plain_yaml import read_yaml
from tests.test_one_water_many_doors import ammonia_change, diagnosis, forecast, said, standing

NITRITE_KILLS = {"ph": 7.8, "kh_dh": 6.0, "gh_dh": 8.0, "temperature_c": 24.0, "ammonia_mg_n_l": 0.0,
                 "nitrite_mg_n_l": 2.0, "tap_ph": 7.8, "tap_kh_dh": 6.0}  # fmt: skip


@pytest.mark.parametrize(("tap_gh", "moves"), [(26.0, "raise"), (0.0, "lower")])
def test_general_hardness_alone_limits_the_change_at_both_doors(tap_gh, moves):
    water = NITRITE_KILLS | {"tap_gh_dh": tap_gh}
    for text in (diagnosis(water)["first_action"], said(standing(water)), said(forecast(water))):
        assert f"would {moves} it by" in text
        assert "shrimp and snails least of all" in text
        assert text.index("begin with") < text.lower().index("change a third of the water")
        assert "poured slowly, and again after an hour or more" in text
        assert "since nitrite kills sooner" in text
    near = NITRITE_KILLS | {"tap_gh_dh": 9.0}
    for text in (diagnosis(near)["first_action"], said(standing(near))):
        assert "at once, where animals" not in text


def test_nitrite_that_does_not_kill_yet_hurries_no_hardness():
    water = NITRITE_KILLS | {"nitrite_mg_n_l": 0.2, "tap_gh_dh": 26.0}
    for text in (diagnosis(water)["first_action"], said(standing(water))):
        assert "begin with" in text
        assert "kills sooner" not in text


def test_no_share_moves_either_hardness_further_than_animals_bear_in_a_day():
    for kh, gh in product((0, 1, 3, 8, 19), repeat=2):
        gaps = hardness_gaps(4.0, 4.0 + kh, 20.0, 20.0 - gh)
        share = bearable_percent(gaps)
        assert share * max(kh, gh) / 100 <= STEP_DH_A_DAY
        assert hardness_jump(share, gaps) == ""


def test_what_differs_to_both_sides_is_not_matched_by_one_means():
    words = hardness_jump(50, hardness_gaps(2.0, 12.0, 20.0, 4.0))
    assert "take other water" in words
    assert "purified water first" not in words


def test_an_unread_hardness_says_nothing():
    assert hardness_gaps(None, 12.0, 3.0, None) == []
    assert hardness_jump(90, hardness_gaps(4.0, 4.0, None, 30.0)) == ""


def test_ammonia_is_changed_gently_where_general_hardness_is_far_off_and_nothing_kills():
    tank = Water(7.6, 6.0, 25.0, 0.6, 4.0)
    near, far = Water(7.4, 6.0, 25.0, 0.0, 5.0), Water(7.4, 6.0, 25.0, 0.0, 24.0)
    assert choose(tank, near, outcomes(tank, near)).percent == 50
    percent = choose(tank, far, outcomes(tank, far)).percent
    assert 0 < percent * 20 / 100 <= STEP_DH_A_DAY


@pytest.mark.parametrize("gap", [{"tap_gh_dh": 30.0}, {"tap_kh_dh": 2.0, "kh_dh": 16.0}])
def test_free_ammonia_that_kills_comes_first_but_the_change_is_split(gap):
    water = {"ph": 8.4, "kh_dh": 8.0, "gh_dh": 6.0, "temperature_c": 26.0, "ammonia_mg_n_l": 3.0,
             "tap_ph": 7.8, "tap_kh_dh": 8.0} | gap  # fmt: skip
    answer = ammonia_change(water)
    assert answer["outputs"]["advised_percent"] == 25
    for text in (said(answer), diagnosis(water)["first_action"], said(standing(water))):
        assert "hange 25 % now" in text
        assert "To gain time, give a conditioner that binds ammonia" in text
        assert "since ammonia kills sooner" in text
    even = water | {"tap_gh_dh": 6.0, "tap_kh_dh": water["kh_dh"]}
    assert ammonia_change(even)["outputs"]["advised_percent"] == 50


def test_no_door_calls_a_change_ordinary_that_moves_a_hardness_far():
    wrong = []
    for kh, gh, ammonia in share_of(list(product((1.0, 18.0), (4.0, 30.0), (0.05, 0.1))), 4):
        water = {"ph": 6.2, "kh_dh": 1.0, "gh_dh": 4.0, "temperature_c": 22.0, "ammonia_mg_n_l": ammonia,
                 "tap_ph": 6.4, "tap_kh_dh": kh, "tap_gh_dh": gh}  # fmt: skip
        is_even = (kh, gh) == (water["kh_dh"], water["gh_dh"])
        calm = "ordinary change with this tap does no harm" in said(ammonia_change(water))
        if calm and not is_even:
            wrong.append(water)
    assert wrong == []


def test_hardness_that_is_nearly_gone_is_brought_up_alike_on_the_page_and_in_the_budget():
    record = read_yaml(ROOT / "species" / "problems" / "kh-crash.yml")
    first = record["first_action"]["text"]
    assert A_DAY_PERCENT == 10
    assert "change a tenth of the water a day" in first
    assert f"no more than {STEP_DH_A_DAY} °dH a day" in first
    assert "read ammonia and pH again before each change" in first
    budget = run("kh-budget", {"kh_dh": 0.5, "tap_kh_dh": 26, "change_percent": 20})
    told = said(budget).replace("\u00a0", " ")
    assert (
        f"no more than {A_DAY_PERCENT} % of the water and about {STEP_DH_A_DAY} °dH a day" in told
    )
    assert "Read ammonia and pH before each" in told
    assert "allows no more than 7 % a day" in told
    crash = diagnosis({"ammonia_mg_n_l": 0.0, "ph": 5.8, "kh_dh": 0.5, "tap_kh_dh": 26.0},
                      ["no-change-for-months"])["first_action"]  # fmt: skip
    assert crash.index("allows no more than 7 % a day") < crash.index("change a tenth of the water")


@pytest.mark.parametrize("tap", [0.0, 0.5])
def test_a_tap_without_hardness_raises_none(tap):
    assert "no change with it raises KH" in daily_rise(0.5, tap)
    assert daily_rise(0.5, 8.0) == ""


def test_daily_tenths_reach_what_the_page_expects():
    """A tenth a day for a week with a tap of 4 °dH brings none to about 2, as the page says."""
    course = 0.0
    for _ in range(7):
        course += A_DAY_PERCENT / 100 * (4.0 - course)
    expected = read_yaml(ROOT / "species" / "problems" / "kh-crash.yml")["expect"][0]["text"]
    assert re.search(r"KH 2 to 3", expected)
    assert course > 2
