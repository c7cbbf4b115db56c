"""Floaters in one ring or several: areas by hand, and rings that cannot lie side by side."""

import math

import pytest

from calculators.core.result import BadInput
from calculators.core.run import run
from calculators.surface.ring_fit import largest_ring, most_rings


def refusals(**given):
    with pytest.raises(BadInput) as bad:
        run("floaters", given)
    return dict(bad.value.problems)


def test_several_rings_give_the_sum_of_their_areas():
    one = run("floaters", {"ring_diameter_cm": 20})["outputs"]
    three = run("floaters", {"ring_diameter_cm": 20, "ring_count": 3})["outputs"]
    assert one["allowed_cm2"] == pytest.approx(314.159, abs=1e-3)
    assert three["allowed_cm2"] == pytest.approx(3 * one["allowed_cm2"])
    assert three["removed_n_mg"] == pytest.approx(3 * one["removed_n_mg"])
    shade = 100 - one["light_left_percent"]
    assert 100 - three["light_left_percent"] == pytest.approx(3 * shade)


def test_with_no_ring_their_number_says_nothing():
    outputs = run("floaters", {"ring_count": 5})["outputs"]
    assert outputs["allowed_cm2"] == outputs["surface_cm2"]


def test_rings_that_do_not_fit_are_refused_with_both_limits():
    said = refusals(length_cm=80, width_cm=35, ring_diameter_cm=30, ring_count=3)
    assert "1 to 2" in said["ring_count"]
    limit = float(said["ring_diameter_cm"].rsplit(" to ", 1)[1].removesuffix(" cm"))
    assert run("floaters", {"ring_diameter_cm": math.floor(limit * 100) / 100, "ring_count": 3})
    assert refusals(ring_diameter_cm=limit + 0.1, ring_count=3)
    assert "0 to 35 cm" in refusals(ring_diameter_cm=36)["ring_diameter_cm"]


@pytest.mark.parametrize(
    ("length", "width", "diameter", "most"),
    [
        (80, 40, 40, 2), (80, 40.1, 40.01, 1), (30, 30, 10, 9), (80, 35, 36, 0),
        # Packings of equal circles in a square of side 1: two fit at 2 - sqrt(2), four at 1/2, by hand.
        (1, 1, 2 - math.sqrt(2) - 1e-9, 2), (1, 1, 2 - math.sqrt(2) + 1e-6, 1), (1, 1, 0.5, 4),
        # Three in a row of triangles: height 1 + sqrt(3)/2, length 2, by Pythagoras.
        (2, 1 + math.sqrt(3) / 2, 1, 3),
    ],
)  # fmt: skip
def test_counts_rings_that_fit(length, width, diameter, most):
    assert most_rings(length, width, diameter) == most
    assert most_rings(width, length, diameter) == most


@pytest.mark.parametrize("diameter", [3, 7.3, 11, 16, 22.2, 35])
def test_never_more_than_the_bound_of_oler(diameter):
    """Points d apart in a convex room: at most 2/sqrt(3) A/d2 + P/(2d) + 1 (Oler 1961, from memory)."""
    long, deep = 80 - diameter, 35 - diameter
    bound = 2 / math.sqrt(3) * long * deep / diameter**2 + (long + deep) / diameter + 1
    most = most_rings(80, 35, diameter)
    assert most <= bound + 1e-9
    assert most >= (80 // diameter) * (35 // diameter)


@pytest.mark.parametrize("count", [1, 2, 3, 7, 40])
def test_the_largest_ring_is_the_one_where_the_number_turns(count):
    largest = largest_ring(80, 35, count)
    assert most_rings(80, 35, largest * (1 - 1e-6)) >= count
    assert largest == 35 or most_rings(80, 35, largest * 1.001) < count
