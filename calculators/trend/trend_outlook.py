"""What a trend leads to if nothing else changes. Slopes are a day, concentrations mg/L."""

from collections.abc import Sequence

from calculators.science.trends.kendall import limits_for
from calculators.science.trends.stretches import Change, change_days
from calculators.science.trends.theil_sen import Stretch

MOST_READINGS_ASKED = 6


def days_until(target: float, level: float, slope: float) -> float | None:
    """Days until a level that moves by ``slope`` reaches a target; None if it moves away."""
    if slope > 0 and target > level:
        return (target - level) / slope
    if slope < 0 and target < level:
        return (level - target) / -slope
    return 0.0 if slope and target == level else None


def holding_change_percent(level: float, tap: float, rise: float) -> float | None:
    """The change, once per ``rise``, that holds a level just before each change.

    From the mass balance level = tap + rise / share. None where nothing rises, or where no
    change can hold it because the new water reads as high.
    """
    if rise <= 0 or level - tap < rise:
        return None
    return 100 * rise / (level - tap)


def settles_at(slope: float, tap: float, changes: Sequence[Change]) -> float | None:
    """Where the level just before a change ends, once such changes have gone on for long.

    The mean interval and mean share of the changes given; None for fewer than two, or where the uptake
    is so large that nothing would be left. The ``slope`` is in mg/L a day, the ``tap`` and the result
    in mg/L.
    """
    days = change_days(changes)
    if len(days) < 2:
        return None
    interval = (days[-1] - days[0]) / (len(days) - 1)
    shares = [change.percent / 100 for change in changes if change.percent > 0]
    high = tap + slope * interval / (sum(shares) / len(shares))
    return high if high > 0 else None


def readings_needed(
    stretches: Sequence[Stretch], in_new_stretch: bool, coverage: float
) -> int | None:
    """How many readings more, before the next change, make limits of such a coverage possible.

    None for very many.
    """
    *rest, last = [len(stretch) for stretch in stretches] or [0]
    if in_new_stretch:
        rest, last = [*rest, last], 0
    for more in range(MOST_READINGS_ASKED + 1):
        limits = limits_for([*rest, last + more])
        if limits and limits.coverage >= coverage:
            return more
    return None
