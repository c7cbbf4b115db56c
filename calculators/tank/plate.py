"""The bending of an aquarium's longest wall under water, and the glass that the trade would use for it.

A wall is taken as a flat plate that bottom and sides support and whose top edge is free: no rim, no
brace. Water presses on it with nothing at the surface and with its full depth at the bottom.
"""

import math

from calculators.science.conversions import GRAVITY_M_S2

WATER_KG_M3 = 997.0  # at 25 °C (source key teos-10)

# Allowed stress, MPa. The trade takes 19.2 for annealed glass under load for years and divides by 3.8:
# common practice, from memory. EN 16612, from memory, allows 45 x 0.29 / 1.8 = 7.25 under permanent
# load, and asks for 1.35 times the load: 5.4. The two agree within a tenth.
TRADE_STRENGTH_MPA = 19.2
TRADE_SAFETY_FACTOR = 3.8
ALLOWED_MPA = TRADE_STRENGTH_MPA / TRADE_SAFETY_FACTOR
THINNEST_MM = 4.0  # common practice, no source: thinner panes break when handled

# Length of the wall to depth of water, and the coefficient b of the greatest stress
# b x pressure at the bottom x (depth / thickness)². By Lévy's series for plates (source keys
# timoshenko-plates, roark-plates), with Poisson's ratio 0.3; the tests sum the series again.
STRESS_COEFFICIENTS = (
    (0.25, 0.0308), (0.5, 0.0854), (0.667, 0.1228), (0.8, 0.1533), (1.0, 0.2014), (1.25, 0.2814),
    (1.5, 0.3579), (1.75, 0.4217), (2.0, 0.4730), (2.25, 0.5135), (2.5, 0.5450), (3.0, 0.5882),
    (3.5, 0.6137), (4.0, 0.6287), (5.0, 0.6427), (6.0, 0.6475),
)  # fmt: skip
LONGEST = 0.65  # of a wall that is very long; the series comes no higher
NARROWEST = 0.75  # of a strip between its two sides, on its length: no plate is worse


def stress_coefficient(length_to_depth: float) -> float:
    """The coefficient of the greatest bending stress, for a wall of that length to depth of water.

    Both ``length_to_depth`` and the coefficient are ratios.
    """
    low, first = STRESS_COEFFICIENTS[0]
    if length_to_depth <= low:
        return min(first, NARROWEST * length_to_depth**2)
    for high, last in STRESS_COEFFICIENTS[1:]:
        if length_to_depth <= high:
            return first + (last - first) * (length_to_depth - low) / (high - low)
        low, first = high, last
    return LONGEST


def bending_stress_mpa(length_cm: float, depth_cm: float, glass_mm: float) -> float:
    """The greatest bending stress in an unbraced wall, in MPa."""
    pascal = WATER_KG_M3 * GRAVITY_M_S2 * depth_cm / 100
    coefficient = stress_coefficient(length_cm / depth_cm)
    return coefficient * pascal * (10 * depth_cm / glass_mm) ** 2 / 1e6


def trade_glass_mm(length_cm: float, depth_cm: float) -> float:
    """The thinnest glass, in mm, that the trade would use for an unbraced wall. It proves no tank."""
    bent = math.sqrt(bending_stress_mpa(length_cm, depth_cm, 1.0) / ALLOWED_MPA)
    return max(THINNEST_MM, bent)
