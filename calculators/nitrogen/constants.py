"""The numbers of the nitrogen model: each with its unit and where it comes from.

MEM says that a value is from memory and was not read for this work. "Judgement" says that nobody
we found measured it in a tank; the ensemble moves those that matter.
"""

from calculators.core import chemistry

MG_PER_G = 1_000.0
CM2_PER_M2 = 10_000.0
DAYS_PER_WEEK = 7.0
PERCENT_TO_MG_PER_G = 10.0  # 1 % of dry mass is 10 mg a gram
NITRATE_PER_N = chemistry.NITRATE_PER_N

# Feed
NITROGEN_OF_PROTEIN = chemistry.NITROGEN_SHARE_OF_PROTEIN
EXCRETED_PER_PROTEIN = (
    0.092  # g total ammonia nitrogen per g protein fed; Timmons and Ebeling (MEM)
)
AT_MOST_PER_PROTEIN = (
    0.144  # the same where all solids stay and rot, shrimp; Timmons and Ebeling (MEM)
)
EXCRETED_SHARE = EXCRETED_PER_PROTEIN / NITROGEN_OF_PROTEIN  # 57.5 % of the feed's nitrogen
LARGEST_RETAINED_PERCENT = 100 * (1 - EXCRETED_SHARE)  # then nothing is left for droppings
LABILE_SHARE = 0.5  # of droppings and dead plants that rots within months; judgement, see soil.py
MINERALISATION_20 = 0.05  # a day at 20 °C, first order; judgement, published 0.02 to 0.15 (MEM)
MINERALISATION_THETA = 1.07  # for each degree (MEM)

# Nitrifiers. Half of the full rate at 0.78 mg N/L in planted wetland tanks; a biofilm reactor
# settled at no less than 0.07 mg N/L: together they give the ratio of decay to growth.
AMMONIA_HALF_MG_L = 0.78
AMMONIA_LEFT_MG_L = 0.07
AMMONIA_GROWTH_25 = 0.6  # a day at 25 °C (MEM: 0.3 to 1.0)
AMMONIA_DECAY_25 = AMMONIA_GROWTH_25 * AMMONIA_LEFT_MG_L / (AMMONIA_HALF_MG_L + AMMONIA_LEFT_MG_L)
NITRITE_HALF_MG_L = 0.5  # (MEM: 0.3 to 1.5)
NITRITE_GROWTH_25 = 0.5  # a day at 25 °C, slower than the first step, so that nitrite peaks (MEM)
NITRITE_DECAY_25 = 0.04  # a day at 25 °C (MEM: 0.03 to 0.15)
NITRIFIER_THETA = 1.08  # for each degree, 1.08 to 1.10 in suspension, less in films (MEM)
PH_FREE_FROM = 7.2  # below it growth falls by 0.833 for each unit of pH; Downing and others (MEM)
PH_SLOPE = 0.833
PH_LEAST = 0.15  # films used to acid water go on slowly; judgement
NEW_TANK_SHARE = 0.001  # of a mature population that comes in with plants and hands; judgement
BACKGROUND_MG_L_DAY = 0.02  # load that keeps some nitrifiers alive in an unfed tank; judgement

# How often a day the whole water passes leaves and filter: no sink empties the tank faster.
TURNOVER_PER_DAY = 24.0  # judgement; weak circulation, once an hour

# Soil
DENITRIFICATION_HALF_MG_L = 10.0  # mg N/L: nearly linear below, as measured; the value judgement
DENITRIFICATION_AT_MG_L = 10.0 / NITRATE_PER_N  # the rate entered holds at 10 mg/L nitrate
SOIL_RELEASE_MG_M2_DAY = 45.0  # flooded organic soil, laboratory; a cap lowers it
SOIL_RELEASE_HALVES_DAYS = 30.0  # judgement; common practice says six to ten weeks till it is quiet
SETTLED_SOIL_DAYS = 240.0  # taken for a tank with a mature filter when its age is not given

# Plants. Nitrogen in mg per g dry mass.
CRITICAL_N = 13.0  # 1.3 %, Gerloff and Krombholz 1966 (MEM): below, growth is held back
LEAST_N = 6.2  # 0.62 %, least of 1,700 field samples of a floating fern: growth is nil
FULL_N_ROOTED = 40.0  # 4 %, upper end of well-fed submerged plants
FULL_N_FLOATING = 50.0  # 5 %, upper end of small floating plants
HEALTHY_N_ROOTED = 25.0  # 2.5 %, middle of the published tissue values; the weekly budget uses it
HEALTHY_N_FLOATING = 30.0  # 3.0 %
DRY_SHARE_ROOTED = 0.08  # of wet mass
DRY_SHARE_FLOATING = 0.06
# Largest uptake over growth times full store. 1.2 lets a fast plant on nitrate alone settle at
# 2.5 % (3.0 % afloat), the published middle; ammonium is taken 6 to 14 times as fast: 6 is used.
NITRATE_UPTAKE = 1.2
AMMONIUM_UPTAKE = 6 * NITRATE_UPTAKE
AMMONIUM_PLANT_HALF_MG_L = 0.1  # mg N/L (MEM: 0.05 to 0.5)
NITRATE_PLANT_HALF_MG_L = 0.2  # mg N/L (MEM: 0.05 to 0.5)
AMMONIUM_BLOCKS_MG_L = 0.3  # mg N/L that halves the uptake of nitrate; judgement
OTHER_PLANTS_HALF_MG_L = 0.05  # mg N/L; a measured uptake holds until the water is nearly empty
STARVING_LOSS = 0.5  # leaves lost at an empty store, as a share of healthy growth; judgement
LIGHT_HALF = 0.5  # of a tank's full light: 25 umol of 50; half-saturation measured 16 to 35
SHADE_M2_PER_G = 0.02  # light taken by a g dry mass on a m2; a lake model uses 0.01 (MEM to 0.05)
FLOATING_WET_G_M2 = 1_000.0  # a single closed layer; the floaters calculator's default
FLOATING_LAYER_G_M2 = FLOATING_WET_G_M2 * DRY_SHARE_FLOATING
FLOATING_LIMIT_G_M2 = 180.0  # dry; growth of duckweed ends there, Driever and others 2005
LIGHT_THROUGH_COVER = 0.1  # of a closed layer; 0.02 to 0.4, judgement
TRIM_AT_MOST = 0.9  # a trim leaves stumps
NEW_GROWTH_SHARE = 1 / 3  # of the stand, before we call the new growth healthy; judgement

# Tank
SURFACE_CM2_PER_L23 = (
    120.0  # surface of common tanks over volume^(2/3); our four demo tanks 115-136
)
