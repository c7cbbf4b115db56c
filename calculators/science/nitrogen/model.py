"""The states of a tank, and the constants of one run. Nitrogen in mg, plants in g dry mass, days."""

from typing import NamedTuple

from calculators.science.nitrogen.alkalinity import hardness_dh
from calculators.science.nitrogen.cohorts import Cohort
from calculators.science.nitrogen.feed_fate import FeedFate


class StateVariable(NamedTuple):
    """A state variable: symbol, meaning, unit, and its rate. Amounts are those of the whole tank."""

    symbol: str
    what: str
    unit: str
    change: str


OF_TANK = (
    StateVariable(
        "A",
        "total ammonia, NH₃ and NH₄",
        "mg N",
        "excreted + k · S + k_L · P + λ · Z + σ · R − roots − N_1 − U_A",
    ),
    StateVariable("I", "nitrite", "mg N", "N_1 − N_2"),
    StateVariable("N", "nitrate", "mg N", "N_2 − U_N − D − U_other"),
    StateVariable(
        "S",
        "droppings, leftovers, and what dead leaves lose at once",
        "mg N",
        "rotting + 0.3 · (1 − buried share) · L − k · S",
    ),
    StateVariable("P", "dead leaves that rot", "mg N", "0.7 · (1 − buried share) · L − k_L · P"),
    StateVariable("Z", "ammonium that the soil will soon give", "mg N", "−λ · Z"),
    StateVariable("R", "what the soil will give in the long run", "mg N", "−σ · R"),
    StateVariable(
        "X_1",
        "what the nitrifiers of ammonia could oxidise",
        "mg N a day",
        "h · (μ_1 · N_1 − f · δ_1 · (X_1 − seed))",
    ),
    StateVariable(
        "X_2", "the same for nitrite", "mg N a day", "h · (μ_2 · N_2 − f · δ_2 · (X_2 − seed))"
    ),
    StateVariable("", "alkalinity gained against the tap's", "meq", "as under carbonate hardness"),
)
OF_COHORT = (
    StateVariable(
        "G",
        "growth: a plant's dry mass is its first mass · exp(r · G)",
        "days",
        "light · (g · c) − shade − loss; afloat light · g · (1 − x) / max(1, x) − loss",
    ),
    StateVariable(
        "Q",
        "nitrogen in the plants",
        "mg N",
        "their share of U_A + U_N and of what roots find, less their part of L",
    ),
)
ADDED_UP = (
    StateVariable("", "nitrified so far", "mg N", "N_1"),
    StateVariable("", "lost as gas", "mg N", "D"),
    StateVariable("", "buried: the part of dead leaves that lasts", "mg N", "buried share · L"),
    StateVariable("", "taken by plants whose uptake was entered", "mg N", "U_other"),
)
AMMONIUM, NITRITE, NITRATE, SOLIDS, LITTER, SOIL, SLOW_SOIL = range(7)
OXIDISERS, NITRITE_OXIDISERS, ALKALINITY = range(7, len(OF_TANK))
FIRST_COHORT = len(OF_TANK)
NITRIFIED, DENITRIFIED, BURIED, OTHER_PLANTS = range(-len(ADDED_UP), 0)


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
    seed: float
    ammonia_half: float
    nitrite_half: float
    litter_rate: float
    refractory: float
    ph: float
    used_to_ph: float
    start_kh: float | None  # None: not known, and then it limits nothing
    tap_kh: float
    dli_mol: float  # at the surface, of a day with the lamp
    lamp: bool = True

    def hardness(self, alkalinity_meq: float) -> float:
        """Carbonate hardness in °dH that goes with the state of alkalinity."""
        return self.tap_kh + hardness_dh(alkalinity_meq, self.volume)
