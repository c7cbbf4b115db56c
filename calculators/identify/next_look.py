"""What to look at next: the trait that is expected to tell most about which plant it is."""

import math
from collections.abc import Collection, Mapping
from functools import cache
from typing import NamedTuple

from calculators.identify.plant_posterior import given_traits, in_order
from calculators.identify.seen import SeenTraits
from calculators.identify.trait_evidence import (
    EVIDENCE,
    Circumstances,
    answer_chances,
    answers_of,
    circumstances_of,
)
from calculators.identify.trait_table import BookTraits, plant_book
from calculators.science.evidence.information import information_bits
from calculators.science.evidence.weighing import LEADING, SOMETHING_ELSE

LEAST_BITS = 0.03  # less than this is not worth a look
LEAST_WEIGHED = (
    0.003  # the chance from which on a plant is weighed by itself; the rest count as one
)
# What a look is worth to someone with wet hands, beside what it tells; judgement.
WORTH = {
    "tip": 0.8, "surface": 0.9, "veins": 0.8, "length_mm": 0.9, "width_mm": 0.8, "height_cm": 0.6,
    "roots": 0.8, "smell": 0.5, "flower": 0.35, "colour_above": 0.8, "colour_below": 0.8,
    "root_length_mm": 0.7,
}  # fmt: skip
FLOATING_FORMS = ("floating-rosette", "floating-stem", "floating-frond")
NO_LEAVES_TO_TELL = ("moss", "thallus")  # forms whose leaves are too small for these questions
OF_ONE_LEAF = frozenset(("tip", "surface", "stalk", "veins", "colour_below", "margin"))


class TraitToCheck(NamedTuple):
    """A trait worth a look, and what it is expected to tell, in bits, less for what is hard to see."""

    trait: str
    bits: float


def best_look(
    seen: SeenTraits, chances: Mapping[str, float], unseen: Collection[str] = ()
) -> TraitToCheck | None:
    """The trait that tells most of those not seen yet; None where none tells enough."""
    about = circumstances_of(seen)
    looks = [
        TraitToCheck(trait, bits(trait, chances, about) * WORTH.get(trait, 1.0))
        for trait in sorted(EVIDENCE)
        if trait not in given_traits(seen) and trait not in unseen and makes_sense(trait, seen)
    ]
    best = max(looks, key=lambda look: look.bits, default=None)
    return best if best and best.bits >= LEAST_BITS else None


def makes_sense(trait: str, seen: SeenTraits) -> bool:
    """Whether a question can be put, by what was said of the form and of how the leaves stand."""
    if trait == "whorl_count":
        return seen.arrangement == "whorled"
    if trait == "root_length_mm":
        return seen.form in FLOATING_FORMS or seen.floats == "floating"
    if trait == "floats":
        return seen.form is None
    return not (trait in OF_ONE_LEAF and seen.form in NO_LEAVES_TO_TELL)


def bits(trait: str, chances: Mapping[str, float], about: Circumstances) -> float:
    """What an answer is expected to tell about which plant it is, in bits."""
    plants = plant_book().plants
    weighed = [key for key in plants if chances[key] >= LEAST_WEIGHED]
    known = {key: answers(trait, plants[key].traits, about) for key in weighed}
    speaking = {key: row for key, row in known.items() if row is not None}
    if not speaking:
        return 0.0
    mean = usual_answers(trait, about)
    rows = [(chances[key], row or mean) for key, row in known.items()]
    rest = 1 - math.fsum(share for share, _ in rows)
    return information_bits([*rows, (max(rest, 0.0), mean)])


@cache
def answers(trait: str, traits: BookTraits, about: Circumstances) -> tuple[float, ...] | None:
    """The probabilities of the answers, made to add up to 1.

    They stand in the order of the trait's answers, from first to last; None where the record is silent.
    """
    shares = answer_chances(trait, traits, about)
    if shares is None:
        return None
    total = math.fsum(shares)
    return tuple(share / total for share in shares)


@cache
def usual_answers(trait: str, about: Circumstances) -> tuple[float, ...]:
    """The probabilities of the answers in any plant of the book.

    They stand in the order of the trait's answers, from first to last.
    """
    rows = [answers(trait, plant.traits, about) for plant in plant_book().plants.values()]
    spoken = [row for row in rows if row is not None]
    if not spoken:  # no record speaks of it: any answer is as likely as another
        number = len(answers_of(trait))
        return (1 / number,) * number
    return tuple(math.fsum(column) / len(spoken) for column in zip(*spoken, strict=True))


def rivals(chances: Mapping[str, float], most: int) -> list[str]:
    """The leading plants that come near the first, the likeliest first."""
    order = in_order({key: share for key, share in chances.items() if key != SOMETHING_ELSE})
    least = LEADING * chances[order[0]]
    return [key for key in order[:most] if chances[key] >= least]
