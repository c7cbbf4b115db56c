"""What the calculator for minerals gives."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import (
    PH,
    CarbonateHardness,
    Concentration,
    GeneralHardness,
    Litres,
    SaltMass,
)
from calculators.core.quantity import Digits, Help, Label, Quantity, WhenNone
from calculators.core.result import Note

ABOVE = WhenNone("none: it is above the target already")
NO_GYPSUM = WhenNone("any: it dissolves at once")


class Remineralise(NamedTuple):
    """The grams to weigh, and what the water then reads."""

    calcium_salt_g: Annotated[SaltMass | None, Label("Calcium salt"), ABOVE]
    magnesium_salt_g: Annotated[SaltMass | None, Label("Magnesium salt"), ABOVE]
    carbonate_salt_g: Annotated[SaltMass | None, Label("Carbonate salt"), ABOVE]
    gypsum_water_l: Annotated[
        Litres | None,
        Label("Water to dissolve the gypsum in, at least"),
        Help("2.4 g go into a litre, and slowly."),
        Digits(2),
        NO_GYPSUM,
    ]
    reached_gh_dh: Annotated[GeneralHardness, Label("General hardness then")]
    reached_kh_dh: Annotated[CarbonateHardness, Label("Carbonate hardness then")]
    settled_ph: Annotated[
        PH,
        Label("pH once it has stood in a room, about"),
        Digits(2),
        Help("At 25 °C, with twice the carbon dioxide of outdoor air."),
    ]
    adds: Annotated[
        dict[str, float],
        Quantity("The salts add", "mg/L", (0, 10_000)),
        Help("Ions: Ca, Mg, Na, K, SO₄, Cl, HCO₃."),
    ]
    dissolved_mg_l: Annotated[
        Concentration,
        Label("Minerals dissolved by it, in all"),
        Help("What the water held before comes on top. A conductivity meter reads otherwise."),
    ]
    notes: tuple[Note, ...]
