"""Example covers to compare a surface with by eye: leaves strewn until their share is known."""

import random

from calculators.core.paint.element import Html, element

COVERS = (10, 25, 50, 75, 90)  # percent
WIDE, HIGH = 100, 60  # of each picture, in its own units
FINE = 2  # points a unit, on which the share is counted
SMALLEST, LARGEST = 3.5, 9.0  # of a leaf's radius, in units
SEED = 4  # any; the same pictures at each build

Leaf = tuple[int, int, float]


def eye_guide() -> Html:
    """All pictures in one figure, with their cover below each."""
    pictures = (
        element("div", {}, picture(cover), element("span", {}, f"{cover} %")) for cover in COVERS
    )
    say = "Compare with the water as you see it straight from above."
    return element(
        "figure",
        {"class": "eye-guide"},
        element("div", {"class": "eye-guide-row"}, *pictures),
        element("figcaption", {}, say),
    )


def picture(cover: int) -> Html:
    """One surface with so much of it covered. The ``cover`` is in percent."""
    circles = (
        element("circle", {"class": "eye-leaf", "cx": x, "cy": y, "r": f"{radius:.1f}"})
        for x, y, radius in leaves(cover)
    )
    water = element("rect", {"class": "eye-water", "width": WIDE, "height": HIGH})
    box = {"viewBox": f"0 0 {WIDE} {HIGH}", "role": "img", "aria-label": f"{cover} percent covered"}
    return element("svg", box, water, *circles)


def leaves(cover: int) -> list[Leaf]:
    """Leaves that cover so many percent, to a quarter of a point; they may lie on each other."""
    dice = random.Random(SEED)
    covered: set[tuple[int, int]] = set()
    goal = round(WIDE * HIGH * FINE * FINE * cover / 100)
    circles: list[Leaf] = []
    while goal - len(covered) > WIDE * HIGH * FINE * FINE / 400:
        x, y = dice.randrange(WIDE), dice.randrange(HIGH)
        radius = dice.uniform(SMALLEST, LARGEST)
        new = points(x, y, radius) - covered
        while len(covered) + len(new) > goal and radius > 1:
            radius *= 0.9
            new = points(x, y, radius) - covered
        if new and len(covered) + len(new) <= goal:
            covered |= new
            circles.append((x, y, radius))
    return circles


def points(x: int, y: int, radius: float) -> set[tuple[int, int]]:
    """The fine points of the picture inside a leaf, each a pair of column and row.

    The middle at ``x`` and ``y`` and the ``radius`` are in units of the picture, of which each has
    several points.
    """
    reach = int(radius * FINE) + 1
    return {
        (column, row)
        for column in range(max(0, x * FINE - reach), min(WIDE * FINE, x * FINE + reach))
        for row in range(max(0, y * FINE - reach), min(HIGH * FINE, y * FINE + reach))
        if ((column + 0.5) / FINE - x) ** 2 + ((row + 0.5) / FINE - y) ** 2 < radius**2
    }
