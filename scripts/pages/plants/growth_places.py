"""Where the marks of a picture go, so that none covers another."""

import math
from collections.abc import Iterator
from typing import NamedTuple

# Pixels of the picture, which fits a phone at its own size.
WIDTH, HEIGHT = 360.0, 400.0
LEFT, RIGHT, TOP, BOTTOM = 44.0, 8.0, 24.0, 40.0
MARK = 9.0  # radius of a numbered mark
ROOM = 2 * MARK + 4.0  # marks nearer than this crowd
MOST = 100  # marks; a third of what would cover the picture whole


class PicturePoint(NamedTuple):
    """A point of the picture, in its pixels."""

    x: float
    y: float


def spread_out(homes: list[PicturePoint]) -> list[PicturePoint]:
    """A place for each mark: its own, or the nearest free one, looked for in widening rings.

    More marks than the picture has room for stay where they are, on top of each other; the list
    beneath still tells them apart, and the build's time stays in line with the number of records.
    """
    if len(homes) > MOST:
        return homes
    taken: list[PicturePoint] = []
    for home in homes:
        taken.append(next((place for place in rings(home) if free(place, taken)), home))
    return taken


def rings(home: PicturePoint) -> Iterator[PicturePoint]:
    """The point itself, then points around it, ever farther out, inside the picture."""
    yield home
    for ring in range(1, 100):
        radius = 4.0 * ring
        for turn in range(16):
            angle = math.tau * turn / 16
            x, y = home.x + radius * math.cos(angle), home.y + radius * math.sin(angle)
            if LEFT + MARK <= x <= WIDTH - MARK and TOP + MARK <= y <= HEIGHT - BOTTOM - MARK:
                yield PicturePoint(x, y)


def free(place: PicturePoint, taken: list[PicturePoint]) -> bool:
    """Whether a mark would touch none that is set down."""
    return all(math.dist(place, other) >= ROOM for other in taken)
