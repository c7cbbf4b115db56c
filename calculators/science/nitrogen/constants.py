"""The numbers of the nitrogen model that belong to feed, filter, soil and water.

Each has its unit, its meaning, how sure it is and its origin beside it; the page of the model is
made from these annotations. The plants' numbers are in ``plant_constants.py``.
"""

from typing import Annotated

from calculators.science.animals.feeding import AMMONIA_N_PER_PROTEIN
from calculators.science.nitrogen.about import About
from calculators.science.water import chemistry

NITRATE_PER_N: Annotated[
    float, About("g/g", "nitrate, NO₃, that holds a gram of nitrogen", "well-documented",
                 "atomic weights", "ciaaw-2021")
] = chemistry.NITRATE_PER_N  # fmt: skip

# Feed
NITROGEN_OF_PROTEIN: Annotated[
    float, About("g/g", "nitrogen in protein", "well-documented", "the customary factor 6.25")
] = chemistry.NITROGEN_SHARE_OF_PROTEIN  # fmt: skip
EXCRETED_PER_PROTEIN: Annotated[
    float, About("g N/g", "ammonia nitrogen excreted for each gram of protein fed", "reported",
                 "fish farms; second-hand", "timmons-ebeling")
] = AMMONIA_N_PER_PROTEIN  # fmt: skip
AT_MOST_PER_PROTEIN: Annotated[
    float, About("g N/g", "the same where all solids stay and rot", "reported",
                 "shrimp farms; second-hand", "timmons-ebeling")
] = 0.144  # fmt: skip
EXCRETED_SHARE: Annotated[
    float, About("", "of the eaten nitrogen that is excreted", "reported",
                 "excreted over held by protein", "timmons-ebeling")
] = EXCRETED_PER_PROTEIN / NITROGEN_OF_PROTEIN  # fmt: skip
RETAINED_PERCENT: Annotated[
    float, About("%", "of the eaten nitrogen that stays in the animals, unless entered", "reported",
                 "growing fish 12 to 44; 30 is the middle", "summerfelt-penne-2007")
] = 30.0  # fmt: skip
LARGEST_RETAINED_PERCENT: Annotated[
    float, About("%", "the same, at most: then nothing is left for droppings", "reported",
                 "what is not excreted", "timmons-ebeling")
] = 100 * (1 - EXCRETED_SHARE)  # fmt: skip
LABILE_SHARE: Annotated[
    float, About("", "of droppings that rots within months", "uncertain", "judgement")
] = 0.5  # fmt: skip
LITTER_RATE_20: Annotated[
    float, About("a day", "decay of dead leaves at 20 °C", "reported",
                 "leaves of eelgrass-like Vallisneria 0.030, of a pondweed 0.010; 0.02 lies between",
                 "xie-2004-decay")
] = 0.02  # fmt: skip
LEACHED_SHARE: Annotated[
    float, About("", "of the nitrogen of dead leaves that rots as fast as droppings", "uncertain",
                 "judgement: soluble nitrogen leaves within days; 0.2 to 0.5, from memory")
] = 0.3  # fmt: skip
REFRACTORY_SHARE: Annotated[
    float, About("", "of the nitrogen of dead leaves that stays in the mulm for years", "uncertain",
                 "judgement; the band runs from none to four times as much")
] = 0.05  # fmt: skip
MINERALISATION_20: Annotated[
    float, About("a day", "rot at 20 °C", "uncertain", "judgement; published 0.02 to 0.15, from memory")
] = 0.05  # fmt: skip
MINERALISATION_THETA: Annotated[
    float, About("a degree", "factor by which warmth speeds rot", "uncertain", "from memory")
] = 1.07  # fmt: skip

