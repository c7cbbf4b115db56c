"""A figure of the water that stands with a tank and was read as well: which of the two holds now."""

from datetime import date
from typing import NamedTuple

from calculators.science.shelf.latest import Latest
from calculators.science.shelf.shelf_tank import ShelfTank

# The higher they are, the more of an ammonia reading is toxic.
MAKES_TOXIC = ("ph", "temperature_c")


class KnownFigure(NamedTuple):
    """A figure, and the reading that it is of; None where it stands with the tank."""

    value: float
    reading: Latest | None


def freshest(what: str, tank: ShelfTank, readings: dict[str, Latest]) -> KnownFigure | None:
    """The fresher of a tank's own figure and its latest reading; None where there is neither.

    A figure whose day nobody knows may be of years ago: any reading goes before it. Of pH and temperature
    the higher counts where both are of one day, and where the reading is older than it is of use.
    """
    reading, entered = readings.get(what), getattr(tank, what)
    if reading is None:
        return None if entered is None else KnownFigure(entered, None)
    on = entered_on(what, tank)
    if entered is None or (on is not None and on < reading.day):
        return KnownFigure(reading.value, reading)
    if on is not None and on > reading.day:
        return KnownFigure(entered, None)
    unsure = on == reading.day or reading.is_old
    if what in MAKES_TOXIC and unsure and entered > reading.value:
        return KnownFigure(entered, None)
    return KnownFigure(reading.value, reading)


def figure_now(what: str, tank: ShelfTank, readings: dict[str, Latest]) -> float | None:
    """The figure alone. In the unit of what is asked for."""
    known = freshest(what, tank, readings)
    return known.value if known else None


def entered_on(what: str, tank: ShelfTank) -> date | None:
    """The day on which a figure was entered with the tank, by the keeper's clock; None where nobody knows."""
    at: str | None = getattr(tank.entered, what, None)
    return date.fromisoformat(at[:10]) if at else None
