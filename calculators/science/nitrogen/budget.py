"""The ledger: what came in and went out by hand, against what the solved states hold.

It knows nothing of the rates. Feed is counted from the ration and the time, changes, doses and
trims as they happen; the stores are read off the states. If a rate took nitrogen from one place
and did not put it into another, the two would not meet.
"""

from calculators.science.nitrogen.model import (
    BURIED,
    DENITRIFIED,
    FIRST_COHORT,
    OTHER_PLANTS,
    SLOW_SOIL,
    Model,
)
from calculators.science.nitrogen.solver_parts import State


class Ledger:
    """Nitrogen in mg since the first day."""

    def __init__(self, model: Model, state: State) -> None:
        self.at_start = stored(model, state)
        self.came_in = 0.0
        self.went_out = 0.0
        self.kept_outside = 0.0  # of the feed: in the animals, and in droppings that last

    def feed(self, model: Model, days: float) -> None:
        """Count the feed of some days."""
        self.came_in += model.fate.fed * days
        self.kept_outside += (model.fate.retained + model.fate.lasting) * days

    def error_percent(self, model: Model, state: State) -> float:
        """Nitrogen in, less out, less stored: in percent of what was there and came in."""
        reached = self.at_start + self.came_in
        lost = self.went_out + state[DENITRIFIED] + state[OTHER_PLANTS]
        missing = reached - lost - stored(model, state) - self.kept_outside
        return 100 * abs(missing) / reached if reached > 0 else 0.0


def stored(model: Model, state: State) -> float:
    """Nitrogen in water, mulm, soil and plants, mg."""
    dissolved_and_mulm = sum(state[: SLOW_SOIL + 1])
    in_plants = sum(state[FIRST_COHORT + 1 : FIRST_COHORT + 2 * len(model.cohorts) : 2])
    return dissolved_and_mulm + in_plants + state[BURIED]
