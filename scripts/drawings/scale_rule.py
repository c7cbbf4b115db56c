"""A rule along the foot of a picture."""

import math

from scripts.drawings.svg import number

STEPS = (0.5, 1, 2, 5, 10, 20, 50, 100)  # mm between figures; the first that leaves few enough
MOST_FIGURES = 6


def foot_rule(
    left: float, y: float, length: float, size: float, *, figures: float | None = None
) -> str:
    """Ticks down from a line, figures in mm; ``size`` is the height of the figures."""
    every = figures or next((step for step in STEPS if length / step < MOST_FIGURES), STEPS[-1])
    tick = every / (10 if every >= 20 else 5)
    digits = 2 if length < 20 else 1
    d = f"M{number(left, digits)} {number(y, digits)}h{number(length, digits)}"
    texts = ""
    count = math.floor(length / tick + 1e-9)
    for i in range(count + 1):
        x, long = left + i * tick, abs(i * tick / every - round(i * tick / every)) < 1e-9
        d += f"M{number(x, digits)} {number(y, digits)}v{number(size * (0.55 if long else 0.3), digits)}"
        if long:
            last = i * tick + every > count * tick + 1e-9
            label = f"{i * tick:g} mm" if last else f"{i * tick:g}"
            place = f'x="{number(x, digits)}" y="{number(y + size * 1.5, digits)}"'
            texts += f'<text class="mid" {place}>{label}</text>'
    return f'<path class="d-ticks" d="{d}"/>{texts}'
