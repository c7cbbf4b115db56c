"""What a mix of two waters holds, and its pH and free ammonia with and without its gas.

Alkalinity, carbon and total ammonia add up by volume; pH follows from them. Concentrations are in
mol/L. All hardness is taken as calcium bicarbonate and ammonium as its chloride.
"""

from collections.abc import Callable
from typing import NamedTuple

from calculators.water import chemistry
from calculators.water.ammonia import ammonium_pka
from calculators.water.carbonate import (
    CARBON_DIOXIDE_MG_PER_MOL,
    activity,
    air_co2_mg_l,
    carbonate_shares,
    hydroxide_less_hydrogen,
    ionic_strength,
)
from calculators.water.mixing import mixed

MG_N_PER_MOL = 1000 * chemistry.N
# Animals, soil and plants by night keep a tank that is moved by air at about twice what outdoor air
# alone would give; common practice, no source. A tank in still air holds more.
AIR_TIMES = 2
# A kit that counts whole degrees shows 0 for anything up to half of one. The gas that goes with a pH
# is then not known; the middle of that span is taken for it.
UNSEEN_KH_DH = 0.25
HALVINGS = 22  # of a span of 14 pH units: 0.000003, far below what pH means


class Water(NamedTuple):
    """A water as the keeper reads it; ``ammonia_mg_n_l`` is total ammonia nitrogen."""

    ph: float
    kh_dh: float
    temperature_c: float
    ammonia_mg_n_l: float = 0.0


class Held(NamedTuple):
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


def strength_of(calcium: float, ammonia: float) -> float:
    """Ionic strength in mol/L of calcium bicarbonate and ammonium chloride."""
    return ionic_strength(2000 * calcium, 2000 * calcium) + ammonia


def nh3_share(ph: float, temperature_c: float, strength: float) -> float:
    """The share of total ammonia that is NH3, from 0 to 1; salts hold more of it as ammonium."""
    return 1 / (1 + 10 ** (ammonium_pka(temperature_c) - ph) / activity(1, strength))


def held(water: Water) -> Held:
    """What a water holds, by its readings.

    Where the pH asks for more hydroxide and ammonia than the hardness has room for, the pH is
    believed and no carbon is left.
    """
    ph, warmth = water.ph, water.temperature_c
    reading = water.kh_dh * chemistry.MEQ_PER_DH / 1000
    ammonia = water.ammonia_mg_n_l / MG_N_PER_MOL
    calcium = reading / 2
    strength = strength_of(calcium, ammonia)
    others = hydroxide_less_hydrogen(ph, warmth, strength)
    others += ammonia * nh3_share(ph, warmth, strength)
    shares = carbonate_shares(calcium, ph, warmth, strength)
    seen = max(water.kh_dh, UNSEEN_KH_DH) * chemistry.MEQ_PER_DH / 1000
    bicarbonate = max(0.0, seen - others) / shares.alkalinity
    closed = others + bicarbonate * shares.alkalinity
    return Held(
        max(reading, others) if bicarbonate == 0 else reading,
        closed, bicarbonate * shares.carbon, ammonia, calcium, warmth,
    )  # fmt: skip


def mix(tank: Held, tap: Held, share: float) -> Held:
    """The mix that holds so large a share, 0 to 1, of the tap's water."""
    return Held(*(mixed(one, other, share) for one, other in zip(tank, tap, strict=True)))


def closed_state(water: Held) -> State:
    """The state before any gas leaves or comes: alkalinity and carbon are what they were."""
    strength = strength_of(water.calcium, water.ammonia)

    def excess(ph: float) -> float:
        shares = carbonate_shares(water.calcium, ph, water.temperature_c, strength)
        carbonate = water.carbon * shares.alkalinity / shares.carbon
        return carbonate + others(water, ph, strength) - water.closed_alkalinity

    return state(water, rising_root(excess), strength)


def aired_state(water: Held) -> State:
    """The state once carbon dioxide stands at twice what outdoor air gives."""
    strength = strength_of(water.calcium, water.ammonia)
    gas = AIR_TIMES * air_co2_mg_l(water.temperature_c) / CARBON_DIOXIDE_MG_PER_MOL

    def excess(ph: float) -> float:
        shares = carbonate_shares(water.calcium, ph, water.temperature_c, strength)
        carbonate = gas / shares.co2 * shares.alkalinity
        return carbonate + others(water, ph, strength) - water.alkalinity

    return state(water, rising_root(excess), strength)


def others(water: Held, ph: float, strength: float) -> float:
    """Alkalinity that is no carbonate: hydroxide less hydrogen ion, and un-ionised ammonia, mol/L."""
    ammonia = water.ammonia * nh3_share(ph, water.temperature_c, strength)
    return hydroxide_less_hydrogen(ph, water.temperature_c, strength) + ammonia


def state(water: Held, ph: float, strength: float) -> State:
    """A pH with the free ammonia that goes with it."""
    share = nh3_share(ph, water.temperature_c, strength)
    return State(ph, water.ammonia * share * MG_N_PER_MOL)


def rising_root(excess: Callable[[float], float]) -> float:
    """The pH between 0 and 14 at which a function that rises with pH is nil, by halving."""
    low, high = 0.0, 14.0
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if excess(middle) > 0 else (middle, high)
    return (low + high) / 2
