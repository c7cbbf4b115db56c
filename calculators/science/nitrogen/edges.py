"""How far the rates that nobody knows well may lie to either side, and both edges of them."""

from typing import Annotated

from calculators.science.nitrogen.about import About
from calculators.science.nitrogen.constants import (
    AMMONIA_GROWTH_25,
    LARGEST_RETAINED_PERCENT,
    LEAST_AMMONIA_HALF_MG_L,
)
from calculators.science.nitrogen.forecast_tank import Rates

FASTER: Annotated[
    float, About("times", "growth of all plants, upper edge", "uncertain", "judgement")
] = 1.5  # fmt: skip
SLOWER: Annotated[
    float, About("times", "growth of all plants, lower edge", "uncertain", "judgement")
] = 0.6  # fmt: skip
RETAINED_STEP: Annotated[
    float, About("%", "of the feed's nitrogen kept in the animals, more and less: 20, 30, 40", "reported",
                 "growing fish 12 to 44", "summerfelt-penne-2007")
] = 10.0  # fmt: skip
MORE_GAS: Annotated[
    float, About("times", "the soil's gas, upper edge: 30 where 5 mg N/m² a day is entered", "uncertain",
                 "lowland streams 25 on average; nitrate-rich mud far more")
] = 6.0  # fmt: skip
LESS_GAS: Annotated[
    float, About("times", "the soil's gas, lower edge: 1 where 5 is entered", "reported",
                 "least of planted basins, 0.94", "veraart-2011")
] = 0.2  # fmt: skip
ROT_STEP: Annotated[
    float, About("times", "rot, faster and slower", "uncertain", "judgement")
] = 1.5  # fmt: skip
SOIL_STEP: Annotated[
    float, About("times", "the ammonium from new soil, more and less", "uncertain",
                 "measured from 7 to 800 around 45 mg N/m² a day", "reddy-1983-flux")
] = 3.0  # fmt: skip

HIGH_HALF_MG_L: Annotated[
    float, About("mg N/L", "half-saturation for ammonia, upper edge; the lower is that of scarce food",
                 "reported", "planted wetland tanks, 0.78 ± 0.13", "nitrification-wetland-2003")
] = 0.78  # fmt: skip
HIGH_DECAY_25: Annotated[
    float, About("a day", "decay of the first nitrifiers at 25 °C, upper edge", "uncertain",
                 "sludge lost about 0.2 of its nitrification a day with air, 0.03 without, at 20 °C; films "
                 "lose less: judgement. At this edge tanks read as much ammonia as was measured",
                 "siegrist-1999")
] = 0.15  # fmt: skip
HIGH_LEFT_MG_L: Annotated[
    float, About("mg N/L", "ammonia that a mature film leaves at the upper edge", "uncertain",
                 "from these two and growth; tanks with fish read 0.16 to 0.45 on the mean", "bagchi-2014")
] = HIGH_HALF_MG_L * HIGH_DECAY_25 / (AMMONIA_GROWTH_25 - HIGH_DECAY_25)  # fmt: skip
MOST_REFRACTORY: Annotated[
    float, About("", "of dead leaves' nitrogen that stays for years, upper edge; the lower is none",
                 "uncertain", "judgement")
] = 0.2  # fmt: skip


def edges(rates: Rates) -> tuple[Rates, Rates]:
    """The rates that together leave least and most nitrate."""
    least = Rates(
        growth=rates.growth * FASTER,
        retained_percent=min(LARGEST_RETAINED_PERCENT, rates.retained_percent + RETAINED_STEP),
        denitrification=rates.denitrification * MORE_GAS,
        mineralisation=rates.mineralisation / ROT_STEP,
        soil_release=rates.soil_release / SOIL_STEP,
        ammonia_half=min(rates.ammonia_half, LEAST_AMMONIA_HALF_MG_L),
        refractory=max(rates.refractory, MOST_REFRACTORY),
    )
    most = Rates(
        growth=rates.growth * SLOWER,
        retained_percent=max(0.0, rates.retained_percent - RETAINED_STEP),
        denitrification=rates.denitrification * LESS_GAS,
        mineralisation=rates.mineralisation * ROT_STEP,
        soil_release=rates.soil_release * SOIL_STEP,
        ammonia_half=max(rates.ammonia_half, HIGH_HALF_MG_L),
        ammonia_decay=max(rates.ammonia_decay, HIGH_DECAY_25),
        refractory=0.0,
    )
    return least, most
