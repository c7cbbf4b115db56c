"""Dissolved carbon dioxide from carbonate hardness and pH, with temperature and salt content.

Constants of Plummer and Busenberg 1982, 0 to 90 °C; activities after Davies. Concentrations are in
mol/L, which in fresh water is mol/kg within half a per cent.
"""

import math
from functools import lru_cache
from typing import NamedTuple

from calculators.science.conversions import KELVIN_AT_0_C
from calculators.science.water import chemistry

# Common practice, no source: above it fish show distress, sooner where oxygen is low; and gas alone
# seldom sets the pH so.
SUFFOCATING_CO2_MG_L = 30
CARBON_DIOXIDE_MG_PER_MOL = 1000 * chemistry.molar_mass(C=1, O=2)
# Davies: A at 25 °C; between 0 and 40 °C it runs from 0.49 to 0.52, which changes CO2 by 0.3 % at most
DAVIES_A = 0.509
DAVIES_B = 0.3
DAVIES_UP_TO_MOL_L = 0.5  # beyond it the equation turns, and says nonsense
WATER_PK = (4471.0, 6.0875, 0.01706)  # Harned and Owen, 0 to 60 °C: A/T - B + C T; from memory
# Calcium holds some bicarbonate and carbonate as pairs: log K of Ca + CO3 + H and of Ca + CO3, in the
# form of ``five_terms`` (same source, as the PHREEQC data base carries them). All hardness is taken as
# calcium; magnesium's pairs are close to it.
BICARBONATE_PAIR = (1317.0071, 0.34546894, -39916.84, -517.70761, 563713.9)
CARBONATE_PAIR = (-1228.732, -0.299440, 35512.75, 485.818, 0.0)
AIR_CO2_ATM = 420e-6  # about the mean of outdoor air in 2023; a room holds more


def five_terms(temperature_c: float, a: float, b: float, c: float, d: float, e: float) -> float:
    """The form that the source uses for each log K: a + b T + c/T + d log10 T + e/T², T in kelvin."""
    kelvin = temperature_c + KELVIN_AT_0_C
    return a + b * kelvin + c / kelvin + d * math.log10(kelvin) + e / kelvin**2


def pk1(temperature_c: float) -> float:
    """Minus the logarithm, base 10, of the constant of dissolved CO2 to bicarbonate, at infinite dilution."""
    return five_terms(temperature_c, 356.3094, 0.06091964, -21834.37, -126.8339, 1684915)


def pk2(temperature_c: float) -> float:
    """Minus the logarithm, base 10, of the constant of bicarbonate to carbonate, at infinite dilution."""
    return five_terms(temperature_c, 107.8871, 0.03252849, -5151.79, -38.92561, 563713.9)


def pk_gas(temperature_c: float) -> float:
    """pK of the solubility of CO2 gas, mol/L/atm (Henry)."""
    return five_terms(temperature_c, -108.3865, -0.01985076, 6919.53, 40.45154, -669365)


def pk_water(temperature_c: float) -> float:
    """Minus the logarithm, base 10, of the ion product of water."""
    kelvin = temperature_c + KELVIN_AT_0_C
    a, b, c = WATER_PK
    return a / kelvin - b + c * kelvin


def ionic_strength(gh_meq_l: float, kh_meq_l: float) -> float:
    """Ionic strength in mol/L of water whose ions are those that the two hardness tests see.

    Hardness is calcium and magnesium; bicarbonate is the alkalinity; what one has more than the
    other is balanced by ions of one charge, sodium or chloride.
    """
    singles = max(gh_meq_l, kh_meq_l) + max(kh_meq_l - gh_meq_l, 0)
    return (4 * gh_meq_l / 2 + singles) / 2 / 1000


def activity(charge: int, ionic_strength_mol_l: float) -> float:
    """Activity coefficient of an ion (Davies equation), good up to about 0.5 mol/L; more counts as that.

    It is a factor; ``charge`` is a number of elementary charges.
    """
    strength = min(ionic_strength_mol_l, DAVIES_UP_TO_MOL_L)
    root = math.sqrt(strength)
    davies = root / (1 + root) - DAVIES_B * strength
    return float(10 ** (-DAVIES_A * charge**2 * davies))


class Medium(NamedTuple):
    """The constants of one water: its activity coefficients by charge, and its equilibria."""

    single: float
    double: float
    pk1: float
    pk2: float
    pk_water: float
    bicarbonate_pair: float
    carbonate_pair: float


