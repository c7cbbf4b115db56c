"""Low, middle and high of the rates that nobody knows well, run side by side."""

from collections.abc import Sequence
from typing import NamedTuple

from calculators.science.nitrogen.daily_record import Record
from calculators.science.nitrogen.edges import edges
from calculators.science.nitrogen.simulate import Outcome, simulate
from calculators.science.nitrogen.tank import Event, Rates, Tank


class Band(NamedTuple):
    """Nitrate and the plants' store below and above the middle run, at the moments of its lines.

    ``edges`` are the records of the two runs at the edges.
    """

    low: list[float]
    high: list[float]
    earliest_shortage: float | None
    store_low: list[float]
    store_high: list[float]
    edges: list[Record]


UNSETTLING = ("feed", "dark", "die-off")


def is_unsettled(tank: Tank, events: Sequence[Event]) -> bool:
    """Whether ammonia or nitrite can rise: then the middle run alone could calm where an edge kills."""
    return (
        tank.filter_maturity_percent < 100
        or tank.ammonia_mg_n_l > 0
        or tank.nitrite_mg_n_l > 0
        or tank.kh_dh is not None
        or tank.usual_ph is not None
        or any(event.kind in UNSETTLING for event in events)
    )


def harsher(tank: Tank, events: Sequence[Event], days: float, rates: Rates) -> Record:
    """The edge that leaves most in the water, run alone."""
    return simulate(tank, events, days, edges(rates)[1]).record


def band(middle: Outcome, tank: Tank, events: Sequence[Event], days: float, rates: Rates) -> Band:
    """Run both edges, and take the lowest and highest of the three at each moment."""
    runs = [middle, *(simulate(tank, events, days, edge) for edge in edges(rates))]
    lines = list(zip(*(run.record.lines for run in runs), strict=True))
    nitrate = [[line.nitrate for line in row] for row in lines]
    store = [[line.plant_nitrogen_percent for line in row] for row in lines]
    shortages = [
        run.record.hunger.first_day for run in runs if run.record.hunger.first_day is not None
    ]
    return Band(
        [min(row) for row in nitrate],
        [max(row) for row in nitrate],
        min(shortages, default=None),
        [min(row) for row in store],
        [max(row) for row in store],
        [run.record for run in runs[1:]],
    )
