"""What a capped soil gives and takes."""

import math

from calculators.science.conversions import CM2_PER_M2
from calculators.science.nitrogen.constants import (
    DENITRIFICATION_AT_MG_L,
    DENITRIFICATION_HALF_MG_L,
    SLOW_SOIL_HALVES_DAYS,
    SLOW_SOIL_RELEASE_MG_M2_DAY,
    SOIL_RELEASE_HALVES_DAYS,
)


def denitrification_at_most(area_cm2: float, rate_mg_m2_day: float) -> float:
    """The most that the soil turns into nitrogen gas, mg N a day, from the rate entered.

    Equation: D = D_max · N / (10 + N); D_max = rate · area · (1 + 10/2.26)
    N in mg N/L; the rate entered holds at 10 mg/L nitrate, 2.26 as nitrogen. Measured rates rise
    about linearly with the nitrate above the mud, and level off only far up. The 10 is a judgement.
    Rates span 1 to 30 mg N a m² and day and more, so the band runs both ends.
    """
    at_reference = rate_mg_m2_day * area_cm2 / CM2_PER_M2
    return at_reference * (1 + DENITRIFICATION_HALF_MG_L / DENITRIFICATION_AT_MG_L)


def release_per_day() -> float:
    """How fast the ammonium of new soil runs out, share a day.

    Equation: dZ/dt = −λ · Z, λ = ln 2 / 30
    Thirty days is a judgement; keepers see ammonia fade over six to ten weeks.
    """
    return math.log(2) / SOIL_RELEASE_HALVES_DAYS


def soil_ammonium_mg(area_cm2: float, release_mg_m2_day: float, age_days: float) -> float:
    """Ammonium nitrogen that the soil will still give to the water, mg N.

    Equation: Z0 = release · area / λ · 2^(−age/30)
    release is that of the day of flooding. Flooded organic soil gave 45 mg N a m² and day to the
    water in a laboratory; other wet soils gave 7 to 800. A cap of sand holds much of it back.
    """
    halvings = age_days / SOIL_RELEASE_HALVES_DAYS
    return release_mg_m2_day * area_cm2 / CM2_PER_M2 / release_per_day() * 2**-halvings


def slow_release_per_day() -> float:
    """How fast the soil's organic matter runs out, share a day.

    Equation: dR/dt = −σ · R, σ = ln 2 / 240
    A guess, and a judgement: months to years, by the soil.
    """
    return math.log(2) / SLOW_SOIL_HALVES_DAYS


def slow_soil_mg(area_cm2: float, age_days: float, times: float) -> float:
    """Nitrogen that the soil will give in the long run, mg N.

    Equation: R0 = 8 · area / σ · 2^(−age/240)
    area in m². A guess, a judgement of ours; the band runs a third and three times.
    """
    halvings = age_days / SLOW_SOIL_HALVES_DAYS
    at_first = times * SLOW_SOIL_RELEASE_MG_M2_DAY * area_cm2 / CM2_PER_M2
    return at_first / slow_release_per_day() * 2**-halvings


def to_roots(released: float, demand: float) -> float:
    """What rooted plants take of the soil's long release before it reaches the water, mg N a day.

    Equation: roots = release · demand / (demand + release)
    demand is the largest uptake of the rooted plants from plenty of nitrate. A judgement.
    What is released and the demand are in mg N a day.
    """
    return released * demand / (demand + released) if released > 0 else 0.0
