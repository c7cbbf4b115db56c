"""Where the name of a line across a picture stands: beside it, clear of the curves and other names."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

LETTER = 7.1  # mean width of a letter, in units of the picture, at its font size of 13.5
HEIGHT = 12  # of a name
AWAY = 4  # from the line to the name's foot, above it
UNDER = 14  # from the line to the name's foot, below it
EDGE = 4
FINE = 3.0  # between the points of a curve that are looked at


class Box(NamedTuple):
    """Room that a name takes: its foot's left end, and its width."""

    left: float
    foot: float
    width: float

    def holds(self, x: float, y: float) -> bool:
        """Whether a point lies in it."""
        return (
            self.left - 2 <= x <= self.left + self.width
            and self.foot - HEIGHT <= y <= self.foot + 2
        )

    def meets(self, other: "Box") -> bool:
        """Whether two names stand in each other's way."""
        beside = (
            self.left + self.width + EDGE < other.left
            or other.left + other.width + EDGE < self.left
        )
        return not beside and abs(self.foot - other.foot) < HEIGHT + 1


def place_names(
    named: Sequence[tuple[str, float]],
    courses: Iterable[Sequence[tuple[float, float]]],
    left: float,
    right: float,
    bottom: float,
) -> list[Box]:
    """A box for each name at the height of its line, where least of the curves is in the way."""
    points = [point for course in courses for point in finely(course)]
    taken: list[Box] = []
    for text, height in named:
        width = LETTER * len(text)
        boxes = [box for box in around(height, width, left, right) if box.foot < bottom]
        taken.append(min(boxes, key=lambda box: in_the_way(box, points, taken)))
    return taken


def around(height: float, width: float, left: float, right: float) -> Iterator[Box]:
    """The places for a name, the best first: above the line or below it, left, right or between."""
    ends = (left + EDGE, right - width - EDGE, (left + right - width) / 2)
    for foot in (height - AWAY, height + UNDER):
        for start in ends:
            yield Box(start, foot, width)


def in_the_way(box: Box, points: Sequence[tuple[float, float]], taken: Sequence[Box]) -> int:
    """How much of the curves, and above all of other names, a place would cover."""
    covered = sum(box.holds(x, y) for x, y in points)
    return covered + 1_000 * sum(box.meets(other) for other in taken)


def finely(course: Sequence[tuple[float, float]]) -> Iterator[tuple[float, float]]:
    """Points along a curve, near enough to each other that none steps over a name."""
    yield from course[:1]
    for (x, y), (to_x, to_y) in pairwise(course):
        steps = max(1, int(max(abs(to_x - x), abs(to_y - y)) / FINE))
        for step in range(1, steps + 1):
            yield x + (to_x - x) * step / steps, y + (to_y - y) * step / steps
