"""Round things on a surface, such as a ring of tubing, as a picture at a slant shows them."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from calculators.surface_cover.homography import Homography, Point, Three, value
from calculators.surface_cover.water_outline import Span

POINTS_DRAWN = 48


class Disc(NamedTuple):
    """A disc on the surface: its middle and radius in cm, on a surface of ``wide`` by ``deep`` cm."""

    x: float
    y: float
    radius: float
    wide: float
    deep: float


def disc_at(to_square: Homography, point: Point, diameter: float, wide: float, deep: float) -> Disc:
    """A disc around what a point of the picture shows.

    Its ``diameter`` and the sides of the surface, ``wide`` and ``deep``, are in cm.
    """
    x, y = to_square.at(*point)
    return Disc(x * wide, y * deep, diameter / 2, wide, deep)


def span(disc: Disc, to_square: Homography, y: float) -> list[Span]:
    """The piece of the row at ``y`` of the picture that lies inside the disc.

    A point of the row is a fraction on the surface, with the same divisor across and down; distance
    below the radius is then a quadratic in x.
    """
    across = shifted(to_square.across, to_square.depth, disc.wide, disc.x)
    down = shifted(to_square.down, to_square.depth, disc.deep, disc.y)
    a = c = b = 0.0
    for row, sign in ((across, 1), (down, 1), (to_square.depth, -(disc.radius**2))):
        slope, rest = row[0], row[1] * y + row[2]
        a += sign * slope * slope
        b += sign * slope * rest
        c += sign * rest * rest
    inside = b * b - a * c
    if a <= 0 or inside <= 0:
        return []
    half = math.sqrt(inside)
    return [((-b - half) / a, (-b + half) / a)]


def shifted(row: Three, depth: Three, scale: float, middle: float) -> Three:
    """A row of the map, in cm and counted from the disc's middle.

    The ``scale`` is the side of the surface in cm.
    """
    return (
        scale * row[0] - middle * depth[0],
        scale * row[1] - middle * depth[1],
        scale * row[2] - middle * depth[2],
    )


def drawn(disc: Disc, to_picture: Homography) -> list[Point]:
    """The disc's edge in the picture, to be shown to the keeper."""
    turns = (2 * math.pi * step / POINTS_DRAWN for step in range(POINTS_DRAWN))
    return [
        to_picture.at(
            (disc.x + disc.radius * math.cos(turn)) / disc.wide,
            (disc.y + disc.radius * math.sin(turn)) / disc.deep,
        )
        for turn in turns
    ]


def edge_in_front(disc: Disc, to_picture: Homography) -> bool:
    """Whether the whole disc lies before the horizon of the picture; beyond it nothing can be drawn."""
    g, h, i = to_picture.depth
    reach = disc.radius * math.hypot(g / disc.wide, h / disc.deep)
    return value((g, h, i), disc.x / disc.wide, disc.y / disc.deep) > reach


def joined(spans: Sequence[Span]) -> list[Span]:
    """Pieces of a row with their overlaps joined, in order."""
    made: list[Span] = []
    for start, end in sorted(spans):
        if made and start <= made[-1][1]:
            made[-1] = (made[-1][0], max(end, made[-1][1]))
        else:
            made.append((start, end))
    return made


def common(some: Sequence[Span], others: Sequence[Span]) -> list[Span]:
    """What two lists of pieces have in common."""
    both = (
        (max(start, begin), min(end, stop)) for start, end in some for begin, stop in joined(others)
    )
    return [(start, end) for start, end in both if start < end]


def without(some: Sequence[Span], taken: Sequence[Span]) -> list[Span]:
    """Pieces of a row, less what is taken out of them."""
    left = list(some)
    for begin, stop in joined(taken):
        left = [
            piece
            for start, end in left
            for piece in ((start, min(end, begin)), (max(start, stop), end))
            if piece[0] < piece[1]
        ]
    return left
