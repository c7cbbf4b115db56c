"""What the light calculator gives: the light on the way down, and what would change it."""

from typing import Annotated, Literal, NamedTuple

from calculators.core.quantities import (
    Cover,
    DailyLight,
    Height,
    HoursADay,
    LightLeft,
    Percent,
    PhotonFlux,
)
from calculators.core.quantity import Choices, Digits, Help, Label, Possible
from calculators.core.result import Note, Series

CLASSES = Choices(("low", "medium", "high"))
# From lumens every figure is right within half of itself, and a lamp lights no place alike.
Flux = Annotated[PhotonFlux, Digits(2)]
DayLight = Annotated[DailyLight, Digits(2)]
Hours = Annotated[HoursADay, Digits(2)]
Share = Annotated[Percent, Digits(2)]


class Light(NamedTuple):
    """The light on the way down, its class, and what would change it."""

    ppfd_surface_umol: Annotated[
        Flux, Label("Light into the water"), Help("Mean, before floaters and depth.")
    ]
    ppfd_substrate_umol: Annotated[Flux, Label("Light at the plants")]
    dli_surface_mol: Annotated[DayLight, Label("Daily light into the water")]
    dli_substrate_mol: Annotated[DayLight, Label("Daily light at the plants")]
    light_class: Annotated[Literal["low", "medium", "high"], Label("Class of light"), CLASSES]
    hours_for_class: Annotated[
        Hours | None,
        Label("Hours a day for what is wanted"),
        Help("Brings the plants to the class, or to the daily light, that you want for them."),
    ]
    hours_open_surface: Annotated[Hours | None, Label("Hours a day for it with no floaters at all")]
    wanted_mol: Annotated[DayLight, Label("Daily light wanted at the plants")]
    cover_for_class_percent: Annotated[
        Cover | None, Digits(2), Label("Largest floating cover for it"), Help("At the hours given.")
    ]
    thin_percent: Annotated[
        Percent | None,
        Digits(2),
        Label("Take out of the floaters for it"),
        Help("Of the cover there is now."),
    ]
    tip_height_for_class_cm: Annotated[
        Height | None,
        Digits(2),
        Label("A stem's tip gets it from this height"),
        Possible(0, 400),
        Help("Above the plants' foot: what a leggy stem reaches for."),
    ]
    light_left_percent: Annotated[
        LightLeft, Digits(2), Label("Light left below the floaters, mean")
    ]
    ppfd_under_mat_umol: Annotated[
        Flux, Label("Light at plants right under the floaters"), Help("Below a closed mat.")
    ]
    dark_hours: Annotated[
        Hours, Label("Dark for the animals"), Help("About 10 hours or more let them rest.")
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]
