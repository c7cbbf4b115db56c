"""How much of each pixel is leaf: its excess green between that of water and that of leaves near it.

Leaves under a lamp's middle have several times the excess of leaves in a corner, so the picture is cut
into tiles, and a pixel is held against the leaves of its own tile. The published index and its linear
mixing carry over; tiles, percentile and limits are ours and tried on drawn pictures.
"""

from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

from calculators.surface_cover.channels import Colour, Photo
from calculators.surface_cover.leaf_colour import colour_of_leaf
from calculators.surface_cover.plant_colours import (
    IS_GLARE,
    IS_OPEN,
    IS_PLANT,
    IS_RED,
    IS_WATER,
    Colours,
)

TILE = 20  # pixels
FEWEST = 8  # leaf pixels of a tile that may speak for it
PURE = 0.75  # the place, in order, of a leaf pixel that is leaf alone and no edge
MIDDLE = 0.5  # water is as green as the middle one of its pixels
FAINTEST = 0.25  # of the whole picture's leaves: a tile's cannot be fainter
FINENESS = 0.02  # steps of strength, so that few tables have to be made

# One octet a pixel. What is decided has its own; the others are 3 + 100 * (share of leaf + 0.5).
DECIDED = {IS_WATER: 0, IS_GLARE: 1, IS_RED: 2, IS_PLANT: 255}
LOWEST, HIGHEST, NO_LEAF, ALL_LEAF = 3, 254, 53, 153
# Excess green, one octet: 3 is -63 or less, 254 is 188 or more. The same octets for what is decided.
EXCESS_ZERO = 66


class Levels(NamedTuple):
    """Excess green of water and of leaves, as octets."""

    water: float
    leaf: float


def shares(shown: Photo, colours: Colours, counts: Mapping[Colour, int]) -> bytes:
    """One octet a pixel, as above; a pixel outside what was counted counts as water."""
    excess = {colour: octet(colour, verdict) for colour, verdict in colours.known.items()}
    pixels = bytes(map(excess.get, shown.colours, [0] * len(shown.colours)))
    if not colours.two_classes:
        return pixels
    leaves = {
        colour: excess[colour] for colour in colours.leaves if LOWEST <= excess[colour] <= HIGHEST
    }
    picture_levels = levels(counts, leaves, excess)
    strengths = tile_strengths(shown, leaves, picture_levels)
    return relative(pixels, shown.width, strengths, picture_levels)


def octet(colour: Colour, verdict: int) -> int:
    """The octet of a colour that is decided, or of its excess green.

    The ``verdict`` is a number of those that ``plant_colours`` gives.
    """
    if verdict != IS_OPEN:
        return DECIDED[verdict]
    return min(HIGHEST, max(LOWEST, EXCESS_ZERO + colour_of_leaf(colour).excess))


def levels(
    counts: Mapping[Colour, int], leaves: Mapping[Colour, int], excess: Mapping[Colour, int]
) -> Levels:
    """Water and leaves of the whole picture."""
    open_water = {colour: value for colour, value in excess.items() if colour not in leaves}
    leaf = at_share(leaves, counts, PURE, HIGHEST)
    return Levels(min(at_share(open_water, counts, MIDDLE, EXCESS_ZERO), leaf - 1), leaf)


def at_share(
    excess: Mapping[Colour, int], counts: Mapping[Colour, int], share: float, otherwise: int
) -> int:
    """The octet below which such a share of the pixels lies, of the colours that are not decided.

    It is ``otherwise`` where there are none.
    """
    numbers = [0] * (HIGHEST + 2)
    for colour, value in excess.items():
        numbers[value] += counts[colour]
    still = share * sum(numbers[LOWEST : HIGHEST + 1])
    for value in range(LOWEST, HIGHEST + 1) if still else ():
        still -= numbers[value]
        if still <= 0:
            return value
    return otherwise


def tile_strengths(
    shown: Photo, leaves: Mapping[Colour, int], picture_levels: Levels
) -> list[list[float]]:
    """How strong the leaves of each tile are, with 1 for the whole picture's."""
    only_leaves = bytes(map(leaves.get, shown.colours, [0] * len(shown.colours)))
    strengths = [
        [
            strength(only_leaves, shown, top, left, picture_levels)
            for left in range(0, shown.width, TILE)
        ]
        for top in range(0, shown.height, TILE)
    ]
    return [
        [near(strengths, row, column) for column in range(len(strengths[row]))]
        for row in range(len(strengths))
    ]


def strength(
    only_leaves: bytes, shown: Photo, top: int, left: int, picture_levels: Levels
) -> float | None:
    """How strong the leaves of one tile are; None where there are hardly any.

    As a factor of the whole picture's; ``top`` and ``left`` are in pixels.
    """
    rows = range(top, min(top + TILE, shown.height))
    right = min(left + TILE, shown.width)
    tile = b"".join(
        only_leaves[row * shown.width + left : row * shown.width + right] for row in rows
    )
    here = sorted(tile.replace(b"\0", b""))
    if len(here) < FEWEST:
        return None
    pure = here[int(PURE * (len(here) - 1))]
    strength = (pure - EXCESS_ZERO) / max(1.0, picture_levels.leaf - EXCESS_ZERO)
    return max(FAINTEST, round(strength / FINENESS) * FINENESS)


def near(strengths: Sequence[Sequence[float | None]], row: int, column: int) -> float:
    """A tile's own strength, or the mean of the tiles around it, or that of the whole picture.

    All ``strengths`` are factors of the whole picture's, row by row of tiles.
    """
    own = strengths[row][column]
    if own is not None:
        return own
    around = [
        strength
        for line in strengths[max(0, row - 1) : row + 2]
        for strength in line[max(0, column - 1) : column + 2]
        if strength is not None
    ]
    return round(sum(around) / len(around) / FINENESS) * FINENESS if around else 1.0


def relative(
    pixels: bytes, width: int, strengths: Sequence[Sequence[float]], picture_levels: Levels
) -> bytes:
    """Change the octets from excess green to shares of leaf, tile by tile.

    The ``width`` of the picture is in pixels; ``strengths`` are factors, row by row of tiles.
    """
    tables = [[table(strength, picture_levels) for strength in line] for line in strengths]
    made = bytearray()
    for row in range(len(pixels) // width):
        here = row * width
        for number, change in enumerate(tables[row // TILE]):
            start = here + number * TILE
            made += pixels[start : min(start + TILE, here + width)].translate(change)
    return bytes(made)


@lru_cache(maxsize=512)
def table(strength: float, picture_levels: Levels) -> bytes:
    """For each octet of excess green, that of the share of leaf in light of such a strength."""
    water = strength * (picture_levels.water - EXCESS_ZERO)
    leaf = strength * (picture_levels.leaf - EXCESS_ZERO)
    scale = (ALL_LEAF - NO_LEAF) / (leaf - water)
    return bytes(
        value
        if value < LOWEST or value > HIGHEST
        else min(HIGHEST, max(LOWEST, round(NO_LEAF + scale * (value - EXCESS_ZERO - water))))
        for value in range(256)
    )
