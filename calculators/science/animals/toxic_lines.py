"""Lines for ammonia and nitrite, whose harm depends on other readings beside them.

What is not known is taken at the worse value that such a tank may well have.
"""

from calculators.science.animals.reading_lines import IN_RANGE, LINES, Standing, edge_of
from calculators.science.water.ammonia import (
    ACT_NH3_MG_N_L,
    acute_limit_mg_n_l,
    chronic_limit_mg_n_l,
    rate,
    unionised_share,
)
from calculators.science.water.unread import HIGHEST_PH, WARM_C

# The most nitrite for a short time, mg N/L, by chloride up to so many mg/L: bc-nitrite.
MOST_NITRITE = ((2.0, 0.06), (4.0, 0.12), (6.0, 0.18), (8.0, 0.24), (10.0, 0.30))


def ammonia_standing(
    total_mg_n_l: float, ph: float | None = None, temperature_c: float | None = None
) -> Standing:
    """How total ammonia nitrogen stands: by its toxic share and the US criteria, as free-ammonia rates it."""
    acid = HIGHEST_PH if ph is None else ph
    warmth = WARM_C if temperature_c is None else temperature_c
    toxic = total_mg_n_l * unionised_share(acid, warmth)
    if toxic >= ACT_NH3_MG_N_L or total_mg_n_l > acute_limit_mg_n_l(acid, warmth):
        return Standing("deadly", "high")
    rating = rate(total_mg_n_l / chronic_limit_mg_n_l(acid, warmth), toxic)
    return IN_RANGE if rating == "low" else Standing("harmful", "high")


def most_nitrite_mg_n_l(chloride_mg_l: float | None = None) -> float:
    """From where nitrite harms at this much chloride; with chloride unknown, the least of all."""
    known = 0.0 if chloride_mg_l is None else chloride_mg_l
    highest = edge_of("nitrite_mg_n_l", "deadly_high")
    return next((most for up_to, most in MOST_NITRITE if known < up_to), highest)


def nitrite_standing(nitrite_mg_n_l: float, chloride_mg_l: float | None = None) -> Standing:
    """How nitrite stands; chloride shifts where it harms, never where it kills: some fish are not helped."""
    if nitrite_mg_n_l >= (LINES["nitrite_mg_n_l"].deadly_high or 0.0):
        return Standing("deadly", "high")
    harms = nitrite_mg_n_l >= most_nitrite_mg_n_l(chloride_mg_l)
    return Standing("harmful", "high") if harms else IN_RANGE
