"""How far the hardness of new water lies from the tank's, carbonate and general, where both are known."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from calculators.science.water.gentle import STEP_DH_A_DAY
from calculators.science.water.water_mix import Water


class HardnessGap(NamedTuple):
    """One hardness, KH or GH, of the tank and of the new water, in °dH."""

    name: str
    tank_dh: float
    new_dh: float

    @property
    def size_dh(self) -> float:
        """How far the two lie apart, °dH."""
        return abs(self.new_dh - self.tank_dh)

    def step_dh(self, percent: float) -> float:
        """By how much a change of so many ``percent`` moves it, °dH; below zero where it falls."""
        return (self.new_dh - self.tank_dh) * percent / 100


def hardness_gaps(
    kh_dh: float | None,
    tap_kh_dh: float | None,
    gh_dh: float | None = None,
    tap_gh_dh: float | None = None,
) -> list[HardnessGap]:
    """The gaps of which both ends are known, the carbonate hardness first; all in °dH, None is not read."""
    pairs = (("KH", kh_dh, tap_kh_dh), ("GH", gh_dh, tap_gh_dh))
    return [
        HardnessGap(name, tank, new)
        for name, tank, new in pairs
        if tank is not None and new is not None
    ]


def gaps_between(tank: Water, tap: Water) -> list[HardnessGap]:
    """The same for two waters."""
    return hardness_gaps(tank.kh_dh, tap.kh_dh, tank.gh_dh, tap.gh_dh)


def widest_dh(gaps: Sequence[HardnessGap]) -> float:
    """The widest of the gaps, °dH; 0 where none is known."""
    return max((gap.size_dh for gap in gaps), default=0.0)


def bearable_percent(gaps: Sequence[HardnessGap]) -> int:
    """The largest change, in whole percent, that moves no hardness further than animals bear in a day."""
    widest = widest_dh(gaps)
    return 100 if widest <= STEP_DH_A_DAY else max(1, math.floor(100 * STEP_DH_A_DAY / widest))
