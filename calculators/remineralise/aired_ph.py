"""The pH of a water of known hardness once its carbon dioxide has come to rest with the air."""

from calculators.science.water.carbonate import (
    CARBON_DIOXIDE_MG_PER_MOL,
    air_co2_mg_l,
    carbonate_shares,
    hydroxide_less_hydrogen,
    ionic_strength,
    medium,
)
from calculators.science.water.chemistry import MEQ_PER_DH
from calculators.science.water.rising_root import rising_root
from calculators.science.water.water_mix import AIR_TIMES


def aired_ph(gh_dh: float, kh_dh: float, temperature_c: float) -> float:
    """The pH at twice the carbon dioxide of outdoor air; all hardness is taken as calcium.

    Equation: alkalinity = bicarbonate + 2 · carbonate + hydroxide − hydrogen ion, with pairs of calcium
    Hardnesses in °dH, temperature in °C, 0 to 40.
    """
    gh_meq, kh_meq = gh_dh * MEQ_PER_DH, kh_dh * MEQ_PER_DH
    constants = medium(temperature_c, ionic_strength(gh_meq, kh_meq))
    gas = AIR_TIMES * air_co2_mg_l(temperature_c) / CARBON_DIOXIDE_MG_PER_MOL

    def excess(ph: float) -> float:
        bicarbonate = gas * 10 ** (ph - constants.pk1)
        shares = carbonate_shares(constants, gh_meq / 2000, ph, bicarbonate)
        rest = hydroxide_less_hydrogen(constants, ph)
        return bicarbonate * shares.alkalinity + rest - kh_meq / 1000

    return rising_root(excess)
