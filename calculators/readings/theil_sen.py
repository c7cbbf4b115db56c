"""The slope of readings that come in stretches, with its 95 % limits. Rank statistics only.

The slope is the median over all pairs inside a stretch (Theil 1950, Sen 1968); over several
stretches that is the seasonal form of Hirsch, Slack and Smith (1982), with a stretch as a season.
"""

import math
from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

NORMAL_97_5 = 1.959963984540054  # of the standard normal distribution: two-sided 95 %

Point = tuple[float, float]  # day, value
Stretch = Sequence[Point]  # in order of day, no day twice


class Slope(NamedTuple):
    """Median slope a day, its limits (None: so few pairs cannot bear any), number of pairs."""

    middle: float
    low: float | None
    high: float | None
    pairs: int

    @property
    def width(self) -> float | None:
        """The distance between the limits."""
        return None if self.low is None or self.high is None else self.high - self.low


def theil_sen(stretches: Sequence[Stretch]) -> Slope | None:
    """The slope over pairs inside each stretch; None where no stretch has two points.

    Limits are order statistics of the pair slopes after Sen (1968), with the variance of
    Kendall's S summed over the stretches and reduced for ties. The places are rounded to whole
    ones as scipy's ``theilslopes`` does, so that both agree where there is one stretch.
    """
    slopes = sorted(slope for stretch in stretches for slope in pair_slopes(stretch))
    if not slopes:
        return None
    if not bears_limits(stretches):
        return Slope(median(slopes), None, None, len(slopes))
    reach = NORMAL_97_5 * math.sqrt(sum(kendall_variance(stretch) for stretch in stretches))
    low = max(round((len(slopes) - reach) / 2) - 1, 0)
    high = min(round((len(slopes) + reach) / 2), len(slopes) - 1)
    return Slope(median(slopes), slopes[low], slopes[high], len(slopes))


def pair_slopes(stretch: Stretch) -> list[float]:
    """The slope of every pair of points of one stretch."""
    return [
        (later - value) / (then - day)
        for place, (day, value) in enumerate(stretch)
        for then, later in stretch[place + 1 :]
    ]


def kendall_variance(stretch: Stretch) -> float:
    """Variance of Kendall's S for one stretch, with ties among its values (Sen 1968, eq. 2.6)."""
    ties = Counter(value for _, value in stretch).values()
    return (term(len(stretch)) - sum(map(term, ties))) / 18


def term(count: int) -> int:
    """The term n(n − 1)(2n + 5) of the variance."""
    return count * (count - 1) * (2 * count + 5)


def bears_limits(stretches: Sequence[Stretch]) -> bool:
    """Whether there are pairs enough for 95 % limits to lie among them.

    Counted without ties: equal readings of a coarse kit do not make few readings many.
    """
    pairs = sum(math.comb(len(stretch), 2) for stretch in stretches)
    variance = sum(term(len(stretch)) for stretch in stretches) / 18
    return pairs > 0 and NORMAL_97_5 * math.sqrt(variance) <= pairs


def median(values: Sequence[float]) -> float:
    """The middle of sorted values, or the mean of the two in the middle."""
    half = len(values) // 2
    return values[half] if len(values) % 2 else (values[half - 1] + values[half]) / 2


def level_at(stretch: Stretch, slope: float, day: float) -> float:
    """The height of the line at a day: the median of the stretch's points, moved along the slope."""
    return median(sorted(value + slope * (day - then) for then, value in stretch))


def line(stretch: Stretch, slope: float) -> list[float]:
    """The height of the line at each point of a stretch."""
    start = stretch[0][0]
    height = level_at(stretch, slope, start)
    return [height + slope * (day - start) for day, _ in stretch]


def scatter(stretches: Sequence[Stretch], slope: float) -> float:
    """How far a single reading lies from its line: 1.4826 times the median distance.

    The factor makes it the standard deviation for normal errors (1 / 0.6745).
    """
    away = sorted(
        abs(value - height)
        for stretch in stretches
        if len(stretch) > 1
        for (_, value), height in zip(stretch, line(stretch, slope), strict=True)
    )
    return 1.4826 * median(away) if away else 0.0
