"""Heater, power cut and cost: what a tank loses to its room."""

from functools import partial
from typing import Annotated

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow
from calculators.core.leads import Lead
from calculators.core.numbers import show_number
from calculators.core.quantities import GlassThickness, Height, Length, Litres, Temperature
from calculators.core.quantity import Assumed, Help, Label, Possible
from calculators.core.result import Refusal, Refused
from calculators.warmth.cooling import hours_to_fall, settles_at
from calculators.warmth.cooling_picture import fall_picture
from calculators.warmth.heaters import heaters_for
from calculators.warmth.loss import loss_w, water_lost_l_day
from calculators.warmth.outputs import Fall, Price, Warmth
from calculators.warmth.room_bounds import COSTLY, SPARING, GlassBox, Room, glass_of
from calculators.warmth.words import notes

WATER_J_L_K = 4_168.0  # 997 kg/m³ x 4.18 kJ/kg K at 25 °C (source keys teos-10, incropera-2007)
GLASS_J_L_K = 1_875.0  # 2.5 kg a litre x 0.75 kJ/kg K (source key incropera-2007)
LITRES_PER_M3 = 1000
FILLED_SHARE = 0.8  # of the inside, where free water is not given; common practice
HOURS_A_MONTH = 730.5  # a twelfth of 365.25 days
HOTTEST_C = 45.0

SIZE_ROW = "Outside size"
WARMTH_ROW = "Temperature"


@calculator(
    "Warmth and heater",
    sources=(
        "churchill-chu-1975", "lloyd-moran-1974", "mcadams-1954", "incropera-2007",
        "us-standard-atmosphere-1976", "smith-lof-1998", "bower-saylor-2009", "benson-krause-1984", "teos-10",
        "hart-1983",
    ),
    leads_to=(Lead("oxygen", "How much oxygen water of this warmth holds", {"temperature_c": "water_c"}),),
)  # fmt: skip
def warmth(
    length_cm: Annotated[Length, Label("Tank length, outside"), InRow(SIZE_ROW, "Length")] = 80.0,
    width_cm: Annotated[Length, Label("Tank width, outside"), InRow(SIZE_ROW, "Width")] = 35.0,
    height_cm: Annotated[Height, Label("Tank height, outside"), InRow(SIZE_ROW, "Height")] = 45.0,
    glass_mm: Annotated[
        GlassThickness, Label("Glass, thickness"), Possible(1, 60), FINER, Assumed()
    ] = 8.0,
    net_l: Annotated[
        Litres | None,
        Label("Free water"),
        Possible(0.1, 1_000_000),
        Help("Left empty: four fifths of the inside."),
        FINER,
    ] = None,
    water_c: Annotated[
        Temperature, Label("Water, as you want it"), Possible(5, 40), InRow(WARMTH_ROW, "Water")
    ] = 24.0,
    room_c: Annotated[
        Temperature,
        Label("Room, when it is coldest"),
        Possible(-10, 45),
        Help("Near the tank, before dawn in winter."),
        InRow(WARMTH_ROW, "Room"),
    ] = 18.0,
    lid: Annotated[
        bool,
        Label("A lid that covers it"),
        Help("Left empty, an open tank is taken: it loses more."),
        Assumed(),
    ] = False,
    price_per_kwh: Annotated[Price | None, Help("From your bill, in your own money."), FINER] = 0.3,
    fall_c: Annotated[Fall, Label("Fall to look at, in a power cut"), FINER, Assumed()] = 4.0,
) -> Warmth:
    """Find what heater a tank needs, what it costs, and how fast the water cools without it.

    Heat leaves through the walls and the bottom, by air that rises along the glass, by radiation to
    the room, and most of all by evaporation where the water is open. Nobody knows the humidity and
    the draughts of a room, so each figure is a range: from a still, humid room (65 % humidity) with a
    mat under the tank, to a dry one (35 %) with a slight draught of 0.2 m/s. Air along walls after
    Churchill and Chu, above and below level faces after McAdams, and Lloyd and Moran. Evaporation at
    the sparing end by the analogy of heat and vapour in still air, at the costly end by the
    engineers' equation for pools; quiet pools were measured at three quarters of that.

    In a power cut the same losses cool the stored warmth: at the fastest of the water alone, at the
    slowest of water and glass. Soil, stones and a stand against a wall slow it further. Lamp and pump
    warm the water a little while they run, and are left out.

    A tank in a cabinet, against an outer wall or over a warm floor lies outside the range.
    """
    tank = glass_of(length_cm, width_cm, height_cm, glass_mm, lid)
    inside_l = checked_inside_l(tank, net_l, glass_mm)
    litres = FILLED_SHARE * inside_l if net_l is None else net_l
    low, high = losses(tank, water_c, room_c)
    heaters = heaters_for(high)
    slow, fast = (partial(loss_at, tank, room_c, room) for room in (SPARING, COSTLY))
    stored = (litres * WATER_J_L_K, litres * WATER_J_L_K + glass_l(tank) * GLASS_J_L_K)
    drops = [water_lost_l_day(tank, water_c, room_c, room) for room in (SPARING, COSTLY)]
    kwh = [watts * HOURS_A_MONTH / 1000 for watts in (low, high)]
    answer = Warmth(
        loss_w_low=low,
        loss_w_high=high,
        heater_w=heaters.power_w,
        heater_count=heaters.number,
        heater_each_w=heaters.each_w,
        stuck_c=stuck(heaters.power_w, tank, water_c),
        stuck_each_c=stuck(heaters.each_w, tank, water_c),
        evaporation_l_day_low=drops[0],
        evaporation_l_day_high=drops[1],
        kwh_month=sum(kwh) / 2,
        kwh_month_low=kwh[0],
        kwh_month_high=kwh[1],
        cost_month=None if price_per_kwh is None else sum(kwh) / 2 * price_per_kwh,
        hours_low=hours_to_fall(water_c, fall_c, room_c, stored[0], fast),
        hours_high=hours_to_fall(water_c, fall_c, room_c, stored[1], slow),
        after_fall_c=water_c - fall_c,
        notes=(),
        series=fall_picture(water_c, room_c, stored, fast, slow) if water_c > room_c else {},
    )
    return answer._replace(notes=notes(answer, water_c, room_c, lid))


