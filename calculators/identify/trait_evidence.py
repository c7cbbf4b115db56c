"""What a trait that was seen says of a plant: the probability of seeing it, if it is that plant."""

import itertools
import math
from collections.abc import Callable
from functools import lru_cache, partial
from typing import Any, NamedTuple

from calculators.identify.measured_sizes import (
    EYE_ERROR,
    EYE_STEP,
    MEASURING_ERROR,
    READING_STEP,
    MeasuredPart,
    between,
    leaf_parts,
    plant_parts,
)
from calculators.identify.misreading import TERMS, reading
from calculators.identify.rings import counting, ring_of
from calculators.identify.seen import MOST_IN_A_RING, SeenTraits
from calculators.identify.trait_table import BookTraits, Ends, plant_book

# How far a record's words hold for leaves of the other medium: half, and of leaves of which nobody
# says where they grew nearly all; judgement. The rest is as usual in the book.
HOLDS_FOR = {None: 0.9, False: 1.0, True: 0.5}
SECOND_COLOUR = 0.25  # share of leaves that show the record's second colour above; judgement
SEEN_ABOVE = ("young-leaves", "veins", "stripe", "edge", "old-leaves")
OF_LEAVES = frozenset(
    ("shape", "margin", "tip", "surface", "stalk", "veins", "colour_above", "colour_below")
)
# Classes that double, for a thumb; the last is open. A whole plant is measured in centimetres.
LEAF_CLASSES = (0.0, 2.5, 5.0, 10.0, 20.0, 40.0, 80.0, 160.0, 320.0, math.inf)
PLANT_CLASSES = (0.0, 2.5, 5.0, 10.0, 20.0, 40.0, 80.0, math.inf)

Known = dict[str, float] | None  # the probability of each value; None where the record is silent
SizeParts = tuple[MeasuredPart, ...] | None


class Circumstances(NamedTuple):
    """What was said of the leaf that was looked at; each may be None."""

    leaf_age: str | None
    leaves_in: str | None
    by_eye: bool

    def other_medium(self, traits: BookTraits) -> bool | None:
        """Whether the leaf grew in the other medium than the record describes."""
        return None if self.leaves_in is None else (self.leaves_in == "air") != traits.in_air


def circumstances_of(seen: SeenTraits) -> Circumstances:
    """The circumstances among what was seen."""
    return Circumstances(seen.leaf_age, seen.leaves_in, bool(seen.by_eye))


def of_word(trait: str, traits: BookTraits) -> Known:
    """A trait that has one word in the record."""
    true = getattr(traits, trait)
    return None if true is None else reading(trait, true)


def of_colour_above(traits: BookTraits) -> Known:
    """The record's colour, and now and then its second one."""
    main = reading("colour", traits.colour)
    if traits.colour_second is None or traits.colour_where not in SEEN_ABOVE:
        return main
    second = reading("colour", traits.colour_second)
    return {
        colour: (1 - SECOND_COLOUR) * main[colour] + SECOND_COLOUR * second[colour]
        for colour in main
    }


def of_colour_below(traits: BookTraits) -> Known:
    """The colour of the underside, where the record names it."""
    if traits.colour_second is None or traits.colour_where != "underside":
        return None
    return reading("colour", traits.colour_second)


WORDED: dict[str, Callable[[BookTraits], Known]] = {
    trait: partial(of_word, trait) for trait in TERMS if trait != "colour"
} | {"colour_above": of_colour_above, "colour_below": of_colour_below}


def leaf_size(trait: str, traits: BookTraits, about: Circumstances) -> SizeParts:
    """What a leaf's length or width that is measured may be of."""
    ends: Ends = getattr(traits, trait)
    return leaf_parts(ends, about.leaf_age, about.other_medium(traits))


def whole_size(trait: str, traits: BookTraits, about: Circumstances) -> SizeParts:
    """What the plant's height, or the length of its roots, may be of."""
    ends: Ends | None = getattr(traits, trait)
    return None if ends is None else plant_parts(ends)


MEASURED: dict[str, Callable[[BookTraits, Circumstances], SizeParts]] = {
    "length_mm": partial(leaf_size, "length_mm"),
    "width_mm": partial(leaf_size, "width_mm"),
    "height_cm": partial(whole_size, "height_cm"),
    "root_length_mm": partial(whole_size, "root_length_mm"),
}
EVIDENCE = (*WORDED, "whorl_count", *MEASURED)


def chance(trait: str, value: Any, traits: BookTraits, about: Circumstances) -> float | None:
    """The probability of seeing a value, if it is this plant; None where its record is silent."""
    if trait in MEASURED:
        step = EYE_STEP if about.by_eye else READING_STEP
        return size_chance(trait, value / step, value * step, traits, about)
    if trait == "whorl_count":
        ring = ring_of(traits)
        return None if ring is None else counting(ring)[value - 1]
    known = WORDED[trait](traits)
    if known is None:
        return None
    holds = HOLDS_FOR[about.other_medium(traits)] if trait in OF_LEAVES else 1.0
    return holds * known[value] + (1 - holds) / len(known)


def size_chance(
    trait: str, low: float, high: float, traits: BookTraits, about: Circumstances
) -> float | None:
    """The probability of reading a size between two ends.

    The ends ``low`` and ``high`` are in the unit of the trait. None where the record is silent.
    """
    parts = MEASURED[trait](traits, about)
    error = math.hypot(MEASURING_ERROR, EYE_ERROR if about.by_eye else 0.0)
    return None if parts is None else between(low, high, parts, error)


class InBook(NamedTuple):
    """The probability of seeing a value, by plant (None where its record is silent), and in any plant."""

    by_plant: dict[str, float | None]
    usual: float


# Every plant is asked about in one answer, and most words in the next again.
@lru_cache(maxsize=1024)
def in_book(trait: str, value: Any, about: Circumstances) -> InBook:
    """The probability of seeing a value: in each plant, and the mean over the records that speak of it."""
    by_plant = {
        key: chance(trait, value, plant.traits, about) for key, plant in plant_book().plants.items()
    }
    spoken = [share for share in by_plant.values() if share is not None]
    return InBook(by_plant, math.fsum(spoken) / len(spoken) if spoken else 1.0)


def answers_of(trait: str) -> list[Any]:
    """The answers to a question about a trait: values, counts, or the ends of a class of sizes."""
    if trait in MEASURED:
        return list(itertools.pairwise(PLANT_CLASSES if trait == "height_cm" else LEAF_CLASSES))
    if trait == "whorl_count":
        return list(range(1, MOST_IN_A_RING + 1))
    return list(TERMS["colour" if trait.startswith("colour") else trait].values)


def answer_chances(
    trait: str, traits: BookTraits, about: Circumstances
) -> tuple[float, ...] | None:
    """The probability of each answer to a question, if it is this plant; None where it is silent."""
    shares = [
        size_chance(trait, answer[0], answer[1], traits, about)
        if trait in MEASURED
        else chance(trait, answer, traits, about)
        for answer in answers_of(trait)
    ]
    known = [share for share in shares if share is not None]
    return tuple(known) if len(known) == len(shares) else None
