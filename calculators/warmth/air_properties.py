"""Air beside a surface: its properties, and how much heat it carries off, still or with a slight draught.

Temperatures in kelvin, lengths in m. Nusselt numbers are means over a surface.
"""

import math
from typing import NamedTuple

from calculators.science.conversions import GRAVITY_M_S2

PASCAL = 101_325  # one standard atmosphere
GAS_J_KG_K = 287.05  # of dry air
HEAT_J_KG_K = 1_007  # of air at room temperature (source key incropera-2007)
TURBULENT_UP = 1e7  # Rayleigh number from which plumes above a warm surface are turbulent
TURBULENT_WALL = 1e9  # the same along a wall


class AirProperties(NamedTuple):
    """Density kg/m³, conductivity W/m K, kinematic viscosity and heat diffusivity m²/s."""

    density: float
    conductivity: float
    viscosity: float
    diffusivity: float

    @property
    def prandtl(self) -> float:
        """Viscosity over diffusivity."""
        return self.viscosity / self.diffusivity


def air_at(kelvin: float) -> AirProperties:
    """Air of one atmosphere, 250 to 500 K.

    By the formulas of the standard atmosphere (source key us-standard-atmosphere-1976).
    """
    density = PASCAL / (GAS_J_KG_K * kelvin)
    dynamic = 1.458e-6 * kelvin**1.5 / (kelvin + 110.4)
    conductivity = 2.64638e-3 * kelvin**1.5 / (kelvin + 245.4 * math.pow(10, -12 / kelvin))
    return AirProperties(
        density, conductivity, dynamic / density, conductivity / (density * HEAT_J_KG_K)
    )


def rayleigh(air: AirProperties, warmer_k: float, film_kelvin: float, length_m: float) -> float:
    """The Rayleigh number of a surface that is so much warmer than the air."""
    lift = GRAVITY_M_S2 * max(0.0, warmer_k) / film_kelvin
    return lift * length_m**3 / (air.viscosity * air.diffusivity)


def wall_laminar(number: float, prandtl: float) -> float:
    """Nusselt number of a wall by Churchill and Chu, their form for laminar flow, Ra up to 10⁹."""
    nusselt: float = 0.68 + 0.670 * number**0.25 / (1 + (0.492 / prandtl) ** (9 / 16)) ** (4 / 9)
    return nusselt


def wall_any(number: float, prandtl: float) -> float:
    """Nusselt number of a wall by Churchill and Chu, their form for any flow."""
    inner: float = 0.387 * number ** (1 / 6) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)
    return (0.825 + inner) ** 2


def upward(number: float) -> float:
    """Nusselt number of a warm surface that faces up (McAdams; Lloyd and Moran); length is area over rim."""
    nusselt: float = 0.54 * number**0.25 if number <= TURBULENT_UP else 0.15 * number ** (1 / 3)
    return nusselt


def downward(number: float) -> float:
    """Nusselt number of a warm surface that faces down (McAdams); length is area over rim."""
    nusselt: float = 0.27 * number**0.25
    return nusselt


def with_draught(
    still_nusselt: float, air: AirProperties, speed_m_s: float, length_m: float
) -> float:
    """Natural flow and a slight draught together: the cubes add, as textbooks advise.

    The draught alone is a laminar flow along a plate (source key incropera-2007). Returns a Nusselt
    number, a ratio.
    """
    reynolds = speed_m_s * length_m / air.viscosity
    forced: float = 0.664 * math.sqrt(reynolds) * air.prandtl ** (1 / 3)
    return math.cbrt(still_nusselt**3 + forced**3)
