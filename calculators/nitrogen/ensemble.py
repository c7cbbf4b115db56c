"""Low, middle and high of the rates that nobody knows well, run side by side."""

from collections.abc import Sequence
from typing import NamedTuple

from calculators.nitrogen.edges import edges
from calculators.nitrogen.simulate import Outcome, simulate
from calculators.nitrogen.tank import Event, Rates, Tank


class Band(NamedTuple):
    """Nitrate below and above the middle run, at the moments of its lines."""

    low: list[float]
    high: list[float]
    earliest_shortage: float | None


def band(middle: Outcome, tank: Tank, events: Sequence[Event], days: float, rates: Rates) -> Band:
    """Run both edges, and take the lowest and highest of the three at each moment."""
    runs = [middle, *(simulate(tank, events, days, edge) for edge in edges(rates))]
    rows = list(zip(*([line.nitrate for line in run.record.lines] for run in runs), strict=True))
    shortages = [
        run.record.hunger.first_day for run in runs if run.record.hunger.first_day is not None
    ]
    return Band(
        [min(row) for row in rows], [max(row) for row in rows], min(shortages, default=None)
    )
