"""What a plant's record says of a trait, in words."""

from calculators.identify.rings import ring_of
from calculators.identify.trait_table import BookTraits, Ends
from calculators.identify.trait_words import COLOURS, TRAITS, words_of

NOT_RECORDED = "not in its record"
ALSO = {
    "young-leaves": "young leaves", "underside": "underside", "veins": "veins", "stripe": "stripe",
    "edge": "edge", "stem": "stem", "old-leaves": "old leaves",
}  # fmt: skip


def recorded(trait: str, traits: BookTraits) -> str:
    """A trait as the record has it; ``NOT_RECORDED`` where it is silent."""
    if trait == "colour_above":
        return colour_above(traits)
    if trait == "colour_below":
        is_known = traits.colour_second is not None and traits.colour_where == "underside"
        return COLOURS[str(traits.colour_second)] if is_known else NOT_RECORDED
    value = ring_of(traits) if trait == "whorl_count" else getattr(traits, trait)
    if value is None:
        return NOT_RECORDED
    return words_of(trait, value) if isinstance(value, str) else range_words(trait, value)


def colour_above(traits: BookTraits) -> str:
    """The colour, and where another one shows."""
    words = COLOURS[traits.colour]
    if traits.colour_second is None or traits.colour_where is None:
        return words
    return f"{words}, {ALSO[traits.colour_where]} {COLOURS[traits.colour_second]}"


def range_words(trait: str, ends: Ends) -> str:
    """A range with its unit."""
    low, high = ends
    return words_of(trait, low) if low == high else f"{low:g} to {words_of(trait, high)}"


def label_of(trait: str) -> str:
    """The name of a trait."""
    return TRAITS[trait].label
