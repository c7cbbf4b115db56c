"""What the calculator for the way from the bag to the tank gives."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import PH, GeneralHardness, Litres, Nitrogen, Temperature
from calculators.core.quantity import AnswersTo, Help, Label, Quantity
from calculators.core.result import Note, Series

DripMinutes = Annotated[float, Quantity("Minutes", "min", (0, 1e9))]
DripRate = Annotated[float, Quantity("Drops", "mL/min", (0.1, 10_000))]
HoursInBag = Annotated[float, Quantity("Hours", "h", (0, 240))]
AMMONIA = AnswersTo(("bag_ammonia_mg_n_l",))


class Acclimate(NamedTuple):
    """Whether to drip, what it takes, and how toxic the bag's ammonia is or becomes."""

    drip: Annotated[bool, Label("Drip?")]
    minutes: Annotated[DripMinutes, Label("Minutes, if it is dripped")]
    vessel_l: Annotated[
        Litres, Label("In the vessel at the end, if so"), Help("Take one that holds more.")
    ]
    gh_end_dh: Annotated[
        GeneralHardness | None,
        Label("Its hardness (GH) then"),
        AnswersTo(("bag_gh_dh", "tank_gh_dh")),
    ]
    temperature_end_c: Annotated[
        Temperature,
        Label("Its temperature then"),
        Help("By mixing alone: a vessel in a cool room falls back towards the room."),
    ]
    nh3_bag_mg_n_l: Annotated[
        Nitrogen | None,
        Label("Toxic ammonia in the closed bag"),
        AnswersTo(("bag_ammonia_mg_n_l", "bag_ph")),
    ]
    nh3_at_tank_ph_mg_n_l: Annotated[Nitrogen | None, Label("The same at the tank's pH"), AMMONIA]
    nh3_opened_mg_n_l: Annotated[
        Nitrogen | None,
        Label("The worst in the open, as its gas leaves"),
        Help("With hard water taken where a KH is not given."),
        AMMONIA,
    ]
    open_ph: Annotated[PH, Label("pH it may come up to")]
    notes: tuple[Note, ...]
    series: dict[str, Series]
