"""How much oxygen fresh water holds against the air above it."""

import math

from calculators.core.written_units import ATMOSPHERE_HPA
from calculators.science.conversions import KELVIN_AT_0_C

SEA_LEVEL_KELVIN = 288.15  # of the standard atmosphere, ISO 2533
LAPSE_KELVIN_PER_M = 0.0065
STANDARD_EXPONENT = 5.25588  # g M / (R L) of the standard atmosphere


def saturation_at_sea_level_mg_l(temperature_c: float) -> float:
    """Oxygen in fresh water under one atmosphere of moist air, mg/L, 0 to 40 °C.

    Benson and Krause (1984), in the form that standard methods for water print.
    """
    t = temperature_c + KELVIN_AT_0_C
    return math.exp(
        -139.34411 + 1.575701e5 / t - 6.642308e7 / t**2 + 1.243800e10 / t**3 - 8.621949e11 / t**4
    )


def vapour_pressure_atm(temperature_c: float) -> float:
    """Pressure of water vapour over fresh water, atmospheres (Benson and Krause).

    The unit is a standard atmosphere.
    """
    t = temperature_c + KELVIN_AT_0_C
    return math.exp(11.8571 - 3840.70 / t - 216_961 / t**2)


def departure_per_atm(temperature_c: float) -> float:
    """How far oxygen departs from a perfect gas, per atmosphere (Benson and Krause).

    It is a factor per unit of pressure.
    """
    return 0.000975 - 1.426e-5 * temperature_c + 6.436e-8 * temperature_c**2


def saturation_mg_l(temperature_c: float, pressure_hpa: float) -> float:
    """Oxygen in fresh water under air of a pressure (vapour included), mg/L.

    Pressure as it is where the water stands, not reduced to sea level.
    """
    pressure = pressure_hpa / ATMOSPHERE_HPA
    vapour = vapour_pressure_atm(temperature_c)
    theta = departure_per_atm(temperature_c)
    return (
        saturation_at_sea_level_mg_l(temperature_c)
        * (pressure - vapour)
        * (1 - theta * pressure)
        / ((1 - vapour) * (1 - theta))
    )


def pressure_at_altitude_hpa(altitude_m: float) -> float:
    """Mean air pressure at an altitude below 11,000 m, hPa (standard atmosphere, ISO 2533)."""
    cooled = 1 - LAPSE_KELVIN_PER_M * altitude_m / SEA_LEVEL_KELVIN
    pressure: float = ATMOSPHERE_HPA * cooled**STANDARD_EXPONENT
    return pressure
