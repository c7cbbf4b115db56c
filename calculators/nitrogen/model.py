"""The states of a tank, and the constants of one run. Nitrogen in mg, plants in g dry mass, days.

The states, in order: ammonium, nitrite, nitrate, rotting solids, soil ammonium, capacity of the
two nitrifiers; then for each cohort its growth integral and its nitrogen; then what only adds up:
nitrified, denitrified, buried, taken by other plants, alkalinity.
"""

from typing import NamedTuple

from calculators.nitrogen.cohorts import Cohort
from calculators.nitrogen.feed import (
    FeedFate,
)

AMMONIUM, NITRITE, NITRATE, SOLIDS, SOIL, OXIDISERS, NITRITE_OXIDISERS = range(7)
FIRST_COHORT = 7
NITRIFIED, DENITRIFIED, BURIED, OTHER_PLANTS, ALKALINITY = range(-5, 0)


class Model(NamedTuple):
    """Constants of one run, worked out once. Changes of feed and trims make a new one."""

    volume: float
    surface_m2: float
    fate: FeedFate
    cohorts: tuple[Cohort, ...]
    mineralisation: float
    denitrification: float
    other_uptake: float
    ammonia_growth: float
    ammonia_decay: float
    nitrite_growth: float
    nitrite_decay: float
    ammonia_seed: float
    nitrite_seed: float
