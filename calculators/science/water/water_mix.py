"""What a mix of two waters holds, and its pH and free ammonia with and without its gas.

Alkalinity, carbon and total ammonia add up by volume; pH follows from them. Concentrations are in
mol/L. All hardness is taken as calcium bicarbonate and ammonium as its chloride.
"""

import math
from typing import NamedTuple

from calculators.science.water import chemistry
from calculators.science.water.ammonia import ammonium_pka
from calculators.science.water.carbonate import (
    CARBON_DIOXIDE_MG_PER_MOL,
    Medium,
    air_co2_mg_l,
    carbonate_shares,
    hydroxide_less_hydrogen,
    ionic_strength,
    medium,
)
from calculators.science.water.mixing import mixed
from calculators.science.water.rising_root import rising_root

MG_N_PER_MOL = 1000 * chemistry.N
# Animals, soil and plants by night keep a tank that is moved by air at about twice what outdoor air
# alone would give; common practice, no source. A tank in still air holds more.
AIR_TIMES = 2
# A kit that counts whole degrees shows 0 for anything up to half of one. The gas that goes with a pH
# is then not known; the middle of that span is taken for it.
UNSEEN_KH_DH = 0.25
LEAST_MOL = 1e-6  # mol/L: less than a kit or a model knows
PAIR_ROUNDS = (
    2  # until the pairs have taken their calcium: the second changes carbon by 0.1 % at most
)


class Water(NamedTuple):
    """A water as the keeper reads it; ``ammonia_mg_n_l`` is total ammonia nitrogen.

    General hardness moves no pH; where it is known, it bounds how much may be changed at a time.
    """

    ph: float
    kh_dh: float
    temperature_c: float
    ammonia_mg_n_l: float = 0.0
    gh_dh: float | None = None


class Dissolved(NamedTuple):
    """What a water holds, mol/L, and its temperature; ``calcium`` is that of its hardness.

    ``closed_alkalinity`` goes with ``carbon`` at the pH that was read, ``alkalinity`` is the reading.
    """

    alkalinity: float
    closed_alkalinity: float
    carbon: float
    ammonia: float
    calcium: float
    temperature_c: float


class State(NamedTuple):
    """The pH of a water, and its un-ionised ammonia in mg N/L."""

    ph: float
    nh3_mg_n_l: float


class Constants(NamedTuple):
    """The constants of one water, and the pH at which half of its ammonia is NH3."""

    carbonate: Medium
    half_free_ph: float


def constants_of(calcium: float, ammonia: float, temperature_c: float) -> Constants:
    """The constants of a water of calcium bicarbonate and ammonium chloride, mol/L.

    Both calcium and ``ammonia`` are in mol/L.
    """
    strength = ionic_strength(2000 * calcium, 2000 * calcium) + ammonia
    carbonate = medium(temperature_c, strength)
    return Constants(carbonate, ammonium_pka(temperature_c) - math.log10(carbonate.single))


def nh3_share(constants: Constants, ph: float) -> float:
    """The share of total ammonia that is NH3, from 0 to 1; salts hold more of it as ammonium."""
    return float(1 / (1 + 10 ** (constants.half_free_ph - ph)))


def others(constants: Constants, ammonia: float, ph: float) -> float:
    """Alkalinity that is no carbonate: hydroxide less hydrogen ion, and un-ionised ammonia, mol/L."""
    return hydroxide_less_hydrogen(constants.carbonate, ph) + ammonia * nh3_share(constants, ph)


def dissolved(water: Water) -> Dissolved:
    """What a water holds, by its readings.

    Where the pH asks for more hydroxide and ammonia than the hardness has room for, the pH is
    believed and no carbon is left.
    """
    reading = water.kh_dh * chemistry.MEQ_PER_DH / 1000
    ammonia = water.ammonia_mg_n_l / MG_N_PER_MOL
    constants = constants_of(reading / 2, ammonia, water.temperature_c)
    rest = others(constants, ammonia, water.ph)
    seen = max(water.kh_dh, UNSEEN_KH_DH) * chemistry.MEQ_PER_DH / 1000
    carbonate = max(0.0, seen - rest)
    shares = carbonate_shares(constants.carbonate, reading / 2, water.ph)
    for _ in range(PAIR_ROUNDS):
        bicarbonate = carbonate / shares.alkalinity
        shares = carbonate_shares(constants.carbonate, reading / 2, water.ph, bicarbonate)
    return Dissolved(
        alkalinity=reading if carbonate else max(reading, rest),
        closed_alkalinity=rest + carbonate,
        carbon=carbonate / shares.alkalinity * shares.carbon,
        ammonia=ammonia,
        calcium=reading / 2,
        temperature_c=water.temperature_c,
    )


def mix(tank: Dissolved, tap: Dissolved, share: float) -> Dissolved:
    """The mix that holds so large a share, 0 to 1, of the tap's water."""
    return Dissolved(*(mixed(ours, theirs, share) for ours, theirs in zip(tank, tap, strict=True)))


def closed_state(water: Dissolved) -> State:
    """The state before any gas leaves or comes: alkalinity and carbon are what they were."""
    constants = constants_of(water.calcium, water.ammonia, water.temperature_c)

    def excess(ph: float) -> float:
        shares = carbonate_shares(constants.carbonate, water.calcium, ph)
        for _ in range(PAIR_ROUNDS):
            bicarbonate = water.carbon / shares.carbon
            shares = carbonate_shares(constants.carbonate, water.calcium, ph, bicarbonate)
        carbonate = water.carbon / shares.carbon * shares.alkalinity
        return carbonate + others(constants, water.ammonia, ph) - water.closed_alkalinity

    return state(water, constants, rising_root(excess, closed_guess(water, constants.carbonate)))


def aired_state(water: Dissolved) -> State:
    """The state once carbon dioxide stands at twice what outdoor air gives."""
    constants = constants_of(water.calcium, water.ammonia, water.temperature_c)
    gas = AIR_TIMES * air_co2_mg_l(water.temperature_c) / CARBON_DIOXIDE_MG_PER_MOL

    def excess(ph: float) -> float:
        bicarbonate = gas * 10 ** (ph - constants.carbonate.pk1)
        shares = carbonate_shares(constants.carbonate, water.calcium, ph, bicarbonate)
        carbonate = bicarbonate * shares.alkalinity
        return carbonate + others(constants, water.ammonia, ph) - water.alkalinity

    guess = constants.carbonate.pk1 + math.log10(max(water.alkalinity, LEAST_MOL) / gas)
    return state(water, constants, rising_root(excess, guess))


def closed_guess(water: Dissolved, carbonate: Medium) -> float:
    """About the pH of a water that keeps its carbon: as if one of the two steps of the acid were all."""
    alkalinity = max(water.closed_alkalinity, LEAST_MOL)
    gas, second = water.carbon - alkalinity, alkalinity - water.carbon
    if gas >= second:
        return carbonate.pk1 + math.log10(alkalinity / max(gas, LEAST_MOL))
    return carbonate.pk2 + math.log10(second / max(water.carbon - second, LEAST_MOL))


def state(water: Dissolved, constants: Constants, ph: float) -> State:
    """A pH with the free ammonia that goes with it."""
    return State(ph, water.ammonia * nh3_share(constants, ph) * MG_N_PER_MOL)
