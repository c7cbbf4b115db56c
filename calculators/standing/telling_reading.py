"""Which reading would tell: where those of a tank are too few or too coarse for a fit."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from calculators.science.fitting.enough_readings import (
    LEAST_READINGS,
    LEAST_SPAN_DAYS,
    nitrate_days,
)
from calculators.science.fitting.fit_readings import Reading
from calculators.science.shelf.engine_tank import NITRATE
from calculators.science.shelf.entries import READINGS

APART_DAYS = (
    3  # between two further readings: closer, and the kit's step hides the difference; judgement
)


class TellingReading(NamedTuple):
    """How many readings of nitrate are still wanted, and in how many days the last of them tells.

    ``in_days`` is None where within the weeks looked ahead the courses stay closer than the kit's step,
    in mg/L, so that only a finer kit tells.
    """

    readings: int
    in_days: int | None
    kit_step: float


def kit_of(rows: Sequence[Reading]) -> float:
    """The coarsest step of the nitrate kits that were used, in mg/L; that of a common kit for none."""
    steps = [one.step for one in rows if one.what == NITRATE and one.step]
    return max(steps, default=READINGS[NITRATE].step)


def telling_reading(
    rows: Sequence[Reading],
    courses: Sequence[Sequence[tuple[float, float]]],
    kit_step: float,
) -> TellingReading:
    """The next reading that would tell the paces of growth apart.

    Each of the ``courses`` is one pace's: pairs of day, today 0, and nitrate. Nitrate and ``kit_step``
    are in mg/L.
    """
    days = nitrate_days(rows)
    count = max(1, LEAST_READINGS - len(days))
    soonest = (count - 1) * APART_DAYS
    if days:
        soonest = max(soonest, APART_DAYS, math.ceil(days[0] + LEAST_SPAN_DAYS))
    return TellingReading(count, first_apart(courses, kit_step, soonest), kit_step)


def first_apart(
    courses: Sequence[Sequence[tuple[float, float]]], kit_step: float, soonest: int
) -> int | None:
    """The first whole day, not before ``soonest``, on which the courses lie further apart than the step.

    Nitrate and ``kit_step`` are in mg/L.
    """
    by_day: dict[int, list[float]] = {}
    for course in courses:
        for day, level in dict(course).items():
            if day == int(day):
                by_day.setdefault(int(day), []).append(level)
    apart = (day for day, levels in sorted(by_day.items()) if max(levels) - min(levels) > kit_step)
    return next((day for day in apart if day >= soonest), None)
