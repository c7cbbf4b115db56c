"""From shares of leaf to sorts of pixel: water, plant, and what may be either."""

from calculators.surface_cover.leaf_share import ALL_LEAF, DECIDED, LOWEST, NO_LEAF
from calculators.surface_cover.otsu import otsu
from calculators.surface_cover.plant_colours import IS_GLARE, IS_PLANT, IS_RED

# Water, then plant, then what is counted as plant or water but may be the other.
WATER, NEAR_WATER, NEAR_PLANT, PLANT, DARK_PLANT, GLARE, RED = range(7)
PLANTS = (NEAR_PLANT, PLANT, DARK_PLANT)

HALF = (NO_LEAF + ALL_LEAF) / 2  # a pixel half of leaf: where edges count right on the whole
NEAR = 15  # points of share on either side of the line that are doubtful; our choice
MOVED = 0.4  # points of share by which a percent of the keeper's wish moves the line
TWO_HEAPS = 0.76  # Otsu's separability of two clear groups
FAINT = 0.75  # of the share of the strong leaves: a second group below may be under water


def sorted_pixels(shares: bytes, more_percent: float, look_for_dark: bool) -> bytes:
    """One sort a pixel. ``more_percent``, -100 to 100, counts more as plant, or less."""
    line = HALF - MOVED * more_percent
    dark = last_dark(shares, line) if look_for_dark else 0
    return shares.translate(bytes(sort_of(value, line, dark) for value in range(256)))


def sort_of(value: int, line: float, dark: int) -> int:
    """The sort of one octet of share.

    That octet is ``value``; from ``line`` on it is a leaf, and up to ``dark`` a dark one.
    """
    if value == DECIDED[IS_GLARE]:
        return GLARE
    if value == DECIDED[IS_RED]:
        return RED
    if value == DECIDED[IS_PLANT]:
        return PLANT
    if value < LOWEST or value < line:
        return NEAR_WATER if value >= max(LOWEST, line - NEAR) else WATER
    if value <= dark:
        return DARK_PLANT
    return NEAR_PLANT if value < line + NEAR else PLANT


def last_dark(shares: bytes, line: float) -> int:
    """The highest octet of a second, fainter group of plants, which may be under water; 0: none.

    Leaves are above the octet ``line``.
    """
    first = max(LOWEST, int(line) + 1)
    histogram = [shares.count(value) if value >= first else 0 for value in range(255)]
    split = otsu(histogram)
    if not split or split.separability < TWO_HEAPS:
        return 0
    faint = (split.mean_low - NO_LEAF) < FAINT * (split.mean_high - NO_LEAF)
    return split.last_low if faint else 0
