"""Which of a tank's latest readings harm or kill, by the one table of lines; the worst stand first."""

from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.science.animals.reading_lines import IN_RANGE, LINES, Side, Standing, standing
from calculators.science.animals.reading_steps import STEPS
from calculators.science.animals.toxic_lines import ammonia_standing, nitrite_standing
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.latest import READ_WITHIN_DAYS, Latest, ago
from calculators.science.shelf.tank import ShelfTank

AMMONIA, NITRITE = "ammonia_mg_n_l", "nitrite_mg_n_l"
RANK = {"deadly": 0, "harmful": 1}
ORDER = {one: place for place, one in enumerate(STEPS)}  # what kills first stands first


class AmmoniaWater(NamedTuple):
    """The pH and warmth by which ammonia is judged; None is taken at the worse."""

    ph: float | None
    temperature_c: float | None

    def words(self) -> str:
        """What it was judged at, or that the worst was taken."""
        unknown = [name for name, value in (("pH", self.ph), ("temperature", self.temperature_c))
                   if value is None]  # fmt: skip
        known = []
        if self.ph is not None:
            known.append(f"pH {show_number(self.ph)}")
        if self.temperature_c is not None:
            known.append(f"{show_number(self.temperature_c)} °C")
        said = f" at {' and '.join(known)}" if known else ""
        verb = "is" if len(unknown) == 1 else "are"
        worst = f", taking the worst since its {' and '.join(unknown)} {verb} not known"
        return said + (worst if unknown else "")


class ReadingOutside(NamedTuple):
    """A reading that harms or kills: which, at what value, on which side, and how it was judged."""

    reading: Latest
    value: float
    level: str
    side: Side
    judged: str = ""

    @property
    def is_deadly(self) -> bool:
        """Whether it can kill."""
        return self.level == "deadly"

    def words(self) -> str:
        """What was read, when, and what it does, without a capital or a full stop."""
        does = "can kill" if self.is_deadly else "harms many animals over time"
        one = READINGS[self.reading.what]
        figure = f"{show_number(self.value)} {one.unit}".rstrip()
        return f"{one.name} of {figure}, read {ago(self.reading.age_days)}, {does}{self.judged}"


def ammonia_water(tank: ShelfTank, readings: dict[str, Latest]) -> AmmoniaWater:
    """The water by which ammonia is judged: a reading of use, or else the worse of what is known."""
    return AmmoniaWater(*(worse_known(what, tank, readings) for what in ("ph", "temperature_c")))


def worse_known(what: str, tank: ShelfTank, readings: dict[str, Latest]) -> float | None:
    """The higher of a tank's own figure and its reading, or the reading alone while it is of use."""
    reading = readings.get(what)
    if reading and not reading.is_old:
        return reading.value
    known = [getattr(tank, what)]
    if reading and reading.age_days <= READ_WITHIN_DAYS:
        known.append(reading.value)
    return max((value for value in known if value is not None), default=None)


def harms(tank: ShelfTank, readings: dict[str, Latest]) -> list[ReadingOutside]:
    """The latest readings that harm or kill, deadly ones first, then what acts first."""
    water = ammonia_water(tank, readings)
    found = []
    for reading in readings.values():
        worst = min((judged(reading, value, water) for value in reading.values), key=rank)
        if worst.level in RANK:
            found.append(worst)
    return sorted(found, key=lambda harm: (rank(harm), order(harm)))


def judged(reading: Latest, value: float, water: AmmoniaWater) -> ReadingOutside:
    """One value by its lines."""
    band = band_of(reading.what, value, water)
    return ReadingOutside(reading, value, band.level, band.side,
                water.words() if reading.what == AMMONIA else "")  # fmt: skip


def band_of(what: str, value: float, water: AmmoniaWater) -> Standing:
    """The band of a value; in range where there is no line for such a thing."""
    if what == AMMONIA:
        return ammonia_standing(value, water.ph, water.temperature_c)
    if what == NITRITE:
        return nitrite_standing(value)
    return standing(what, value) if what in LINES else IN_RANGE


def rank(harm: ReadingOutside) -> int:
    """How bad it is, the worst 0."""
    return RANK.get(harm.level, len(RANK))


def order(harm: ReadingOutside) -> int:
    """The place among readings that are as bad."""
    return ORDER.get((harm.reading.what, harm.side), len(ORDER))
