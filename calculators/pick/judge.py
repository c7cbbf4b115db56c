"""A plant against a tank: its score, the reason for each part of it, and the hard reasons against it."""

from typing import NamedTuple

from calculators.pick import law, parts_keeper, parts_tank
from calculators.pick.part import Part
from calculators.pick.plant_table import RANGES, SURE, Book, Listed, Plant
from calculators.pick.wishes import Want
from calculators.science.rounding import RESULT_DIGITS


class Judged(NamedTuple):
    """One plant judged."""

    key: str
    plant: Plant
    score: float  # percent
    parts: tuple[Part, ...]
    lists: tuple[Listed, ...]  # the law lists of the keeper's place that bar it

    @property
    def banned(self) -> bool:
        """Whether a law list of the keeper's place bars it."""
        return bool(self.lists)

    @property
    def unfit(self) -> bool:
        """Whether there is a hard reason against it besides the law."""
        return any(part.out for part in self.parts)

    @property
    def out(self) -> bool:
        """Whether there is any hard reason against it."""
        return self.banned or self.unfit

    @property
    def minutes_week(self) -> float | None:
        """Minutes a week of trimming; None if not known."""
        return parts_keeper.minutes_of(self.plant)

    @property
    def order(self) -> tuple[float, int, float, float, str]:
        """Best first; of equals what lives under water, the surest figures, the least work, then by key."""
        takes, in_air = self.minutes_week, self.plant.habit == "marginal"
        work = float("inf") if takes is None else takes
        return -self.score, int(in_air), unsureness(self.plant), work, self.key


def unsureness(plant: Plant) -> float:
    """How little is known of it: the mean place of its figures in ``SURE``; a blank comes after a guess."""
    spans = [getattr(plant, key) for key in RANGES]
    return sum(len(SURE) if one is None else one.sure for one in spans) / len(spans)


def parts_of(plant: Plant, want: Want, book: Book) -> list[Part]:
    """The parts of the score that were asked for."""
    found = (
        parts_tank.light(plant, want),
        parts_keeper.minutes(plant, want),
        parts_tank.temperature(plant, want),
        parts_tank.height(plant, want),
        parts_tank.acidity(plant, want),
        parts_tank.hardness(plant, want),
        parts_keeper.company(plant, want, book),
        parts_keeper.role(plant, want),
    )
    return [one for one in found if one is not None]


def score_of(parts: list[Part]) -> float:
    """Σ weight · share / Σ weight, in percent; 100 where nothing was asked.

    A criterion whose figure the record lacks has a share of a half.
    """
    weight = sum(part.weight for part in parts)
    total = sum(part.weight * part.share for part in parts)
    return round(100 * total / weight, RESULT_DIGITS) if weight else 100.0


def judge(key: str, plant: Plant, want: Want, book: Book) -> Judged:
    """Judge one plant."""
    parts = parts_of(plant, want, book)
    lists = tuple(law.barring(plant, want.place, book))
    return Judged(key, plant, score_of(parts), tuple(parts), lists)


def because(one: Judged, want: Want, book: Book) -> list[str]:
    """Why a plant stands where it does, a sentence a criterion."""
    lawful = (
        *law.warnings(one.plant, want.place, book),
        *law.elsewhere(one.plant, want.place, book),
    )
    return [*(part.why() for part in one.parts), *lawful]


def against(one: Judged, book: Book) -> list[str]:
    """The hard reasons against a plant, the law's first."""
    lawful = [law.reason(listed, book) for listed in one.lists]
    return [*lawful, *(part.why() for part in one.parts if part.out)]


def is_asked(plant: Plant, want: Want) -> bool:
    """Whether a plant is of a kind and look that was asked for."""
    kind = not want.habits or plant.habit in want.habits
    return kind and (not want.looks or plant.look in want.looks)


def judge_all(want: Want, book: Book) -> list[Judged]:
    """Every plant that was asked for, best first."""
    found = [
        judge(key, plant, want, book) for key, plant in book.plants.items() if is_asked(plant, want)
    ]
    return sorted(found, key=lambda one: one.order)
