"""How a hardness rises by topping up, and how far purified water holds it."""

from typing import Literal, NamedTuple

from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.water.between_changes import (
    NO_CHANGE,
    CourseOfReading,
    SettledReadings,
    settled,
    value_at,
)

STEADY_DH = 1.0  # a drop of a hardness kit: less cannot be seen

Verdict = Literal["steady", "rising", "never-settles", "falling"]


class Rhythm(NamedTuple):
    """The share of the tank that evaporates a week, the share of each change, and its interval."""

    evaporated: float
    changed: float
    every_days: float


class Rising(NamedTuple):
    """The course of a hardness, what it rises by a week, and where it settles; None if nowhere."""

    course: CourseOfReading
    a_week: float
    settled: SettledReadings | None

    def end(self, days: float) -> float:
        """The hardness after so many days, a change due on the last one included."""
        return value_at(self.course, days)


def rising(
    rhythm: Rhythm, now: float | None, top_up: float | None, new_water: float | None
) -> Rising | None:
    """The course of a hardness; None where a reading is missing that it needs.

    The hardness ``now``, of the ``top_up`` and of the ``new_water`` is in °dH.
    """
    if now is None or top_up is None or new_water is None:
        return None
    a_week = rhythm.evaporated * top_up
    course = CourseOfReading(
        now, a_week / DAYS_PER_WEEK, new_water, rhythm.changed, rhythm.every_days
    )
    return Rising(course, a_week, settled(course))


def verdict_of(gh: Rising, now: float) -> Verdict:
    """Name the way it goes: by the highest reading once it repeats, against today's.

    The hardness ``now`` is in °dH.
    """
    if gh.settled is None:
        return "never-settles"
    if gh.settled.before > now + STEADY_DH:
        return "rising"
    return "falling" if gh.settled.before < now - STEADY_DH else "steady"


def pure_share_percent(rhythm: Rhythm, now: float, top_up: float, new_water: float) -> float | None:
    """The share of purified water in the top-up that leaves a hardness as it is, change for change.

    Between changes the hardness may rise by as much as a change takes down again. None where new water
    that is harder than the tank raises it whatever the top-up; 0 where it falls with none. The hardness
    ``now``, of the ``top_up`` and of the ``new_water`` is in °dH.
    """
    rise = rhythm.evaporated * rhythm.every_days / DAYS_PER_WEEK * top_up  # in one interval
    if now < new_water and rhythm.changed > NO_CHANGE:
        return None
    if rise == 0:
        return 0.0
    if rhythm.changed >= 1:
        return 100.0 if now == new_water else 0.0
    room = rhythm.changed / (1 - rhythm.changed) * (now - new_water)
    return 100 * max(0.0, 1 - room / rise)
