"""Sizes with their error: how likely a reading is, where a record gives a range.

A record's range is that of grown leaves. Sizes vary by factors, so all is reckoned with logarithms:
the true size lies evenly between the ends, and the reading about it by a normal error.
"""

import math
from functools import cache
from typing import NamedTuple

from calculators.identify.trait_table import Ends

# A rule laid on a wet leaf, and leaves a little beyond what the record's writer saw: about a quarter;
# judgement. So 14 mm is no proof against a range of 10 to 12 mm.
MEASURING_ERROR = 0.25
# A size told by eye falls somewhere in a class that doubles: ln 2 / sqrt(12).
EYE_ERROR = math.log(2) / math.sqrt(12)
READING_STEP = 1.1  # a measured figure stands for this factor to either side
EYE_STEP = math.sqrt(2)  # ... and one by eye for its class
NARROWEST = 0.05  # a range of one figure is taken this wide, in logarithms
YOUNGEST = 4  # a young leaf has at least a quarter of the grown size; judgement
BEYOND = 0.05  # of readings have nothing to do with the record: the wrong leaf, a slip; judgement
ANY_SIZE: Ends = (0.2, 2_000)
OTHER_MEDIUM = 2  # a leaf grown in the other medium may be half or twice the size; judgement
# Shares of leaves looked at that are young, by what was said of them; judgement.
YOUNG_SHARE = {None: 0.08, "grown": 0.02, "young": 0.75}
# Shares of leaves that grew in the other medium than the record describes; judgement.
OTHER_MEDIUM_SHARE = {None: 0.15, False: 0.02, True: 0.6}
STILL_GROWING = 0.45  # of plants in tanks are below their full height; judgement
SEEDLING = 8  # ... and may have this part of it


class MeasuredPart(NamedTuple):
    """One thing that a reading may be of: its share, and its range."""

    share: float
    ends: Ends


def antiderivative(z: float) -> float:
    """Of the normal distribution function: z F(z) + f(z).

    Here ``z`` is a number of standard deviations, and so is the result.
    """
    return z * 0.5 * math.erfc(-z / math.sqrt(2)) + math.exp(-z * z / 2) / math.sqrt(2 * math.pi)


def below(size: float, ends: Ends, error: float) -> float:
    """The probability that a reading lies below ``size``; error in logarithms."""
    low, high = math.log(ends[0]), math.log(ends[1])
    if high - low < NARROWEST:
        middle = (low + high) / 2
        low, high = middle - NARROWEST / 2, middle + NARROWEST / 2
    reach = [(math.log(size) - end) / error for end in (low, high)]
    return error * (antiderivative(reach[0]) - antiderivative(reach[1])) / (high - low)


@cache
def between(low: float, high: float, parts: tuple[MeasuredPart, ...], error: float) -> float:
    """The probability that a reading lies between two sizes; an open end is 0 or infinity.

    Both ``low`` and ``high`` are in the unit of the parts, the ``error`` in natural logarithms.
    """
    return math.fsum(
        part.share
        * (
            (1.0 if math.isinf(high) else below(high, part.ends, error))
            - (0.0 if low <= 0 else below(low, part.ends, error))
        )
        for part in parts
    )


def leaf_parts(
    ends: Ends, leaf_age: str | None, other_medium: bool | None
) -> tuple[MeasuredPart, ...]:
    """What a leaf that is measured may be; see the shares above."""
    young = YOUNG_SHARE[leaf_age]
    other = OTHER_MEDIUM_SHARE[other_medium]
    grown = 1 - young - other - BEYOND
    if grown < BEYOND:  # a young leaf of the other medium
        young, other, grown = young / 2, other / 2, 1 - (young + other) / 2 - BEYOND
    low, high = ends
    return (
        MeasuredPart(grown, ends),
        MeasuredPart(young, (low / YOUNGEST, low)),
        MeasuredPart(other, (low / OTHER_MEDIUM, high * OTHER_MEDIUM)),
        MeasuredPart(BEYOND, ANY_SIZE),
    )


def plant_parts(ends: Ends) -> tuple[MeasuredPart, ...]:
    """What a height that is measured may be: a grown plant's, or one's that is still growing."""
    return (
        MeasuredPart(1 - STILL_GROWING - BEYOND, ends),
        MeasuredPart(STILL_GROWING, (ends[0] / SEEDLING, ends[0])),
        MeasuredPart(BEYOND, ANY_SIZE),
    )
