"""The heat through one pane, in W/m², and what air and radiation take from its outside.

Formulas hold for water no colder than the room.
"""

from typing import Literal

from calculators.science.conversions import KELVIN_AT_0_C
from calculators.warmth import air_properties as flow
from calculators.warmth.room_bounds import Room

STEFAN_BOLTZMANN = 5.670374e-8  # W/m² K⁴ (CODATA)
SETTLES = 5  # rounds after which a pane's own temperature moves no more (see the tests)
Face = Literal["wall", "up", "down"]


def face_w_m2(
    face: Face, water_c: float, room_c: float, length_m: float, through: float, room: Room
) -> float:
    """Heat through a pane, W/m²: its outside settles where as much arrives as air and room take.

    ``through`` is the resistance from water to the outside of the pane, m² K/W.
    """
    outside = water_c
    for _ in range(SETTLES):
        carried = air_w_m2_k(face, outside - room_c, outside, room_c, length_m, room)
        carried += radiant_w_m2_k(room.glass_emissivity, outside, room_c)
        outside = (water_c / through + carried * room_c) / (1 / through + carried)
    return (water_c - outside) / through


def air_w_m2_k(
    face: Face, lifted_k: float, surface_c: float, room_c: float, length_m: float, room: Room
) -> float:
    """What air carries off, W/m² K, beside a surface that makes it so much lighter as ``lifted_k``."""
    film = (surface_c + room_c) / 2 + KELVIN_AT_0_C
    beside = flow.air_at(film)
    number = flow.rayleigh(beside, lifted_k, film, length_m)
    if face == "wall":
        laminar = not room.costly and number <= flow.TURBULENT_WALL
        nusselt = (flow.wall_laminar if laminar else flow.wall_any)(number, beside.prandtl)
    else:
        nusselt = flow.upward(number) if face == "up" else flow.downward(number)
    if room.draught_m_s:
        nusselt = flow.with_draught(nusselt, beside, room.draught_m_s, length_m)
    return nusselt * beside.conductivity / length_m


def radiant_w_m2_k(emissivity: float, surface_c: float, room_c: float) -> float:
    """Radiation to walls of the room's temperature, W/m² K.

    The ``emissivity`` is a share, 0 to 1.
    """
    hot, cool = surface_c + KELVIN_AT_0_C, room_c + KELVIN_AT_0_C
    return emissivity * STEFAN_BOLTZMANN * (hot**2 + cool**2) * (hot + cool)


def radiated_w_m2(emissivity: float, surface_c: float, room_c: float) -> float:
    """The same as a flow, W/m². The ``emissivity`` is a share, 0 to 1."""
    return radiant_w_m2_k(emissivity, surface_c, room_c) * (surface_c - room_c)
