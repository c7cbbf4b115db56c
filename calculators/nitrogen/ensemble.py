"""Low, middle and high of the rates that nobody knows well, run side by side."""

from collections.abc import Sequence
from typing import NamedTuple

from calculators.nitrogen.constants import LARGEST_RETAINED_PERCENT
from calculators.nitrogen.simulate import Outcome, simulate
from calculators.nitrogen.tank import Event, Rates, Tank

FASTER, SLOWER = 1.5, 0.6  # of the plants' growth; judgement
RETAINED_STEP = 10.0  # percent of the feed's nitrogen: 20, 30, 40; Summerfelt and Penne 2007
MORE_GAS, LESS_GAS = 6.0, 0.2  # of 5 mg N a m² and day: 30 and 1
ROT_STEP = 1.5  # of the rate of mineralisation; judgement
SOIL_STEP = 3.0  # of the soil's release; measured from 7 to over 600 around 45 mg N a m² and day


class Band(NamedTuple):
    """Nitrate and the plants' store below and above the middle run, at the moments of its lines."""

    low: list[float]
    high: list[float]
    earliest_shortage: float | None
    store_low: list[float]
    store_high: list[float]


def edges(rates: Rates) -> tuple[Rates, Rates]:
    """The rates that together leave least and most nitrate."""
    least = Rates(
        growth=rates.growth * FASTER,
        retained_percent=min(LARGEST_RETAINED_PERCENT, rates.retained_percent + RETAINED_STEP),
        denitrification=rates.denitrification * MORE_GAS,
        mineralisation=rates.mineralisation / ROT_STEP,
        soil_release=rates.soil_release / SOIL_STEP,
    )
    most = Rates(
        growth=rates.growth * SLOWER,
        retained_percent=max(0.0, rates.retained_percent - RETAINED_STEP),
        denitrification=rates.denitrification * LESS_GAS,
        mineralisation=rates.mineralisation * ROT_STEP,
        soil_release=rates.soil_release * SOIL_STEP,
    )
    return least, most


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
    )
