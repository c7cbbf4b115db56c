"""Sodium chloride for a chloride that stands against nitrite."""

from typing import NamedTuple

from calculators.science.animals.reading_lines import edge_of
from calculators.science.water import chemistry

SODIUM_PER_CHLORIDE = chemistry.NA / chemistry.CHLORIDE  # by mass
SALT_PER_CHLORIDE = (chemistry.NA + chemistry.CHLORIDE) / chemistry.CHLORIDE
# Sixteen ions of chloride to one of nitrite kept the blood of channel catfish red (tomasso-1979).
FULL_RATIO = 16 * chemistry.CHLORIDE / chemistry.N
# Ten parts of chloride to one of nitrite as NO2, the rule of fish farms (srac-nitrite).
FARM_RATIO = 10 * chemistry.NITRITE / chemistry.N
HARMS_MG_L = edge_of("chloride_mg_l", "harmful_high")
KILLS_MG_L = edge_of("chloride_mg_l", "deadly_high")


class ChlorideSalt(NamedTuple):
    """The chloride to reach, what is missing of it, and the salt and sodium for that, mg/L."""

    wanted_mg_l: float
    missing_mg_l: float
    salt_mg_l: float
    sodium_mg_l: float


def salt_for(nitrite_mg_n_l: float, chloride_mg_l: float, ratio: float) -> ChlorideSalt:
    """The salt for a ratio of chloride to nitrite nitrogen, by mass, counting what is there."""
    goal = nitrite_mg_n_l * ratio
    missing = max(0.0, goal - chloride_mg_l)
    return ChlorideSalt(goal, missing, missing * SALT_PER_CHLORIDE, missing * SODIUM_PER_CHLORIDE)


def too_much(salt: ChlorideSalt, chloride_mg_l: float) -> bool:
    """Whether the chloride would stand at or above the line where it harms over time."""
    return max(salt.wanted_mg_l, chloride_mg_l) >= HARMS_MG_L
