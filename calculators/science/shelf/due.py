"""A task of a tank that comes round, and when it is due. Feeding never is."""

from collections.abc import Iterable
from datetime import date, timedelta
from typing import NamedTuple

from calculators.science.growth.rounds import minutes_a_week
from calculators.science.growth.tasks import CHANGE
from calculators.science.shelf.log import Log

TEST_MINUTES = 5.0
TEST_EVERY_DAYS = 14.0  # common practice, no source: one short round of tests


class ShelfRound(NamedTuple):
    """A task that comes round: how often, when it was last done (None: not in the log), its minutes.

    It is not due before ``not_before``, where that is a day, however late it would be.
    """

    task: str
    every_days: float
    last: date | None
    minutes: float
    why: str
    not_before: date | None = None

    @property
    def is_change(self) -> bool:
        """Whether it is the change of water, in whatever words."""
        return self.task.startswith(CHANGE)

    @property
    def minutes_week(self) -> float:
        """Minutes a week."""
        return minutes_a_week(self.minutes, self.every_days)


class Due(NamedTuple):
    """A task, the day on which it is or was due, how late it is, and why it is due."""

    task: str
    on: date
    late_days: int
    why: str
    minutes: float


def due_of(one: ShelfRound, log: Log) -> Due:
    """When a task is due. One that was never logged is due today where it is water, else a round from now."""
    if one.last is None:
        wait = 0.0 if one.is_change else one.every_days
        on = log.today + timedelta(days=round(wait))
    else:
        on = one.last + timedelta(days=round(one.every_days))
    if one.not_before is not None:
        on = max(on, one.not_before)
    return Due(one.task, on, max(0, (log.today - on).days), one.why, one.minutes)


def week_of(rounds: Iterable[ShelfRound]) -> float:
    """Minutes a week of all that comes round, and of a round of tests."""
    return sum(one.minutes_week for one in rounds) + minutes_a_week(TEST_MINUTES, TEST_EVERY_DAYS)
