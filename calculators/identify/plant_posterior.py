"""The chance of each plant of the book, and of a plant that is not in it."""

import math
from typing import Any, NamedTuple

from calculators.identify.label import LabelSays
from calculators.identify.rings import ring_of
from calculators.identify.seen import SeenTraits
from calculators.identify.trait_evidence import EVIDENCE, circumstances_of, in_book
from calculators.identify.trait_table import BookTraits, plant_book
from calculators.science.evidence.weighing import SOMETHING_ELSE, chances_of, together

# Before anything is seen: one plant of ten that a keeper asks about is not among those of the book;
# judgement. All plants of the book are taken as equally likely, since nobody has counted.
NOT_IN_BOOK = 0.1
# Of what cannot be ruled out: so much of the whole is shared evenly by all plants, so that no sum of
# evidence reaches nothing; judgement.
NEVER_RULED_OUT = 0.005
LABEL = "label"


class Spoken(NamedTuple):
    """What one trait says of one plant: the logarithm of its likelihood ratio."""

    trait: str
    value: Any
    log_ratio: float


def given_traits(seen: SeenTraits) -> dict[str, Any]:
    """The traits that were seen, in one fixed order, so that the order of answers never matters."""
    values = seen._asdict()
    return {trait: values[trait] for trait in EVIDENCE if values[trait] is not None}


def spoken_of(key: str, seen: SeenTraits, says: LabelSays) -> list[Spoken]:
    """What each trait, and the label, says of a plant. Where its record is silent, nothing."""
    traits, about = plant_book().plants[key].traits, circumstances_of(seen)
    said = []
    for trait, value in given_traits(seen).items():
        if trait == "whorl_count" and said_before(seen, traits):
            continue
        seen_in = in_book(trait, value, about)
        share = seen_in.by_plant[key]
        if share is not None:
            said.append(Spoken(trait, value, math.log(share / seen_in.usual)))
    if key in says.worth:
        said.append(Spoken(LABEL, None, math.log(says.worth[key])))
    return said


def said_before(seen: SeenTraits, traits: BookTraits) -> bool:
    """Whether a count of leaves in a ring only repeats what was said of how the leaves stand."""
    return seen.arrangement is not None and (
        traits.arrangement != "whorled" or ring_of(traits) is None
    )


def plant_chances(seen: SeenTraits, says: LabelSays) -> dict[str, float]:
    """The chance of each plant, 0 to 1 but neither, and of one that is not in the book."""
    plants = plant_book().plants
    logs = {key: together([one.log_ratio for one in spoken_of(key, seen, says)]) for key in plants}
    beside = len(says.others) * NOT_IN_BOOK  # a shared name that may mean plants without a record
    weight = (NOT_IN_BOOK / (1 - NOT_IN_BOOK) + beside) * len(plants)
    chances = chances_of({**logs, SOMETHING_ELSE: math.log(weight)})
    floor = NEVER_RULED_OUT / len(chances)
    return {key: (1 - NEVER_RULED_OUT) * share + floor for key, share in chances.items()}


def in_order(chances: dict[str, float]) -> list[str]:
    """The plants of the book, the likeliest first."""
    return sorted(plant_book().plants, key=lambda key: (-chances[key], key))
