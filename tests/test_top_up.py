"""Topping up: against a count of the weeks, an equation for still water, and in its words."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.core.listing import load_all
from calculators.core.result import BadInput
from calculators.core.run import run

PLAIN = {
    "volume_l": 60, "evaporation_l_week": 6, "top_up_gh_dh": 10, "gh_dh": 10, "change_percent": None,
}  # fmt: skip


def top_up(**given_):
    return run("top-up", PLAIN | given_)


def texts(answer, level=None):
    return " ".join(note["text"] for note in answer["notes"] if level in (None, note["level"]))


@given(
    st.floats(0, 0.3), st.floats(0, 30), st.floats(0, 30), st.floats(5, 90), st.integers(1, 4),
    st.integers(1, 30),
)  # fmt: skip
def test_hardness_is_that_of_a_count_of_litres_and_degrees(
    share, top, tap, percent, weeks_between, weeks
):
    """Degrees times litres of a 60-litre tank: vapour takes none, and a change its share of all."""
    held = 8.0 * 60
    for week in range(1, weeks + 1):
        held += share * 60 * top
        if week % weeks_between == 0:
            held += percent / 100 * (60 * tap - held)
    found = top_up(
        evaporation_l_week=share * 60, top_up_gh_dh=top, top_up_kh_dh=top, tap_gh_dh=tap,
        tap_kh_dh=tap, gh_dh=8, kh_dh=8, change_percent=percent,
        change_every_days=7 * weeks_between, weeks=weeks,
    )["outputs"]  # fmt: skip
    assert found["gh_end_dh"] == pytest.approx(held / 60, abs=1e-6)
    assert found["kh_end_dh"] == pytest.approx(held / 60, abs=1e-6)


@given(st.floats(0.5, 15), st.floats(2, 30), st.floats(0, 1), st.floats(5, 60))
def test_the_share_of_purified_water_holds_hardness_from_change_to_change(
    evaporated, top, softer, percent
):
    given_ = {
        "evaporation_l_week": evaporated, "tap_gh_dh": 12 - softer, "gh_dh": 12,
        "change_percent": percent, "change_every_days": 7, "weeks": 10,
    }  # fmt: skip
    share = top_up(**given_, top_up_gh_dh=top)["outputs"]["pure_share_percent"]
    assert 0 <= share <= 100
    mixed = top_up(**given_, top_up_gh_dh=top * (1 - share / 100))["outputs"]
    if share > 0:
        assert mixed["gh_settled_low_dh"] == pytest.approx(12, abs=1e-6)
        assert mixed["gh_end_dh"] == pytest.approx(12, abs=1e-6)
    else:
        assert mixed["gh_settled_low_dh"] <= 12 + 1e-6


def test_a_change_with_the_tap_never_takes_it_below_the_tap():
    outputs = top_up(change_percent=50, change_every_days=7, tap_gh_dh=10)["outputs"]
    assert outputs["gh_settled_low_dh"] == pytest.approx(11)  # 10 + 1 x 0.5 / 0.5
    assert outputs["gh_settled_high_dh"] == pytest.approx(12)


@pytest.mark.parametrize(
    ("given_", "verdict", "words"),
    [
        ({}, "never-settles", "with no end"),
        ({"top_up_gh_dh": 0}, "steady", "adds no hardness"),
        ({"change_percent": 20, "tap_gh_dh": 10}, "rising", "settles at"),
        ({"change_percent": 50, "tap_gh_dh": 2, "change_every_days": 7}, "falling", "comes down"),
        (
            {"change_percent": 50, "tap_gh_dh": 9, "top_up_gh_dh": 5, "change_every_days": 7},
            "steady",
            "about as it is",
        ),
    ],
)
def test_verdicts(given_, verdict, words):
    answer = top_up(**given_)
    assert answer["outputs"]["verdict"] == verdict
    assert words in texts(answer)


def test_new_water_harder_than_the_tank_is_held_by_no_top_up():
    answer = top_up(change_percent=20, tap_gh_dh=16)
    assert answer["outputs"]["pure_share_percent"] is None
    assert "no top-up holds GH" in texts(answer)


def test_water_as_pure_as_it_gets_needs_no_more_of_it():
    assert top_up(top_up_gh_dh=0)["outputs"]["pure_share_percent"] == 0


@pytest.mark.parametrize(("nitrate", "level"), [(5, "info"), (30, "caution")])
def test_nitrate_of_the_top_up_is_said_by_the_week(nitrate, level):
    answer = top_up(top_up_nitrate_mg_l=nitrate)
    assert answer["outputs"]["nitrate_rise_mg_l_week"] == pytest.approx(nitrate / 10)
    assert f"{nitrate / 10:g} mg/L of nitrate" in texts(answer, level)


def test_an_untested_top_up_is_said():
    assert "not known: test it once" in texts(top_up(top_up_nitrate_mg_l=None))


def test_a_tank_that_grows_too_hard_is_said_first():
    answer = top_up(weeks=40)
    assert answer["notes"][0]["level"] == "caution"
    assert "troubles soft-water fish" in answer["notes"][0]["text"] or any(
        "troubles soft-water fish" in note["text"] for note in answer["notes"][:3]
    )


def test_soft_water_is_not_made_softer_unsaid():
    assert "shrimp and snails lack calcium" in texts(top_up(gh_dh=0.5, top_up_gh_dh=0))


def test_a_level_that_falls_far_is_said():
    # a sixth gone leaves five sixths: a fifth more of everything
    assert "stands 20 % higher" in texts(top_up(evaporation_l_week=10), "caution")
    assert "higher before it" not in texts(top_up(evaporation_l_week=3))


def test_more_than_the_tank_cannot_go():
    with pytest.raises(BadInput) as refused:
        top_up(evaporation_l_week=60)
    [(key, message)] = refused.value.problems
    assert key == "evaporation_l_week"
    assert "60" in message


def test_about_3_cm_a_week_is_what_the_pool_equation_gives():
    """Smith, Löf and Jones 1998: 0.74 x 95 (pw - pa) / Y in lb/h/sq ft, for still water.

    Vapour pressures 3.169 kPa at 25 °C and half of 2.339 kPa at 20 °C (steam tables, MEMORY), latent
    heat 1,050 Btu/lb (MEMORY).
    """
    inches_of_mercury = (3.169 - 2.339 / 2) / 3.386389
    pounds = 0.74 * 95 * inches_of_mercury / 1050
    mm_a_week = pounds * 0.45359237 / 0.09290304 * 24 * 7  # a kg on a square metre is a millimetre
    assert 27 < mm_a_week < 37
    assert "about 3 cm" in " ".join(load_all()["top-up"].description.split())
