"""What a water change aims at, by what is measured, and where a reading can kill."""

from typing import Literal, NamedTuple

from calculators.core.numbers import show_number
from calculators.science.animals.reading_lines import Level, edge_of, standing
from calculators.science.conversions import UG_PER_MG

Substance = Literal["nitrate", "nitrite", "ammonia", "phosphate", "copper", "other"]


class ChangeTarget(NamedTuple):
    """The level in mg/L that a change aims at where the keeper names none, and why.

    ``target`` is None where none can be offered.
    """

    target: float | None
    why: str


# The reading of the table of harmful readings by substance, and how many of its units are 1 mg/L.
READINGS: dict[Substance, tuple[str, float]] = {
    "nitrate": ("nitrate_mg_l", 1),
    "nitrite": ("nitrite_mg_n_l", 1),
    "copper": ("copper_ug_l", UG_PER_MG),
}

NITRATE_HARMS = edge_of("nitrate_mg_l", "harmful_high")
NITRITE_HARMS = edge_of("nitrite_mg_n_l", "harmful_high")
COPPER_HARMS = edge_of("copper_ug_l", "harmful_high")
COPPER_KILLS = edge_of("copper_ug_l", "deadly_high")

TARGETS: dict[Substance, ChangeTarget] = {
    # Common practice, no source; the review is Camargo, Alonso and Salamanca 2005.
    "nitrate": ChangeTarget(
        20,
        "20 mg/L of nitrate, counted as NO₃: common practice. A review of freshwater animals finds that "
        f"{show_number(NITRATE_HARMS)} mg/L can harm sensitive ones over time. A kit that counts "
        "nitrogen reads 4.4 times less: multiply its figure by 4.4 first.",
    ),
    # British Columbia: at most 0.06 mg N/L below 2 mg/L of chloride, 0.60 above 10 (bc-nitrite).
    "nitrite": ChangeTarget(
        NITRITE_HARMS,
        f"{show_number(NITRITE_HARMS)} mg/L of nitrite: British Columbia's highest value in water with "
        "little chloride, counted as nitrogen. Your reading is taken as nitrogen too, which is the worse "
        "case. If the kit's leaflet says NO₂, the same line is 0.2 mg/L: enter that.",
    ),
    # Common practice, no source: it is for algae, not for animals.
    "phosphate": ChangeTarget(
        1,
        "1 mg/L of phosphate, counted as PO₄: common practice, no source. It is no line for animals, "
        "who stand far more.",
    ),
    # Arthur and Leonard 1970: young amphipods grew up at 4.6 µg/L or less, half died at 20 µg/L.
    "copper": ChangeTarget(
        0.004,
        "0.004 mg/L of copper: in a test young amphipods grew up at "
        f"{show_number(COPPER_HARMS / UG_PER_MG)} mg/L or less, and half of the grown "
        f"ones died at {show_number(COPPER_KILLS / UG_PER_MG)}. Few kits read so low: a kit that shows any "
        "copper shows too much for shrimps and snails.",
    ),
    "ammonia": ChangeTarget(
        None,
        "For ammonia no total is a target by itself: how much of it is toxic hangs on pH and warmth.",
    ),
    "other": ChangeTarget(
        None,
        "Enter the reading that you want: for this none is known here.",
    ),
}  # fmt: skip


def level_of(what: Substance, mg_l: float) -> Level:
    """How a reading stands for animals; in range where no line is known, as for ammonia in total."""
    if what not in READINGS:
        return "in-range"
    reading, units_per_mg = READINGS[what]
    return standing(reading, mg_l * units_per_mg).level
