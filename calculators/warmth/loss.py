"""The heat that a tank loses to a room, in watts: walls, bottom, and an open or a covered surface.

Formulas hold for water no colder than the room.
"""

from calculators.science.water.chemistry import WATER_KG_L
from calculators.warmth.evaporation import evaporation_w_m2, latent_kj_kg, virtual_excess_k
from calculators.warmth.faces import air_w_m2_k, face_w_m2, radiated_w_m2
from calculators.warmth.room_bounds import GlassBox, Room

GLASS_W_M_K = 1.0  # soda-lime glass, 0.9 to 1.4 in handbooks; common practice of window makers
WATER_EMISSIVITY = 0.96  # source key incropera-2007
LID_M = 0.004
SECONDS_A_DAY = 86_400


def loss_w(tank: GlassBox, water_c: float, room_c: float, room: Room) -> float:
    """The heat lost by all faces, W; never below zero."""
    walls = 2 * (tank.length + tank.width) * tank.height
    bottom = tank.length * tank.width
    through = 1 / room.film_w_m2_k + tank.pane / GLASS_W_M_K
    watts = walls * face_w_m2("wall", water_c, room_c, tank.height, through, room)
    under = through + room.under_m2_k_w
    watts += bottom * face_w_m2("down", water_c, room_c, bottom / rim_m(tank), under, room)
    return max(0.0, watts + tank.top_m2 * surface_w_m2(tank, water_c, room_c, room))


def rim_m(tank: GlassBox) -> float:
    """The length of the rim, by which a level surface's size is reckoned."""
    return 2 * (tank.length + tank.width)


def surface_w_m2(tank: GlassBox, water_c: float, room_c: float, room: Room) -> float:
    """What leaves upwards from the water, open or under a lid."""
    length = tank.top_m2 / rim_m(tank)
    vapour = evaporation_w_m2(water_c, room_c, length, room)
    if tank.lid:
        through = 1 / room.lid_gap_w_m2_k + LID_M / GLASS_W_M_K
        return face_w_m2("up", water_c, room_c, length, through, room) + room.leak * vapour
    lifted = virtual_excess_k(water_c, room_c, room.humidity)
    dry = air_w_m2_k("up", lifted, water_c, room_c, length, room) * (water_c - room_c)
    return dry + radiated_w_m2(WATER_EMISSIVITY, water_c, room_c) + vapour


def water_lost_l_day(tank: GlassBox, water_c: float, room_c: float, room: Room) -> float:
    """The water that evaporates in a day, litres: from the open surface, or beside a lid."""
    length = tank.top_m2 / rim_m(tank)
    watts = tank.top_m2 * evaporation_w_m2(water_c, room_c, length, room)
    kilograms = watts * SECONDS_A_DAY / 1000 / latent_kj_kg(water_c)
    return max(0.0, kilograms / WATER_KG_L * (room.leak if tank.lid else 1.0))
