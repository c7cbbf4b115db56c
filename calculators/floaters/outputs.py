"""What the floaters calculator gives: the cover, what to take out, and the light below."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import (
    Area,
    Count,
    Days,
    DoublingTime,
    ElementMass,
    LightLeft,
    Percent,
    WetMass,
    WetMassPerArea,
)
from calculators.core.quantity import Digits, Help, Label
from calculators.core.result import Note, Series

# Cover is judged by eye and growth is a guess, so whole days and two figures are plenty.
DaysByEye = Annotated[Days, Digits(1)]
AreaByEye = Annotated[Area, Digits(2)]
ShareByEye = Annotated[Percent, Digits(2)]
DoublingUsed = Annotated[DoublingTime, Digits(1)]


class Floaters(NamedTuple):
    """What the cover is, what to take out, and the light below."""

    surface_cm2: Annotated[Area, Label("Water surface")]
    allowed_cm2: Annotated[
        Area, Label("Room for floaters"), Help("Inside the rings, or the whole surface.")
    ]
    covered_cm2: Annotated[AreaByEye, Label("Covered now")]
    days_to_high: Annotated[DaysByEye, Label("Until the upper limit")]
    thin_in_days: Annotated[
        DaysByEye, Label("Thin in"), Help("0 is now: at a limit, or within a day of one.")
    ]
    remove_percent: Annotated[
        ShareByEye, Label("Take out at the next thinning"), Help("Of the cover then present.")
    ]
    remove_cm2: Annotated[AreaByEye, Label("Area to take out"), Help("At the next thinning.")]
    steps: Annotated[
        Count, Label("Steps for it"), Help("Two or three days apart, for animals used to shade.")
    ]
    removed_wet_g: Annotated[WetMass, Digits(2), Label("Taken out, wet")]
    removed_n_mg: Annotated[ElementMass, Digits(2), Label("Nitrogen taken out")]
    light_left_percent: Annotated[
        LightLeft, Digits(2), Label("Light below, now"), Help("Mean over the whole surface.")
    ]
    light_left_percent_at_high: Annotated[
        LightLeft, Digits(2), Label("Light below, at the upper limit")
    ]
    doubling_used_days: Annotated[DoublingUsed, Label("Doubling time used")]
    wet_used_g_m2: Annotated[WetMassPerArea, Digits(2), Label("Wet mass at full cover used")]
    notes: tuple[Note, ...]
    series: dict[str, Series]
