"""The slope of readings that come in stretches, with its limits. Rank statistics only.

The slope is the median over all pairs inside a stretch (Theil 1950, Sen 1968); over several
stretches that is the seasonal form of Hirsch, Slack and Smith (1982), with a stretch as a season.
"""

from collections.abc import Sequence
from typing import NamedTuple

from calculators.science.trends.kendall import limits_for

Point = tuple[float, float]  # day, value
Stretch = Sequence[Point]  # in order of day, no day twice


class Slope(NamedTuple):
    """Median slope a day, its limits (None: so few pairs cannot bear any), number of pairs.

    ``coverage`` is how often such limits hold the true slope, 0 to 1: at least 0.95, or less where
    there are too few pairs for that.
    """

    middle: float
    low: float | None
    high: float | None
    pairs: int
    coverage: float | None = None

    @property
    def width(self) -> float | None:
        """The distance between the limits."""
        return None if self.low is None or self.high is None else self.high - self.low


def theil_sen(stretches: Sequence[Stretch]) -> Slope | None:
    """The slope over pairs inside each stretch; None where no stretch has two points.

    Limits are order statistics of the pair slopes, placed by the exact distribution of Kendall's
    score.
    """
    slopes = sorted(slope for stretch in stretches for slope in pair_slopes(stretch))
    if not slopes:
        return None
    limits = limits_for([len(stretch) for stretch in stretches])
    if limits is None:
        return Slope(median(slopes), None, None, len(slopes))
    low, high = slopes[limits.left_out], slopes[-1 - limits.left_out]
    return Slope(median(slopes), low, high, len(slopes), limits.coverage)


def pair_slopes(stretch: Stretch) -> list[float]:
    """The slope of every pair of points of one stretch, in the reading's unit a day."""
    return [
        (later - value) / (then - day)
        for place, (day, value) in enumerate(stretch)
        for then, later in stretch[place + 1 :]
    ]


def median(values: Sequence[float]) -> float:
    """The middle of sorted values, or the mean of the two in the middle.

    It is in the unit of the ``values``.
    """
    half = len(values) // 2
    return values[half] if len(values) % 2 else (values[half - 1] + values[half]) / 2


def level_at(stretch: Stretch, slope: float, day: float) -> float:
    """The height of the line at a day: the median of the stretch's points, moved along the slope."""
    return median(sorted(value + slope * (day - then) for then, value in stretch))


def line(stretch: Stretch, slope: float) -> list[float]:
    """The height of the line at each point of a stretch.

    The ``slope`` is in the reading's unit a day, the heights are in that unit.
    """
    start = stretch[0][0]
    height = level_at(stretch, slope, start)
    return [height + slope * (day - start) for day, _ in stretch]


def scatter(stretches: Sequence[Stretch], slope: float) -> float:
    """How far a single reading lies from its line: 1.4826 times the median distance.

    The factor makes it the standard deviation for normal errors (1 / 0.6745). The ``slope`` is in the
    reading's unit a day.
    """
    away = sorted(
        abs(value - height)
        for stretch in stretches
        if len(stretch) > 1
        for (_, value), height in zip(stretch, line(stretch, slope), strict=True)
    )
    return 1.4826 * median(away) if away else 0.0
