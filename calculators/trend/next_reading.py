"""How much one reading more may be expected to narrow the limits of a trend."""

import math
from collections.abc import Sequence

from calculators.science.trends.kendall import TARGET_COVERAGE
from calculators.science.trends.stretches import Change, change_days
from calculators.science.trends.theil_sen import Point, Slope, Stretch, level_at, line, theil_sen

LIKELY_DISTANCES = 9  # places in the scatter at which the next reading is tried
MANY_PAIRS = 20_000  # beyond so many pairs a single look, on the line, is near enough


def narrowed_by(
    stretches: Sequence[Stretch], slope: Slope, after_days: float, changes: Sequence[Change]
) -> float | None:
    """Expected width of the limits with one reading more, against the width now.

    The reading comes ``after_days`` after the last, and is tried where it may fall: on the line and
    as far off it as this tank's readings scatter. The mean of the widths is the expectation; a
    reading right on the line alone would promise a tenth too much. After a change it stands alone
    and narrows nothing. None where there is no width to narrow, or where one reading more would make
    the limits surer rather than narrower.
    """
    if not slope.width or (slope.coverage or 0) < TARGET_COVERAGE:
        return None
    last = stretches[-1]
    day = last[-1][0] + after_days
    if any(last[-1][0] <= changed < day for changed in change_days(changes)):
        return 1.0
    level = level_at(last, slope.middle, day)
    widths = []
    for away in likely_distances(stretches, slope, day):
        more = theil_sen([*stretches[:-1], [*last, (day, level + away)]])
        if more is None or more.width is None:
            return None
        widths.append(more.width)
    return math.fsum(widths) / len(widths) / slope.width


def likely_distances(stretches: Sequence[Stretch], slope: Slope, day: float) -> list[float]:
    """How far off the line the next reading may fall: order statistics of the distances so far.

    They are stretched to the spread of a prediction, as a straight line's is in least squares:
    √((1 + 1/n + (day − mean day)²/Sxx) · N/(N − k − 1)) for n readings in the last of k stretches,
    N in all, and Sxx the squared distances of their days from each stretch's mean.
    """
    if slope.pairs > MANY_PAIRS:
        return [0.0]
    used = [stretch for stretch in stretches if len(stretch) > 1]
    away = sorted(
        value - height
        for stretch in used
        for (_, value), height in zip(stretch, line(stretch, slope.middle), strict=True)
    )
    apart = math.fsum((then - mean_day(stretch)) ** 2 for stretch in used for then, _ in stretch)
    reach = (day - mean_day(stretches[-1])) ** 2 / apart
    free = max(1, len(away) - len(used) - 1)
    factor = math.sqrt((1 + 1 / len(stretches[-1]) + reach) * len(away) / free)
    count = min(LIKELY_DISTANCES, len(away))
    return [factor * away[int((place + 0.5) * len(away) / count)] for place in range(count)]


def mean_day(stretch: Sequence[Point]) -> float:
    """The mean of the days of a stretch."""
    return math.fsum(day for day, _ in stretch) / len(stretch)
