"""The tank: glass, water, cap, soil, and a rule on each side counted from the top of the cap."""

import math

from scripts.drawings.size import TankFrame
from scripts.drawings.svg import number

INCH_MM = 25.4
SIDE = 0.115  # room for a rule, in tank heights
FONT = 0.042  # height of the figures, in tank heights


def rect(css: str, left: float, top: float, right: float, bottom: float) -> str:
    """A box; y points down."""
    width, height = number(right - left, 1), number(bottom - top, 1)
    place = f'x="{number(left, 1)}" y="{number(top, 1)}"'
    return f'<rect class="d-{css}" {place} width="{width}" height="{height}"/>'


def behind(f: TankFrame, left: float, cap: float) -> str:
    """What is painted before the plant; ``cap`` is the picture's y of the cap's top."""
    right, floor = left + f.width, cap + f.cap + f.soil
    surface = cap - f.surface
    return (
        rect("water", left, surface, right, cap)
        + rect("cap", left, cap, right, cap + f.cap)
        + rect("soil", left, cap + f.cap, right, floor)
    )


def before(f: TankFrame, left: float, cap: float) -> str:
    """What is painted after the plant: the water's surface, the glass, the rules."""
    right, floor = left + f.width, cap + f.cap + f.soil
    surface = number(cap - f.surface, 1)
    rim = number(cap - f.rim, 1)
    d = f"M{number(left, 1)} {rim}V{number(floor, 1)}H{number(right, 1)}V{rim}"
    return (
        f'<path class="d-surface" d="M{number(left, 1)} {surface}H{number(right, 1)}"/>'
        f'<path class="d-glass" d="{d}"/>'
        + rule(f, left, cap, 10.0, 5, "cm", -1)
        + rule(f, right, cap, INCH_MM, 2, "in", 1)
    )


def rule(f: TankFrame, x: float, cap: float, unit: float, every: int, name: str, side: int) -> str:
    """One rule: a tick a unit, a figure every few."""
    size = f.tank * FONT
    ticks, texts = "", ""
    last = math.floor(f.rim / unit + 1e-9)
    every = every * max(round(f.tank / 400), 1)
    for i in range(last + 1):
        long = i % every == 0
        y = cap - i * unit
        ticks += (
            f"M{number(x, 1)} {number(y, 1)}h{number(side * size * (0.55 if long else 0.28), 1)}"
        )
        if long:
            texts += (
                f'<text class="{"end" if side < 0 else "start"}" x="{number(x + side * size * 0.7, 1)}" '
                f'y="{number(y + size * 0.35, 1)}">{i}</text>'
            )
    css, place = ("end", x - size * 0.5) if side < 0 else ("start", x + size * 0.5)
    texts += f'<text class="{css}" x="{number(place, 1)}" y="{number(cap + size * 1.5, 1)}">{name}</text>'
    return f'<path class="d-ticks" d="{ticks}"/>{texts}'
