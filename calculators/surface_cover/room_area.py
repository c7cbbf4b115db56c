"""The room's area in cm²: by the ruler where that is possible, else counted, and then why.

Points of a picture count an area to a part in a hundred or so. Where the keeper's own lengths give it
exactly, they do, so that this calculator and the floaters' have one figure.
"""

import math
from collections.abc import Sequence
from itertools import combinations
from typing import NamedTuple

from calculators.surface_cover.channels import pixels_of
from calculators.surface_cover.count import Count, count
from calculators.surface_cover.counted_area import CountedArea
from calculators.surface_cover.discs import Disc
from calculators.surface_cover.water_outline import RECTANGLE, Outline, area

TOUCHING = 1e-9  # of a length


class RoomArea(NamedTuple):
    """Areas in cm²: the water's surface and the room on it; why they are not the ruler's, if not."""

    surface: float
    room: float
    why: tuple[str, ...]


def room_area(
    room: CountedArea, counted: Count, ruler_cm2: float, width: int, height: int
) -> RoomArea:
    """The areas of a room whose points were counted in a picture of so many pixels.

    The picture's ``width`` and ``height`` are in pixels.
    """
    fills = share_of_rectangle(room.edge)
    surface = fills * ruler_cm2
    why = []
    if fills < 1:
        why.append("the outline you marked does not fill the rectangle of length and width")
    if room.left_out:
        why.append("what you left out is not counted")
    if room.rings and not lie_apart_inside(room.rings):
        why.append("rings overlap, or reach beyond the water's edge")
    if not room.rings and not room.left_out:
        return RoomArea(surface, surface, tuple(why))
    if room.rings and not room.left_out and fills == 1 and lie_apart_inside(room.rings):
        return RoomArea(surface, sum(math.pi * ring.radius**2 for ring in room.rings), tuple(why))
    bare = CountedArea(room.edge, (), ())
    pieces = [
        [pixels_of(piece, width) for piece in bare.row(row + 0.5, True)] for row in range(height)
    ]
    empty_room = count(bytes(width * height), width, pieces, room.to_square).room
    return RoomArea(surface, surface * counted.room / empty_room, tuple(why))


def share_of_rectangle(edge: Outline) -> float:
    """The share of the rectangle of length and width that the outline fills; 1 for four corners."""
    if len(edge.points) == RECTANGLE:
        return 1.0
    xs, ys = zip(*edge.points, strict=True)
    rectangle: float = (max(xs) - min(xs)) * (max(ys) - min(ys))
    return area(edge.points) / rectangle


def lie_apart_inside(rings: Sequence[Disc]) -> bool:
    """Whether the rings lie inside the surface and none over another."""
    inside = all(
        ring.radius * (1 - TOUCHING) <= place <= size - ring.radius * (1 - TOUCHING)
        for ring in rings
        for place, size in ((ring.x, ring.wide), (ring.y, ring.deep))
    )
    apart = all(
        math.dist((first.x, first.y), (other.x, other.y))
        >= (first.radius + other.radius) * (1 - TOUCHING)
        for first, other in combinations(rings, 2)
    )
    return inside and apart
