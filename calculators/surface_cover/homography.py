"""From a picture taken at a slant to the flat surface it shows, and back.

A plane seen through a pinhole goes into the picture by a projective map. Four corners of a rectangle
fix it; here for the unit square, in closed form, so that no system of equations is solved at run time.
The tests solve the eight equations with a numerical library and compare.
"""

from collections.abc import Sequence
from typing import NamedTuple

Point = tuple[float, float]
Three = tuple[float, float, float]


class Homography(NamedTuple):
    """A projective map of the plane: three rows of a matrix, fixed up to a common factor."""

    across: Three
    down: Three
    depth: Three

    def at(self, x: float, y: float) -> Point:
        """Where a point goes.

        Here ``x`` and ``y`` are in the unit of the picture that it maps from, the result in that of the
        other.
        """
        depth = value(self.depth, x, y)
        return value(self.across, x, y) / depth, value(self.down, x, y) / depth

    def inverse(self) -> "Homography":
        """The map back: the adjugate, which is the inverse up to a factor."""
        (a, b, c), (d, e, f), (g, h, i) = self
        return Homography(
            (e * i - f * h, c * h - b * i, b * f - c * e),
            (f * g - d * i, a * i - c * g, c * d - a * f),
            (d * h - e * g, b * g - a * h, a * e - b * d),
        )

    def determinant(self) -> float:
        """The determinant of the matrix."""
        (a, b, c), (d, e, f), (g, h, i) = self
        return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)

    def stretch(self, x: float, y: float) -> float:
        """How much area a small patch at a point gets, as a multiple of its own.

        Here ``x`` and ``y`` are in the unit of the picture that it maps from.
        """
        return float(abs(self.determinant() / value(self.depth, x, y) ** 3))


def value(row: Three, x: float, y: float) -> float:
    """One row of the matrix times (x, y, 1).

    It has no unit of its own: the map is a ratio of two such values at ``x`` and ``y``.
    """
    return row[0] * x + row[1] * y + row[2]


def square_to(corners: Sequence[Point]) -> Homography:
    """The map from the unit square to four corners: of (0,0), (1,0), (1,1), (0,1) in this order."""
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = corners
    off_x, off_y = x0 - x1 + x2 - x3, y0 - y1 + y2 - y3  # 0 for a parallelogram
    ax, ay, bx, by = x1 - x2, y1 - y2, x3 - x2, y3 - y2
    turn = ax * by - ay * bx
    g = (off_x * by - off_y * bx) / turn
    h = (ax * off_y - ay * off_x) / turn
    return Homography(
        (x1 - x0 + g * x1, x3 - x0 + h * x3, x0),
        (y1 - y0 + g * y1, y3 - y0 + h * y3, y0),
        (g, h, 1.0),
    )


def box_to_square(left: float, top: float, width: float, height: float) -> Homography:
    """The map from an upright box to the unit square: a plain change of scale.

    Here ``left``, ``top``, ``width`` and ``height`` are in pixels.
    """
    return Homography((1 / width, 0.0, -left / width), (0.0, 1 / height, -top / height), (0, 0, 1))
