"""Which way a trend goes, in one word, with what the kit can tell taken into account."""

from collections.abc import Sequence
from typing import Literal

from calculators.science.trends.theil_sen import Slope, Stretch, scatter

Verdict = Literal["building", "steady", "falling", "too-few-readings"]


def judge(slope: Slope, stretches: Sequence[Stretch], kit_step: float) -> Verdict:
    """Say which way it goes, or that it cannot be told.

    The step of the kit, ``kit_step``, is in the reading's unit.
    """
    if slope.low is None or slope.high is None:
        return "too-few-readings"
    change = abs(slope.middle) * max(stretch[-1][0] - stretch[0][0] for stretch in stretches)
    one_sided = slope.low > 0 or slope.high < 0
    if one_sided and change > 0 and change >= kit_step:
        return "building" if slope.middle > 0 else "falling"
    resolution = kit_step if one_sided else max(kit_step, scatter(stretches, slope.middle))
    return "steady" if change == 0 or change < resolution else "too-few-readings"
