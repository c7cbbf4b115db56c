"""What a pick answers."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import (
    Area,
    Count,
    DailyLight,
    DoublingTime,
    Length,
    MinutesAWeek,
    NitrogenFlow,
    Percent,
    Ratio,
    WetMass,
)
from calculators.core.quantity import AsRows, Help, Label, RowsStyle
from calculators.core.result import Note

PAGE = "plants/{plant}/"
PICTURE = "assets/thumbnails.svg#{plant}"


class RankedPlant(NamedTuple):
    """A plant that fits."""

    plant: Annotated[str, Label("Plant")]
    score_percent: Annotated[Percent, Label("Fit")]
    because: Annotated[list[str], Label("Why")]
    name: Annotated[str, Label("Name")]
    common: Annotated[str, Label("Sold as")]
    minutes_week: Annotated[MinutesAWeek | None, Label("Trimming")]
    spacing_cm: Annotated[Length | None, Label("Spacing of a full bed")]
    doubling_days: Annotated[DoublingTime | None, Label("Doubling time in this light")]


class LeftOut(NamedTuple):
    """A plant with a hard reason against it."""

    plant: Annotated[str, Label("Plant")]
    because: Annotated[list[str], Label("Why")]
    name: Annotated[str, Label("Name")]


class Together(NamedTuple):
    """One plant of a set; ``amount`` is in g wet, or in cm² for what floats."""

    plant: Annotated[str, Label("Plant")]
    amount: Annotated[Ratio, Label("Amount")]
    unit: Annotated[str, Label("Unit")]
    n_mg_day: Annotated[NitrogenFlow, Label("Takes")]
    name: Annotated[str, Label("Plant")]
    how_much: Annotated[str, Label("How much")]
    takes: Annotated[str, Label("Takes, mg N a day")]
    low_n_mg_day: Annotated[NitrogenFlow, Label("Takes at least")]
    high_n_mg_day: Annotated[NitrogenFlow, Label("Takes at most")]
    area_cm2: Annotated[Area, Label("Area")]
    stems: Annotated[Count | None, Label("Stems when full")]
    minutes_week: Annotated[MinutesAWeek | None, Label("Trimming")]
    wet_g: Annotated[WetMass, Label("Wet mass as kept")]
    doubling_days: Annotated[DoublingTime, Label("Doubling time in this light")]
    floating: Annotated[bool, Label("Floats")]


class Pick(NamedTuple):
    """The ranked list, what was left out, and the set that meets the demand."""

    best: Annotated[str | None, Label("Best placed")]
    ranked: Annotated[
        list[RankedPlant],
        Label("What fits, best first"),
        AsRows(
            RowsStyle.CARDS, "name", "common", PAGE, "score_percent", "because", picture=PICTURE
        ),
    ]
    together: Annotated[
        list[Together] | None,
        Label("A set for the nitrogen"),
        Help(
            "Areas as kept by trimming. In brackets how far each guess reaches: watch your nitrate."
        ),
        AsRows(RowsStyle.TABLE, "name", page=PAGE, columns=("how_much", "takes"), picture=PICTURE),
    ]
    excluded: Annotated[
        list[LeftOut],
        Label("Left out, and why"),
        AsRows(RowsStyle.CLOSED, "name", page=PAGE, lines="because"),
    ]
    fitting_count: Annotated[Count, Label("Plants that fit")]
    forbidden_count: Annotated[Count, Label("Left out by the law of the place")]
    dli_used_mol: Annotated[
        DailyLight | None, Label("Daily light taken for the plants on the soil")
    ]
    ranked_minutes_week: Annotated[
        MinutesAWeek | None, Label("Trimming, if you took all that are listed")
    ]
    together_n_mg_day: Annotated[NitrogenFlow | None, Label("The set takes")]
    together_low_mg_n_day: Annotated[NitrogenFlow | None, Label("The set takes at least")]
    together_high_mg_n_day: Annotated[NitrogenFlow | None, Label("The set takes at most")]
    together_minutes_week: Annotated[MinutesAWeek | None, Label("Trimming of the set")]
    notes: tuple[Note, ...]
