"""How much of each pixel is leaf: its excess green between that of water and that of leaves near it.

Leaves under a lamp's middle have several times the excess of leaves in a corner, so the picture is cut
into tiles, and a pixel is held against the leaves of its own tile. The published index and its linear
mixing carry over; tiles, percentile and limits are ours and tried on drawn pictures.
"""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from calculators.core.leaf_colour import look
from calculators.core.picture import Colour, Picture
from calculators.core.plant_colours import IS_GLARE, IS_OPEN, IS_PLANT, IS_RED, IS_WATER, Colours

TILE = 20  # pixels
FEWEST = 8  # leaf pixels of a tile that may speak for it
PURE = 0.75  # the place, in order, of a leaf pixel that is leaf alone and no edge
FAINTEST = 0.25  # of the whole picture's leaves: a tile's cannot be fainter

# One octet a pixel. What is decided has its own; the others are 3 + 100 * (share of leaf + 0.5).
DECIDED = {IS_WATER: 0, IS_GLARE: 1, IS_RED: 2, IS_PLANT: 255}
LOWEST, HIGHEST, NO_LEAF, ALL_LEAF = 3, 254, 53, 153
# Excess green, one octet: 3 is -63 or less, 254 is 188 or more. The same octets for what is decided.
EXCESS_ZERO = 66


class Levels(NamedTuple):
    """Excess green of water and of leaves, as octets."""

    water: float
    leaf: float


def shares(shown: Picture, colours: Colours, counts: Mapping[Colour, int]) -> bytes:
    """One octet a pixel, as above; a pixel outside what was counted counts as water."""
    excess = {colour: octet(colour, known) for colour, known in colours.known.items()}
    pixels = bytes(map(excess.get, shown.colours, [0] * len(shown.colours)))
    if not colours.two_classes:
        return pixels
    leaves = {
        colour: excess[colour] for colour in colours.leaves if LOWEST <= excess[colour] <= HIGHEST
    }
    whole = levels(counts, leaves, excess)
    strengths = tile_strengths(shown, leaves, whole)
    return relative(pixels, shown.width, strengths, whole)


def octet(colour: Colour, known: int) -> int:
    """The octet of a colour that is decided, or of its excess green."""
    if known != IS_OPEN:
        return DECIDED[known]
    return min(HIGHEST, max(LOWEST, EXCESS_ZERO + look(colour).excess))


def levels(
    counts: Mapping[Colour, int], leaves: Mapping[Colour, int], excess: Mapping[Colour, int]
) -> Levels:
    """Water and leaves of the whole picture."""
    water = sorted_values(
        {colour: value for colour, value in excess.items() if colour not in leaves}, counts
    )
    pure = sorted_values(leaves, counts)
    leaf = pure[int(PURE * (len(pure) - 1))] if pure else HIGHEST
    middle = water[len(water) // 2] if water else EXCESS_ZERO
    return Levels(min(middle, leaf - 1), leaf)


def sorted_values(excess: Mapping[Colour, int], counts: Mapping[Colour, int]) -> list[int]:
    """The octets of excess green of some colours that are not decided, each as often as it stands."""
    return sorted(
        value
        for colour, value in excess.items()
        if LOWEST <= value <= HIGHEST
        for _ in range(counts[colour])
    )


def tile_strengths(
    shown: Picture, leaves: Mapping[Colour, int], whole: Levels
) -> list[list[float]]:
    """How strong the leaves of each tile are, with 1 for the whole picture's."""
    only_leaves = bytes(map(leaves.get, shown.colours, [0] * len(shown.colours)))
    found = [
        [strength(only_leaves, shown, top, left, whole) for left in range(0, shown.width, TILE)]
        for top in range(0, shown.height, TILE)
    ]
    return [
        [near(found, row, column) for column in range(len(found[row]))] for row in range(len(found))
    ]


def strength(
    only_leaves: bytes, shown: Picture, top: int, left: int, whole: Levels
) -> float | None:
    """How strong the leaves of one tile are; None where there are hardly any."""
    rows = range(top, min(top + TILE, shown.height))
    right = min(left + TILE, shown.width)
    tile = b"".join(
        only_leaves[row * shown.width + left : row * shown.width + right] for row in rows
    )
    here = sorted(tile.replace(b"\0", b""))
    if len(here) < FEWEST:
        return None
    pure = here[int(PURE * (len(here) - 1))]
    return max(FAINTEST, (pure - EXCESS_ZERO) / max(1.0, whole.leaf - EXCESS_ZERO))


def near(found: Sequence[Sequence[float | None]], row: int, column: int) -> float:
    """A tile's own strength, or the mean of the tiles around it, or that of the whole picture."""
    own = found[row][column]
    if own is not None:
        return own
    around = [
        one
        for line in found[max(0, row - 1) : row + 2]
        for one in line[max(0, column - 1) : column + 2]
        if one is not None
    ]
    return sum(around) / len(around) if around else 1.0


def relative(
    pixels: bytes, width: int, strengths: Sequence[Sequence[float]], whole: Levels
) -> bytes:
    """Change the octets from excess green to shares of leaf, tile by tile."""
    tables = [[table(one, whole) for one in line] for line in strengths]
    made = bytearray()
    for row in range(len(pixels) // width):
        here = row * width
        for number, change in enumerate(tables[row // TILE]):
            start = here + number * TILE
            made += pixels[start : min(start + TILE, here + width)].translate(change)
    return bytes(made)


def table(strength: float, whole: Levels) -> bytes:
    """For each octet of excess green, that of the share of leaf in light of such a strength."""
    water = strength * (whole.water - EXCESS_ZERO)
    leaf = strength * (whole.leaf - EXCESS_ZERO)
    scale = (ALL_LEAF - NO_LEAF) / (leaf - water)
    return bytes(
        value
        if value < LOWEST or value > HIGHEST
        else min(HIGHEST, max(LOWEST, round(NO_LEAF + scale * (value - EXCESS_ZERO - water))))
        for value in range(256)
    )
