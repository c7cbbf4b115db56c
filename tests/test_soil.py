"""Soil and cap to buy: what is bought covers the layers, and the first weeks are said before the bags."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.core.run import run
from calculators.soil.calculator import soil


def said(**given_):
    return run("soil", given_)["notes"]


@given(
    st.floats(5, 300), st.floats(5, 100), st.floats(0, 10), st.floats(0, 10), st.floats(1, 100),
    st.floats(1, 50), st.floats(0.5, 2), st.floats(0.5, 2), st.floats(0, 3),
)  # fmt: skip
def test_bags_cover_the_layers_with_less_than_one_to_spare(
    length, width, soil_cm, cap_cm, bag_l, bag_kg, cap_density, soil_density, percent
):
    found = soil(length, width, soil_cm, cap_cm, bag_l, bag_kg, cap_density, soil_density, percent)
    floor_dm2 = length * width / 100
    assert found.soil_l == pytest.approx(floor_dm2 * soil_cm / 10)
    assert found.cap_kg == pytest.approx(floor_dm2 * cap_cm / 10 * cap_density)
    for amount, bag, count in (
        (found.soil_l, bag_l, found.soil_bags),
        (found.cap_kg, bag_kg, found.cap_bags),
    ):
        assert count * bag >= amount * (1 - 1e-6) - 1e-4
        assert (count - 1) * bag < amount or count == 0
    # grams of nitrogen the other way: per square metre, then times the floor
    per_m2 = 10 * soil_cm * soil_density * percent / 100 * 1000
    assert found.soil_n_g_m2 == pytest.approx(per_m2)
    assert found.soil_n_g == pytest.approx(per_m2 * length * width / 10_000)


@pytest.mark.parametrize(("litres", "count"), [(20, 1), (40, 2), (40.1, 3), (0, 0)])
def test_a_full_bag_is_no_reason_for_another(litres, count):
    found = soil(100.0, 100.0, litres / 10, 0.0, 20.0)
    assert found.soil_bags == count


def test_nitrogen_beside_the_feed():
    """20.16 g in the soil; 3 g of feed a week with 42 % protein bring 3 x 0.42 x 0.16 = 0.2016 g."""
    found = soil(feed_g_week=3.0)
    assert found.soil_n_g == pytest.approx(20.16)
    assert found.feed_weeks == pytest.approx(100)
    assert soil().feed_weeks is None
    assert soil(feed_g_week=0.0).feed_weeks is None
    assert any("as much as 100 weeks of your feed" in note["text"] for note in said(feed_g_week=3))


@pytest.mark.parametrize(("percent", "level"), [(0.2, "caution"), (0.5, "danger"), (1.5, "danger")])
def test_ammonia_of_the_first_weeks_is_always_said(percent, level):
    [note] = [one for one in said(soil_n_percent=percent) if "gives off" in one["text"]]
    assert note["level"] == level
    assert "three days within a week" in note["text"]


@pytest.mark.parametrize(
    ("given_", "part"),
    [
        ({"soil_depth_cm": 5}, "Soil deeper than about 4 cm"),
        ({"cap_depth_cm": 1.5}, "A cap thinner than about 2 cm"),
        ({"cap_depth_cm": 6}, "A cap deeper than about 5 cm"),
    ],
)
def test_layers_too_deep_or_too_thin_are_said(given_, part):
    assert any(part in note["text"] for note in said(**given_))
    assert not any(part in note["text"] for note in said())


def test_the_bag_is_read_and_nothing_is_called_safe():
    text = " ".join(note["text"] for note in said())
    assert "no manure, no added fertiliser, no weed or insect killer" in text
    assert "safe" not in text.lower()


def test_a_cap_alone_says_nothing_of_soil():
    notes = said(soil_depth_cm=0)
    assert not any("ammonia" in note["text"] for note in notes)
    assert any("kg of cap" in note["text"] for note in notes)
    assert any("Nothing to buy" in note["text"] for note in said(soil_depth_cm=0, cap_depth_cm=0))
