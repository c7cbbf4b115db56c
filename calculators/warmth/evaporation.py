"""The heat that evaporation takes from an open surface."""

import math

from calculators.science.conversions import KELVIN_AT_0_C
from calculators.science.water.oxygen_solubility import vapour_pressure_atm
from calculators.warmth import air_properties as flow
from calculators.warmth.air_properties import HEAT_J_KG_K
from calculators.warmth.faces import air_w_m2_k
from calculators.warmth.room_bounds import Room

KPA_PER_ATM = 101.325
VAPOUR_GAS_J_KG_K = 461.5
DIFFUSION_M2_S = 2.6e-5  # of vapour in air at 25 °C (source key incropera-2007)
LIGHTER_VAPOUR = 0.378  # 1 less the ratio of molar masses of water and air, 18.015 to 28.96


def vapour_kpa(temperature_c: float) -> float:
    """Pressure of vapour over water, kPa (source key benson-krause-1984)."""
    return vapour_pressure_atm(temperature_c) * KPA_PER_ATM


def latent_kj_kg(temperature_c: float) -> float:
    """Heat that a kilogram takes to evaporate, kJ; steam tables within 0.1 % from 0 to 45 °C (memory)."""
    return 2500.8 - 2.372 * temperature_c


def virtual_excess_k(water_c: float, room_c: float, humidity: float) -> float:
    """How much warmer dry air would be to rise as moist air does off the water, K.

    Vapour is lighter than air, so that air rises off water even at the room's own temperature. The
    ``humidity`` is a share, 0 to 1.
    """
    at_water = vapour_kpa(water_c) / KPA_PER_ATM
    in_room = humidity * vapour_kpa(room_c) / KPA_PER_ATM
    light = (water_c + KELVIN_AT_0_C) / (1 - LIGHTER_VAPOUR * at_water)
    return light - (room_c + KELVIN_AT_0_C) / (1 - LIGHTER_VAPOUR * in_room)


def evaporation_w_m2(water_c: float, room_c: float, length_m: float, room: Room) -> float:
    """Heat that evaporation takes from an open surface, W/m².

    Sparing: vapour leaves as heat does in still air (analogy of Chilton and Colburn). Costly: the
    engineers' equation for pools (source key smith-lof-1998), which quiet pools stay a quarter below.
    """
    if room.costly:
        return pool_w_m2(water_c, room_c, room.humidity, room.draught_m_s)
    lifted = virtual_excess_k(water_c, room_c, room.humidity)
    heat = air_w_m2_k("up", lifted, water_c, room_c, length_m, room)
    beside = flow.air_at((water_c + room_c) / 2 + KELVIN_AT_0_C)
    lewis = beside.diffusivity / DIFFUSION_M2_S
    speed = heat / (beside.density * HEAT_J_KG_K * math.pow(lewis, 2 / 3))
    thinner = vapour_kg_m3(water_c, 1.0) - vapour_kg_m3(room_c, room.humidity)
    return speed * thinner * latent_kj_kg(water_c) * 1000


def vapour_kg_m3(temperature_c: float, humidity: float) -> float:
    """Vapour in air of a humidity from 0 to 1."""
    pascal = humidity * vapour_kpa(temperature_c) * 1000
    return pascal / (VAPOUR_GAS_J_KG_K * (temperature_c + KELVIN_AT_0_C))


def pool_w_m2(water_c: float, room_c: float, humidity: float, speed_m_s: float) -> float:
    """(0.0885 + 0.0779 v) · (p at the water − p in the room), kPa and m/s, in kW/m², here W/m².

    In the engineers' units it is 95 + 0.425 v, v in feet a minute. The ``humidity`` is a share, 0 to 1.
    """
    missing = vapour_kpa(water_c) - humidity * vapour_kpa(room_c)
    return 1000 * (0.0885 + 0.0779 * speed_m_s) * missing
