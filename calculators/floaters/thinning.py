"""When a floating cover is due for thinning, how much comes off, and the cover day by day.

Cover is in percent of the room that the floaters have.
"""

import math
from typing import NamedTuple

from calculators.core.result import Line, Series

SHOWN_DAYS = 56
NOW_DAYS = 1.0  # what is due within a day is due now
# Of the room, in one go. Common practice, no source: animals used to shade shy from sudden light.
LARGEST_STEP_PERCENT = 100 / 3


class ThinningPlan(NamedTuple):
    """What the keeper holds to: the limits in percent, thinning and doubling in days."""

    low: float
    high: float
    every: float
    doubling: float

    @property
    def grown(self) -> float:
        """What the lower limit grows to between two thinnings."""
        return min(100.0, self.low * float(2 ** min(99.0, self.every / self.doubling)))

    def days_to_high(self, cover: float) -> float:
        """The days until a cover reaches the upper limit, 0 where it has."""
        return max(0.0, self.doubling * math.log2(self.high / cover))

    @property
    def longest(self) -> float:
        """The days in which the lower limit grows to the upper one."""
        return self.days_to_high(self.low)


class Thinning(NamedTuple):
    """The next thinning: in how many days, from which cover, and in how many steps."""

    due_days: float  # below zero where it is overdue
    now: bool
    cover: float
    left: float
    steps: int

    @property
    def removed(self) -> float:
        """What comes off, in percent of the room."""
        return self.cover - self.left


def next_thinning(cover: float, rhythm: ThinningPlan) -> Thinning:
    """The thinning that comes next; now where the cover is at a limit, or within a day of it."""
    reach = min(rhythm.grown, rhythm.high)
    due = rhythm.doubling * math.log2(reach / cover)
    now = due <= min(NOW_DAYS, rhythm.every / 2)
    present = cover if now else rhythm.grown
    steps = math.ceil((present - rhythm.low) / LARGEST_STEP_PERCENT - 1e-9)
    return Thinning(due, now, present, rhythm.low, max(1, steps))


def saw(cover: float, rhythm: ThinningPlan) -> Series:
    """Cover day by day, thinned back to the lower limit when it is due and then at each interval."""
    days, covers = [0.0], [cover]
    thinning = next_thinning(cover, rhythm)
    next_day = 0.0 if thinning.now else min(thinning.due_days, float(SHOWN_DAYS))
    step = min(1.0, rhythm.every / 4)
    while days[-1] < SHOWN_DAYS:
        until = min(days[-1] + step, max(next_day, days[-1]))
        cover = min(100.0, cover * 2 ** ((until - days[-1]) / rhythm.doubling))
        days.append(until)
        covers.append(cover)
        if until >= next_day:
            cover = min(cover, rhythm.low)
            days.append(until)
            covers.append(cover)
            next_day += rhythm.every
    lines = (Line("thin down to this", rhythm.low), Line("thin at this", rhythm.high))
    return Series("Cover", "%", "Day", "days", days, covers, lines=lines, digits=2, x_digits=1)
