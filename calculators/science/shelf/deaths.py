"""Deaths in the log, and how they weigh; the lines are common practice, no source."""

from typing import NamedTuple

from calculators.science.shelf.log import Log
from calculators.science.shelf.shelf_tank import ShelfTank

LATELY_DAYS, LONGER_DAYS = 7, 28
ACT_FROM = 2  # animals within LATELY_DAYS
ACT_SHARE = 0.1  # of all animals that are listed
WATCH_FROM_LONGER = 3


class Deaths(NamedTuple):
    """How many animals died lately and over a longer while, and what that asks for."""

    lately: int
    longer: int
    asks: str  # "", watch or act


def deaths(tank: ShelfTank, log: Log) -> Deaths:
    """The deaths of a tank. An entry without a number counts as one."""
    lately, longer = (count(log, days) for days in (LATELY_DAYS, LONGER_DAYS))
    kept = sum(one.count_ or 0 for one in tank.animals or [])
    share = lately / (kept + lately) if kept else 0.0
    if lately >= ACT_FROM and (kept == 0 or share >= ACT_SHARE or lately > ACT_FROM):
        return Deaths(lately, longer, "act")
    if lately or longer >= WATCH_FROM_LONGER:
        return Deaths(lately, longer, "watch")
    return Deaths(lately, longer, "")


def count(log: Log, days: int) -> int:
    """The animals that died within some days; none where the number says 0."""
    return sum(
        round(1 if one.entry.value is None else one.value)
        for one in log.of("death")
        if log.days_ago(one.day) <= days
    )
