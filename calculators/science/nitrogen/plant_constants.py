"""The numbers of the nitrogen model that belong to plants; nitrogen in mg per g dry mass."""

from typing import Annotated

from calculators.science.conversions import PERCENT_TO_MG_PER_G
from calculators.science.nitrogen.about import About

CRITICAL_N_PERCENT = 1.3  # of dry mass; Gerloff and Krombholz 1966, from memory

# The store of nitrogen
CRITICAL_N: Annotated[
    float, About("mg N/g", f"critical store, {CRITICAL_N_PERCENT} %: below it leaves brown", "reported",
                 "value from memory", "gerloff-krombholz-1966")
] = CRITICAL_N_PERCENT * PERCENT_TO_MG_PER_G  # fmt: skip
LEAST_N: Annotated[
    float, About("mg N/g", "least store, 0.62 %: growth is nil", "reported",
                 "least of 1,700 samples of a floating fern", "room-thomas-1986")
] = 6.2  # fmt: skip
FULL_N_ROOTED: Annotated[
    float, About("mg N/g", "largest store of rooted plants, 4 %", "reported",
                 "upper end of well-fed plants", "fao-x6862e")
] = 40.0  # fmt: skip
FULL_N_FLOATING: Annotated[
    float, About("mg N/g", "largest store of floating plants, 5 %", "reported",
                 "upper end of small floaters, 3.2 to 5.3 %", "reddy-debusk-1985")
] = 50.0  # fmt: skip
HEALTHY_N_ROOTED: Annotated[
    float, About("mg N/g", "well-fed rooted plants, 2.5 %; the weekly budget uses it", "reported",
                 "middle of the published values", "fao-x6862e")
] = 25.0  # fmt: skip
HEALTHY_N_FLOATING: Annotated[
    float, About("mg N/g", "well-fed floating plants, 3.0 %; the same", "reported",
                 "low end of small floaters, for weak light", "reddy-debusk-1985")
] = 30.0  # fmt: skip
DRY_SHARE_ROOTED: Annotated[
    float, About("", "dry mass over wet mass, rooted", "uncertain",
                 "published 0.05 to 0.16; 0.08 is a judgement")
] = 0.08  # fmt: skip
DRY_SHARE_FLOATING: Annotated[
    float, About("", "dry mass over wet mass, afloat", "reported", "duckweed; others 0.05 to 0.10")
] = 0.06  # fmt: skip

# Uptake
NITRATE_UPTAKE: Annotated[
    float, About("", "largest uptake of nitrate over growth times full store", "uncertain",
                 "fitted: a fast plant on nitrate settles at 2.5 %, 3.0 % afloat", "fao-x6862e")
] = 1.2  # fmt: skip
AMMONIUM_UPTAKE: Annotated[
    float, About("", "the same for ammonium", "reported",
                 "6 to 14 times that of nitrate in a floating fern; 6", "jampeetong-brix-2009")
] = 6 * NITRATE_UPTAKE  # fmt: skip
AMMONIUM_PLANT_HALF_MG_L: Annotated[
    float, About("mg N/L", "ammonium at half of it", "uncertain", "from memory: 0.05 to 0.5")
] = 0.1  # fmt: skip
NITRATE_PLANT_HALF_MG_L: Annotated[
    float, About("mg N/L", "nitrate at half of it", "uncertain", "from memory: 0.05 to 0.5")
] = 0.2  # fmt: skip
AMMONIUM_BLOCKS_MG_L: Annotated[
    float, About("mg N/L", "ammonium that halves the uptake of nitrate", "uncertain", "judgement")
] = 0.3  # fmt: skip
OTHER_PLANTS_HALF_MG_L: Annotated[
    float, About("mg N/L", "nitrate at half of a measured uptake", "uncertain",
                 "judgement: it holds until the water is nearly empty")
] = 0.05  # fmt: skip

# Growth, shade and loss
STARVING_LOSS: Annotated[
    float, About("", "leaves lost at an empty store, over healthy growth", "uncertain", "judgement")
] = 0.5  # fmt: skip
SHADE_M2_PER_G: Annotated[
    float, About("m²/g", "light taken by dry mass", "uncertain",
                 "judgement for stems in a box; a lake model takes 0.01", "janse-2005")
] = 0.02  # fmt: skip
FLOATING_WET_G_M2: Annotated[
    float, About("g/m²", "wet mass of one closed layer of floaters whose record has none", "uncertain",
                 "judgement; flat duckweeds have 10 to 15 g dry a m², by their records",
                 "malacrino-2024-data")
] = 1_000.0  # fmt: skip
FLOATING_LAYER_G_M2: Annotated[
    float, About("g/m²", "dry mass of one closed layer", "uncertain", "wet mass · 0.06")
] = FLOATING_WET_G_M2 * DRY_SHARE_FLOATING  # fmt: skip
FLOATING_LIMIT_G_M2: Annotated[
    float, About("g/m²", "dry mass at which a floating mat stops growing", "reported",
                 "measured for a duckweed", "driever-2005")
] = 180.0  # fmt: skip
LIGHT_THROUGH_COVER: Annotated[
    float, About("", "light through a closed layer of floaters", "uncertain", "judgement: 0.02 to 0.4")
] = 0.1  # fmt: skip
TRIM_AT_MOST: Annotated[
    float, About("", "share that one trim can take", "uncertain", "judgement: stumps are left")
] = 0.9  # fmt: skip
GONE_DRY_G: Annotated[
    float, About("g", "dry mass of a kind below which it is gone and no store of it is spoken of",
                 "uncertain", "judgement: less than one frond of duckweed")
] = 1e-4  # fmt: skip
NEW_GROWTH_SHARE: Annotated[
    float, About("", "of the stand that must be new to call its growth healthy", "uncertain", "judgement")
] = 1 / 3  # fmt: skip
