"""How much oxygen small animals use."""

import math

from calculators.science.conversions import KELVIN_AT_0_C

OXYGEN_MG_PER_MMOL = 31.998  # O2, from the abridged atomic weight 15.999
MASS_OF_FIT_G = 50.0  # the temperature curve of the source is for a fish of this mass
MASS_EXPONENT = 0.80  # of the source's general equation over 69 species

# Zebrafish of 0.43 to 0.55 g at 24 °C used 364 mg/kg/h at rest and at most 1,223 when driven to
# exhaustion (Lucas and Priede 1992): active animals may need this many times the rest.
ACTIVE_PER_RESTING = 1223 / 364


def resting_oxygen_mg_h(mass_g: float, temperature_c: float) -> float:
    """Oxygen that one resting fish uses, mg/h.

    Clarke and Johnston (1999), 69 species of bony fish over about 40 °C: for 50 g,
    ln R = 15.7 − 5.02 · 1000/T with R in mmol/h, moved to other masses with the exponent 0.80.
    Single species lie up to a factor of two beside it.
    """
    kelvin = temperature_c + KELVIN_AT_0_C
    at_50_g = math.exp(15.7 - 5020 / kelvin)
    share: float = (mass_g / MASS_OF_FIT_G) ** MASS_EXPONENT
    return at_50_g * share * OXYGEN_MG_PER_MMOL
