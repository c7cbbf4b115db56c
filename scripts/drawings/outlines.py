"""Outlines of undivided leaves as pure functions of length and width.

Each outline is the right-hand edge from the stalk at (0, 0) up to the tip, x in widths and y in
lengths of the blade; the left-hand edge is its mirror image. The forms are the terms of any botany
text, drawn by eye.
"""

import itertools

from scripts.drawings.geometry import Path, Point, Run
from scripts.drawings.margins import WAVES, edge

Side = tuple[Point, ...]

SIDES: dict[str, Side] = {
    "linear": ((0.3, 0.02), (0.5, 0.12), (0.5, 0.45), (0.47, 0.72), (0.3, 0.92)),
    "ribbon": ((0.42, 0.01), (0.5, 0.1), (0.5, 0.35), (0.5, 0.6), (0.49, 0.85), (0.36, 0.96)),
    "needle": ((0.5, 0.1), (0.5, 0.6), (0.3, 0.9)),
    "lanceolate": ((0.18, 0.04), (0.45, 0.18), (0.5, 0.34), (0.37, 0.62), (0.15, 0.87)),
    "narrow-lanceolate": ((0.15, 0.06), (0.41, 0.24), (0.5, 0.44), (0.38, 0.7), (0.15, 0.91)),
    "elliptic": ((0.2, 0.07), (0.43, 0.27), (0.5, 0.5), (0.43, 0.73), (0.2, 0.93)),
    "oblong": ((0.26, 0.03), (0.47, 0.14), (0.5, 0.5), (0.47, 0.8), (0.26, 0.95)),
    "ovate": ((0.26, 0.01), (0.47, 0.15), (0.5, 0.32), (0.39, 0.6), (0.17, 0.85)),
    "obovate": ((0.07, 0.1), (0.2, 0.34), (0.43, 0.62), (0.5, 0.77), (0.33, 0.94)),
    "spatulate": ((0.06, 0.05), (0.09, 0.3), (0.2, 0.5), (0.46, 0.68), (0.5, 0.82), (0.3, 0.96)),
    "round": ((0.19, 0.04), (0.4, 0.19), (0.5, 0.5), (0.4, 0.81), (0.19, 0.96)),
    "heart": ((0.1, -0.13), (0.27, -0.16), (0.47, 0.02), (0.5, 0.2), (0.38, 0.5), (0.16, 0.74)),
    "kidney": ((0.06, -0.16), (0.22, -0.24), (0.44, -0.06), (0.5, 0.24), (0.4, 0.55), (0.2, 0.72)),
    "arrow": ((0.37, -0.06), (0.27, 0.2), (0.13, 0.5)),
    "peltate": ((0.19, -0.46), (0.4, -0.3), (0.5, 0.0), (0.4, 0.3), (0.19, 0.46)),
    "leaflet": ((0.46, 0.3), (0.3, 0.72)),  # one of many on a divided leaf
    "scale": ((0.36, 0.05), (0.5, 0.3), (0.4, 0.6), (0.15, 0.88)),
}
TIPS = {"heart": 0.86, "kidney": 0.77, "arrow": 0.7, "peltate": 0.5}
START = {"peltate": -0.5}  # where the edge starts, when not at the stalk
BARB: Point = (0.4, -0.32)  # the hind end of an arrow's lobe
NEVER_POINTED = ("round", "kidney", "peltate", "spatulate")


def outline(
    shape: str, length: float, width: float, *, tip: str = "pointed", margin: str = "smooth"
) -> Path:
    """The blade's edge, mm, growing up from the stalk at the origin."""
    end = TIPS.get(shape, 1.0)
    side = [(x * width, y * length) for x, y in SIDES[shape]]
    if tip == "blunt" and shape not in NEVER_POINTED:
        side.append((side[-1][0] * 0.8, end * length))
    start, top = (0.0, START.get(shape, 0.0) * length), (0.0, end * length)
    pointed = tip == "pointed" and shape not in NEVER_POINTED
    right = edge((start, *side, top), margin, width)
    if shape == "arrow":
        barb = (BARB[0] * width, BARB[1] * length)
        right = (Run(((0.0, 0.0), (0.13 * width, -0.09 * length), barb)), *after(barb, right))
    left = right
    if margin in WAVES:  # the edges do not swing in step
        left = edge((start, *side, top), margin, width, inward=True)
    if not pointed and len(right) == 1 and right[0].smooth:
        return Path((over_the_tip(right[0], left[0]),), closed=True)
    return Path((*right, *mirrored(left)), closed=True)


def after(barb: Point, right: tuple[Run, ...]) -> tuple[Run, ...]:
    """The edge with its start moved to the end of the lobe."""
    first = right[0]
    return (Run((barb, *first.points[1:]), first.smooth), *right[1:])


def over_the_tip(right: Run, left: Run) -> Run:
    """Both edges as one curve over the tip; the left one is given as its mirror image."""
    return Run((*right.points, *((-x, y) for x, y in reversed(left.points[:-1]))))


def mirrored(runs: tuple[Run, ...]) -> tuple[Run, ...]:
    """The other edge, back from the tip to the stalk."""
    return tuple(Run(tuple((-x, y) for x, y in run.points[::-1]), run.smooth) for run in runs[::-1])


def half_width(shape: str, share: float) -> float:
    """Half the width, in widths, at a share of the blade's length; 0 outside it."""
    side = ((0.0, START.get(shape, 0.0)), *SIDES[shape], (0.0, TIPS.get(shape, 1.0)))
    for (x0, y0), (x1, y1) in itertools.pairwise(side):
        if y0 <= share <= y1 and y1 > y0:
            return x0 + (x1 - x0) * (share - y0) / (y1 - y0)
    return 0.0
