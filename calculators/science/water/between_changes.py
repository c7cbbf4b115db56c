"""What a reading does that drifts evenly between water changes, and where it settles.

Each change replaces a share of the tank with new water of a reading of its own. In between the
reading rises or falls by the same amount a day. Any unit will do, the same throughout.
"""

import math
from collections.abc import Iterator
from typing import NamedTuple

NO_CHANGE = 1e-6  # a share below this renews nothing, and dividing by it would say nothing
ON_TIME = 1e-9  # of an interval: a change due on a day counts on that day


class CourseOfReading(NamedTuple):
    """A reading at the start, its drift a day, and the changes: new water, share 0 to 1, interval.

    The first change comes one interval after the start.
    """

    start: float
    a_day: float
    new_water: float
    share: float
    every_days: float

    @property
    def is_renewed(self) -> bool:
        """Whether there are changes at all."""
        return self.share > NO_CHANGE


class SettledReadings(NamedTuple):
    """The readings just before and just after a change, once they repeat."""

    before: float
    after: float


def settled(course: CourseOfReading) -> SettledReadings | None:
    """Where a course settles; None where it drifts without an end.

    Equation: after = new water + drift · interval · (1 − share) / share
    Equation: before = new water + drift · interval / share
    """
    if not course.is_renewed:
        return None if course.a_day else SettledReadings(course.start, course.start)
    drift = course.a_day * course.every_days / course.share
    return SettledReadings(course.new_water + drift, course.new_water + drift * (1 - course.share))


def after_change(course: CourseOfReading, number: int) -> float:
    """The reading just after so many changes; after none it is the start.

    In the unit of the reading.
    """
    level = settled(course)
    if number == 0 or level is None or not course.is_renewed:
        return course.start
    return float(level.after + (1 - course.share) ** number * (course.start - level.after))


def value_at(course: CourseOfReading, day: float) -> float:
    """The reading on a day, a change due on that day included."""
    if not course.is_renewed:
        return course.start + course.a_day * day
    changes = math.floor(day / course.every_days + ON_TIME)
    return after_change(course, changes) + course.a_day * (day - changes * course.every_days)


def corners(course: CourseOfReading, days: float) -> Iterator[tuple[float, float]]:
    """The corners of the curve to a day: the start, before and after each change, and the end."""
    yield 0.0, course.start
    changes = math.floor(days / course.every_days + ON_TIME) if course.is_renewed else 0
    for number in range(1, changes + 1):
        day = number * course.every_days
        yield day, after_change(course, number - 1) + course.a_day * course.every_days
        yield day, after_change(course, number)
    if changes * course.every_days < days * (1 - ON_TIME):
        yield days, value_at(course, days)


def first_day_at_or_below(course: CourseOfReading, level: float) -> float | None:
    """The first day on which the reading is no higher than a level; None if it never is."""
    if course.start <= level:
        return 0.0
    if not course.is_renewed:
        return (course.start - level) / -course.a_day if course.a_day < 0 else None
    number = first_low_cycle(course, level)
    if number is None:
        return None
    if course.a_day >= 0:  # the lowest is just after a change
        return number * course.every_days
    begins = after_change(course, number - 1)
    fallen = max(0.0, begins - level) / -course.a_day
    return (number - 1) * course.every_days + min(fallen, course.every_days)


def first_low_cycle(course: CourseOfReading, level: float) -> int | None:
    """The number, from 1, of the first interval whose lowest reading is no higher than a level.

    The lowest readings of the intervals close in on where they settle by the share that is kept.
    """
    ends = settled(course)
    if ends is None:
        return None
    falls, share_left = course.a_day < 0, 1 - course.share
    first = course.start + course.a_day * course.every_days
    if not falls:
        first = share_left * first + course.share * course.new_water
    last = ends.before if falls else ends.after
    if first <= level:
        return 1
    if last > level or (last == level and share_left > 0):
        return None
    if share_left <= 0:
        return 2
    return 1 + math.ceil(math.log((level - last) / (first - last)) / math.log(share_left) - ON_TIME)