# Nitrifiers
AMMONIA_HALF_MG_L: Annotated[
    float, About("mg N/L", "ammonia at which the first step runs at half its full rate", "uncertain",
                 "judgement, between the 0.009 of a complete oxidiser (0.65 µmol/L, from memory) and "
                 "the 0.78 of planted wetland tanks; the band spans both", "kits-2017")
] = 0.1  # fmt: skip
AMMONIA_GROWTH_25: Annotated[
    float, About("a day", "growth of the first nitrifiers at 25 °C", "uncertain",
                 "from memory: 0.3 to 1.0")
] = 0.6  # fmt: skip
AMMONIA_DECAY_25: Annotated[
    float, About("a day", "their decay at 25 °C", "uncertain",
                 "from memory: 0.05 to 0.15; sludge at 20 °C 0.03 without air, about 0.2 with it",
                 "siegrist-1999")
] = 0.05  # fmt: skip
AMMONIA_LEFT_MG_L: Annotated[
    float, About("mg N/L", "ammonia that a mature film leaves", "uncertain",
                 "from the three above; a reactor left 0.07", "nitrification-biofilm")
] = AMMONIA_HALF_MG_L * AMMONIA_DECAY_25 / (AMMONIA_GROWTH_25 - AMMONIA_DECAY_25)  # fmt: skip
NITRITE_HALF_MG_L: Annotated[
    float, About("mg N/L", "nitrite at which the second step runs at half its full rate", "reported",
                 "the middle of three cultures of Nitrospira: 4 µmol/L of a pond, 6 and 10 of sludge, "
                 "0.056, 0.084 and 0.14 mg N/L", "ushiki-2017")
] = 0.084  # fmt: skip
LEAST_AMMONIA_HALF_MG_L: Annotated[
    float, About("mg N/L", "half-saturation for ammonia that scarce food selects, at least", "reported",
                 "a complete oxidiser, made for scarce food, 0.65 µmol/L; the number is from memory",
                 "kits-2017")
] = 0.009  # fmt: skip
LEAST_NITRITE_HALF_MG_L: Annotated[
    float, About("mg N/L", "the same for nitrite", "reported",
                 "Nitrospira of a pond, 4 µmol/L; those of sludge have 6 and 10", "ushiki-2017")
] = 0.056  # fmt: skip
FOOD_TIMES: Annotated[
    float, About("", "growth times of a full stand's food that a half-saturation can reach", "uncertain",
                 "judgement: at half their full pace they take twice as long to grow as at full pace")
] = 2.0  # fmt: skip
NITRITE_GROWTH_25: Annotated[
    float, About("a day", "growth of the second nitrifiers at 25 °C", "uncertain",
                 "judgement: a Nitrospira of a pond 0.62 at best; at 0.5 three published starts of warm "
                 "filters took 11 to 27 days longer than the forecast, at 0.35 they took 3 to 20",
                 "kim-2025-nitrospira")
] = 0.35  # fmt: skip
NITRITE_DECAY_25: Annotated[
    float, About("a day", "their decay at 25 °C", "uncertain", "from memory: 0.03 to 0.15")
] = 0.04  # fmt: skip
NITRITE_LEFT_MG_L: Annotated[
    float, About("mg N/L", "nitrite that a mature film leaves", "uncertain",
                 "from its half-saturation, growth and decay")
] = NITRITE_HALF_MG_L * NITRITE_DECAY_25 / (NITRITE_GROWTH_25 - NITRITE_DECAY_25)  # fmt: skip
NITRIFIER_THETA: Annotated[
    float, About("a degree", "factor by which warmth speeds nitrifiers", "uncertain",
                 "from memory: 1.08 to 1.10 in suspension, less in films", "downing-1964")
] = 1.08  # fmt: skip
PH_FREE_FROM: Annotated[
    float, About("pH", "what bacteria new to a tank are used to", "uncertain", "from memory", "downing-1964")
] = 7.2  # fmt: skip
PH_SLOPE: Annotated[
    float, About("a unit of pH", "share by which they slow below what they are used to", "uncertain",
                 "from memory", "downing-1964")
] = 0.833  # fmt: skip
PH_LEAST: Annotated[
    float, About("", "share that is left after a deep fall", "uncertain", "judgement")
] = 0.15  # fmt: skip
ACCLIMATION_DAYS: Annotated[
    float, About("days", "in which films get used to all but a third of a fall of pH", "uncertain",
                 "a biofilm changed its species within 60 days: three times 20", "green-2007")
] = 20.0  # fmt: skip
KH_GROWTH_STOPS_DH: Annotated[
    float, About("°dH", "carbonate hardness below which nitrifiers stop growing", "uncertain",
                 "common practice, no source")
] = 1.0  # fmt: skip
KH_GROWTH_FULL_DH: Annotated[
    float, About("°dH", "carbonate hardness from which they grow freely", "uncertain", "judgement")
] = 2.0  # fmt: skip
KH_RATE_HALF_DH: Annotated[
    float, About("°dH", "carbonate hardness at which they work at half rate", "uncertain", "judgement")
] = 0.1  # fmt: skip
SEED_MG_L_DAY: Annotated[
    float, About("mg N/L a day", "what the bacteria that come into any new tank could oxidise, whatever "
                 "is fed", "uncertain", "judgement: a common load is calm in five to six weeks, keepers "
                 "say four to six; a new sand filter took 70 days at 12 °C, the forecast says 89",
                 "biofilter-start-2024")
] = 0.001  # fmt: skip
BACKGROUND_MG_L_DAY: Annotated[
    float, About("mg N/L a day", "load that keeps some nitrifiers alive with no feed", "uncertain",
                 "judgement")
] = 0.02  # fmt: skip
TURNOVER_PER_DAY: Annotated[
    float, About("a day", "times that the water passes leaves and filter", "uncertain",
                 "judgement: weak circulation, once an hour")
] = 24.0  # fmt: skip

