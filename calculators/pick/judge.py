"""A plant against a tank: its score, the reason for each part of it, and the hard reasons against it."""

from typing import NamedTuple

from calculators.pick import parts_keeper, parts_tank, plant_law
from calculators.pick.part import CriterionScore
from calculators.pick.plant_table import RANGES, SURE, Book, PlantEntry
from calculators.pick.wishes import Wishes
from calculators.science.law.listed import Listed
from calculators.science.rounding import RESULT_DIGITS


class Judged(NamedTuple):
    """A plant with its score, its reasons, and what leaves it out."""

    key: str
    plant: PlantEntry
    score: float  # percent
    parts: tuple[CriterionScore, ...]
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


def unsureness(plant: PlantEntry) -> float:
    """How little is known of it: the mean place of its figures in ``SURE``; a blank comes after a guess.

    A place is counted from 0, so a mean score of 0 is the surest.
    """
    spans = [getattr(plant, key) for key in RANGES]
    return sum(len(SURE) if span is None else span.sure for span in spans) / len(spans)


def parts_of(plant: PlantEntry, wishes: Wishes, book: Book) -> list[CriterionScore]:
    """The parts of the score that were asked for."""
    scores = (
        parts_tank.light(plant, wishes),
        parts_keeper.minutes(plant, wishes),
        parts_tank.temperature(plant, wishes),
        parts_tank.height(plant, wishes),
        parts_tank.acidity(plant, wishes),
        parts_tank.hardness(plant, wishes),
        parts_keeper.company(plant, wishes, book),
        parts_keeper.role(plant, wishes),
    )
    return [part for part in scores if part is not None]


def score_of(parts: list[CriterionScore]) -> float:
    """Σ weight · share / Σ weight, in percent; 100 where nothing was asked.

    A criterion whose figure the record lacks has a share of a half.
    """
    weight = sum(part.weight for part in parts)
    total = sum(part.weight * part.share for part in parts)
    return round(100 * total / weight, RESULT_DIGITS) if weight else 100.0


def judge(key: str, plant: PlantEntry, wishes: Wishes, book: Book) -> Judged:
    """Judge one plant."""
    parts = parts_of(plant, wishes, book)
    lists = tuple(plant_law.barring(plant, wishes.place, book))
    return Judged(key, plant, score_of(parts), tuple(parts), lists)


def because(judged: Judged, wishes: Wishes, book: Book) -> list[str]:
    """What the law warns of, then why a plant stands where it does, a sentence a criterion."""
    lawful = (
        *plant_law.warnings(judged.plant, wishes.place, book),
        *plant_law.elsewhere(judged.plant, wishes.place, book),
    )
    return [*lawful, *(part.why() for part in judged.parts)]


def against(judged: Judged, book: Book) -> list[str]:
    """The hard reasons against a plant, the law's first."""
    lawful = [plant_law.reason(listed, book) for listed in judged.lists]
    return [*lawful, *(part.why() for part in judged.parts if part.out)]


def is_asked(plant: PlantEntry, wishes: Wishes) -> bool:
    """Whether a plant is of a kind and look that was asked for."""
    kind = not wishes.habits or plant.habit in wishes.habits
    return kind and (not wishes.looks or plant.look in wishes.looks)


def judge_all(wishes: Wishes, book: Book) -> list[Judged]:
    """Every plant that was asked for, best first."""
    judged = [
        judge(key, plant, wishes, book)
        for key, plant in book.plants.items()
        if is_asked(plant, wishes)
    ]
    return sorted(judged, key=lambda row: row.order)
