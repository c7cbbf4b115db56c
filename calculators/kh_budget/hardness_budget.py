"""The carbonate hardness that nitrogen uses up, and what water changes bring back."""

from typing import Literal, NamedTuple

from calculators.science.nitrogen.alkalinity import alkalinity_change, hardness_dh
from calculators.science.water.between_changes import (
    CourseOfReading,
    SettledReadings,
    first_day_at_or_below,
    settled,
)

Verdict = Literal["lasts", "runs-low", "runs-out", "nearly-gone"]

THIN_DH = 1.0  # common practice, no source: below it pH can fall within days
LEAST_KH_DH = 2.0  # common practice, no source: room for a change that is missed


class Budget(NamedTuple):
    """What is used a day, by which course, when 1 °dH is reached and where it settles.

    ``used_least_dh_day`` counts the hardness that comes back as fish and rot make the ammonia.
    ``low_day`` is None where 1 °dH is never reached, ``holds`` where hardness runs out or never settles.
    """

    verdict: Verdict
    used_dh_day: float
    used_least_dh_day: float
    course: CourseOfReading
    low_day: float | None
    holds: SettledReadings | None


def budget(volume_l: float, nitrified: float, taken: float, still: CourseOfReading) -> Budget:
    """Work it out from flows in mg N a day and the course of a tank in which nothing is used.

    What is ``nitrified`` and the nitrate ``taken`` by plants are such flows; the volume is in litres.
    """
    used = -hardness_dh(alkalinity_change(0.0, nitrified, 0.0, taken), volume_l)
    least = -hardness_dh(alkalinity_change(nitrified, nitrified, 0.0, taken), volume_l)
    course = still._replace(a_day=-used)
    low_day = first_day_at_or_below(course, THIN_DH)
    ends = settled(course)
    holds = ends if ends is not None and min(ends) > 0 else None
    return Budget(verdict_of(course, low_day, holds), used, least, course, low_day, holds)


def verdict_of(
    course: CourseOfReading, low_day: float | None, holds: SettledReadings | None
) -> Verdict:
    """Name how it stands; a tank that only gains has no end and lasts."""
    if course.start <= THIN_DH:
        return "nearly-gone"
    if low_day is None:
        return "lasts"
    return "runs-low" if holds is not None else "runs-out"


def change_to_hold(course: CourseOfReading) -> float | None:
    """The change in per cent that keeps the settled reading at 2 °dH or more; None if none can.

    Equation: share = use in an interval / (new water − 2), from where a course settles.
    """
    use = -course.a_day * course.every_days
    if use <= 0:
        return 0.0
    room = course.new_water - LEAST_KH_DH
    return 100 * use / room if room > 0 and use <= room else None
