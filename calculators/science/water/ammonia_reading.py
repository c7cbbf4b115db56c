"""An ammonia kit's number, and what it counts."""

from typing import Annotated, Literal

from calculators.core.quantities import Concentration
from calculators.core.quantity import Assumed, Choices, Help, Label, Possible
from calculators.core.result import Note
from calculators.science.water import chemistry

READING_PER_N = {
    "nitrogen": 1.0,
    "ammonium": chemistry.AMMONIUM / chemistry.N,
    "ammonia": chemistry.AMMONIA / chemistry.N,
    "unknown": 1.0,  # the worse case: no form of the same number holds more nitrogen
}

Reading = Annotated[
    Concentration, Label("Ammonia reading"), Possible(0, 50), Help("The number your kit shows.")
]
ReportedAs = Annotated[
    Literal["nitrogen", "ammonium", "ammonia", "unknown"],
    Label("What the kit reports"),
    Choices(
        (
            "nitrogen, NH₃-N or NH₄-N",
            "ammonium, NH₄⁺",
            "ammonia, NH₃",
            "I don't know what my kit counts",
        )
    ),
    Help("It stands on the kit's card or leaflet."),
    Assumed(),
]


BOUND_IS_COUNTED = Note(
    "info", "Many kits still count ammonia that a conditioner has bound. Its label says so."
)


def total_nitrogen(ammonia_mg_l: float, reported_as: str) -> float:
    """Total ammonia nitrogen of a kit's number, mg N/L."""
    return ammonia_mg_l / READING_PER_N[reported_as]


def unit_notes(reported_as: str) -> tuple[Note, ...]:
    """How to find out what the kit counts, for a keeper who does not know."""
    if reported_as != "unknown":
        return ()
    text = (
        "What the kit counts is not known, so its number is taken as nitrogen, the worse case: as "
        "ammonium or ammonia it would be about a fifth less. Look on the colour card or leaflet for "
        "NH₃-N, NH₄-N or N (nitrogen), NH₄ (ammonium) or NH₃ (ammonia), or ask the maker."
    )
    return (Note("caution", text),)