def losses(tank: GlassBox, water_c: float, room_c: float) -> tuple[float, float]:
    """The loss in the sparing and in the costly room, W; nothing where the room is the warmer."""
    if water_c < room_c:
        return 0.0, 0.0
    low, high = (loss_w(tank, water_c, room_c, room) for room in (SPARING, COSTLY))
    return min(low, high), max(low, high)


def loss_at(tank: GlassBox, room_c: float, room: Room, water_c: float) -> float:
    """The loss as a function of the water's temperature alone."""
    return loss_w(tank, water_c, room_c, room)


def stuck(power_w: float, tank: GlassBox, water_c: float) -> float | None:
    """Where water settles with a heater that stays on in a room as warm as the water was meant to be.

    None without a heater, or where it is too hot to show. In °C.
    """
    if power_w == 0:
        return None
    return settles_at(power_w, water_c, HOTTEST_C, partial(loss_at, tank, water_c, SPARING))


def glass_l(tank: GlassBox) -> float:
    """The glass of bottom and walls, litres."""
    outer = tank.length * tank.width
    walls = (outer - tank.top_m2) * (tank.height - tank.pane)
    return (outer * tank.pane + walls) * LITRES_PER_M3


def checked_inside_l(tank: GlassBox, net_l: float | None, glass_mm: float) -> float:
    """What the panes leave, litres.

    Raises ``Refused`` for panes too thick and for more water than there is room for.
    """
    sides = (tank.length - 2 * tank.pane, tank.width - 2 * tank.pane, tank.height - tank.pane)
    if min(sides) <= 0:
        why = f"panes of {show_number(glass_mm)} mm leave no room inside these measures"
        raise Refused(Refusal("glass_mm", why, 1, 60), Refusal("length_cm", why, 0.1, 1_000))
    inside = sides[0] * sides[1] * sides[2] * LITRES_PER_M3
    if net_l is not None and net_l > inside:
        raise Refused(Refusal("net_l", "the tank does not hold so much water", 0.1, inside))
    return inside
