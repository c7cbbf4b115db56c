"""What the drawings of signs share: paths, leaves, dots, a plant on its stem, a tank of water."""

from collections.abc import Iterable
from math import cos, pi, sin

from scripts.drawings.svg import number
from scripts.drawings.thumbnail import GROUND, MIDDLE, SURFACE, Point, joined

VEINED = "M24 46V6M24 38L14 31M24 38L34 31M24 29L13 22M24 29L35 22M24 20L16 14M24 20L32 14"
PAIRS = (38.0, 29.0, 20.0, 12.0)  # heights of a stem's pairs of leaves, the oldest first


def path(
    data: str,
    *,
    fill: str = "",
    stroke: str = "",
    width: float = 1.0,
    opacity: float = 1,
    dashes: str = "",
) -> str:
    """A path; ``fill`` and ``stroke`` are variables of the style sheet, without dashes, or none.

    ``dashes`` are the lengths of a broken line's marks and gaps.
    """
    return (
        f'<path d="{data}" fill="{ink(fill)}"'
        + (f' stroke="{ink(stroke)}"' if stroke else "")
        + (f' stroke-width="{number(width, 1)}"' if width != 1 else "")
        + (f' opacity="{number(opacity, 2)}"' if opacity != 1 else "")
        + (f' stroke-dasharray="{dashes}"' if dashes else "")
        + "/>"
    )


def ink(variable: str) -> str:
    """A colour of the style sheet."""
    return f"var(--{variable})" if variable else "none"


def grown(data: str, colour: str) -> str:
    """A part of a plant, with the edge that its colour has."""
    return path(data, fill=colour, stroke=f"{colour}-edge")


def leaf(x: float, y: float, angle: float, length: float, wide: float = 0.45) -> str:
    """A leaf's outline; ``angle`` in degrees from upright, to the right, ``wide`` a share of the length."""
    dx, dy = sin(angle * pi / 180), -cos(angle * pi / 180)
    tip, half = (x + dx * length, y + dy * length), length * wide
    left = (x + dx * length / 2 - dy * half, y + dy * length / 2 + dx * half)
    right = (x + dx * length / 2 + dy * half, y + dy * length / 2 - dx * half)
    return f"M{joined(x, y)}Q{joined(*left, *tip)}Q{joined(*right, x, y)}z"


def blade(colour: str, *marks: str, veins: str = "") -> str:
    """One large leaf with marks on it; ``veins`` is the colour of its veins."""
    outline = grown(leaf(MIDDLE, 46, 0, 43, 0.62), colour)
    return outline + path(VEINED, stroke=veins or f"{colour}-edge") + "".join(marks)


def dots(
    points: Iterable[Point], radius: float, *, fill: str = "", stroke: str = "", width: float = 1
) -> str:
    """Round dots, or rings."""
    half = f"a{joined(radius, radius)} 0 1 0 "
    data = "".join(
        f"M{joined(x - radius, y)}{half}{joined(2 * radius)} 0{half}{joined(-2 * radius)} 0z"
        for x, y in points
    )
    return path(data, fill=fill, stroke=stroke, width=width)


def stem(
    *pairs: str, heights: tuple[float, ...] = PAIRS, tip: str = "green", long: float = 13
) -> str:
    """A stem with a pair of leaves of each colour, the oldest first; no colour, no leaves."""
    top = heights[len(pairs) - 1] - 2
    stalk = path(f"M24 {joined(GROUND)}V{joined(top)}", stroke="green-edge", width=1.6)
    leaves = "".join(
        grown(leaf(MIDDLE, y, -62, long) + leaf(MIDDLE, y, 62, long), colour)
        for y, colour in zip(heights, pairs, strict=False)
        if colour
    )
    return stalk + leaves + (grown(leaf(MIDDLE, top + 2, 0, 9), tip) if tip else "")


def soil(*, cap: bool = True) -> str:
    """Soil with its cap, over the picture's foot."""
    earth = path("M1 36H47V47H1z", fill="earth")
    return earth + (path("M1 32H47V36H1z", fill="sand") if cap else "")


def tank(water: str = "water", *inside: str, top: float = SURFACE) -> str:
    """A tank from the side; what is in it stands over its water."""
    body = path(f"M3 {joined(top)}H45V45H3z", fill=water)
    line = path(f"M3 {joined(top)}H45", stroke="water-line", width=1.4)
    return body + line + "".join(inside) + path("M3 5V45H45V5", stroke="soft", width=1.4)


def bubbles(*points: Point, radius: float = 1.8) -> str:
    """Rings of gas."""
    return dots(points, radius, fill="water", stroke="water-line")
