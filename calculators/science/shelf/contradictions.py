"""Readings of one thing on one day that contradict each other: the worse is taken, and both are named."""

from calculators.core.numbers import show_number
from calculators.core.wording import upper
from calculators.science.animals.animal_table import ANIMALS
from calculators.science.animals.animal_warmth import beyond
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.harmful_readings import AmmoniaWater, ReadingOutside, band_of
from calculators.science.shelf.latest import READ_WITHIN_DAYS, Latest

MOST_STEPS_APART = (
    5  # of a common kit: neither the eye nor a day alone moves a reading further; judgement
)

WAYS_OUT = (
    "of one day contradict: did you change water, top up or dose between the two? Log that with its time, "
    "before the later reading. Else test again, and take the reading that was wrong out of the log. Until "
    "then do as for the worse; a reading of another day counts alone."
)


def contradictions(
    readings: dict[str, Latest], water: AmmoniaWater, found: list[ReadingOutside]
) -> list[Latest]:
    """The latest readings that contradict themselves, of those that are not too long ago to count.

    ``found`` are those that harm.
    """
    own = {harm.reading.what: harm.kind for harm in found if harm.kind}
    lately = [one for one in readings.values() if one.age_days <= READ_WITHIN_DAYS]
    return [one for one in lately if contradicts(one, water) or is_half_outside(one, own)]


def is_half_outside(reading: Latest, own: dict[str, str]) -> bool:
    """Whether one reading lies outside the range of a kind of this tank and another does not."""
    kind = own.get(reading.what)
    return kind is not None and any(beyond(ANIMALS[kind], value) == 0 for value in reading.values)


def contradicts(reading: Latest, water: AmmoniaWater) -> bool:
    """Whether readings lie many steps of the kit apart, or one harms more than another."""
    low, high = min(reading.values), max(reading.values)
    if high - low > MOST_STEPS_APART * READINGS[reading.what].step:
        return True
    bands = {band_of(reading.what, value, water) for value in reading.values}
    return len({(band.level, band.side) for band in bands}) > 1


def contradiction_words(reading: Latest) -> str:
    """Both figures, what was taken, and the next step; a sentence or two."""
    one = READINGS[reading.what]
    low, high = show_number(min(reading.values)), one.words(max(reading.values))
    return (
        f"{upper(one.name)} was read as {low} and as {high} on one day, with no change of water in "
        "between in the log: the worse is taken, whichever came later. Test it again."
    )


def way_out_words(reading: Latest) -> str:
    """What to log, or to take out, so that the readings agree."""
    return f"Two readings of {READINGS[reading.what].name} {WAYS_OUT}"
