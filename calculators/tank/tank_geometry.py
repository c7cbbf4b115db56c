"""The geometry and the masses of a tank: glass, soil, cap, pore water, free water.

Lengths in cm, volumes in litres, masses in kg. Outside lengths; the walls stand on the bottom pane.
"""

import math
from typing import Literal, NamedTuple

from calculators.science.conversions import CM2_PER_M2, CM3_PER_L, GRAVITY_M_S2, MM_PER_CM

Shape = Literal["box", "cylinder"]

GLASS_KG_L = 2.5  # float glass as EN 572 gives it; from memory
GRAIN_KG_L = 2.65  # mineral grains, the customary particle density of soil science


class Inside(NamedTuple):
    """What the panes leave: floor area in cm², height in cm, and the panes' own mass in kg."""

    floor_cm2: float
    height_cm: float
    footprint_cm2: float
    glass_kg: float


def box(length_cm: float, width_cm: float, height_cm: float, glass_mm: float) -> Inside:
    """A box open at the top."""
    pane = glass_mm / MM_PER_CM
    floor = max(0.0, length_cm - 2 * pane) * max(0.0, width_cm - 2 * pane)
    return walled(floor, length_cm * width_cm, height_cm, pane)


def cylinder(diameter_cm: float, height_cm: float, glass_mm: float) -> Inside:
    """A round tank open at the top."""
    pane = glass_mm / MM_PER_CM
    floor = math.pi / 4 * max(0.0, diameter_cm - 2 * pane) ** 2
    return walled(floor, math.pi / 4 * diameter_cm**2, height_cm, pane)


def walled(floor: float, footprint: float, height: float, pane: float) -> Inside:
    """The bottom pane is the whole footprint; the walls stand on it between outside and inside.

    Areas, ``floor`` and ``footprint``, are in cm²; the outside ``height`` and the ``pane`` in cm.
    """
    inner_height = height - pane
    glass_cm3 = footprint * pane + (footprint - floor) * inner_height
    return Inside(floor, inner_height, footprint, glass_cm3 / CM3_PER_L * GLASS_KG_L)


def layer_l(floor_cm2: float, depth_cm: float) -> float:
    """A layer over the whole floor, litres."""
    return floor_cm2 * depth_cm / CM3_PER_L


def pore_share(dry_kg_l: float) -> float:
    """The share of a packed layer that is not grain and fills with water, 0 to 1."""
    return max(0.0, 1 - dry_kg_l / GRAIN_KG_L)


def kilopascal(mass_kg: float, area_cm2: float) -> float:
    """The pressure of a mass that stands evenly on an area. In kPa."""
    return mass_kg * GRAVITY_M_S2 / (area_cm2 / CM2_PER_M2) / 1000
