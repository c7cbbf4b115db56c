"""The course that a fit gives, through the readings and on for the weeks ahead, with its band."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from calculators.science.fitting.fit_readings import Reading, What
from calculators.science.nitrogen.forecast_tank import Event

SURE_80 = 1.2816  # standard deviations either side that hold 80 % of a normal distribution
JUST_AFTER = 1e-6  # days: once what was done that moment is done
DAY_PLACES = 3  # of a day, as it is drawn


class FittedCourse(NamedTuple):
    """One thing by day, today 0, in the unit of its readings: all lists are of the same length.

    ``spread`` is one standard deviation of the level itself, ``errors`` of a kit that reads it. A day
    on which water was changed stands twice.
    """

    what: What
    days: list[float]
    levels: list[float]
    spread: list[float]
    errors: list[float]

    def ahead(self) -> "FittedCourse":
        """The course from today on."""
        rest = [place for place, day in enumerate(self.days) if day >= 0]
        return FittedCourse(self.what, *([row[n] for n in rest] for row in self[1:]))

    def daily(self) -> "FittedCourse":
        """The whole days alone, each once."""
        whole = [
            n for n, day in enumerate(self.days) if day == int(day) and day not in self.days[:n]
        ]
        return FittedCourse(self.what, *([row[n] for n in whole] for row in self[1:]))

    def edge(self, side: int, *, kit: bool = True) -> list[float]:
        """An edge of the band that holds 80 %: one value for each day, in the unit of the readings.

        Without unit, ``side`` is -1 for the lower and 1 for the upper edge. With ``kit`` it holds what
        a kit would read, its own error included, else the level itself.
        """
        off = zip(self.levels, self.spread, self.errors, strict=True)
        return [
            max(0.0, level + side * SURE_80 * math.hypot(wide, error if kit else 0.0))
            for level, wide, error in off
        ]


def course_days(first: float, days_ahead: float, events: Sequence[Event]) -> list[float]:
    """The days of a course from the first reading on, in order; a change of water has two moments.

    Days are counted from today, ``events`` bear the same days.
    """
    days = [float(day) for day in range(math.ceil(first), int(days_ahead) + 1)]
    changes = [one.day for one in events if one.kind == "change" and first <= one.day <= days_ahead]
    return sorted({*days, *changes, *(day + JUST_AFTER for day in changes)})


def fitted_course(
    days: Sequence[float],
    levels: Sequence[float],
    spread: Sequence[float],
    kit: Reading,
) -> FittedCourse:
    """A course with the error that ``kit``, one of its readings, would have at each level.

    All lists are of one length; ``levels`` and ``spread`` are in the unit of the reading.
    """
    errors = [kit._replace(value=level).error for level in levels]
    drawn = [round(day, DAY_PLACES) for day in days]
    return FittedCourse(kit.what, drawn, list(levels), list(spread), errors)
