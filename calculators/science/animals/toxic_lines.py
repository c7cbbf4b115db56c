"""Lines for ammonia and nitrite, whose harm depends on other readings beside them.

What is not known is taken at the worse value that such a tank may well have.
"""

from typing import Literal

from calculators.science.animals.reading_lines import IN_RANGE, Standing, edge_of
from calculators.science.water.ammonia import (
    ACT_NH3_MG_N_L,
    WATCH_NH3_MG_N_L,
    WATCH_SHARE_OF_CHRONIC,
    Rating,
    acute_limit_mg_n_l,
    chronic_limit_mg_n_l,
    free_kills,
    rate,
    unionised_share,
)
from calculators.science.water.unread import HIGHEST_PH, WARM_C

# The most nitrite for a short time, mg N/L, by chloride up to so many mg/L: bc-nitrite.
MOST_NITRITE = ((2.0, 0.06), (4.0, 0.12), (6.0, 0.18), (8.0, 0.24), (10.0, 0.30))
# The bands of a toxic reading: harmful is split, since some of it waits for a daily test.
Grade = Literal["in-range", "watch", "harmful", "deadly"]


def ammonia_grade(total_mg_n_l: float, ph: float, temperature_c: float) -> Grade:
    """The band of total ammonia nitrogen: by its toxic share and the US criteria, as free-ammonia has it."""
    toxic = total_mg_n_l * unionised_share(ph, temperature_c)
    if free_kills(toxic) or total_mg_n_l > acute_limit_mg_n_l(ph, temperature_c):
        return "deadly"
    grades: dict[Rating, Grade] = {"low": "in-range", "watch": "watch", "act": "harmful"}
    return grades[rate(total_mg_n_l / chronic_limit_mg_n_l(ph, temperature_c), toxic)]


def least_harmful_ammonia_mg_n_l(
    ph: float | None = None, temperature_c: float | None = None
) -> float:
    """From how much total ammonia nitrogen on ``ammonia_standing`` calls it harmful."""
    acid = HIGHEST_PH if ph is None else ph
    warmth = WARM_C if temperature_c is None else temperature_c
    by_toxic_share = WATCH_NH3_MG_N_L / unionised_share(acid, warmth)
    return min(WATCH_SHARE_OF_CHRONIC * chronic_limit_mg_n_l(acid, warmth), by_toxic_share)


def least_urgent_ammonia_mg_n_l(ph: float, temperature_c: float) -> float:
    """From how much total ammonia nitrogen on ``ammonia_grade`` asks to act, or its toxic part to watch.

    In acid water little of it is toxic, and the criterion for the total decides. The ``ph`` has no unit,
    ``temperature_c`` is in °C, and what comes back is in mg N/L.
    """
    by_toxic_share = WATCH_NH3_MG_N_L / unionised_share(ph, temperature_c)
    return min(chronic_limit_mg_n_l(ph, temperature_c), by_toxic_share)


def least_deadly_ammonia_mg_n_l(ph: float, temperature_c: float) -> float:
    """From how much total ammonia nitrogen on ``ammonia_grade`` calls it deadly.

    The ``ph`` has no unit, ``temperature_c`` is in °C, and what comes back is in mg N/L.
    """
    by_toxic_share = ACT_NH3_MG_N_L / unionised_share(ph, temperature_c)
    return min(acute_limit_mg_n_l(ph, temperature_c), by_toxic_share)


def ammonia_standing(
    total_mg_n_l: float, ph: float | None = None, temperature_c: float | None = None
) -> Standing:
    """How total ammonia nitrogen stands; what is not known is taken at the worse value."""
    acid = HIGHEST_PH if ph is None else ph
    warmth = WARM_C if temperature_c is None else temperature_c
    return standing_of(ammonia_grade(total_mg_n_l, acid, warmth))


def ammonia_acts(
    total_mg_n_l: float, ph: float | None = None, temperature_c: float | None = None
) -> bool:
    """Whether total ammonia nitrogen asks for a step today, as free-ammonia rates it.

    What is not known is taken at the worse value.
    """
    acid = HIGHEST_PH if ph is None else ph
    warmth = WARM_C if temperature_c is None else temperature_c
    return ammonia_grade(total_mg_n_l, acid, warmth) in ("harmful", "deadly")


def ammonia_kills(total_mg_n_l: float, ph: float, temperature_c: float) -> bool:
    """Whether so much total ammonia nitrogen is deadly, by its free part or by the acute criterion."""
    return ammonia_grade(total_mg_n_l, ph, temperature_c) == "deadly"


def standing_of(grade: Grade) -> Standing:
    """The band of the table of lines: what asks for a daily test harms already."""
    if grade == "in-range":
        return IN_RANGE
    return Standing("deadly" if grade == "deadly" else "harmful", "high")


def most_nitrite_mg_n_l(chloride_mg_l: float | None = None) -> float:
    """From where nitrite harms at this much chloride; with chloride unknown, the least of all."""
    chloride = 0.0 if chloride_mg_l is None else chloride_mg_l
    highest = edge_of("nitrite_mg_n_l", "deadly_high")
    return next((most for up_to, most in MOST_NITRITE if chloride < up_to), highest)


def nitrite_grade(nitrite_mg_n_l: float, chloride_mg_l: float | None = None) -> Grade:
    """The band of nitrite. The line at which to act is the published maximum for a short time, by chloride.

    From the highest of those maxima on it counts as deadly at any chloride: some fish are not helped by it.
    """
    if nitrite_mg_n_l >= edge_of("nitrite_mg_n_l", "deadly_high"):
        return "deadly"
    return "harmful" if nitrite_mg_n_l >= most_nitrite_mg_n_l(chloride_mg_l) else "in-range"


def nitrite_standing(nitrite_mg_n_l: float, chloride_mg_l: float | None = None) -> Standing:
    """How nitrite stands beside this much chloride, the least where it is not known."""
    return standing_of(nitrite_grade(nitrite_mg_n_l, chloride_mg_l))
