"""Which colours of a picture are leaf, at first sight, and which the keeper has decided."""

from collections import Counter
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from calculators.surface_cover.channels import Colour
from calculators.surface_cover.leaf_colour import LeafColour, colour_of_leaf, distance, is_glare
from calculators.surface_cover.otsu import Split, otsu

BINS = 256
LEAST_GREEN, MOST_GREEN = -0.1, 0.25  # beyond, a colour is not green, or green enough; our choice
FIXED_GREEN = 0.08  # the line where the picture shows no two classes; our choice
LEAST_GAP = 0.06  # of greenness between the classes' means, to be two; our choice
LEAST_EXCESS = 32  # less is the noise of dark water, of 510 at most; our choice
RED_FROM = 0.35  # redness of vivid red leaves; brown sand and tea water stay below

# What is known of a colour: decided by a mark, or by itself; or open, to be weighed by its excess.
IS_WATER, IS_GLARE, IS_RED, IS_OPEN, IS_PLANT = range(5)


class ColourMark(NamedTuple):
    """A colour that the keeper pointed out, as plant or as water."""

    colour: Colour
    plant: bool


class Colours(NamedTuple):
    """What is known of each colour, which are leaf at first sight, and whether two classes show."""

    known: dict[Colour, int]
    leaves: set[Colour]
    two_classes: bool


def colours_of(counts: Counter[Colour], marks: Sequence[ColourMark]) -> Colours:
    """Sort the colours of a picture by greenness, then by the keeper's marks."""
    line, two_classes = line_of(counts)
    leaves = {colour for colour in counts if is_leaf(colour_of_leaf(colour), line)}
    verdicts = {colour: by_itself(colour, colour in leaves, two_classes) for colour in counts}
    if marks:
        verdicts |= by_marks(counts, leaves, marks)
    return Colours(verdicts, leaves, two_classes)


def is_leaf(seen: LeafColour, line: float) -> bool:
    """Whether a colour is a leaf's at first sight. Its share of green must reach ``line``."""
    return seen.green >= line and seen.excess >= LEAST_EXCESS


def line_of(counts: Counter[Colour]) -> tuple[float, bool]:
    """The greenness that parts leaf from water (Otsu), and whether the picture shows the two."""
    size = (MOST_GREEN - LEAST_GREEN) / (BINS - 1)
    histogram = [0] * BINS
    for colour, count in counts.items():
        green = min(MOST_GREEN, max(LEAST_GREEN, colour_of_leaf(colour).green))
        histogram[round((green - LEAST_GREEN) / size)] += count
    split = otsu(histogram)
    if split and two_heaps(split, size):
        return LEAST_GREEN + (split.mean_low + split.mean_high) / 2 * size, True
    return FIXED_GREEN, False


def two_heaps(split: Split, size: float) -> bool:
    """Whether the two classes lie apart, and the upper one is green and not only less brown.

    Their means count bins of this ``size``, a share of green.
    """
    apart = (split.mean_high - split.mean_low) * size >= LEAST_GAP
    return apart and LEAST_GREEN + split.mean_high * size > FIXED_GREEN


def by_itself(colour: Colour, leaf: bool, two_classes: bool) -> int:
    """What a colour says by itself. As a number: the index of a verdict."""
    if is_glare(colour):
        return IS_GLARE
    if colour_of_leaf(colour).red > RED_FROM and not leaf:
        return IS_RED
    if two_classes:
        return IS_OPEN
    return IS_PLANT if leaf else IS_WATER


def by_marks(
    counts: Mapping[Colour, int], leaves: set[Colour], marks: Sequence[ColourMark]
) -> dict[Colour, int]:
    """The colours that are nearer to a mark than to the mean of leaf or water: they follow it.

    By colour, the index of its verdict.
    """
    means = [
        colour_of_leaf(mean_colour(some, counts))
        for some in (leaves, counts.keys() - leaves)
        if some
    ]
    marked = [(colour_of_leaf(mark.colour), IS_PLANT if mark.plant else IS_WATER) for mark in marks]
    sort_by_colour: dict[Colour, int | None] = {}  # by steps of 8, which are near enough
    decided = {}
    for colour in counts:
        coarse = (colour[0] & 248 | 4, colour[1] & 248 | 4, colour[2] & 248 | 4)
        if coarse not in sort_by_colour:
            seen = colour_of_leaf(coarse)
            closest, what = min((distance(seen, mark), what) for mark, what in marked)
            nearer = all(closest < distance(seen, mean) for mean in means)
            sort_by_colour[coarse] = what if nearer else None
        sort = sort_by_colour[coarse]
        if sort is not None:
            decided[colour] = sort
    return decided


def marks_differ(marks: Sequence[ColourMark]) -> bool:
    """Whether both kinds are marked, and no plant mark looks like a water mark.

    Marks closer than the classes' least gap say that colour cannot part what the keeper sees.
    """
    plants = [colour_of_leaf(mark.colour) for mark in marks if mark.plant]
    waters = [colour_of_leaf(mark.colour) for mark in marks if not mark.plant]
    pairs = [distance(plant, other) for plant in plants for other in waters]
    return bool(pairs) and min(pairs) >= LEAST_GAP**2


def mean_colour(some: set[Colour], counts: Mapping[Colour, int]) -> Colour:
    """The mean of some colours, by how often they stand in the picture."""
    number = sum(counts[colour] for colour in some)
    red, green, blue = (
        sum(colour[channel] * counts[colour] for colour in some) // number for channel in range(3)
    )
    return red, green, blue
