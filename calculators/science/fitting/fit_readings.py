"""Readings as a keeper takes them, and what a run says of the same moment."""

import math
from bisect import bisect_left
from collections.abc import Sequence
from typing import Literal, NamedTuple

from calculators.science.nitrogen.daily_record import DayValues

What = Literal["nitrate_mg_l", "ammonia_mg_n_l", "nitrite_mg_n_l", "kh_dh"]
NITRATE: What = "nitrate_mg_l"
AMMONIA: What = "ammonia_mg_n_l"
NITRITE: What = "nitrite_mg_n_l"
HARDNESS: What = "kh_dh"
FIELDS: dict[str, str] = {
    "nitrate_mg_l": "nitrate", "ammonia_mg_n_l": "ammonia", "nitrite_mg_n_l": "nitrite", "kh_dh": "kh",
}  # fmt: skip
# Smallest steps of common kits: common practice, no source.
STEPS: dict[str, float] = {
    "nitrate_mg_l": 5.0, "ammonia_mg_n_l": 0.2, "nitrite_mg_n_l": 0.05, "kh_dh": 1.0,
}  # fmt: skip
SHARE_OFF = (
    0.1  # of the reading, one standard deviation; judgement, kits are good to a fifth at best
)

SAME_DAY = 1e-9  # days: rounding


class Reading(NamedTuple):
    """One reading: day (0 today, below before), what was read, its value, and the kit's step."""

    day: float
    what: What
    value: float
    step: float | None = None

    @property
    def error(self) -> float:
        """One standard deviation of what the kit is off: half a step, and a tenth of the reading."""
        step = STEPS[self.what] if self.step is None else self.step
        return math.hypot(step / 2, SHARE_OFF * self.value)


def predicted(lines: Sequence[DayValues], reading: Reading, first: float) -> float:
    """What the run says of a reading; ``first`` is the day on which the run begins."""
    return between(lines, reading.day - first, FIELDS[reading.what])


def values_at(lines: Sequence[DayValues], days: Sequence[float], what: What) -> list[float]:
    """One thing at some days of the run, in the unit of its readings, one for each day in order."""
    begun, field = [line.day for line in lines], FIELDS[what]
    return [at_day(lines, begun, day, field) for day in days]


def between(lines: Sequence[DayValues], day: float, field: str) -> float:
    """A value on a straight line between the lines of the record; before what is done that day."""
    return at_day(lines, [line.day for line in lines], day, field)


def at_day(lines: Sequence[DayValues], begun: Sequence[float], day: float, field: str) -> float:
    """The same with ``begun``, the days of all lines in order, at hand; in the unit of the field."""
    place = bisect_left(begun, day - SAME_DAY)
    if place == 0:
        return float(getattr(lines[0], field))
    if place >= len(lines):
        return float(getattr(lines[-1], field))
    before, after = lines[place - 1], lines[place]
    a, b = float(getattr(before, field)), float(getattr(after, field))
    width = after.day - before.day
    return b if width <= 0 else a + (b - a) * (day - before.day) / width
