"""Which of a tank's latest readings harm or kill, by the one table of lines; the worst stand first."""

from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.science.animals.animal_table import ANIMALS, shown_name
from calculators.science.animals.animal_warmth import beyond
from calculators.science.animals.reading_lines import IN_RANGE, LINES, Side, Standing, standing
from calculators.science.animals.reading_steps import STEPS
from calculators.science.animals.toxic_lines import ammonia_acts, ammonia_standing, nitrite_standing
from calculators.science.shelf.both_units import span_in_both
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.freshest import MAKES_TOXIC, figure_now
from calculators.science.shelf.latest import READ_WITHIN_DAYS, Latest
from calculators.science.shelf.shelf_tank import ShelfTank

AMMONIA, NITRITE, WARMTH = "ammonia_mg_n_l", "nitrite_mg_n_l", "temperature_c"
OXYGEN = "oxygen_mg_l"
FALLS_BY_NIGHT = ", and falls further by night"
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
            known.append(READINGS["temperature_c"].words(self.temperature_c))
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
    kind: str = (
        ""  # the animal, by key, whose own range it lies outside of; empty where it harms many
    )
    is_for_today: bool = False  # ammonia over its limit for lasting exposure

    @property
    def is_deadly(self) -> bool:
        """Whether it can kill."""
        return self.level == "deadly"

    @property
    def acts_at_once(self) -> bool:
        """Whether it asks for a step now: what can kill, ammonia to act on, nitrite from its one line on."""
        is_nitrite = self.level in RANK and self.reading.what == NITRITE
        return self.is_deadly or self.is_for_today or is_nitrite

    def words(self) -> str:
        """What was read, when, and what it does, without a capital or a full stop."""
        slowly = "" if self.acts_at_once else " over time"
        slowly += FALLS_BY_NIGHT if self.reading.what == OXYGEN and slowly else ""
        does = "can kill" if self.is_deadly else f"harms many animals{slowly}"
        if self.kind:
            does = f"is outside the {range_of(self.kind)} at which {shown_name(self.kind)} is kept"
        one = READINGS[self.reading.what]
        read = f"{one.words(self.value)}, {self.reading.when}"
        return f"{one.name} of {read}, {does}{self.judged}"


def ammonia_water(tank: ShelfTank, readings: dict[str, Latest]) -> AmmoniaWater:
    """The water by which ammonia is judged: the freshest known, the worse where that is not sure."""
    lately = {what: one for what, one in readings.items() if one.age_days <= READ_WITHIN_DAYS}
    return AmmoniaWater(*(figure_now(what, tank, lately) for what in MAKES_TOXIC))


def harms(tank: ShelfTank, readings: dict[str, Latest]) -> list[ReadingOutside]:
    """The latest readings that harm or kill, deadly ones first, then what acts first."""
    water = ammonia_water(tank, readings)
    found = []
    for reading in readings.values():
        worst = min((judged(reading, value, water) for value in reading.values), key=rank)
        if worst.level in RANK:
            found.append(worst)
    if WARMTH in readings and not any(harm.reading.what == WARMTH for harm in found):
        found += outside_own_range(tank, readings[WARMTH])
    return worst_first(found)


def worst_first(found: list[ReadingOutside]) -> list[ReadingOutside]:
    """Deadly ones first, then what acts first."""
    return sorted(found, key=lambda harm: (rank(harm), order(harm)))


def outside_own_range(tank: ShelfTank, reading: Latest) -> list[ReadingOutside]:
    """Warmth that most animals bear, but not a kind of this tank; the one that is farthest outside."""
    kinds = [held.animal for held in tank.animals or [] if held.animal in ANIMALS]
    worst = max(
        ((beyond(ANIMALS[kind], value), value, kind) for kind in kinds for value in reading.values),
        default=(0.0, 0.0, ""),
    )
    far, value, kind = worst
    if far == 0:
        return []
    side: Side = "high" if value > ANIMALS[kind].temperature_high else "low"
    return [ReadingOutside(reading, value, "harmful", side, kind=kind)]


def range_of(kind: str) -> str:
    """The warmth at which a kind is kept, in both scales."""
    one, animal = READINGS[WARMTH], ANIMALS[kind]
    return span_in_both(animal.temperature_low, animal.temperature_high, one.unit, one.us)


def judged(reading: Latest, value: float, water: AmmoniaWater) -> ReadingOutside:
    """One value by its lines. The ``value`` is in the unit of the reading."""
    band = band_of(reading.what, value, water)
    if reading.what != AMMONIA:
        return ReadingOutside(reading, value, band.level, band.side)
    return ReadingOutside(
        reading,
        value,
        band.level,
        band.side,
        judged=water.words(),
        is_for_today=ammonia_acts(value, *water),
    )


def band_of(what: str, value: float, water: AmmoniaWater) -> Standing:
    """The band of a value; in range where there is no line for such a thing.

    The ``value`` is in the unit of the reading.
    """
    if what == AMMONIA:
        return ammonia_standing(value, water.ph, water.temperature_c)
    if what == NITRITE:
        return nitrite_standing(value)
    return standing(what, value) if what in LINES else IN_RANGE


def rank(harm: ReadingOutside) -> int:
    """How bad it is, the worst 0. It is an index."""
    return RANK.get(harm.level, len(RANK))


def order(harm: ReadingOutside) -> int:
    """The place among readings that are as bad. It is an index."""
    return ORDER.get((harm.reading.what, harm.side), len(ORDER))
