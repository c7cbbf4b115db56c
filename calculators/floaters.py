"""Floating cover: its growth, its thinning, and the light it leaves."""

import math
from typing import Annotated, NamedTuple

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER
from calculators.core.numbers import show_number
from calculators.core.quantities import (
    Area,
    Cover,
    Days,
    DoublingTime,
    DryMatter,
    ElementMass,
    Interval,
    Length,
    LightLeft,
    Percent,
    RingCount,
    TissueNitrogen,
    WetMass,
    WetMassPerArea,
)
from calculators.core.quantity import Help, Label, Possible, Valid
from calculators.core.result import Line, Note, Refusal, Refused, Series
from calculators.core.wording import CUTTINGS
from calculators.surface.ring_fit import largest_ring, most_rings

CM2_PER_M2 = 10_000
LEAST_COVER = 0.1  # percent; growth from nothing has no time
SHOWN_DAYS = 56
CLOSED_PERCENT = 80  # common practice, no source: above it gas exchange and light suffer


class Floaters(NamedTuple):
    """What the cover is, what to take out, and the light below."""

    surface_cm2: Annotated[Area, Label("Water surface")]
    allowed_cm2: Annotated[
        Area, Label("Room for floaters"), Help("Inside the rings, or the whole surface.")
    ]
    covered_cm2: Annotated[Area, Label("Covered now")]
    days_to_high: Annotated[Days | None, Label("Until the upper limit")]
    remove_percent: Annotated[
        Percent, Label("Take out at each thinning"), Help("Of the cover then present.")
    ]
    remove_cm2: Annotated[Area, Label("Area to take out")]
    removed_wet_g: Annotated[WetMass, Label("Taken out, wet")]
    removed_n_mg: Annotated[ElementMass, Label("Nitrogen taken out each time")]
    light_left_percent: Annotated[
        LightLeft, Label("Light below, now"), Help("Mean over the whole surface.")
    ]
    light_left_percent_at_high: Annotated[LightLeft, Label("Light below, at the upper limit")]
    notes: tuple[Note, ...]
    series: dict[str, Series]


@calculator("Floaters", sources=("reddy-debusk-1985", "organic-waste-recycling"))
def floaters(
    length_cm: Annotated[Length, Label("Tank length, inside")] = 80.0,
    width_cm: Annotated[Length, Label("Tank width, inside")] = 35.0,
    ring_diameter_cm: Annotated[
        Length,
        Label("Ring that holds the floaters"),
        Possible(0, 1_000),
        Help("Its inner diameter; 0 if they may go everywhere."),
    ] = 0.0,
    cover_percent: Annotated[
        Cover,
        Label("Cover now"),
        Possible(LEAST_COVER, 100),
        Help("Share of their room, as you see it from above."),
    ] = 40.0,
    doubling_days: Annotated[
        DoublingTime,
        Help("How long half the cover takes to become all of it. Time it in your tank."),
    ] = 7.0,
    low_percent: Annotated[
        Cover, Label("Thin down to"), Possible(LEAST_COVER, 100), Help("Share of their room.")
    ] = 30.0,
    high_percent: Annotated[
        Cover, Label("Upper limit"), Possible(LEAST_COVER, 100), Help("Share of their room.")
    ] = 60.0,
    thin_every_days: Annotated[Interval, Label("Thin every")] = 7.0,
    wet_g_m2: Annotated[
        WetMassPerArea,
        Help("A single layer of small floaters, drained, weighs 600 to 2,000."),
        FINER,
    ] = 1_000.0,
    dry_matter_percent: Annotated[DryMatter, Valid(5, 10), FINER] = 6.0,
    tissue_n_percent: Annotated[TissueNitrogen, Valid(0.6, 5.3), FINER] = 3.0,
    transmission_percent: Annotated[
        Percent,
        Label("Light through a full cover"),
        Help("Dense mats 2 to 10, thin ones 10 to 40: a guess."),
        FINER,
    ] = 10.0,
    ring_count: Annotated[
        RingCount, Label("How many such rings"), Help("Side by side; counts only with a ring.")
    ] = 1,
) -> Floaters:
    """Find how fast floaters close the surface, how much to take out, and the light that is left.

    Cover doubles in the time given until it fills its room; crowding slows it near the end, so a
    mat that is almost closed takes longer than this says. Each thinning takes the cover from what it has
    grown to back to the lower limit. Cover and limits are shares of the room that the floaters
    have: inside the ring or rings, or the whole surface. Light is the mean over the whole surface.
    """
    check(length_cm, width_cm, ring_diameter_cm, ring_count, low_percent, high_percent)
    surface = length_cm * width_cm
    in_rings = ring_count * math.pi / 4 * ring_diameter_cm**2
    allowed = in_rings if ring_diameter_cm else surface
    grown = min(100.0, low_percent * 2 ** (thin_every_days / doubling_days))
    remove_cm2 = allowed * (grown - low_percent) / 100
    wet_g = remove_cm2 / CM2_PER_M2 * wet_g_m2
    shade = (1 - transmission_percent / 100) * allowed / surface  # of a fully covered room
    return Floaters(
        surface_cm2=surface,
        allowed_cm2=allowed,
        covered_cm2=allowed * cover_percent / 100,
        days_to_high=max(0.0, doubling_days * math.log2(high_percent / cover_percent)),
        remove_percent=100 * (1 - low_percent / grown),
        remove_cm2=remove_cm2,
        removed_wet_g=wet_g,
        removed_n_mg=wet_g * dry_matter_percent * tissue_n_percent / 10,
        light_left_percent=100 - shade * cover_percent,
        light_left_percent_at_high=100 - shade * high_percent,
        notes=tuple(
            notes(cover_percent, low_percent, high_percent, grown, thin_every_days, doubling_days)
        ),
        series={
            "cover": saw(cover_percent, low_percent, high_percent, thin_every_days, doubling_days)
        },
    )


