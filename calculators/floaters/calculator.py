"""Floating cover: its growth, its thinning, and the light it leaves."""

import math
from typing import Annotated

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow
from calculators.core.leads import Lead
from calculators.core.quantities import (
    Cover,
    DailyLight,
    DoublingTime,
    DryMatter,
    Interval,
    Length,
    Percent,
    RingCount,
    TissueNitrogen,
    WetMassPerArea,
)
from calculators.core.quantity import Assumed, Help, Keys, Label, Possible, Valid
from calculators.core.result import Refusal, Refused
from calculators.floaters.floater_table import PLANTS, shown_name, usual_doubling, usual_wet_g_m2
from calculators.floaters.outputs import Floaters
from calculators.floaters.ring_fit import largest_ring, most_rings
from calculators.floaters.thinning import ThinningPlan, next_thinning, saw
from calculators.floaters.words import from_record, notes
from calculators.science.conversions import CM2_PER_M2
from calculators.science.light.lit_doubling import light_notes, lit_doubling

LEAST_COVER = 0.1  # percent; growth from nothing has no time
EXAMPLE_PLANT = "salvinia-minima"
BOOK = Keys(tuple(PLANTS), tuple(map(shown_name, PLANTS)))


LEAST_RING_CM = 1.0  # common practice: the ring of a bottle's neck

SIZE_ROW = "Inside size"
LIMITS_ROW = "Keep the cover between"
GROWTH_ROW = "The floater, or how fast it grows"


@calculator(
    "Floaters",
    sources=("reddy-debusk-1985", "organic-waste-recycling"),
    leads_to=(
        Lead(
            "trimmings",
            "What this thinning takes out",
            {
                "wet_g": "removed_wet_g",
                "dry_matter_percent": "dry_matter_percent",
                "tissue_n_percent": "tissue_n_percent",
            },
            needs=("removed_wet_g",),
        ),
    ),
)
def floaters(
    length_cm: Annotated[Length, Label("Tank length, inside"), InRow(SIZE_ROW, "Length")] = 80.0,
    width_cm: Annotated[Length, Label("Tank width, inside"), InRow(SIZE_ROW, "Width")] = 35.0,
    ring_diameter_cm: Annotated[
        Length,
        Label("Ring that holds the floaters"),
        Possible(0, 1_000),
        Help("Its inner diameter; 0 if they may go everywhere."),
        Assumed(),
        FINER,
    ] = 0.0,
    cover_percent: Annotated[
        Cover,
        Label("Cover now"),
        Possible(LEAST_COVER, 100),
        Help("Share of their room, as you see it from above."),
    ] = 40.0,
    doubling_days: Annotated[
        DoublingTime | None,
        Help(
            "How long half the cover takes to become all of it. Empty: the middle of the plant's record."
        ),
        InRow(GROWTH_ROW),
    ] = None,
    low_percent: Annotated[
        Cover,
        Label("Thin down to"),
        Possible(LEAST_COVER, 100),
        Help("Share of their room."),
        Assumed(),
        InRow(LIMITS_ROW),
    ] = 30.0,
    high_percent: Annotated[
        Cover,
        Label("Upper limit"),
        Possible(LEAST_COVER, 100),
        Help("Share of their room."),
        Assumed(),
        InRow(LIMITS_ROW),
    ] = 60.0,
    thin_every_days: Annotated[Interval, Label("Thin every")] = 7.0,
    wet_g_m2: Annotated[
        WetMassPerArea | None,
        Help("A single layer of small floaters, drained. Empty: from the plant's record."),
        FINER,
    ] = None,
    dry_matter_percent: Annotated[DryMatter, Valid(5, 10), FINER, Assumed()] = 6.0,
    tissue_n_percent: Annotated[TissueNitrogen, Valid(0.6, 5.3), FINER, Assumed()] = 3.0,
    transmission_percent: Annotated[
        Percent,
        Label("Light through a full cover"),
        Help("Dense mats 2 to 10, thin ones 10 to 40: a guess."),
        FINER,
        Assumed(),
    ] = 10.0,
    ring_count: Annotated[
        RingCount,
        Label("How many such rings"),
        Help("Side by side; counts only with a ring."),
        Assumed(),
        FINER,
    ] = 1,
    plant: Annotated[
        str | None,
        BOOK,
        Label("Plant"),
        Help("Gives the doubling time and the mass where you leave them empty."),
        InRow(GROWTH_ROW),
    ] = EXAMPLE_PLANT,
    dli_mol: Annotated[
        DailyLight | None,
        Label("Daily light at the surface"),
        Possible(0.1, 100),
        Help("From the light calculator. Empty: a middling lamp, where the book gives the growth."),
        FINER,
    ] = None,
) -> Floaters:
    """Find how fast floaters close the surface, how much to take out, and the light that is left.

    Cover doubles in the time given until it fills its room; crowding slows it near the end, so a
    mat that is almost closed takes longer than this says. A thinning takes the cover back to the
    lower limit: from what it is now, where it is due within a day, else from what the lower limit has
    grown to. Cover and limits are shares of the room that the
    floaters have: inside the ring or rings, or the whole surface. Light is the mean over the whole
    surface. With a plant of the book its record stands in for a doubling time and a mass that are left empty.
    """
    check(length_cm, width_cm, ring_diameter_cm, ring_count, low_percent, high_percent)
    kind = PLANTS[plant] if plant else None
    usual = usual_doubling(kind) if kind else None
    doubling = doubling_days if doubling_days is not None else usual
    if doubling is None:
        raise Refused(*neither_time_nor_plant())
    wet_g_m2_used = wet_g_m2 or usual_wet_g_m2(plant, dry_matter_percent)
    capped = lit_doubling(
        doubling, wet_g_m2_used * dry_matter_percent / 100, dli_mol, own=doubling_days is not None
    )
    doubling = capped.doubling_days
    rhythm = ThinningPlan(low_percent, high_percent, thin_every_days, doubling)
    thinning = next_thinning(cover_percent, rhythm)
    surface = length_cm * width_cm
    in_rings = ring_count * math.pi / 4 * ring_diameter_cm**2
    allowed = in_rings if ring_diameter_cm else surface
    remove_cm2 = allowed * thinning.removed / 100
    wet_g = remove_cm2 / CM2_PER_M2 * wet_g_m2_used
    shade = (1 - transmission_percent / 100) * allowed / surface  # of a fully covered room
    return Floaters(
        surface_cm2=surface,
        allowed_cm2=allowed,
        covered_cm2=allowed * cover_percent / 100,
        days_to_high=rhythm.days_to_high(cover_percent),
        thin_in_days=0.0 if thinning.now else thinning.due_days,
        remove_percent=100 * thinning.removed / thinning.cover,
        remove_cm2=remove_cm2,
        steps=thinning.steps,
        removed_wet_g=wet_g,
        removed_n_mg=wet_g * dry_matter_percent * tissue_n_percent / 10,
        light_left_percent=100 - shade * cover_percent,
        light_left_percent_at_high=100 - shade * high_percent,
        doubling_used_days=doubling,
        wet_used_g_m2=wet_g_m2_used,
        notes=(
            *notes(cover_percent, rhythm, thinning, allowed),
            *light_notes(capped),
            *from_record(
                kind,
                usual if doubling_days is None else None,
                None if wet_g_m2 else wet_g_m2_used,
                dry_matter_percent,
            ),
        ),
        series={"cover": saw(cover_percent, rhythm)},
    )


