"""When a task that comes round every so many days falls due, and how many minutes a week it takes."""

import math

from calculators.science.conversions import DAYS_PER_WEEK

ROUNDING = 1e-9  # so that the tenth time of every 2.8 days is day 28 and not 29


def minutes_a_week(minutes: float, every_days: float) -> float:
    """Minutes a week of a task that takes so many each time."""
    return minutes * DAYS_PER_WEEK / every_days


def due_days(every_days: float, since_days: float, last_day: int) -> list[int]:
    """The days from 1 to ``last_day`` on which a task is due, last done ``since_days`` before day 0.

    What is overdue falls on day 1 and starts the round afresh. A part of a day counts as the next.
    """
    first = max(1.0, every_days - since_days)
    count = math.floor((last_day - first) / every_days + ROUNDING) + 1
    return [math.ceil(first + every_days * turn - ROUNDING) for turn in range(max(0, count))]


def late_days(every_days: float, since_days: float) -> float:
    """How many days ago a task was due, 0 where it is not yet."""
    return max(0.0, since_days - every_days)


def is_long_overdue(every_days: float, since_days: float) -> bool:
    """Whether a whole round has been missed."""
    return since_days >= 2 * every_days
