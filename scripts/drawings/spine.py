"""Curved axes, along which stems grow and leaves bend."""

import math
from collections.abc import Callable
from typing import NamedTuple

from scripts.drawings.geometry import Point, polar


class Spine(NamedTuple):
    """A curved axis: points at equal steps, each with its direction."""

    points: tuple[Point, ...]
    step: float

    @property
    def length(self) -> float:
        """Arc length, mm."""
        return self.step * (len(self.points) - 1)

    def at(self, distance: float) -> tuple[Point, float]:
        """The point at a distance along the axis, and the way it points, degrees from upright."""
        place = min(max(distance / self.step, 0.0), len(self.points) - 1.0)
        i = min(int(place), len(self.points) - 2)
        (x0, y0), (x1, y1) = self.points[i], self.points[i + 1]
        share = place - i
        point = (x0 + (x1 - x0) * share, y0 + (y1 - y0) * share)
        return point, math.degrees(math.atan2(x1 - x0, y1 - y0))

    def bend(self, point: Point, start: float = 0.0) -> Point:
        """Takes a point beside the straight axis to its place beside this one."""
        base, degrees = self.at(start + point[1])
        return polar(degrees + 90, point[0], base)


def veering(start: float, change: float) -> Callable[[float], float]:
    """A heading that changes evenly along the axis, degrees."""
    return lambda t: start + change * t


def grow(base: Point, length: float, heading: Callable[[float], float], steps: int = 24) -> Spine:
    """An axis from ``base`` whose direction, degrees from upright, depends on the share grown."""
    step = length / steps
    points = [base]
    for i in range(steps):
        points.append(polar(heading((i + 0.5) / steps), step, points[-1]))
    return Spine(tuple(points), step)
