"""The water's edge in a picture: points put in order, checked, and read row by row.

Points are in pixels, x to the right and y down.
"""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from calculators.surface_cover.homography import Homography, Point, box_to_square, square_to

Span = tuple[float, float]  # a piece of one row of the picture, from x to x
RECTANGLE = 4


class Outline(NamedTuple):
    """The edge in order round its middle, and the map from the picture to a surface of 1 by 1."""

    points: list[Point]
    to_square: Homography
    slant_removed: bool
    first_side_is_longer: bool


class NoOutline(ValueError):
    """Points that cannot be the edge of a surface; the message says why."""


def outline(points: Sequence[Point]) -> Outline:
    """Order the points and find the map. Four are a rectangle's corners, seen at any slant.

    More or fewer are any outline, taken as seen straight from above. Raises ``NoOutline``.
    """
    ordered = around(points)
    if area(ordered) <= 0 or min(map(math.dist, ordered, [*ordered[1:], ordered[0]])) == 0:
        raise NoOutline("the corners enclose nothing")
    if len(ordered) != RECTANGLE:
        xs, ys = zip(*ordered, strict=True)
        wide, high = max(xs) - min(xs), max(ys) - min(ys)
        return Outline(ordered, box_to_square(min(xs), min(ys), wide, high), False, wide >= high)
    if not convex(ordered):
        raise NoOutline("one corner lies between the others, so that they make no rectangle")
    sides = [math.dist(corner, other) for corner, other in pairwise(ordered)]
    longer = sides[0] + sides[2] >= sides[1] + math.dist(ordered[3], ordered[0])
    return Outline(ordered, square_to(ordered).inverse(), True, longer)


def around(points: Sequence[Point]) -> list[Point]:
    """Points in order round their middle, clockwise as one sees them, from the upper left one.

    So it does not matter in which order they were marked, and a line never crosses another.
    """
    middle_x = sum(x for x, _ in points) / len(points)
    middle_y = sum(y for _, y in points) / len(points)
    ordered = sorted(points, key=lambda point: math.atan2(point[1] - middle_y, point[0] - middle_x))
    first = min(range(len(ordered)), key=lambda place: sum(ordered[place]))
    return [*ordered[first:], *ordered[:first]]


def area(points: Sequence[Point]) -> float:
    """The area that an outline encloses: positive for a clockwise one, with y down.

    It is in the square of the points' unit, here pixels.
    """
    turned = [*points[1:], points[0]]
    return sum(x * v - u * y for (x, y), (u, v) in zip(points, turned, strict=True)) / 2


def convex(points: Sequence[Point]) -> bool:
    """Whether an outline bends the same way, and clearly, at each point."""
    size = area(points)
    triples = zip(points, [*points[1:], points[0]], [*points[2:], *points[:2]], strict=True)
    return all(area(three) > size * 1e-3 for three in triples)


def spans(points: Sequence[Point], y: float) -> list[Span]:
    """The pieces of the row at ``y`` that lie inside an outline.

    Both ``y`` and the pieces are in pixels.
    """
    crossings = sorted(
        x + (y - top) / (bottom - top) * (u - x)
        for (x, top), (u, bottom) in zip(points, [*points[1:], points[0]], strict=True)
        if (top <= y) != (bottom <= y)
    )
    return list(zip(crossings[::2], crossings[1::2], strict=True))
