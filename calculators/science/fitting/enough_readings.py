"""Whether readings are enough, and far enough apart, for a fit."""

from collections.abc import Sequence

from calculators.science.fitting.fit_readings import NITRATE, Reading

LEAST_READINGS, LEAST_SPAN_DAYS = 3, 10.0
MOST_DAYS_BACK = 365  # what is older tells nothing of the plants and the feed of today; judgement


def nitrate_days(rows: Sequence[Reading]) -> list[float]:
    """The days of the readings of nitrate, today 0: one for each of them, oldest first."""
    return sorted(one.day for one in rows if one.what == NITRATE)


def reaches_far(rows: Sequence[Reading]) -> bool:
    """Whether the readings of nitrate are enough, and far enough apart, for a fit."""
    days = nitrate_days(rows)
    return len(days) >= LEAST_READINGS and days[-1] - days[0] >= LEAST_SPAN_DAYS
