"""The parts of the score that the keeper decides: minutes, animals, the part in the nitrogen balance."""

from calculators.core import quantities as q
from calculators.core.numbers import show_number
from calculators.pick import tolerance
from calculators.pick.part import CriterionScore, asks, figure, trusted, unknown
from calculators.pick.plant_table import Book, PlantEntry
from calculators.pick.wishes import Wishes
from calculators.science.animals.animal_table import ANIMALS, shown_name
from calculators.science.growth.rounds import minutes_a_week

MINUTES, COMPANY, ROLE = 25, 10, 10  # weights; our judgement
NIBBLED = 0.5  # of the part, for a plant that an animal of the tank nips or pulls at; our judgement
ROLE_WORDS = {
    "fast": "a fast taker, which draws nitrogen down within days and starves first",
    "steady": "a steady taker, week by week",
    "slow": "a slow keeper, which takes little",
}
ROLES = tuple(ROLE_WORDS)
STEP = 0.5  # of the part for each step between the role wanted and the plant's; our judgement


def minutes_of(plant: PlantEntry) -> float | None:
    """Minutes a week of trimming, from the middles of the record; None if either is not known."""
    if plant.trim_minutes is None or plant.trim_every_days is None:
        return None
    return minutes_a_week(plant.trim_minutes.middle, plant.trim_every_days.middle)


def minutes(plant: PlantEntry, wishes: Wishes) -> CriterionScore | None:
    """The trimming against the minutes that the keeper has."""
    if wishes.minutes_week is None:
        return None
    takes, spent, every = minutes_of(plant), plant.trim_minutes, plant.trim_every_days
    if takes is None or spent is None or every is None:
        blank = unknown(MINUTES, "Time: how long a trim takes is not known.")
        return blank._replace(out=wishes.minutes_week == 0)  # some work it makes
    has, sure = wishes.minutes_week, max(spent.sure, every.sure)
    fit = tolerance.minutes_fit(takes, has, sure)

    def why() -> str:
        each = f"{asks(q.Minutes, spent)}, every {figure(q.Interval, every.low, every.high)}"
        return f"Time: about {show_number(takes, 2)} of your {show_number(has)} minutes a week ({each})."

    return trusted(MINUTES, fit.share, why, fit.out, sure)


def harmed_by(plant: PlantEntry, wishes: Wishes, book: Book, kinds: tuple[str, ...]) -> list[str]:
    """The animals kept that belong to some kinds of grazer, by the name that a form shows."""
    return [
        f"{shown_name(key)} (as {book.grazers[kind]})"
        for key in wishes.animals
        for kind in book.appetites.get(key, ())
        if kind in kinds
    ]


def company(plant: PlantEntry, wishes: Wishes, book: Book) -> CriterionScore | None:
    """Whether an animal of the tank harms it, or needs water in which it cannot live."""
    if not wishes.animals:
        return None
    eaten = harmed_by(plant, wishes, book, plant.eaters or ())
    if eaten:
        return CriterionScore(
            COMPANY, 0.0, lambda: f"Animals: eaten or dug out by {', '.join(eaten)}.", True
        )
    apart = too_warm_or_cold(plant, wishes)
    if apart:
        return CriterionScore(COMPANY, 0.0, lambda: f"Animals: {' '.join(apart)}", True)
    if plant.eaters is None:
        return unknown(COMPANY, "Animals: which ones eat it is not known.")
    nipped = harmed_by(plant, wishes, book, plant.nibblers)
    if nipped:
        return CriterionScore(
            COMPANY, NIBBLED, lambda: f"Animals: nipped or pulled at by {', '.join(nipped)}."
        )
    return CriterionScore(COMPANY, 1.0, lambda: "Animals: none of yours is known to harm it.")


def too_warm_or_cold(plant: PlantEntry, wishes: Wishes) -> list[str]:
    """Animals that no temperature suits together with the plant, where the tank's is not given."""
    span = plant.temperature_c
    if wishes.temperature_c is not None or span is None:
        return []
    return [
        f"{shown_name(key)} is kept at {figure(q.Temperature, kind.temperature_low, kind.temperature_high)}, "
        f"the plant at {figure(q.Temperature, span.low, span.high)}."
        for key in wishes.animals
        for kind in [ANIMALS[key]]
        if kind.temperature_high < span.low or kind.temperature_low > span.high
    ]


def role(plant: PlantEntry, wishes: Wishes) -> CriterionScore:
    """The score of the plant's part in the nitrogen balance; it is always worded, and weighs where a role was
    asked for."""

    def why() -> str:
        return f"Nitrogen: {ROLE_WORDS[plant.role]}."

    if wishes.role is None:
        return CriterionScore(0, 1.0, why)
    steps = abs(ROLES.index(wishes.role) - ROLES.index(plant.role))
    return CriterionScore(ROLE, 1 - STEP * steps, why)
