"""A change of water for a reading never says a plan before what its hardness and pH do to the animals."""

from itertools import product

import pytest

from calculators.core.paint.notes import lead
from calculators.core.run import compute, find, run
from calculators.science.water.careful_change import A_TENTH, TEST_BEFORE
from calculators.science.water.first_change import hardness_jump
from calculators.science.water.gentle import STEP_DH_A_DAY
from calculators.science.water.hardness_gap import hardness_gaps
from calculators.shelf.form_filling import fill

FAR = {"kh_dh": 3, "tap_kh_dh": 15, "gh_dh": 4, "tap_gh_dh": 20}
NEAR = {"kh_dh": 6, "tap_kh_dh": 7, "gh_dh": 8, "tap_gh_dh": 9, "ph": 7.6}


def change(**given):
    return run("water-change", given)


def texts(answer):
    return [note["text"] for note in answer["notes"]]


def place(said, words):
    return next(number for number, text in enumerate(said) if words in text)


def test_a_change_that_moves_the_hardness_too_far_says_so_before_the_plan():
    answer = change(now_mg_l=60, tap_mg_l=5, **FAR)
    said = texts(answer)
    each = answer["outputs"]["each_change_percent"]
    jump = hardness_jump(each, hardness_gaps(3, 15, 4, 20))
    assert "begin with 12 % at a time" in jump  # 2 °dH of a gap of 16
    assert jump in said
    assert place(said, "begin with 12 %") < place(said, "bring it from 60")
    shown = lead(
        find("water-change"), compute("water-change", {"now_mg_l": 60, "tap_mg_l": 5, **FAR})
    )
    assert jump in [note.text for note in shown]  # above the figures


@pytest.mark.parametrize("share", [10, 30, 60, 100])
def test_whatever_the_plan_no_step_is_called_fine_that_moves_more_than_animals_bear(share):
    for kh, gh in product((0, 2, 6, 14), repeat=2):
        answer = change(now_mg_l=40, tap_mg_l=0, max_change_percent=share, kh_dh=4.0, gh_dh=18.0,
                        tap_kh_dh=4.0 + kh, tap_gh_dh=18.0 - gh)  # fmt: skip
        moves = answer["outputs"]["each_change_percent"] * max(kh, gh) / 100
        warned = any("at once, where animals bear about 2 a day" in text for text in texts(answer))
        assert warned == (moves > STEP_DH_A_DAY), (kh, gh, share)


def test_water_like_the_tanks_is_given_its_plan_without_a_word_of_hardness():
    said = " ".join(texts(change(now_mg_l=40, tap_mg_l=0, **NEAR)))
    assert "know nothing of" not in said
    assert "where animals bear" not in said


@pytest.mark.parametrize(
    ("given", "names"),
    [
        ({}, "KH and GH"),
        ({"kh_dh": 4}, "KH and GH"),  # the tap's is not known
        ({"kh_dh": 4, "tap_kh_dh": 5}, "GH"),
        ({"gh_dh": 4, "tap_gh_dh": 5}, "KH"),
    ],
)
def test_a_hardness_that_nobody_gave_is_said_to_be_unknown(given, names):
    notes = change(now_mg_l=40, tap_mg_l=0, **given)["notes"]
    (unread,) = [note for note in notes if "These figures know nothing of" in note["text"]]
    assert unread["text"].startswith(f"These figures know nothing of {names}.")
    assert unread["level"] == "caution"
    assert "begin with a tenth, poured slowly" in unread["text"]


def test_what_nothing_was_said_of_changes_no_figure():
    plain = change(now_mg_l=60, tap_mg_l=5)["outputs"]
    assert change(now_mg_l=60, tap_mg_l=5, **FAR)["outputs"] == plain
    assert plain["changes"] == 4


@pytest.mark.parametrize(
    "water",
    [
        {"ph": 4.9},  # acid
        {"kh_dh": 0, "ph": 6.4},  # nothing holds the pH, and the tap is not known
        {"kh_dh": 0, "tap_kh_dh": 4},  # 30 % of it is 1.2 °dH, and a leap of the pH all the same
    ],
)
@pytest.mark.parametrize("now", [60, 400])
def test_where_the_ph_can_leap_a_tenth_comes_first_and_a_test_before_it(water, now):
    answer = change(now_mg_l=now, tap_mg_l=5, **water)
    text = next(text for text in texts(answer) if "hange a tenth" in text)
    assert TEST_BEFORE in text
    assert A_TENTH[1:] in text
    said = texts(answer)
    plans = [number for number, one in enumerate(said) if "bring it from" in one]
    assert all(said.index(text) < number for number in plans)
    assert "no more than about a quarter" not in " ".join(said)


def test_soft_new_water_gives_no_leap_where_the_tank_is_soft_on_purpose():
    said = " ".join(texts(change(now_mg_l=40, tap_mg_l=0, kh_dh=0, tap_kh_dh=0, ph=6.2)))
    assert "hange a tenth of the water" not in said


@pytest.mark.parametrize("what", ["nitrite", "copper"])
def test_what_kills_soon_is_split_and_not_put_off(what):
    answer = change(what=what, now_mg_l=2, tap_mg_l=0, **FAR)
    text = answer["notes"][0]["text"]
    assert answer["notes"][0]["level"] == "danger"
    assert "poured slowly, and again after an hour or more until it is 33 % in all" in text
    assert f"since {what} kills sooner" in text
    assert text.index("Test ammonia first") < text.index("begin with")
    assert "make the first change now" not in text  # one step is said, and this is the smaller one


def test_a_nitrate_that_kills_hurries_no_hardness():
    text = change(now_mg_l=400, tap_mg_l=5, **FAR)["notes"][0]["text"]
    assert "begin with 12 % at a time." in text
    assert "kills sooner" not in text


def test_a_tank_of_the_shelf_brings_its_own_water():
    tank = {"id": "jar", "name": "Jar", "ph": 7.2, "kh_dh": 3, "gh_dh": 5, "net_l": 50,
            "tap": {"kh_dh": 14, "gh_dh": 18}}  # fmt: skip
    fields = fill("water-change", tank, [], "2026-11-28")["fields"]
    assert fields == {
        "volume_l": 50, "ph": 7.2, "kh_dh": 3, "gh_dh": 5, "tap_kh_dh": 14, "tap_gh_dh": 18
    }  # fmt: skip
    assert "begin with" in " ".join(texts(change(now_mg_l=60, **fields)))
