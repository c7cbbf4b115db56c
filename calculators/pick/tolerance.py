"""How far a figure may lie outside a record's range, by how sure the range is.

All of these are our judgement, no source: a range that was measured is held to more strictly than a guess.
Each triple goes with ``record.SURE``: well documented, reported, a guess.
"""

import math
from typing import NamedTuple

from calculators.pick.plant_table import RecordRange

Slack = tuple[float, float, float]

LIGHT_FACTOR: Slack = (1.4, 1.6, 2.0)  # so many times too dark leaves nothing of the fit
HEIGHT_FACTOR: Slack = (1.1, 1.2, 1.3)
MINUTES_FACTOR: Slack = (1.25, 1.5, 2.0)
TEMPERATURE_C: Slack = (1.0, 2.0, 3.0)
PH: Slack = (0.3, 0.5, 0.8)
GH_DH: Slack = (2.0, 4.0, 6.0)
TRUSTED: Slack = (1.0, 0.95, 0.9)  # how much a fit inside the range counts
SOFT = 2.0  # pH and hardness: plants get used to them, so only twice the slack leaves one out
JUST_ENOUGH = 0.85  # share at the very least light: it lives, and does little
AMPLE_FACTOR = 1.5  # so many times its least light is light enough
AT_THE_END = 0.8  # share at the very end of a temperature range
EASY_C = 2.0  # so far inside its ends a temperature suits fully
EASY_MINUTES = 1 / 3  # of the keeper's minutes: so little work costs nothing
EXCESS_LOSS = 0.1  # of the light's part for each time that the light is twice the upper end


class RangeFit(NamedTuple):
    """How well one figure suits, 1 to 0, and whether it lies too far out to be tried at all."""

    share: float
    out: bool = False


def within(value: float, span: RecordRange, slack: Slack, *, soft: float = 1.0) -> RangeFit:
    """1 inside the range, falling evenly to 0 at the end of the slack; out beyond ``soft`` times that.

    The ``value`` is in the unit of the range; ``soft`` is a factor.
    """
    off = max(span.low - value, value - span.high, 0.0) / slack[span.sure]
    return RangeFit(max(0.0, 1 - off), off > soft)


def comfortable(value: float, span: RecordRange, slack: Slack) -> RangeFit:
    """As ``within``, but a little less than 1 near the ends: 0.8 at an end, 1 from 2 °C inside it.

    In a range of less than 4 °C its middle suits fully. The ``value`` is in °C, as is the range.
    """
    fit = within(value, span, slack)
    inside = min(value - span.low, span.high - value)
    if inside < 0:
        return RangeFit(AT_THE_END * fit.share, fit.out)
    easy = min(EASY_C, (span.high - span.low) / 2)
    return RangeFit(1.0 if inside >= easy else 1 - (1 - AT_THE_END) * (1 - inside / easy))


def light_fit(mol: float, span: RecordRange) -> RangeFit:
    """1 inside the range from 1.5 times its least; 0.85 at the least; 0 and out at the slack's factor.

    Between these it goes evenly with the logarithm of the light. Above the range a tenth is lost for each
    doubling: 0.1 · log2(light / high). With one form for all plants, which nowhere gets less steep as
    light falls, less light never moves a plant of more light up past one of less.
    """
    excess = EXCESS_LOSS * math.log2(mol / span.high) if mol > span.high else 0.0
    if mol < span.low:
        factor = LIGHT_FACTOR[span.sure]
        if mol * factor <= span.low:
            return RangeFit(0.0, True)
        return RangeFit(JUST_ENOUGH * (1 - math.log(span.low / mol) / math.log(factor)))
    ample = 1.0
    if mol < span.low * AMPLE_FACTOR:
        ample -= (1 - JUST_ENOUGH) * (1 - math.log(mol / span.low) / math.log(AMPLE_FACTOR))
    return RangeFit(max(0.0, ample - excess))


def height_fit(water_cm: float, span: RecordRange) -> RangeFit:
    """1 where even its greatest height has room, 0 at its least height, out well below that."""
    if water_cm >= span.high:
        return RangeFit(1.0)
    if water_cm < span.low:
        return RangeFit(0.0, water_cm * HEIGHT_FACTOR[span.sure] < span.low)
    return RangeFit((water_cm - span.low) / (span.high - span.low))


def cut_height_fit(water_cm: float, span: RecordRange) -> RangeFit:
    """For stems, which are cut at the surface in any tank: 1 from the least height on, out well below it."""
    fit = height_fit(water_cm, span)
    return RangeFit(1.0) if water_cm >= span.low else fit


def minutes_fit(takes: float, has: float, sure: int) -> RangeFit:
    """1 up to a third of the keeper's minutes, 0 where it takes them all; out if it takes far more.

    The plant takes and the keeper ``has`` so many minutes a week; ``sure`` is the place of the figure
    in ``SURE``, 0 for the best known.
    """
    if takes <= 0:
        return RangeFit(1.0)
    left = (1 - takes / has) / (1 - EASY_MINUTES) if has > 0 else 0.0
    return RangeFit(min(1.0, max(0.0, left)), takes > has * MINUTES_FACTOR[sure])
