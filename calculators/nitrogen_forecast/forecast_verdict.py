"""The one word for a run: what is nearest to harm first, animals before leaves before the water's course."""

from collections.abc import Sequence
from typing import Literal

from calculators.core.result import Level
from calculators.nitrogen_forecast.run_harm import RANK, HarmfulReading
from calculators.science.nitrogen.course import Course
from calculators.science.nitrogen.hunger import Hunger

Verdict = Literal[
    "deadly", "harmful", "may-harm", "watch", "running-short", "recovered", "building", "falling", "swinging",
    "growing", "dwindling", "level",
]  # fmt: skip
SHOWN = (
    "deadly to animals",
    "harmful to animals",
    "may turn harmful to animals",
    "ammonia or nitrite shows",
    "plants run short",
    "plants ran short, and have enough again",
    "nitrate builds up",
    "nitrate falls",
    "nitrate swings",
    "plants grow on",
    "plants dwindle",
    "level",
)
LEVELS: tuple[Level, ...] = (
    "danger", "danger", "danger", "caution", "caution", "caution", "caution", "caution", "caution", "info",
    "caution", "info",
)  # fmt: skip


def judge(
    harms: Sequence[HarmfulReading],
    at_edges: Sequence[HarmfulReading],
    hunger: Hunger,
    course: Course,
) -> Verdict:
    """The worst that is to be said of a run; level only where nothing else is.

    ``at_edges``: what is worse than the middle run at an edge of what nobody knows well.
    """
    worst = min((harm.band for harm in harms), key=lambda band: RANK[band], default=None)
    if worst in (None, "watch") and any(harm.is_danger for harm in at_edges):
        return "may-harm"
    if worst is not None:
        return worst
    if hunger.spells:
        return "running-short" if hunger.spells[-1].end is None else "recovered"
    if course.direction == "rising":
        return "building"
    if course.direction == "falling":
        return "falling"
    if not course.stand_holds:
        return "growing" if course.times_grown > 1 else "dwindling"
    return "swinging" if course.direction == "up-and-down" else "level"
