"""From feed to nitrogen in the water."""

import math
from typing import NamedTuple

from calculators.science.animals.feeding import feed_nitrogen_g
from calculators.science.conversions import DAYS_PER_WEEK, MG_PER_G
from calculators.science.nitrogen.constants import (
    EXCRETED_SHARE,
    LABILE_SHARE,
    LITTER_RATE_20,
    MINERALISATION_20,
    MINERALISATION_THETA,
)


class FeedFate(NamedTuple):
    """Where a day's feed goes, mg N a day; the four sum to what was fed.

    ``rotting`` is what will turn into ammonium, ``lasting`` is buried for longer than a year.
    """

    excreted: float
    retained: float
    rotting: float
    lasting: float

    @property
    def fed(self) -> float:
        """The nitrogen fed, mg N a day."""
        return sum(self)


def feed_nitrogen_mg_day(feed_g_week: float, protein_percent: float) -> float:
    """Nitrogen in the feed, mg N a day.

    Equation: F_N = 1000/7 · feed · protein/100 · 0.16
    """
    return MG_PER_G * feed_nitrogen_g(feed_g_week / DAYS_PER_WEEK, protein_percent)


def feed_fate(fed_mg_day: float, retained_percent: float, uneaten_percent: float) -> FeedFate:
    """Where the feed's nitrogen goes: kept in the animals, excreted at once, droppings, left over.

    Equation: excreted = 0.575 · eaten; retained = share · eaten; rotting = left over + ½ droppings;
    lasting = ½ droppings
    Droppings are what remains of the eaten; half of them rots, half lasts. Leftovers rot whole.
    Excreted is 0.092 g total ammonia nitrogen a g of protein. At 42.5 % kept there are no droppings
    and the ammonia is exactly that of Timmons and Ebeling.
    """
    uneaten = fed_mg_day * uneaten_percent / 100
    eaten = fed_mg_day - uneaten
    retained = eaten * retained_percent / 100
    excreted = eaten * EXCRETED_SHARE
    droppings = max(0.0, eaten - excreted - retained)
    rotting = uneaten + LABILE_SHARE * droppings
    return FeedFate(excreted, retained, rotting, (1 - LABILE_SHARE) * droppings)


def mineralisation_per_day(temperature_c: float) -> float:
    """How fast droppings and leftovers turn into ammonium, share a day.

    Equation: k = 0.05 · 1.07^(T − 20); dS/dt = inflow − k · S
    The figure is a judgement inside the span of published rates, 0.02 to 0.15 a day (from memory).
    """
    return MINERALISATION_20 * math.pow(MINERALISATION_THETA, temperature_c - 20)


def litter_per_day(temperature_c: float) -> float:
    """How fast dead leaves turn into ammonium, share a day.

    Equation: k_L = 0.02 · 1.07^(T − 20); of dead leaves 5 % of the nitrogen is buried;
    30 % of the rest rots with the droppings, 70 % at k_L
    Measured for leaves of water plants: 0.047 to 0.099 (water hyacinth), about 0.030 (Vallisneria),
    about 0.010 a day (a pondweed). All but a twentieth is back within a year.
    """
    return LITTER_RATE_20 * math.pow(MINERALISATION_THETA, temperature_c - 20)
