"""Cover counted over the surface itself: each pixel weighs as much as the water it shows.

Far water is small in a picture taken at a slant. The area that a pixel stands for is the stretch of the
map from picture to surface at that pixel, so no picture has to be redrawn.
"""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from calculators.surface_cover.homography import Homography, value
from calculators.surface_cover.leaf_sorts import (
    DARK_PLANT,
    GLARE,
    NEAR_PLANT,
    NEAR_WATER,
    PLANT,
    RED,
)

SORTS = range(7)
FINENESS = 24  # pieces of a row whose depth doubles; within one the weight is taken as even
# A mark that is one part in a hundred of the picture off its place; our judgement, in points of cover.
MARKING_POINTS = 1.0
LEAST_ERROR_POINTS = 3.0  # what pictures drawn with a known cover show; the range never claims less
NO_CLASSES_POINTS = 10.0  # added where the picture shows no two classes; our judgement
MARKED_POINTS = 5.0  # added where colours follow a few marks; our judgement
# Of the cover: dark rims, creases and shaded leaves of photo-like pictures were counted as water.
SHADED_SHARE = 0.04

Pieces = Sequence[Sequence[tuple[int, int]]]  # for each row, first pixel and the one after the last


class Count(NamedTuple):
    """Shares of the room, 0 to 1, by sort of colour; the room's own share of the surface."""

    by_sort: tuple[float, ...]
    room: float
    pixels: int

    @property
    def cover(self) -> float:
        """The share that is plant."""
        return self.by_sort[NEAR_PLANT] + self.by_sort[PLANT] + self.by_sort[DARK_PLANT]


def count(sorted_pixels: bytes, width: int, pieces: Pieces, to_square: Homography) -> Count:
    """Weigh the sorts of all pixels in some pieces of each row.

    The ``width`` of the picture is in pixels.
    """
    sums, pixels = [0.0] * len(SORTS), 0
    for row, parts in enumerate(pieces):
        for first, last in (part for part in parts if part[0] < part[1]):
            pixels += last - first
            for start, end, weight in evenly(first, last, row, to_square):
                here = row * width
                for sort in SORTS:
                    pixels_of_sort = sorted_pixels.count(sort, here + start, here + end)
                    if pixels_of_sort:
                        sums[sort] += weight * pixels_of_sort
    room = sum(sums)
    return Count(
        tuple(share / room for share in sums) if room else (0.0,) * len(SORTS), room, pixels
    )


def evenly(first: int, last: int, row: int, to_square: Homography) -> list[tuple[int, int, float]]:
    """Parts of a piece of a row, each with the weight of a pixel in it.

    The piece has the pixels from ``first`` to before ``last``; the parts stand from left to right, each
    as the first pixel, the one after the last, and the weight.
    """
    y = row + 0.5
    near, far = (value(to_square.depth, x, y) for x in (first, last))
    number = min(last - first, 1 + int(FINENESS * abs(math.log2(near / far))))
    edges = [first + (last - first) * part // number for part in range(number + 1)]
    return [(start, end, to_square.stretch((start + end) / 2, y)) for start, end in pairwise(edges)]


class CoverRange(NamedTuple):
    """Cover in percent, and the least and most that it may be."""

    cover: float
    low: float
    high: float


def range_of(counted: Count, two_classes: bool, marked: bool) -> CoverRange:
    """The cover with its error: doubtful colours, shaded leaves, marks, the number of pixels."""
    by_sort, cover = counted.by_sort, 100 * counted.cover
    sampling = 100 * math.sqrt(counted.cover * (1 - min(1.0, counted.cover)) / counted.pixels)
    even = math.hypot(MARKING_POINTS, 2 * sampling)
    even += (0 if two_classes else NO_CLASSES_POINTS) + (MARKED_POINTS if marked else 0)
    low = 100 * by_sort[PLANT] - even
    unseen = by_sort[NEAR_WATER] + by_sort[GLARE] + by_sort[RED] + SHADED_SHARE * counted.cover
    high = cover + 100 * unseen + even
    return CoverRange(
        cover,
        max(0.0, min(low, cover - LEAST_ERROR_POINTS)),
        min(100.0, max(high, cover + LEAST_ERROR_POINTS)),
    )
