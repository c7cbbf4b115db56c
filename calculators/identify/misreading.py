"""How often an eye takes one word of a trait for another. The figures are our judgement, not counted.

Terms of shape and colour grade into each other, so a neighbour is the likeliest mistake; a term that
has nothing in common with the true one is hardly ever taken for it.
"""

from collections.abc import Mapping
from functools import cache
from typing import NamedTuple, get_args

from calculators.identify.trait_table import (
    Arrangement,
    Colour,
    Draw,
    Floats,
    Flower,
    LeafShape,
    Margin,
    Roots,
    Smell,
    Stalk,
    Surface,
    Tip,
    Veins,
)

FAR_WEIGHT = 0.05  # of a mistake for something unlike, beside one for a neighbour; judgement


class Terms(NamedTuple):
    """The values of a trait, the chance that a value is misread, and the groups of neighbours."""

    values: tuple[str, ...]
    misread: float
    groups: tuple[tuple[str, ...], ...] = ()


def terms(literal: object, misread: float, *groups: str) -> Terms:
    """Terms from a ``Literal``; a group is a text of values.

    The probability that a term is ``misread`` is from 0 to 1.
    """
    return Terms(get_args(literal), misread, tuple(tuple(group.split()) for group in groups))


TERMS: Mapping[str, Terms] = {
    # A young or crowded plant looks like another form; a stem that creeps may rise.
    "form": terms(
        Draw, 0.12, "stem creeping-stem", "creeping-stem carpet", "stem rootless-stem", "stem marginal",
        "rosette grass", "grass carpet", "rosette epiphyte", "rosette marginal", "moss thallus",
        "floating-rosette floating-stem", "floating-stem floating-frond", "thallus floating-frond",
        "creeping-stem epiphyte",
    ),
    "floats": terms(Floats, 0.04, "floating rooted"),
    # A stem that drifts may be planted, and what was tied to wood may stand in the soil.
    "roots": terms(Roots, 0.15, "in-soil in-water on-hardscape", "in-water none", "on-hardscape none"),
    # A twisted stem hides its pairs, and a short stem looks like a crown.
    "arrangement": terms(
        Arrangement, 0.12, "opposite whorled", "opposite alternate", "alternate spiral two-ranked",
        "alternate single-at-node", "basal tuft", "basal spiral", "two-ranked opposite branching",
        "basal single-at-node", "tuft single-at-node", "floating-pair opposite whorled",
    ),
    # Botanists themselves differ by a step on one leaf.
    "shape": terms(
        LeafShape, 0.3, "linear ribbon needle", "linear narrow-lanceolate oblong",
        "narrow-lanceolate lanceolate oblong", "lanceolate elliptic ovate", "elliptic oblong obovate",
        "ovate elliptic round heart", "obovate spatulate round", "spatulate oblong", "round kidney peltate",
        "heart kidney arrow", "lobed pinnate clover", "pinnate feathery", "feathery forked fan",
        "needle forked", "scale ovate lanceolate", "thallus lobed ribbon", "narrow-lanceolate ribbon",
    ),
    "margin": terms(
        Margin, 0.2, "smooth wavy", "wavy crisped", "smooth toothed", "toothed cut"
    ),
    "tip": terms(Tip, 0.25, "rounded blunt", "pointed blunt"),
    "surface": terms(Surface, 0.2, "flat hammered folded", "flat hairy", "flat windowed"),
    "stalk": terms(Stalk, 0.2, "none short", "short long"),
    "veins": terms(Veins, 0.2, "midrib net", "net arched", "parallel arched", "midrib parallel"),
    "smell": terms(Smell, 0.15, "none spicy", "none fishy"),
    "flower": terms(
        Flower, 0.1, "white pink green", "pink purple red", "purple blue", "white blue", "yellow white green",
        "spathe green white",
    ),
    # Light and hunger change a plant's colour more than any other trait.
    "colour": terms(
        Colour, 0.5, "pale-green green yellow-green", "green dark-green blue-green", "green olive",
        "olive bronze yellow-green", "bronze brown red-brown", "brown olive", "red-brown red",
        "red pink purple", "pink red-brown", "purple red-brown", "dark-green olive",
    ),
}  # fmt: skip


@cache
def reading(trait: str, true: str) -> dict[str, float]:
    """The probability that a keeper says each value, where one is true; they add up to 1."""
    known = TERMS[trait]
    neighbours = {value for group in known.groups if true in group for value in group} - {true}
    weights = {
        value: 1.0 if value in neighbours else FAR_WEIGHT for value in known.values if value != true
    }
    total = sum(weights.values())
    shares = {value: known.misread * weight / total for value, weight in weights.items()}
    return {value: shares.get(value, 1 - known.misread) for value in known.values}
