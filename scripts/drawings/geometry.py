"""Points, curves and affine maps of the drawings. Lengths are millimetres of the plant, y points up."""

import math
from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple

Point = tuple[float, float]


# Weights of a cubic's four points at a quarter, a half and three quarters of its way (Bernstein).
SHARES = tuple(
    ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3) for t in (0.25, 0.5, 0.75)
)


class Run(NamedTuple):
    """Points joined by a smooth curve, or by straight lines; where two runs meet there is a corner."""

    points: tuple[Point, ...]
    smooth: bool = True


class Path(NamedTuple):
    """Runs, each starting where the last one ended."""

    runs: tuple[Run, ...]
    closed: bool = False

    def mapped(self, move: Callable[[Point], Point]) -> "Path":
        """The path with each point moved."""
        return Path(
            tuple(Run(tuple(map(move, run.points)), run.smooth) for run in self.runs), self.closed
        )


class Affine(NamedTuple):
    """x' = a x + c y + e; y' = b x + d y + f, as in SVG's ``matrix``."""

    a: float = 1.0
    b: float = 0.0
    c: float = 0.0
    d: float = 1.0
    e: float = 0.0
    f: float = 0.0

    def at(self, point: Point) -> Point:
        """Where a point goes."""
        x, y = point
        return (self.a * x + self.c * y + self.e, self.b * x + self.d * y + self.f)

    def after(self, first: "Affine") -> "Affine":
        """The map that does ``first`` and then this one."""
        e, f = self.at((first.e, first.f))
        return Affine(
            self.a * first.a + self.c * first.b,
            self.b * first.a + self.d * first.b,
            self.a * first.c + self.c * first.d,
            self.b * first.c + self.d * first.d,
            e,
            f,
        )


def line(*points: Point) -> Path:
    """Straight lines through the points."""
    return Path((Run(points, False),))


def curve(*points: Point) -> Path:
    """A smooth line through the points."""
    return Path((Run(points),))


def placed(base: Point, degrees: float, along: float = 1.0, across: float = 1.0) -> Affine:
    """Sets something that grows up from the origin at ``base``, turned clockwise from upright."""
    angle = math.radians(degrees)
    sin, cos = math.sin(angle), math.cos(angle)
    return Affine(cos * across, -sin * across, sin * along, cos * along, *base)


def polar(degrees: float, length: float, base: Point = (0.0, 0.0)) -> Point:
    """The point at ``length`` from ``base``, turned clockwise from upright."""
    angle = math.radians(degrees)
    return (base[0] + length * math.sin(angle), base[1] + length * math.cos(angle))


def controls(points: Sequence[Point]) -> Iterable[tuple[Point, Point, Point]]:
    """The cubic pieces of a smooth curve through the points (Catmull and Rom's, tension a sixth)."""
    last = len(points) - 1
    for i in range(last):
        before, start, end, after = (
            points[max(i - 1, 0)],
            points[i],
            points[i + 1],
            points[min(i + 2, last)],
        )
        first = (start[0] + (end[0] - before[0]) / 6, start[1] + (end[1] - before[1]) / 6)
        second = (end[0] - (after[0] - start[0]) / 6, end[1] - (after[1] - start[1]) / 6)
        yield first, second, end


def flattened(path: Path) -> Iterable[Point]:
    """Points on the path: its corners, and some along each of its curves."""
    for run in path.runs:
        yield run.points[0]
        if not run.smooth:
            yield from run.points
            continue
        start = run.points[0]
        for first, second, end in controls(run.points):
            for a, b, c, d in SHARES:
                yield (
                    a * start[0] + b * first[0] + c * second[0] + d * end[0],
                    a * start[1] + b * first[1] + c * second[1] + d * end[1],
                )
            yield end
            start = end


def convex(points: Iterable[Point]) -> tuple[Point, ...]:
    """The corners of the convex hull (Andrew's monotone chain)."""
    ordered = sorted(set(points))
    if len(ordered) < 3:
        return tuple(ordered)
    return (*half_hull(ordered)[:-1], *half_hull(ordered[::-1])[:-1])


def half_hull(points: Iterable[Point]) -> list[Point]:
    """The side of the hull that turns left all the way."""
    chain: list[Point] = []
    for point in points:
        while len(chain) > 1 and turn(chain[-2], chain[-1], point) <= 0:
            chain.pop()
        chain.append(point)
    return chain


def turn(first: Point, second: Point, third: Point) -> float:
    """Above 0 where the way through three points turns left."""
    (x0, y0), (x1, y1), (x2, y2) = first, second, third
    return (x1 - x0) * (y2 - y0) - (y1 - y0) * (x2 - x0)
