"""What stands in a bed that is full."""

import math

from calculators.science.nitrogen.plant_constants import LIGHT_THROUGH_COVER, SHADE_M2_PER_G

# A bed is full where it lets as little light to the soil as a closed floating layer: 115 g dry a m².
FULL_BED_G_M2 = math.log(1 / LIGHT_THROUGH_COVER) / SHADE_M2_PER_G
