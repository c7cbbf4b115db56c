"""Readings of one thing on one day that contradict each other: the worse is taken, and both are named."""

from calculators.core.numbers import show_number
from calculators.core.wording import upper
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.harmful_readings import AmmoniaWater, band_of
from calculators.science.shelf.latest import READ_WITHIN_DAYS, Latest

MOST_STEPS_APART = (
    5  # of a common kit: neither the eye nor a day alone moves a reading further; judgement
)


def contradictions(readings: dict[str, Latest], water: AmmoniaWater) -> list[Latest]:
    """The latest readings that contradict themselves, of those that are not too long ago to count."""
    lately = [one for one in readings.values() if one.age_days <= READ_WITHIN_DAYS]
    return [one for one in lately if contradicts(one, water)]


def contradicts(reading: Latest, water: AmmoniaWater) -> bool:
    """Whether readings lie many steps of the kit apart, or one harms more than another."""
    low, high = min(reading.values), max(reading.values)
    if high - low > MOST_STEPS_APART * READINGS[reading.what].step:
        return True
    bands = {band_of(reading.what, value, water) for value in reading.values}
    return len({(band.level, band.side) for band in bands}) > 1


def contradiction_words(reading: Latest) -> str:
    """Both figures, what was taken, and the way out; a sentence or two."""
    one = READINGS[reading.what]
    low, high = show_number(min(reading.values)), one.words(max(reading.values))
    return (
        f"{upper(one.name)} was read as {low} and as {high} on one day, with no change of water in "
        "between in the log: the worse is taken. Test it again, or log what you did in between."
    )
