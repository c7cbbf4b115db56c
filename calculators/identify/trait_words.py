"""What a keeper reads for each trait and each of its values."""

from typing import NamedTuple

FORMS = {
    "stem": "upright leafy stems",
    "creeping-stem": "creeping stems that root along the soil",
    "rootless-stem": "drifting stems without roots",
    "rosette": "a rosette from one crown",
    "grass": "grass-like tufts",
    "carpet": "a low carpet",
    "epiphyte": "leaves from a rhizome on wood",
    "moss": "a cushion of branching moss on a stone",
    "thallus": "flat forked bands without leaves or stems",
    "floating-rosette": "a floating rosette with hanging roots",
    "floating-stem": "a floating stem with leaves on both sides",
    "floating-frond": "small floating fronds",
    "marginal": "leaves in the air above the water, roots in the water",
}
SHAPES = {
    "linear": "narrow, parallel-sided",
    "ribbon": "ribbon-like",
    "needle": "needle-thin",
    "feathery": "finely cut, feathery",
    "forked": "stiff, forked",
    "fan": "cut into a fan of threads",
    "pinnate": "cut into leaflets along a midrib",
    "lobed": "lobed",
    "clover": "four-parted, like a clover",
    "heart": "heart-shaped",
    "kidney": "kidney-shaped",
    "arrow": "arrow-shaped",
    "peltate": "round, on a stalk fixed in the middle",
    "scale": "scale-like",
    "thallus": "forked, band-like",
    "narrow-lanceolate": "narrowly lance-shaped",
    "lanceolate": "lance-shaped",
    "elliptic": "oval, broadest in the middle",
    "oblong": "oblong",
    "ovate": "egg-shaped, broadest near the base",
    "obovate": "egg-shaped, broadest near the tip",
    "spatulate": "spoon-shaped",
    "round": "round",
}
ARRANGEMENTS = {
    "basal": "all from the base",
    "opposite": "in pairs",
    "alternate": "one at a node, on alternate sides",
    "whorled": "in rings",
    "spiral": "in a spiral",
    "tuft": "in tufts",
    "two-ranked": "in two rows",
    "single-at-node": "one at each node",
    "branching": "on branching shoots",
    "floating-pair": "in floating pairs",
}
FLOATS = {"floating": "floats on the water", "rooted": "does not float"}
ROOTS = {
    "in-soil": "in the soil",
    "in-water": "hanging in the water",
    "on-hardscape": "gripping wood or stone",
    "none": "none to be seen",
}
MARGINS = {
    "smooth": "smooth",
    "wavy": "wavy",
    "crisped": "tightly frilled",
    "toothed": "toothed",
    "cut": "deeply cut",
}
TIPS = {"pointed": "pointed", "rounded": "rounded", "blunt": "blunt or cut off"}
SURFACES = {
    "flat": "flat",
    "hammered": "dented, as if hammered",
    "hairy": "hairy, sheds water",
    "folded": "pleated or ribbed",
    "windowed": "a lattice with holes",
}
STALKS = {
    "none": "no stalk, the leaf sits on the stem",
    "short": "shorter than the leaf",
    "long": "about as long as the leaf, or longer",
}
VEINS = {
    "midrib": "one rib in the middle, no others to see",
    "net": "branching like a feather or a net",
    "parallel": "running straight beside each other",
    "arched": "several, in arches from base to tip",
}
SMELLS = {"none": "none", "spicy": "spice, mint or lemon", "fishy": "fish"}
FLOWERS = {
    "white": "white",
    "yellow": "yellow",
    "pink": "pink",
    "purple": "purple or violet",
    "blue": "blue",
    "red": "red",
    "green": "small and green",
    "spathe": "a spike in a leaf-like hood",
}
COLOURS = {
    "pale-green": "pale green",
    "green": "green",
    "dark-green": "dark green",
    "yellow-green": "yellow-green",
    "blue-green": "blue-green",
    "olive": "olive",
    "bronze": "bronze",
    "brown": "brown",
    "red-brown": "red-brown",
    "red": "red",
    "pink": "pink",
    "purple": "purple",
}


class TraitWords(NamedTuple):
    """A trait in words: its name, its question, where to look, and its values; a figure has a unit."""

    label: str
    question: str
    look: str
    values: dict[str, str] = {}
    unit: str = ""


TRAITS = {
    "form": TraitWords("Form", "How does it grow?", "the whole plant", FORMS),
    "floats": TraitWords("Floats", "Does it float on the water?", "the surface", FLOATS),
    "roots": TraitWords("Roots", "Where are its roots?", "below the lowest leaves", ROOTS),
    "arrangement": TraitWords(
        "Leaves stand",
        "How do the leaves stand?",
        "a joint of the stem, or the crown",
        ARRANGEMENTS,
    ),
    "whorl_count": TraitWords(
        "Leaves in a ring", "How many leaves are in one ring?", "one ring, from above"
    ),
    "shape": TraitWords("Leaf shape", "What shape is a grown leaf?", "one grown leaf", SHAPES),
    "margin": TraitWords("Leaf edge", "What is the edge of the leaf like?", "the edge", MARGINS),
    "tip": TraitWords("Leaf tip", "What is the tip of the leaf like?", "the tip", TIPS),
    "surface": TraitWords(
        "Leaf face", "What is the face of the leaf like?", "the upper face", SURFACES
    ),
    "stalk": TraitWords(
        "Leaf stalk", "Has the leaf a stalk?", "where the leaf joins the stem", STALKS
    ),
    "veins": TraitWords("Veins", "How do the veins run?", "a leaf held against the light", VEINS),
    "length_mm": TraitWords(
        "Leaf length",
        "How long is a grown leaf, without its stalk?",
        "the longest leaves",
        unit="mm",
    ),
    "width_mm": TraitWords(
        "Leaf width", "How wide is it, at its widest?", "the same leaf", unit="mm"
    ),
    "colour_above": TraitWords(
        "Colour above", "What colour is the upper side?", "a grown leaf", COLOURS
    ),
    "colour_below": TraitWords(
        "Colour below", "What colour is the underside?", "a leaf turned over", COLOURS
    ),
    "smell": TraitWords("Smell", "Does a rubbed leaf smell?", "a leaf between the fingers", SMELLS),
    "height_cm": TraitWords("Height", "How tall is the plant?", "from the soil up", unit="cm"),
    "root_length_mm": TraitWords(
        "Length of the roots",
        "How long are the hanging roots?",
        "below the floating leaves",
        unit="mm",
    ),
    "flower": TraitWords(
        "Flower", "What colour is the flower?", "a flower, if there is one", FLOWERS
    ),
}


def words_of(trait: str, value: str | float) -> str:
    """A value as a keeper reads it."""
    words = TRAITS[trait]
    return words.values[value] if isinstance(value, str) else f"{value:g} {words.unit}".rstrip()
