"""What an animal's picture is made of, in shares of its length (x) and of its greatest depth (y).

The nose, or the mouth of a shell, lies at x = 0 and the end of the tail, or the tip of the shell, at
x = 1; the body reaches from y = -0.5 to 0.5, and fins, feelers and feet beyond it. Common practice, no
source: the outlines are of a kind of body, not of a species.
"""

from itertools import pairwise
from typing import NamedTuple

from scripts.drawings.geometry import Path, Point, Run, curve, flattened


class BodyOutline(NamedTuple):
    """``behind`` are fins and feet, ``lines`` run over the body; ``eye`` is where it looks from."""

    body: Path
    behind: tuple[Path, ...] = ()
    lines: tuple[Path, ...] = ()
    eye: Point | None = None


def closed(*points: Point) -> Path:
    """A smooth line round about, back to where it began."""
    return Path((Run((*points, points[0])),), True)


def pointed(*points: Point) -> Path:
    """A shape with corners."""
    return Path((Run((*points, points[0]), False),), True)


def line(*points: Point) -> Path:
    """A smooth open line."""
    return curve(*points)


def extent(body: Path, x: float) -> tuple[float, float] | None:
    """How far the body reaches down and up at a share of its length; None beyond its ends."""
    points = list(flattened(body))
    crossings = [
        y0 + (x - x0) / (x1 - x0) * (y1 - y0)
        for (x0, y0), (x1, y1) in pairwise(points)
        if x0 != x1 and min(x0, x1) <= x <= max(x0, x1)
    ]
    return (min(crossings), max(crossings)) if crossings else None
