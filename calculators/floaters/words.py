"""What the floaters calculator says beside its figures."""

import math

from calculators.core.figures import figure
from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.core.wording import CUTTINGS
from calculators.floaters.floater_table import FloatingPlant
from calculators.floaters.outputs import AreaByEye, DaysByEye, DoublingUsed, ShareByEye
from calculators.floaters.thinning import NOW_DAYS, Thinning, ThinningPlan
from calculators.science.growth.closed_surface import closed_surface


def notes(cover: float, rhythm: ThinningPlan, thinning: Thinning, room_cm2: float) -> list[Note]:
    """What to do and when, whether the rhythm holds, and what a closed surface does to the animals.

    The ``cover`` is in percent of the room, which is in cm².
    """
    parts = []
    if thinning.now:
        parts.append(thin_now(cover, rhythm, thinning, room_cm2))
    if rhythm.grown > rhythm.high:
        parts.append(too_seldom(rhythm))
    if not parts:
        parts.append(holds(rhythm, thinning))
    if thinning.now and thinning.steps > 1:
        parts.append(in_steps(thinning, room_cm2))
    return [*parts, *closed_surface(max(rhythm.high, cover)), CUTTINGS]


def thin_now(cover: float, rhythm: ThinningPlan, thinning: Thinning, room_cm2: float) -> Note:
    """What to take out today, and why. The ``cover`` is in percent of the room, which is in cm²."""
    if cover > rhythm.high:
        why = "the cover is over its upper limit"
    elif cover == rhythm.high:
        why = "the cover is at its upper limit"
    elif rhythm.days_to_high(cover) <= NOW_DAYS:
        why = "the cover reaches its upper limit within a day"
    else:
        why = "it has grown as far as your rhythm lets it"
    text = (
        f"Thin today: {why}. Take out {figure(AreaByEye, room_cm2 * thinning.removed / 100)} cm², from "
        f"{figure(ShareByEye, cover)} down to {figure(ShareByEye, rhythm.low)} %."
    )
    return Note("caution", text, True)


def in_steps(thinning: Thinning, room_cm2: float) -> Note:
    """How to take out much of a cover that animals are used to."""
    each = figure(AreaByEye, room_cm2 * thinning.removed / 100 / thinning.steps)
    text = (
        f"Where animals are used to the shade, do it in {thinning.steps} steps of about {each} cm², two or "
        "three days apart: sudden light frightens them (common practice, no source)."
    )
    return Note("caution", text, True)


def too_seldom(rhythm: ThinningPlan) -> Note:
    """How often it takes, in whole days and never later than the upper limit comes."""
    days = math.floor(rhythm.longest) if rhythm.longest >= 1 else rhythm.longest
    every = "every day" if days == 1 else f"every {figure(DaysByEye, days)} days"
    text = f"With this rhythm it passes the upper limit before each thinning. Thin {every}, or down to less."
    return Note("caution", text, True)


def holds(rhythm: ThinningPlan, thinning: Thinning) -> Note:
    """The answer where the rhythm holds and nothing is due yet."""
    share = figure(ShareByEye, 100 * thinning.removed / thinning.cover)
    text = (
        f"The rhythm holds: thin in about {figure(DaysByEye, thinning.due_days)} days, then every "
        f"{show_number(rhythm.every)}. Take out {share} % of the cover each time."
    )
    return Note("info", text, True)


def from_record(
    plant: FloatingPlant | None, doubling: float | None, wet: float | None, dry_matter: float
) -> list[Note]:
    """Which figures the record gave; ``doubling`` and ``wet`` are those, None where the keeper's stand.

    They are in days and in g/m²; ``dry_matter`` is in percent of the wet mass.
    """
    notes = []
    if plant and plant.doubling_days and doubling is not None:
        span = plant.doubling_days
        text = (
            f"Doubling time: {figure(DoublingUsed, doubling)} days, the middle of {show_number(span.low)} to "
            f"{show_number(span.high)} in the record of {plant.name} ({span.sure}). Time it in your tank."
        )
        notes.append(Note("info", text))
    if wet is not None:
        notes.append(wet_note(plant, wet, dry_matter))
    return notes


def wet_note(plant: FloatingPlant | None, wet: float, dry_matter: float) -> Note:
    """Where the wet mass at full cover comes from.

    The ``wet`` mass is in g/m², ``dry_matter`` in percent of it.
    """
    span = plant and (plant.layer_dry_g_m2 or plant.mat_dry_g_m2)
    if plant is None or span is None:
        text = (
            f"Wet mass at full cover: {show_number(wet, 2)} g/m², our guess. Weigh what you lift from a "
            "known area."
        )
        return Note("info", text)
    what = "one closed layer, from" if plant.layer_dry_g_m2 else "from"
    text = (
        f"Wet mass at full cover: {show_number(wet, 2)} g/m², {what} the middle of "
        f"{show_number(span.low)} to {show_number(span.high)} g dry in the record of {plant.name} "
        f"({span.sure}) at {show_number(dry_matter)} % dry matter."
    )
    return Note("info", text)
