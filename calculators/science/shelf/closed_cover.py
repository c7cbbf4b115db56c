"""Whether floating plants have closed a tank's surface, by the last look at it."""

from calculators.core.numbers import show_number
from calculators.science.light.lamps import CLOSED_COVER_PERCENT
from calculators.science.shelf.latest import Latest
from calculators.science.shelf.log import Log
from calculators.science.shelf.shelf_tank import ShelfTank

COVER = "cover_percent"


def closed_cover(tank: ShelfTank, log: Log, readings: dict[str, Latest]) -> str:
    """A surface over animals that is closed and was not thinned since, in words; empty where it is not."""
    cover = readings.get(COVER)
    if cover is None or cover.is_old or cover.value <= CLOSED_COVER_PERCENT or tank.animals == []:
        return ""
    looked_at = max(one.at for one in log.of("reading") if one.entry.what == COVER)
    if any(one.at > looked_at for one in log.of("thin")):
        return ""
    return (
        f"floaters cover {show_number(cover.value)} % of the surface, {cover.when}: a closed mat keeps out "
        "air and light. Open a third of it, and watch the animals at dawn, when oxygen is lowest"
    )
