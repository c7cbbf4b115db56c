"""How the water's warmth stands for the animals in it: by their own range, and by what kills nearly all."""

from collections.abc import Sequence
from typing import Literal

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.science.animals.animal_table import ANIMALS, AnimalEntry, shown_name
from calculators.science.animals.reading_lines import standing
from calculators.science.animals.reading_words import WARMTH_STEP
from calculators.science.animals.stock_totals import Stocked

SOON = (
    "Animals already in it: bring it back into that range over a day. "
    "No animals yet: set it before you buy."
)
FAR_C = 3.0  # beyond a kind's own range: harm that does not wait; common practice, no source
TOO_WARM = (
    f"Animals already in it: switch off heater and lamp, add air, and cool by about {WARMTH_STEP} an hour, "
    "no faster. No animals yet: put in none."
)  # common practice, no source
TOO_COLD = (
    "Animals already in it: see whether the heater works, pull its plug before your hands go in, and "
    f"warm by about {WARMTH_STEP} an hour, no faster. No animals yet: put in none."
)  # common practice, no source


def beyond(kind: AnimalEntry, temperature_c: float) -> float:
    """Degrees outside the kind's own range; 0 within it."""
    return max(kind.temperature_low - temperature_c, temperature_c - kind.temperature_high, 0.0)


def warmth_level(kind: AnimalEntry, temperature_c: float) -> Literal["caution", "danger"] | None:
    """How bad the warmth is for one kind; its own range wins over the general line, not over death."""
    if standing("temperature_c", temperature_c).level == "deadly":
        inside = beyond(kind, temperature_c) == 0
        return "caution" if inside else "danger"
    far = beyond(kind, temperature_c)
    if far == 0:
        return None
    return "danger" if far >= FAR_C else "caution"


def warmth_step(kind: AnimalEntry, temperature_c: float) -> str:
    """What to do where the warmth is outside a kind's own range; empty where it is not."""
    level = warmth_level(kind, temperature_c)
    if level is None:
        return ""
    middle = (kind.temperature_low + kind.temperature_high) / 2
    return SOON if level == "caution" else TOO_WARM if temperature_c > middle else TOO_COLD


def worst_warmth(
    animals: Sequence[Stocked], temperature_c: float
) -> Literal["caution", "danger"] | None:
    """The worst over all kinds that are there."""
    levels = {warmth_level(ANIMALS[group.kind], temperature_c) for group in animals if group.count_}
    if "danger" in levels:
        return "danger"
    return "caution" if "caution" in levels else None


def warmth_notes(animals: Sequence[Stocked], temperature_c: float) -> list[Note]:
    """A note for each kind that is too warm or too cold, and what to do."""
    notes: list[Note] = []
    for key in dict.fromkeys(group.kind for group in animals if group.count_):
        kind = ANIMALS[key]
        level = warmth_level(kind, temperature_c)
        if level is None:
            continue
        far = ", far enough to harm or kill it" if level == "danger" else ""
        text = (
            f"{shown_name(key)} is kept at {show_number(kind.temperature_low)} to "
            f"{show_number(kind.temperature_high)} °C; {show_number(temperature_c)} °C is outside{far}. "
            f"{warmth_step(kind, temperature_c)}"
        )
        notes.append(Note(level, text, first=True))
    return sorted(notes, key=lambda note: note.level != "danger")
