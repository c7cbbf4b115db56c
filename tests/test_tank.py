"""The tank's volumes and masses: what goes in comes out, and no floor is called good enough."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.core.result import Refused
from calculators.core.run import run
from calculators.tank.calculator import tank

WATER, GRAIN = 0.99705, 2.65  # gsw at 25 °C; customary density of grains
GLASS = 2.5  # EN 572, from memory


@given(
    st.floats(20, 200), st.floats(20, 80), st.floats(20, 80), st.floats(1, 19), st.floats(0, 5),
    st.floats(0, 5), st.floats(0.5, 1), st.floats(0, 1), st.floats(0.3, 1.8), st.floats(0.3, 1.8),
    st.sampled_from(["box", "cylinder"]),
)  # fmt: skip
def test_every_litre_and_kilogram_is_accounted_for(
    length, width, height, glass_mm, soil, cap, filled, stones, soil_density, cap_density, shape
):
    pane = glass_mm / 10
    inner_height = height - pane
    level = max(filled * inner_height, soil + cap)
    floor = (
        (length - 2 * pane) * (width - 2 * pane)
        if shape == "box"
        else math.pi * (width / 2 - pane) ** 2
    )
    stone = stones * floor * (level - soil - cap) / 1000 * 0.99
    found = tank(
        shape, length, width, height, width, level, glass_mm, soil, cap, stone, 10.0, soil_density,
        cap_density, 2.6,
    )  # fmt: skip
    total = found.net_l + found.soil_l + found.cap_l + stone
    assert total == pytest.approx(floor * level / 1000, rel=1e-6)
    assert found.gross_l == pytest.approx(floor * inner_height / 1000)
    outside = length * width if shape == "box" else math.pi / 4 * width**2
    glass = (outside * height - floor * inner_height) / 1000 * GLASS
    assert found.glass_kg == pytest.approx(glass, rel=1e-6, abs=1e-6)
    # the same mass another way: grains take their own volume, water all the rest up to the level
    grains = (found.soil_l * soil_density + found.cap_l * cap_density) / GRAIN
    water = (floor * level / 1000 - grains - stone) * WATER
    solids = found.soil_l * soil_density + found.cap_l * cap_density + stone * 2.6
    assert found.mass_kg == pytest.approx(water + solids + glass + 10, rel=2e-4)
    assert found.floor_kg_m2 == pytest.approx(found.mass_kg / (outside / 10_000))
    assert found.floor_kpa == pytest.approx(found.floor_kg_m2 * 9.80665 / 1000)


def test_a_round_tank_holds_a_cylinder():
    answer = run(
        "tank",
        {
            "shape": "cylinder", "diameter_cm": 52, "height_cm": 61, "glass_mm": 10,
            "water_level_cm": 60, "soil_depth_cm": 0, "cap_depth_cm": 0, "hardscape_l": 0,
        },
    )  # fmt: skip
    assert answer["outputs"]["net_l"] == pytest.approx(math.pi * 25**2 * 60 / 1000)
    assert answer["outputs"]["surface_cm2"] == pytest.approx(math.pi * 625)


@pytest.mark.parametrize(
    ("given_", "keys"),
    [
        ({"shape": "cylinder", "diameter_cm": None}, ["diameter_cm"]),
        ({"length_cm": None, "width_cm": None}, ["length_cm", "width_cm"]),
        ({"water_level_cm": 46}, ["water_level_cm"]),
        ({"soil_depth_cm": 30, "cap_depth_cm": 20}, ["soil_depth_cm", "cap_depth_cm"]),
        ({"hardscape_l": 200.0}, ["hardscape_l"]),
        ({"glass_mm": 60, "width_cm": 11}, ["glass_mm", "length_cm"]),
        ({"glass_mm": 20, "height_cm": 2}, ["glass_mm", "length_cm"]),
        ({"shape": "cylinder", "diameter_cm": 1.5}, ["glass_mm", "diameter_cm"]),
    ],
)
def test_refuses_what_does_not_fit(given_, keys):
    with pytest.raises(Refused) as refused:
        tank(**given_)
    assert [one.key for one in refused.value.refusals] == keys


@pytest.mark.parametrize("length", [20, 80, 200])
def test_sends_the_keeper_to_someone_who_knows_and_calls_no_floor_good(length):
    answer = run("tank", {"length_cm": length})
    text = " ".join(note["text"] for note in answer["notes"]).lower()
    assert "safe" not in text.replace("safety", "")
    assert "safe" not in (tank.__doc__ or "").lower()
    assert "never lift" in text
    assert ("structural engineer" in text) == (answer["outputs"]["mass_kg"] >= 100)