def check(length: float, width: float, ring: float, rings: int, low: float, high: float) -> None:
    """Refuse what cannot be: limits the wrong way round, rings that do not fit side by side."""
    wrong = []
    if low >= high:
        why = "the lower limit must be below the upper one"
        wrong.append(Refusal("low_percent", why, LEAST_COVER, high))
    if ring > min(length, width):
        why = "the ring does not fit into the tank"
        wrong.append(Refusal("ring_diameter_cm", why, 0, min(length, width)))
    elif ring and rings > (most := most_rings(length, width, ring)):
        why = "so many rings of that size do not fit side by side"
        wrong.append(Refusal("ring_count", why, 1, most))
        wrong.append(Refusal("ring_diameter_cm", why, 0, largest_ring(length, width, rings)))
    if wrong:
        raise Refused(*wrong)


def saw(cover: float, low: float, high: float, every: float, doubling: float) -> Series:
    """Cover day by day, thinned back to the lower limit at each interval."""
    days, covers = [0.0], [cover]
    next_thinning = every
    step = min(1.0, every / 4)
    while days[-1] < SHOWN_DAYS:
        until = min(days[-1] + step, next_thinning)
        cover = min(100.0, cover * 2 ** ((until - days[-1]) / doubling))
        days.append(until)
        covers.append(cover)
        if until >= next_thinning:
            if cover > low:
                cover = low
                days.append(until)
                covers.append(cover)
            next_thinning += every
    lines = (Line("thin down to this", low), Line("thin at this", high))
    return Series("Cover", "%", "Day", "days", days, covers, lines=lines)


def verdict(
    cover: float, low: float, high: float, grown: float, every: float, doubling: float
) -> Note:
    """The answer in plain words, where the rhythm holds."""
    left = show_number(doubling * math.log2(high / cover), 2)
    taken = show_number(100 * (1 - low / grown), 2)
    text = (
        f"The rhythm holds: take out {taken} % of the cover every {show_number(every)} days. Left "
        f"alone, it reaches the upper limit in about {left} days."
    )
    return Note("info", text, True)


def notes(
    cover: float, low: float, high: float, grown: float, every: float, doubling: float
) -> list[Note]:
    """Whether the rhythm holds, and what a closed surface does to the animals."""
    said = []
    if cover >= high:
        said.append(Note("caution", "The cover is at its upper limit now: thin it today.", True))
    if grown > high:
        enough = doubling * math.log2(high / low)
        said.append(
            Note(
                "caution",
                f"With this rhythm it passes the upper limit before each thinning. Thin every "
                f"{enough:.1f} days, or down to less.",
                True,
            )
        )
    if not said:
        said.append(verdict(cover, low, high, grown, every, doubling))
    if max(high, cover) > CLOSED_PERCENT:
        said.append(
            Note(
                "caution",
                "A closed mat shuts out light and slows the air's way into the water. Keep part of the "
                "surface open, and watch the animals at dawn, when oxygen is lowest.",
            )
        )
    return [*said, CUTTINGS]
