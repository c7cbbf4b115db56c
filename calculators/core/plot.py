"""A series as an SVG picture with axes and units, and as a sentence for a screen reader.

Drawn here and not by a script in the page, so that the worked example has its picture with no
script at all. Colours come from the page's style sheet by class; no style attribute is written.
"""

import math
from collections.abc import Mapping
from html import escape
from typing import Any

from calculators.core.numbers import show_number

WIDTH, HEIGHT = 360, 220
LEFT, RIGHT, TOP, BOTTOM = 50, 350, 26, 180
TICKS = 5


def plot(series: Mapping[str, Any]) -> str:
    """Draw one series, as ``run`` gives it; points that are null leave a gap."""
    points = [(x, y) for x, y in zip(series["x"], series["y"], strict=True) if None not in (x, y)]
    if not points:
        return ""
    across = scale([x for x, _ in points], LEFT, RIGHT, from_zero=False)
    up = scale([y for _, y in points], BOTTOM, TOP, from_zero=True)
    line = " ".join(f"{across.at(x):.1f},{up.at(y):.1f}" for x, y in points)
    return (
        f'<figure class="plot"><svg viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        f'aria-label="{escape(summary(series))}">'
        f"{grid(across, up)}"
        f'<text class="axis" x="{LEFT}" y="14">{escape(axis(series["label"], series["unit"]))}</text>'
        f'<text class="axis end" x="{RIGHT}" y="{HEIGHT - 6}">'
        f"{escape(axis(series['x_label'], series['x_unit']))}</text>"
        f'<polyline class="curve" points="{line}"/></svg>'
        f"<figcaption>{escape(summary(series))}</figcaption></figure>"
    )


class Scale:
    """From values to places on the picture, with round numbers for the ticks."""

    def __init__(self, low: float, high: float, start: float, end: float) -> None:
        step = round_step((high - low) / TICKS)
        self.low = math.floor(low / step) * step
        self.high = math.ceil(high / step - 1e-9) * step
        self.start, self.end = start, end
        count = round((self.high - self.low) / step)
        self.ticks = [self.low + step * number for number in range(count + 1)]

    def at(self, value: float) -> float:
        """The place of a value."""
        return self.start + (value - self.low) / (self.high - self.low) * (self.end - self.start)


def scale(values: list[float], start: float, end: float, *, from_zero: bool) -> Scale:
    """A scale that holds all the values; a flat one is given some height."""
    low, high = min(values), max(values)
    if from_zero and low > 0:
        low = 0.0
    if high <= low:
        high = low + (abs(low) or 1.0)
    return Scale(low, high, start, end)


def round_step(rough: float) -> float:
    """The next step of 1, 2 or 5 times a power of ten."""
    power: float = 10.0 ** math.floor(math.log10(rough))
    return next(step for step in (power, 2 * power, 5 * power, 10 * power) if step >= rough * 0.999)


def grid(across: Scale, up: Scale) -> str:
    """Lines and numbers of both axes."""
    parts = []
    for tick in up.ticks:
        y = up.at(tick)
        parts.append(f'<line class="grid" x1="{LEFT}" x2="{RIGHT}" y1="{y:.1f}" y2="{y:.1f}"/>')
        parts.append(
            f'<text class="tick end" x="{LEFT - 6}" y="{y + 4:.1f}">{show_number(tick)}</text>'
        )
    for tick in across.ticks:
        x = across.at(tick)
        parts.append(
            f'<text class="tick mid" x="{x:.1f}" y="{BOTTOM + 16}">{show_number(tick)}</text>'
        )
    return "".join(parts)


def axis(label: str, unit: str) -> str:
    """Label with its unit."""
    return f"{label}, {unit}" if unit and not unit.startswith(label.lower()) else label


def summary(series: Mapping[str, Any]) -> str:
    """The curve in one sentence."""
    points = [(y, x) for x, y in zip(series["x"], series["y"], strict=True) if None not in (x, y)]
    unit = f" {series['unit']}".rstrip()
    where = series["x_label"].lower() if series["x_label"] != "pH" else "pH"
    (first, start), (last, end) = points[0], points[-1]
    (low, low_at), (high, high_at) = min(points), max(points)
    return (
        f"{series['label']}: {show_number(first)}{unit} at {where} {show_number(start)}, "
        f"{show_number(last)}{unit} at {where} {show_number(end)}; "
        f"lowest {show_number(low)} at {where} {show_number(low_at)}, "
        f"highest {show_number(high)} at {where} {show_number(high_at)}."
    )
