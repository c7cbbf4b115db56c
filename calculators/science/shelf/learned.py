"""What a tank's own log teaches: how often its plants are really cut, and how fast they grow here."""

import math
from itertools import pairwise
from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.science.shelf.entries import GRAMS, Entry
from calculators.science.shelf.log import Dated, Log
from calculators.science.shelf.recorded_plants import plant_name
from calculators.science.shelf.shelf_tank import PlantHeld, ShelfTank
from calculators.science.trends.stretches import Change, DatedReading, into_stretches
from calculators.science.trends.theil_sen import median, theil_sen

LEAST_GAPS = 2  # between cuts: from three cuts on an interval can be told; judgement
LEAST_PAIRS = 3
LEAST_COVER, MOST_COVER = 5.0, 90.0  # percent: below and beyond, cover does not double freely
LEAST_GAP_DAYS = 1.0  # two entries of one day are one round
LEARNED_DIGITS = 2  # of what is worked out from the log


class Learned(NamedTuple):
    """What was learned of one plant: days between cuts, and days in which it doubles; None where not."""

    plant: str
    every_days: float | None
    doubling_days: float | None
    last: Dated | None


def learned_of(held: PlantHeld, log: Log) -> Learned:
    """What the log teaches of one plant of the tank."""
    cuts = rounds([one for one in log.of("trim", "thin") if is_of(one.entry, held.plant)])
    gaps = [later.days - one.days for one, later in pairwise(cuts)]
    every = median(sorted(gaps)) if len(gaps) >= LEAST_GAPS else None
    return Learned(
        held.plant,
        every,
        doubling(held, left_after_cut(held, log), cuts, gaps),
        cuts[-1] if cuts else None,
    )


def is_of(entry: Entry, plant: str) -> bool:
    """Whether a cut was of this plant; one that names none was of all."""
    return entry.what in (None, plant)


def rounds(cuts: list[Dated]) -> list[Dated]:
    """Cuts at least a day apart: what was cut on one day is one round, its weights added up."""
    made: list[Dated] = []
    for one in cuts:
        if made and one.days - made[-1].days < LEAST_GAP_DAYS:
            both = made[-1].value + one.value
            made[-1] = made[-1]._replace(entry=made[-1].entry._replace(value=both or None))
        else:
            made.append(one)
    return made


def left_after_cut(held: PlantHeld, log: Log) -> float | None:
    """What a cut leaves of a plant, g wet: as listed, with what was put in and taken out since."""
    return log.left_g.get(held.plant, held.wet_g)


def doubling(
    held: PlantHeld, left_g: float | None, cuts: list[Dated], gaps: list[float]
) -> float | None:
    """The days in which a plant doubles, from what was cut off what is kept.

    Cut back to a mass M (``left_g``) each time, it grew from M to M + cut in between:
    gap · ln 2 / ln(1 + cut/M). The median over the gaps; None where a weight is missing or there are too few.
    """
    if not left_g or len(gaps) < LEAST_GAPS:
        return None
    found = [
        gap * math.log(2) / math.log1p(cut.value / left_g)
        for gap, cut in zip(gaps, cuts[1:], strict=True)
        if cut.value > 0 and cut.entry.what == held.plant
    ]
    return median(sorted(found)) if len(found) >= LEAST_GAPS else None


def cover_doubling(log: Log) -> float | None:
    """The days in which the floating cover doubles, by the slope of its logarithm between thinnings."""
    points = {
        round(one.days, 2): math.log(one.value)
        for one in log.readings("cover_percent")
        if LEAST_COVER <= one.value <= MOST_COVER
    }
    readings = [DatedReading(day, value) for day, value in points.items()]
    cuts = [Change(one.days, 100.0) for one in log.of("thin")]
    slope = theil_sen(into_stretches(readings, cuts))
    if slope is None or slope.pairs < LEAST_PAIRS or slope.middle <= 0:
        return None
    return math.log(2) / slope.middle


def learned_sentences(tank: ShelfTank, log: Log) -> list[str]:
    """What was learned, a sentence each."""
    said = []
    for held in tank.plants or []:
        one, name = learned_of(held, log), plant_name(held.plant)
        if one.doubling_days is not None:
            days = show_number(one.doubling_days, LEARNED_DIGITS)
            mass = GRAMS.words(left_after_cut(held, log) or 0.0)
            said.append(f"Your {name} doubles in about {days} days here, "
                        f"if each cut leaves the {mass} of this tank's list.")  # fmt: skip
        elif one.every_days is not None:
            said.append(
                f"You cut {name} about every {show_number(one.every_days, LEARNED_DIGITS)} days."
            )
    if (cover := cover_doubling(log)) is not None:
        said.append(
            f"Your floating cover doubles in about {show_number(cover, LEARNED_DIGITS)} days here."
        )
    return said
