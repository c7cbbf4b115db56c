"""The one word for a run: what is nearest to harm first, animals before leaves before the water's course."""

from collections.abc import Sequence
from typing import Literal

from calculators.core.result import Level
from calculators.nitrogen_forecast.harm import RANK, HarmfulReading
from calculators.science.nitrogen.course import Course
from calculators.science.nitrogen.hunger import Hunger

Verdict = Literal[
    "deadly", "harmful", "watch", "running-short", "recovered", "building", "falling", "swinging",
    "growing", "dwindling", "steady",
]  # fmt: skip
SHOWN = (
    "deadly to animals",
    "harmful to animals",
    "ammonia or nitrite shows",
    "plants run short",
    "plants ran short, and have enough again",
    "nitrate builds up",
    "nitrate falls",
    "nitrate swings",
    "plants grow on",
    "plants dwindle",
    "steady",
)
LEVELS: tuple[Level, ...] = (
    "danger", "danger", "caution", "caution", "caution", "caution", "caution", "caution", "info",
    "caution", "info",
)  # fmt: skip


def judge(harms: Sequence[HarmfulReading], hunger: Hunger, course: Course) -> Verdict:
    """The worst that is to be said of a run; steady only where nothing else is."""
    if harms:
        return min((harm.band for harm in harms), key=lambda band: RANK[band])
    if hunger.spells:
        return "running-short" if hunger.spells[-1].end is None else "recovered"
    if course.direction == "rising":
        return "building"
    if course.direction == "falling":
        return "falling"
    if not course.stand_holds:
        return "growing" if course.times_grown > 1 else "dwindling"
    return "swinging" if course.direction == "up-and-down" else "steady"
