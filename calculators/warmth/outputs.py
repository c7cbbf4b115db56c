"""What the warmth calculator gives: the loss, a heater for it, its cost, and the hours without one."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import FAHRENHEIT, HoursAhead, Litres, Temperature
from calculators.core.quantity import (
    AnswersTo,
    Digits,
    Help,
    Label,
    OnlyWith,
    Possible,
    Quantity,
    UsUnit,
    WhenNone,
)
from calculators.core.result import Note, Series

Power = Annotated[float, Quantity("Heat", "W", (0, 1e9), digits=2)]
HeaterPower = Annotated[float, Quantity("Heater", "W", (0, 1e9), digits=4)]
Energy = Annotated[float, Quantity("Electricity", "kWh", (0, 1e9), digits=2)]
Money = Annotated[float, Quantity("Cost", "", (0, 1e12), digits=2)]
Price = Annotated[float, Quantity("Price of a kWh", "", (0, 1_000))]
HeaterCount = Annotated[int, Quantity("Heaters", "", (0, 1_000_000))]
Fall = Annotated[float, Quantity("Fall", "°C", (0.1, 30), us=UsUnit("°F", FAHRENHEIT.factor))]
Ahead = Annotated[Temperature, Digits(2)]
WaterLost = Annotated[Litres, Digits(2)]
NO_FALL = WhenNone("never: the room is too warm for it")


class Warmth(NamedTuple):
    """What the tank loses, what holds it warm, and what happens without."""

    loss_w_low: Annotated[
        Power, Label("Heat lost, sparing"), Help("A still, humid room and a mat under the tank.")
    ]
    loss_w_high: Annotated[
        Power, Label("Heat lost, costly"), Help("A dry room with a draught, and gaps in the lid.")
    ]
    heater_w: Annotated[
        HeaterPower,
        Label("Heater, in all"),
        Help("The next size above the costly loss and a quarter more."),
    ]
    heater_count: Annotated[HeaterCount, Label("Or so many smaller heaters")]
    heater_each_w: Annotated[HeaterPower, Label("Each of them")]
    stuck_c: Annotated[
        Ahead | None,
        Label("If the one heater sticks on, water comes to"),
        Help("In a room as warm as the water, still and humid: a summer's day."),
        WhenNone("above 45 °C, or no heater"),
    ]
    stuck_each_c: Annotated[
        Ahead | None,
        Label("If one of the smaller ones sticks on"),
        Help("The others off by their own thermostats, in the same room."),
        WhenNone("above 45 °C, or no heater"),
    ]
    evaporation_l_day_low: Annotated[
        WaterLost, Label("Water that evaporates in a day, sparing"), Help("To top up.")
    ]
    evaporation_l_day_high: Annotated[WaterLost, Label("Water that evaporates in a day, costly")]
    kwh_month: Annotated[Energy, Label("Electricity a month"), Help("Midway of the two losses.")]
    kwh_month_low: Annotated[Energy, Label("Electricity a month, at least")]
    kwh_month_high: Annotated[Energy, Label("Electricity a month, at most")]
    cost_month: Annotated[
        Money | None,
        Label("Cost a month"),
        Help("In the money of the price."),
        AnswersTo(("price_per_kwh",)),
    ]
    hours_low: Annotated[
        HoursAhead | None,
        Label("Hours until it has fallen so far, at the fastest"),
        NO_FALL,
    ]
    hours_high: Annotated[
        HoursAhead | None,
        Label("Hours until it has fallen so far, at the slowest"),
        OnlyWith("hours_low"),
        NO_FALL,
    ]
    after_fall_c: Annotated[
        Temperature, Label("Temperature after that fall"), Possible(-30, 45), Digits(3)
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]
