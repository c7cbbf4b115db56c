"""Plants gathered into cohorts: those that grow alike share one store of nitrogen a gram.

Each species keeps its own growth rate and mass. Up to five distinct rates each have a cohort of
their own, so nothing is lost for most tanks; beyond that the two nearest are joined, again and
again, so that a tank with twelve species takes hardly longer than one with three.
"""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from calculators.science.conversions import PERCENT_TO_MG_PER_G
from calculators.science.growth.floating_layers import layer_dry_g_m2
from calculators.science.nitrogen.forecast_tank import StandingPlant
from calculators.science.nitrogen.plant_constants import (
    DRY_SHARE_FLOATING,
    DRY_SHARE_ROOTED,
    FLOATING_LAYER_G_M2,
    FULL_N_FLOATING,
    FULL_N_ROOTED,
    LEAST_N,
)

MOST_COHORTS = 5


class Cohort(NamedTuple):
    """Plants that share a store: ``members`` as (g dry mass, growth a day), and their names."""

    floating: bool
    members: tuple[tuple[float, float], ...]
    names: tuple[str, ...]
    layer: float = FLOATING_LAYER_G_M2  # dry mass of a closed layer afloat, g/m²

    @property
    def full(self) -> float:
        """Largest store, mg N a g dry mass."""
        return FULL_N_FLOATING if self.floating else FULL_N_ROOTED

    @property
    def dry_share(self) -> float:
        """Dry mass over wet mass."""
        return DRY_SHARE_FLOATING if self.floating else DRY_SHARE_ROOTED

    def mass(self, growth: float) -> float:
        """Dry mass in g after the cohort's growth integral has reached ``growth``."""
        total = 0.0
        for mass, rate in self.members:
            total += mass * math.exp(rate * growth)
        return total

    def cut(self, share: float) -> "Cohort":
        """The cohort after a share of each member was taken away."""
        left = tuple((mass * (1 - share), rate) for mass, rate in self.members)
        return self._replace(members=left)


def gather(plants: Sequence[StandingPlant], growth: float = 1.0) -> tuple[Cohort, ...]:
    """Cohorts of plants, floaters first and then the fastest first, which is also top to bottom.

    The ``growth`` is a factor of the growth rates.
    """
    cohorts = [single(plant, growth) for plant in plants if plant.wet_g > 0]
    cohorts.sort(key=lambda one: (not one.floating, one.layer, -one.members[0][1]))
    while len(cohorts) > 1:
        gap, place = min((distance(a, b), place) for place, (a, b) in enumerate(pairwise(cohorts)))
        if gap > 0 and (len(cohorts) <= MOST_COHORTS or gap == math.inf):
            break
        cohorts[place : place + 2] = [join(cohorts[place], cohorts[place + 1])]
    return tuple(cohorts)


def single(plant: StandingPlant, growth: float) -> Cohort:
    """A cohort of one plant. The ``growth`` is a factor of its growth rate."""
    share = DRY_SHARE_FLOATING if plant.floating else DRY_SHARE_ROOTED
    rate = growth * math.log(2) / plant.doubling_days
    layer = layer_dry_g_m2(plant.name) if plant.floating else FLOATING_LAYER_G_M2
    return Cohort(plant.floating, ((plant.wet_g * share, rate),), (plant.name,), layer)


def distance(first: Cohort, other: Cohort) -> float:
    """How unlike the growth of two neighbours is; floaters join neither rooted plants nor thicker kinds.

    As the logarithm of the ratio of their rates.
    """
    if (first.floating, first.layer) != (other.floating, other.layer):
        return math.inf
    return math.log(first.members[0][1] / other.members[-1][1])


def join(first: Cohort, other: Cohort) -> Cohort:
    """Two cohorts as one; members of the very same rate are added up."""
    members: dict[float, float] = {}
    for mass, rate in (*first.members, *other.members):
        members[rate] = members.get(rate, 0.0) + mass
    return Cohort(
        first.floating,
        tuple((mass, rate) for rate, mass in members.items()),
        (*first.names, *other.names),
        first.layer,
    )


def start_store(cohort: Cohort, nitrogen_percent: float) -> float:
    """Nitrogen in a cohort on the first day, mg."""
    store = min(cohort.full, max(LEAST_N, nitrogen_percent * PERCENT_TO_MG_PER_G))
    return store * cohort.mass(0.0)
