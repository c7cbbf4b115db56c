"""Outlines of shrimp, crayfish, snails and clams."""

from itertools import pairwise
from math import cos, pi, sin

from scripts.drawings.animals.outline import BodyOutline, closed, line
from scripts.drawings.geometry import Path, Point

FOOT = closed((-0.12, -0.5), (0.1, -0.42), (0.6, -0.46), (0.72, -0.56), (0.3, -0.62), (-0.1, -0.6))
CAP_LIFT = 0.14  # how much higher than other shells a cap ends, flat, on its foot
FEELERS = (line((-0.1, -0.52), (-0.2, -0.4), (-0.24, -0.26)),)


def shrimp() -> BodyOutline:
    """A bent back, legs, and long feelers."""
    body = closed(
        (0, 0.1), (0.08, 0.2), (0.2, 0.36), (0.38, 0.5), (0.56, 0.42), (0.74, 0.16), (0.86, -0.14),
        (1, -0.4), (0.95, -0.6), (0.82, -0.4), (0.66, -0.18), (0.48, -0.2), (0.3, -0.3), (0.12, -0.16),
    )  # fmt: skip
    legs = tuple(
        line((x, -0.24), (x - 0.03, -0.6), (x + 0.02, -0.85)) for x in (0.16, 0.22, 0.28, 0.34)
    )
    paddles = tuple(line((x, -0.2), (x + 0.02, -0.5)) for x in (0.48, 0.56, 0.64))
    feelers = (
        line((0.02, 0.16), (-0.1, 0.9), (0.2, 1.3)),
        line((0.02, 0.1), (-0.16, 0.5), (-0.2, 1)),
    )
    return BodyOutline(body, (), (*legs, *paddles, *feelers), eye=(0.09, 0.14))


def crayfish() -> BodyOutline:
    """A straight back and two claws before it."""
    body = closed(
        (0, 0), (0.1, 0.24), (0.25, 0.48), (0.42, 0.5), (0.6, 0.4), (0.78, 0.3), (1, 0.2),
        (1, -0.3), (0.78, -0.3), (0.58, -0.4), (0.4, -0.5), (0.2, -0.4), (0.06, -0.2),
    )  # fmt: skip
    claw = closed(
        (0.12, -0.2),
        (-0.06, -0.1),
        (-0.2, 0.16),
        (-0.36, 0.1),
        (-0.24, -0.06),
        (-0.38, -0.2),
        (-0.14, -0.34),
    )
    rings = tuple(line((x, 0.36), (x + 0.02, 0), (x, -0.34)) for x in (0.48, 0.56, 0.64, 0.72, 0.8))
    legs = tuple(line((x, -0.44), (x - 0.05, -0.7), (x, -1)) for x in (0.2, 0.28, 0.36, 0.44))
    feelers = (line((0.02, 0.06), (-0.2, 0.6), (-0.5, 0.8)),)
    return BodyOutline(body, (claw,), (*rings, *legs, *feelers), eye=(0.07, 0.12))


def half_width(x: float, swell: float) -> float:
    """How far a shell with a pointed tip reaches to one side; it narrows to its mouth too."""
    return float(0.5 * (1 - x) ** swell * min(1.0, 0.6 + 3 * x))


def whorls(edges: tuple[float, ...], swell: float) -> tuple[Path, tuple[Path, ...]]:
    """A shell whose turns end at the edges, from the mouth to the tip, and the seams between them."""
    widest = max(half_width((start + end) / 2, swell) for start, end in pairwise(edges))
    full = 0.5 / widest  # so that the widest turn takes up the whole depth
    upper: list[Point] = []
    for start, end in pairwise(edges):
        middle = (start + end) / 2
        upper += [
            (start, 0.94 * full * half_width(start, swell)),
            (middle, full * half_width(middle, swell)),
        ]
    body = closed((0, 0), *upper, (1, 0), *[(x, -y) for x, y in reversed(upper)])
    seams = tuple(
        line((x, half), (x + 0.02, 0), (x - 0.03, -half))
        for x in edges[1:-1]
        for half in (0.9 * full * half_width(x, swell),)
    )
    return body, seams


def turret() -> BodyOutline:
    """Many turns, much longer than wide."""
    body, seams = whorls((0, 0.24, 0.42, 0.56, 0.67, 0.76, 0.84, 0.91, 1), 0.9)
    return BodyOutline(body, (FOOT,), (*seams, *FEELERS))


def cone() -> BodyOutline:
    """Few turns that end in a point; the last one makes up most of the shell."""
    body, seams = whorls((0, 0.5, 0.76, 0.89, 1), 0.6)
    return BodyOutline(body, (FOOT,), (*seams, *FEELERS))


def spiral(turns: float, middle: Point, wide: float) -> Path:
    """A line that winds inwards."""
    steps = round(turns * 12)
    return line(
        *(
            (
                middle[0] + wide * (1 - 0.9 * i / steps) * cos(i * pi / 6),
                middle[1] + wide * (1 - 0.9 * i / steps) * sin(i * pi / 6),
            )
            for i in range(steps + 1)
        )
    )


def ball(cut: float) -> Path:
    """A round outline, flat below from a height on."""
    ring = [(0.5 - 0.5 * cos(i * pi / 10), 0.5 * sin(i * pi / 10)) for i in range(20)]
    return closed(*((x, max(y, cut)) for x, y in ring))


def round_shell() -> BodyOutline:
    """A wide last turn and a low tip."""
    return BodyOutline(ball(-0.5), (FOOT,), (spiral(1.5, (0.66, 0.1), 0.26), *FEELERS))


def cap() -> BodyOutline:
    """Half a ball; the last turn makes up the whole shell."""
    foot = FOOT.mapped(lambda point: (point[0], point[1] + CAP_LIFT))
    feelers = tuple(one.mapped(lambda point: (point[0], point[1] + CAP_LIFT)) for one in FEELERS)
    return BodyOutline(ball(CAP_LIFT - 0.5), (foot,), (spiral(0.7, (0.74, 0.06), 0.16), *feelers))


def coil() -> BodyOutline:
    """Turns in one plane."""
    return BodyOutline(ball(-0.5), (FOOT,), (spiral(2.5, (0.52, 0), 0.38), *FEELERS))


def clam() -> BodyOutline:
    """Two rounded halves with ribs about the hinge."""
    body = closed(
        (0.5, 0.5), (0.7, 0.4), (0.92, 0.14), (1, -0.1), (0.86, -0.38), (0.5, -0.5),
        (0.14, -0.38), (0, -0.1), (0.08, 0.14), (0.3, 0.4),
    )  # fmt: skip
    ribs = tuple(
        line(
            (0.5 - 0.46 * s, 0.34 - 0.4 * s),
            (0.5, 0.44 - 0.86 * s),
            (0.5 + 0.46 * s, 0.34 - 0.4 * s),
        )
        for s in (0.4, 0.6, 0.8)
    )
    return BodyOutline(body, (), ribs)
