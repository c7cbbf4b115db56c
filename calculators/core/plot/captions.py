"""A picture in sentences, for a screen reader and for the caption below it."""

import math
from collections.abc import Sequence

from calculators.core.numbers import show_number as show
from calculators.core.result import Line, Series

NEXT_TO_NOTHING = 1e-3  # of the highest point: no one sees it on the picture


def axis(label: str, unit: str) -> str:
    """Label with its unit."""
    return f"{label}, {unit}" if unit and not unit.startswith(label.lower()) else label


def points_of(series: Series) -> list[tuple[float, float]]:
    """The points that can be drawn; one that is not finite leaves a gap.

    Each is a pair of x and y in the units of the series.
    """
    pairs = zip(series.x, series.y, strict=True)
    return [(x, y) for x, y in pairs if math.isfinite(x) and math.isfinite(y)]


def summary(
    title: str, curves: Sequence[Series], bands: Sequence[Sequence[Series]], lines: Sequence[Line]
) -> str:
    """Each curve, band and line of a picture, one sentence each; ``title`` only where it has one."""
    sentences = [f"{title}."] if title else []
    sentences += [curve_sentence(curve) for curve in curves]
    sentences += [band_sentence(edges) for edges in bands]
    sentences += [f"Line at {show(line.value)} {curves[0].unit}: {line.label}." for line in lines]
    return " ".join(sentences)


def curve_sentence(series: Series) -> str:
    """A curve: where it starts and ends, and its lowest and highest; next to nothing reads 0."""
    points_drawn = points_of(series)
    nothing = NEXT_TO_NOTHING * max(abs(y) for _, y in points_drawn)
    points = [(0.0 if abs(y) < nothing else y, x) for x, y in points_drawn]
    unit = f" {series.unit}".rstrip()
    where = place_word(series)
    (first, start), (last, end) = points[0], points[-1]
    (low, low_at), (high, high_at) = min(points), max(points)
    ends = [
        f"{show(y, series.digits)}{unit} at {where} {show(x, series.x_digits)}"
        for y, x in ((first, start), (last, end))
    ]
    extremes = [
        f"{word} {show(y, series.digits)} at {where} {show(x, series.x_digits)}"
        for word, y, x in (("lowest", low, low_at), ("highest", high, high_at))
    ]
    return f"{series.label}: {', '.join(ends)}; {', '.join(extremes)}."


def band_sentence(edges: Sequence[Series]) -> str:
    """A band: how wide it is at the end."""
    low, high = (
        show(end, edges[0].digits) for end in sorted(points_of(edge)[-1][1] for edge in edges)
    )
    unit = f" {edges[0].unit}".rstrip()
    return f"Shaded, how unsure it is: {low} to {high}{unit} at the end."


def place_word(series: Series) -> str:
    """What the axis across is called inside a sentence."""
    return series.x_label if series.x_label == "pH" else series.x_label.lower()
