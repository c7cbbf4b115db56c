"""The states of a tank, and the constants of one run. Nitrogen in mg, plants in g dry mass, days."""

from typing import NamedTuple

from calculators.science.nitrogen.cohorts import Cohort
from calculators.science.nitrogen.feed import FeedFate


class StateVariable(NamedTuple):
    """A state variable: symbol, meaning, unit, and its rate. Amounts are those of the whole tank."""

    symbol: str
    what: str
    unit: str
    change: str


OF_TANK = (
    StateVariable(
        "A", "total ammonia, NH₃ and NH₄", "mg N", "excreted + k · S + λ · Z − N_1 − U_A"
    ),
    StateVariable("I", "nitrite", "mg N", "N_1 − N_2"),
    StateVariable("N", "nitrate", "mg N", "N_2 − U_N − D − U_other"),
    StateVariable(
        "S",
        "droppings, leftovers, dead leaves: the part that rots",
        "mg N",
        "rotting + ½ · L − k · S",
    ),
    StateVariable("Z", "ammonium that the soil will still give", "mg N", "−λ · Z"),
    StateVariable(
        "X_1",
        "what the nitrifiers of ammonia could oxidise",
        "mg N a day",
        "μ_1 · N_1 − δ_1 · (X_1 − seed)",
    ),
    StateVariable("X_2", "the same for nitrite", "mg N a day", "μ_2 · N_2 − δ_2 · (X_2 − seed)"),
)
OF_COHORT = (
    StateVariable(
        "G",
        "growth: a plant's dry mass is its first mass · exp(r · G)",
        "days",
        "g · c − loss; afloat g · (1 − x) / max(1, x) − loss",
    ),
    StateVariable(
        "Q", "nitrogen in the plants", "mg N", "their share of U_A + U_N, less their part of L"
    ),
)
ADDED_UP = (
    StateVariable("", "nitrified so far", "mg N", "N_1"),
    StateVariable("", "lost as gas", "mg N", "D"),
    StateVariable("", "buried: the part of dead leaves that lasts", "mg N", "½ · L"),
    StateVariable("", "taken by plants whose uptake was entered", "mg N", "U_other"),
    StateVariable("", "alkalinity gained against the tap's", "meq", "as under carbonate hardness"),
)
AMMONIUM, NITRITE, NITRATE, SOLIDS, SOIL, OXIDISERS, NITRITE_OXIDISERS = range(len(OF_TANK))
FIRST_COHORT = len(OF_TANK)
NITRIFIED, DENITRIFIED, BURIED, OTHER_PLANTS, ALKALINITY = range(-len(ADDED_UP), 0)


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
