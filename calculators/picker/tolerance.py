"""How far a figure may lie outside a record's range, by how sure the range is.

All of these are our judgement, no source: a range that was measured is held to more strictly than a guess.
Each triple goes with ``record.SURE``: well documented, reported, a guess.
"""

import math
from typing import NamedTuple

from calculators.picker.record import Range

Slack = tuple[float, float, float]

LIGHT_FACTOR: Slack = (1.4, 1.6, 2.0)  # so many times too dark leaves nothing of the fit
HEIGHT_FACTOR: Slack = (1.1, 1.2, 1.3)
MINUTES_FACTOR: Slack = (1.25, 1.5, 2.0)
TEMPERATURE_C: Slack = (1.0, 2.0, 3.0)
PH: Slack = (0.3, 0.5, 0.8)
GH_DH: Slack = (2.0, 4.0, 6.0)
TRUSTED: Slack = (1.0, 0.95, 0.9)  # how much a fit inside the range counts
SOFT = 2.0  # pH and hardness: plants get used to them, so only twice the slack leaves one out
EXCESS_LOSS = 0.1  # of the light's part for each time that the light is twice the upper end


class Fit(NamedTuple):
    """How well one figure suits, 1 to 0, and whether it lies too far out to be tried at all."""

    share: float
    out: bool = False


def within(value: float, span: Range, slack: Slack, *, soft: float = 1.0) -> Fit:
    """1 inside the range, falling evenly to 0 at the end of the slack; out beyond ``soft`` times that."""
    off = max(span.low - value, value - span.high, 0.0) / slack[span.sure]
    return Fit(max(0.0, 1 - off), off > soft)


def light_fit(mol: float, span: Range) -> Fit:
    """1 inside the range; below it falls evenly with the logarithm, to 0 and out at the slack's factor.

    Equation: share = 1 − ln(low / light) / ln(factor); above the range 1 − 0.1 · log2(light / high).
    With one form for all plants, less light never moves a plant of more light up past one of less.
    """
    if mol > span.high:
        return Fit(max(0.0, 1 - EXCESS_LOSS * math.log2(mol / span.high)))
    if mol >= span.low:
        return Fit(1.0)
    if mol * LIGHT_FACTOR[span.sure] <= span.low:
        return Fit(0.0, True)
    return Fit(1 - math.log(span.low / mol) / math.log(LIGHT_FACTOR[span.sure]))


def height_fit(water_cm: float, span: Range) -> Fit:
    """1 where even its greatest height has room, 0 at its least height, out well below that."""
    if water_cm >= span.high:
        return Fit(1.0)
    if water_cm < span.low:
        return Fit(0.0, water_cm * HEIGHT_FACTOR[span.sure] < span.low)
    return Fit((water_cm - span.low) / (span.high - span.low))


def minutes_fit(takes: float, has: float, sure: int) -> Fit:
    """The share of the keeper's minutes that the plant leaves over; out if it takes far more."""
    if takes <= 0:
        return Fit(1.0)
    return Fit(max(0.0, 1 - takes / has) if has > 0 else 0.0, takes > has * MINUTES_FACTOR[sure])
