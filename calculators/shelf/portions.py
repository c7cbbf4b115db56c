"""How much whoever feeds during a holiday gives, and on which days: less rather than more."""

from datetime import date, timedelta
from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.shelf.shelf_tank import ShelfTank

# Common practice, no source: grown fish in a planted tank go some days without food, and half a ration is
# plenty for a few weeks; food that rots is what kills. Young animals need their keeper's own words.
EVERY_DAYS = 2
QUARTERS = {0: "", 1: "¼", 2: "½", 3: "¾"}
LEAST_SPOON = 0.25


class Portion(NamedTuple):
    """One portion in words, and the days on which it is given."""

    words: str
    days: list[date]


def portion_of(tank: ShelfTank, start: date, end: date, spoon_g: float | None) -> Portion:
    """The portion of a tank, and every second day from the second on; no day where there are no animals."""
    if tank.animals == [] or tank.feed_g_week == 0:
        return Portion("nothing: feed nothing in this tank", [])
    length = (end - start).days
    days = [start + timedelta(day) for day in range(1, length + 1, EVERY_DAYS)]
    if tank.feed_g_week is None:
        return Portion("______ (write it in before you leave)", days)
    grams = tank.feed_g_week / DAYS_PER_WEEK
    if spoon_g is None:
        return Portion(f"{show_number(grams, 2)} g: weigh it out and mark a spoon", days)
    return Portion(f"{spoons(grams / spoon_g)} (about {show_number(grams, 2)} g)", days)


def spoons(number: float) -> str:
    """A number of level spoons, rounded down to quarters: less rather than more."""
    quarters = int(number / LEAST_SPOON)
    if quarters == 0:
        return "less than ¼ level spoon, a pinch"
    whole, rest = divmod(quarters, 4)
    shown = f"{whole or ''}{QUARTERS[rest]}"
    return f"{shown} level {'spoon' if quarters <= 4 else 'spoons'}"
