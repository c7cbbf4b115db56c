"""The answers to a question as a thumb takes them: words, the input that each sets, and its picture."""

import math
from collections.abc import Mapping
from typing import NamedTuple

from calculators.identify.next_look import answers, usual_answers
from calculators.identify.seen import SeenTraits
from calculators.identify.trait_evidence import (
    MEASURED,
    Circumstances,
    answers_of,
    circumstances_of,
)
from calculators.identify.trait_table import plant_book
from calculators.identify.trait_words import TRAITS, words_of
from calculators.science.evidence.weighing import SOMETHING_ELSE

MOST_SHOWN = 8  # answers that stand ready; the rest are a tap away
MOST_COUNTED = 9  # leaves in a ring that are offered one by one
MANY = 12  # what more of them are taken as
BY_EYE = {"traits.by_eye": "true"}


class DrawnAnswer(NamedTuple):
    """One answer: its words, the inputs that it sets, the id of its picture, and its chance."""

    words: str
    sets: dict[str, str]
    picture: str
    chance: float


def picture_id(trait: str, value: str) -> str:
    """The id of the drawing of a value; both colours of a leaf share theirs."""
    return f"trait-{'colour' if trait.startswith('colour') else trait}-{value}"


def choices(trait: str, seen: SeenTraits, chances: Mapping[str, float]) -> list[DrawnAnswer]:
    """The answers to a question: sizes and counts in order, words with the likeliest first."""
    about = circumstances_of(seen)
    shares = expected(trait, about, chances)
    offered = zip(answers_of(trait), shares, strict=True)
    if trait in MEASURED:
        return [size_choice(trait, low, high, share) for (low, high), share in offered]
    if trait == "whorl_count":
        return [
            count_choice(count, share) for count, share in offered if 2 <= count <= MOST_COUNTED
        ]
    key = f"traits.{trait}"
    made = [
        DrawnAnswer(words_of(trait, value), {key: value}, picture_id(trait, value), share)
        for value, share in offered
    ]
    return sorted(made, key=lambda choice: -choice.chance)


def expected(trait: str, about: Circumstances, chances: Mapping[str, float]) -> tuple[float, ...]:
    """The probability of each answer, over all plants that it may be."""
    plants, mean = plant_book().plants, usual_answers(trait, about)
    rows = [(chances[key], answers(trait, plants[key].traits, about) or mean) for key in plants]
    rows.append((chances[SOMETHING_ELSE], mean))
    return tuple(math.fsum(share * row[place] for share, row in rows) for place in range(len(mean)))


def size_choice(trait: str, low: float, high: float, share: float) -> DrawnAnswer:
    """A class of sizes, told by eye; it is taken at its middle by factors.

    Its ends ``low`` and ``high`` are in the unit of the trait; ``share`` is how likely it is, 0 to 1.
    """
    unit = TRAITS[trait].unit
    if low == 0:
        words, middle = f"under {high:g} {unit}", high / math.sqrt(2)
    elif math.isinf(high):
        words, middle = f"over {low:g} {unit}", low * math.sqrt(2)
    else:
        words, middle = f"{low:g} to {high:g} {unit}", math.sqrt(low * high)
    sets = {f"traits.{trait}": f"{middle:.3g}", **BY_EYE}
    return DrawnAnswer(words, sets, picture_id(trait, f"{low:g}".replace(".", "-")), share)


def count_choice(count: int, share: float) -> DrawnAnswer:
    """A count of leaves in a ring; from the last on it says so."""
    more = count == MOST_COUNTED
    words = f"{count} or more" if more else str(count)
    sets = {"traits.whorl_count": str(MANY if more else count)}
    return DrawnAnswer(words, sets, picture_id("whorl_count", str(count)), share)