# Soil
SLOW_SOIL_RELEASE_MG_M2_DAY: Annotated[
    float, About("mg N/m² a day", "ammonium that the organic matter of new soil sets free besides, for long",
                 "uncertain", "a guess")
] = 8.0  # fmt: skip
SLOW_SOIL_HALVES_DAYS: Annotated[
    float, About("days", "in which that halves", "uncertain", "a guess: months to years")
] = 240.0  # fmt: skip
DENITRIFICATION_HALF_MG_L: Annotated[
    float, About("mg N/L", "nitrate at which the soil's gas runs at half its most", "uncertain",
                 "judgement; nearly linear below, as measured", "revsbech-2005")
] = 10.0  # fmt: skip
DENITRIFICATION_AT_MG_L: Annotated[
    float, About("mg N/L", "nitrate at which the rate that you enter holds: 10 mg/L as NO₃",
                 "uncertain", "judgement")
] = 10.0 / NITRATE_PER_N  # fmt: skip
DENITRIFICATION_MG_M2_DAY: Annotated[
    float, About("mg N/m² a day", "that rate, unless entered", "uncertain",
                 "planted basins 0.9 to 7; streams 25 and more", "veraart-2011")
] = 5.0  # fmt: skip
SOIL_RELEASE_MG_M2_DAY: Annotated[
    float, About("mg N/m² a day", "ammonium from new soil, unless entered", "uncertain",
                 "flooded organic soil in a laboratory; others 7 to 800; a cap lowers it",
                 "reddy-1983-flux")
] = 45.0  # fmt: skip
SOIL_RELEASE_HALVES_DAYS: Annotated[
    float, About("days", "in which that release halves", "uncertain",
                 "judgement; common practice says six to ten weeks till it is quiet")
] = 30.0  # fmt: skip
SETTLED_SOIL_DAYS: Annotated[
    float, About("days", "age of the soil below a mature filter, unless entered", "uncertain", "judgement")
] = 240.0  # fmt: skip
SURFACE_CM2_PER_L23: Annotated[
    float, About("cm²", "surface of a common tank of 1 L; it grows with volume to the power 2/3", "uncertain",
                 "our four demo tanks have 115 to 136")
] = 120.0  # fmt: skip