def neither_time_nor_plant() -> tuple[Refusal, ...]:
    """The refusal for a form with neither a doubling time nor a plant of which one is known."""
    why = "give the doubling time, or the plant, whose record has one"
    return (
        Refusal("doubling_days", why, 0.5, 1_000),
        Refusal("plant", why, choices=tuple(PLANTS)),
    )


def check(length: float, width: float, ring: float, rings: int, low: float, high: float) -> None:
    """Refuse what cannot be: limits the wrong way round, rings that do not fit side by side.

    Here ``length``, ``width`` and the diameter of a ``ring`` are in cm, ``low`` and ``high`` in percent
    of the room. Raises ``Refused`` with every field that is wrong.
    """
    wrong = []
    if low >= high:
        why = "the lower limit must be below the upper one"
        wrong.append(Refusal("low_percent", why, LEAST_COVER, high))
    if 0 < ring < LEAST_RING_CM:
        why = "a ring so small holds no floaters; 0 stands for none"
        wrong.append(Refusal("ring_diameter_cm", why, LEAST_RING_CM, min(length, width)))
    elif ring > min(length, width):
        why = "the ring does not fit into the tank"
        wrong.append(Refusal("ring_diameter_cm", why, 0, min(length, width)))
    elif ring and rings > (most := most_rings(length, width, ring)):
        why = "so many rings of that size do not fit side by side"
        wrong.append(Refusal("ring_count", why, 1, most))
        wrong.append(Refusal("ring_diameter_cm", why, 0, largest_ring(length, width, rings)))
    if wrong:
        raise Refused(*wrong)
