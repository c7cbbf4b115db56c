"""Rows of the comparison: the marks that tell plants apart, from their traits."""

from collections.abc import Callable

from markupsafe import Markup

from calculators.core import quantities as q
from scripts.drawings.words import ARRANGEMENTS, PLACES, SHAPES, ends
from scripts.pages.plants.side_by_side import UNKNOWN, Cell, ComparedPlant, ComparisonRow
from scripts.pages.plants.side_parts import claim_html, figure, mark, text
from scripts.records.traits import Traits

GROUP = "How to tell them apart"


def trait(key: str, label: str, words: Callable[[Traits], tuple[str, str]]) -> ComparisonRow:
    """A trait as a word; ``words`` gives what is shown and what is compared."""

    def cell(plant_shown: ComparedPlant) -> Cell:
        if plant_shown.plant.traits is None:
            return Cell(UNKNOWN)
        shown, compared = words(plant_shown.plant.traits)
        return Cell(text(shown), (compared,))

    return ComparisonRow(GROUP, key, label, cell)


def size(key: str, label: str) -> ComparisonRow:
    """A length of one leaf or frond."""

    def cell(plant_shown: ComparedPlant) -> Cell:
        claim = None if plant_shown.plant.traits is None else getattr(plant_shown.plant.traits, key)
        return figure(q.LeafSize, claim, plant_shown)

    return ComparisonRow(GROUP, key, label, cell)


def habit(plant_shown: ComparedPlant) -> Cell:
    """The way it grows."""
    words = plant_shown.words["habit"][plant_shown.plant.habit]
    return Cell(text(words["label"]), (plant_shown.plant.habit,))


def whorl(plant_shown: ComparedPlant) -> Cell:
    """How the leaves stand, with their number to a ring."""
    traits = plant_shown.plant.traits
    if traits is None:
        return Cell(UNKNOWN)
    count = traits.whorl if traits.arrangement == "whorled" else None
    if count is None:
        return Cell(text(ARRANGEMENTS[traits.arrangement]), (traits.arrangement,))
    shown = f"in rings of {ends(count.low, count.high)}"
    numbers = tuple(f"ring of {number}" for number in range(count.low, count.high + 1))
    return Cell(text(shown), numbers)


def second(traits: Traits) -> tuple[str, str]:
    """The second colour and where it shows."""
    if traits.colour_second is None:
        return "none", "none"
    colour = traits.colour_second.replace("-", " ")
    where = f", on the {PLACES[traits.colour_where]}" if traits.colour_where else ""
    return colour + where, f"{traits.colour_second} {traits.colour_where}"


def spread(plant_shown: ComparedPlant) -> Cell:
    """By what it multiplies."""
    traits = plant_shown.plant.traits
    if traits is None or not traits.spread_by:
        return Cell(UNKNOWN)
    shown = ", ".join(way.replace("-", " ") for way in traits.spread_by)
    return Cell(text(shown), tuple(traits.spread_by))


def appearance(plant_shown: ComparedPlant) -> Cell:
    """How to know it, in the record's words, and how sure the traits are."""
    made = claim_html(plant_shown.plant.looks, plant_shown)
    if plant_shown.plant.traits is None:
        return made
    return Cell(made.html + Markup("<br>Traits: ") + mark(plant_shown.plant.traits, plant_shown))


TRAITS: tuple[ComparisonRow, ...] = (
    ComparisonRow(GROUP, "habit", "Habit", habit),
    trait("leaf_shape", "Leaf", lambda t: (SHAPES.get(t.leaf_shape, t.leaf_shape), t.leaf_shape)),
    ComparisonRow(GROUP, "arrangement", "Leaves stand", whorl),
    size("leaf_length_mm", "Length of a leaf"),
    size("leaf_width_mm", "Width of a leaf"),
    trait("stalk", "Leaf stalk", lambda t: (t.stalk, t.stalk)),
    trait("margin", "Edge", lambda t: (t.margin, t.margin)),
    trait("tip", "Tip", lambda t: (t.tip, t.tip)),
    trait("surface", "Surface", lambda t: (t.surface, t.surface)),
    trait("colour", "Colour", lambda t: (t.colour.replace("-", " "), t.colour)),
    trait("colour_second", "Second colour", second),
    ComparisonRow(GROUP, "spread_by", "Multiplies by", spread),
    ComparisonRow(GROUP, "looks", "How to know it", appearance),
)