def medium(temperature_c: float, ionic_strength_mol_l: float) -> Medium:
    """The constants at a temperature and an ionic strength in mol/L."""
    return Medium(
        activity(1, ionic_strength_mol_l), activity(2, ionic_strength_mol_l), *equilibria(temperature_c)
    )  # fmt: skip


@lru_cache(maxsize=32)  # every share of one change is asked for at the same few temperatures
def equilibria(temperature_c: float) -> tuple[float, float, float, float, float]:
    """What of a ``Medium`` hangs on temperature alone, in its order: two pK, water's, two pairs."""
    second = pk2(temperature_c)
    return (
        pk1(temperature_c),
        second,
        pk_water(temperature_c),
        10 ** (five_terms(temperature_c, *BICARBONATE_PAIR) - second),
        10 ** five_terms(temperature_c, *CARBONATE_PAIR),
    )


class CarbonateShares(NamedTuple):
    """What goes with each active bicarbonate, mol for mol: alkalinity, carbon, dissolved gas."""

    alkalinity: float
    carbon: float
    co2: float


def carbonate_shares(
    constants: Medium, calcium_mol_l: float, ph: float, active_bicarbonate: float = 0.0
) -> CarbonateShares:
    """Bicarbonate, carbonate and carbon dioxide at a pH, with the pairs that calcium holds.

    ``active_bicarbonate`` (mol/L), where it is known, takes its pairs out of the free calcium.
    """
    single, double = constants.single, constants.double
    carbonate = 10 ** (ph - constants.pk2)
    paired = constants.bicarbonate_pair / single + constants.carbonate_pair * carbonate
    calcium = calcium_mol_l * double / (1 + double * active_bicarbonate * paired)
    unpaired = (1 + constants.bicarbonate_pair * calcium) / single
    two = carbonate * (1 / double + constants.carbonate_pair * calcium)
    gas = 10 ** (constants.pk1 - ph)
    return CarbonateShares(unpaired + 2 * two, unpaired + two + gas, gas)


def hydroxide_less_hydrogen(constants: Medium, ph: float) -> float:
    """Hydroxide less hydrogen ion, mol/L: what the water itself adds to alkalinity."""
    return float((10 ** (ph - constants.pk_water) - 10**-ph) / constants.single)


def bicarbonate_mol_l(
    gh_meq_l: float, kh_meq_l: float, ph: float, temperature_c: float
) -> float | None:
    """The active bicarbonate in an alkalinity, mol/L; None if hydroxide is more than all of it.

    Alkalinity is bicarbonate, twice carbonate, both with their pairs, and hydroxide less hydrogen ion.
    """
    strength = ionic_strength(gh_meq_l, kh_meq_l)
    constants = medium(temperature_c, strength)
    pairs_alkalinity = carbonate_shares(constants, gh_meq_l / 2 / 1000, ph).alkalinity
    left = kh_meq_l / 1000 - hydroxide_less_hydrogen(constants, ph)
    return left / pairs_alkalinity if left > 0 else None


def co2_mg_l(gh_meq_l: float, kh_meq_l: float, ph: float, temperature_c: float) -> float | None:
    """Dissolved CO2 in mg/L where carbonate is the only buffer; None if that cannot be."""
    active = bicarbonate_mol_l(gh_meq_l, kh_meq_l, ph, temperature_c)
    if active is None:
        return None
    return active * 10 ** (pk1(temperature_c) - ph) * CARBON_DIOXIDE_MG_PER_MOL


def ideal_co2_mg_l(kh_meq_l: float, ph: float, temperature_c: float) -> float:
    """Carbon dioxide, mg/L, by the simple formula CO2 = KH 10^(pK1-pH), KH in meq/L.

    All alkalinity is taken as bicarbonate, and no salt is taken into account.
    """
    return kh_meq_l / 1000 * 10 ** (pk1(temperature_c) - ph) * CARBON_DIOXIDE_MG_PER_MOL


def air_co2_mg_l(temperature_c: float) -> float:
    """Dissolved CO2 of water that stands in balance with outdoor air at sea level, mg/L."""
    return AIR_CO2_ATM * 10 ** -pk_gas(temperature_c) * CARBON_DIOXIDE_MG_PER_MOL


def pure_gas_co2_mg_l(temperature_c: float) -> float:
    """Dissolved CO2 under one atmosphere of the pure gas: more than a tank can hold, mg/L."""
    return air_co2_mg_l(temperature_c) / AIR_CO2_ATM
