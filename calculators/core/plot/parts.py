"""The parts of a picture as SVG: grid, curves, bands, named lines, marks, and labels at the curves.

No style attribute is written: colours and dashes come from the page's style sheet by class, and
each curve has a dash of its own, so that colour alone tells nothing.
"""

from collections.abc import Iterable, Sequence
from html import escape
from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.core.plot.captions import points_of
from calculators.core.plot.labels import place_names
from calculators.core.plot.scale import Scale, spread
from calculators.core.result import Line, Mark, Series

LABEL_GAP = 13  # between labels, in units of the picture
MARK_ROOM = 42  # across, that the word at a mark takes


class Frame(NamedTuple):
    """Where the axes stand, and their scales."""

    across: Scale
    up: Scale
    left: float
    right: float
    top: float
    bottom: float


def grid(frame: Frame) -> str:
    """Lines and numbers of both axes."""
    parts = []
    for tick in frame.up.ticks:
        y = frame.up.at(tick)
        parts.append(
            f'<line class="grid" x1="{frame.left}" x2="{frame.right}" y1="{y:.1f}" y2="{y:.1f}"/>'
        )
        parts.append(
            f'<text class="tick end" x="{frame.left - 6}" y="{y + 4:.1f}">{show_number(tick)}</text>'
        )
    for tick in frame.across.ticks:
        parts.append(
            f'<text class="tick mid" x="{frame.across.at(tick):.1f}" y="{frame.bottom + 17}">'
            f"{show_number(tick)}</text>"
        )
    return "".join(parts)


def curve(frame: Frame, series: Series, number: int) -> str:
    """A course as a line, or single readings as dots."""
    places = list(placed(frame, series))
    if series.dots:
        return "".join(
            f'<circle class="dot dot-{number}" cx="{x:.1f}" cy="{y:.1f}" r="4"/>' for x, y in places
        )
    line = " ".join(f"{x:.1f},{y:.1f}" for x, y in places)
    return f'<polyline class="curve curve-{number}" points="{line}"/>'


def band(frame: Frame, edges: Sequence[Series]) -> str:
    """The room between two edges, shaded."""
    there, back = (list(placed(frame, edge)) for edge in edges)
    around = " ".join(f"{x:.1f},{y:.1f}" for x, y in [*there, *reversed(back)])
    return f'<polygon class="band" points="{around}"/>'


def placed(frame: Frame, series: Series) -> Iterable[tuple[float, float]]:
    """The places of a series' points on the picture."""
    return ((frame.across.at(x), frame.up.at(y)) for x, y in points_of(series))


def lines(frame: Frame, shown: Sequence[Line]) -> str:
    """Named lines across."""
    heights = (frame.up.at(line.value) for line in shown)
    return "".join(
        f'<line class="level" x1="{frame.left}" x2="{frame.right}" y1="{y:.1f}" y2="{y:.1f}"/>'
        for y in heights
    )


def line_names(frame: Frame, shown: Sequence[Line], curves: Sequence[Series]) -> str:
    """The names of the lines, clear of the curves where there is room."""
    wanted = [(line.label, frame.up.at(line.value)) for line in shown]
    courses = [list(placed(frame, series)) for series in curves]
    boxes = place_names(wanted, courses, frame.left, frame.right, frame.bottom)
    return "".join(
        f'<text class="level-name" x="{box.left:.1f}" y="{box.foot:.1f}">{escape(line.label)}</text>'
        for line, box in zip(shown, boxes, strict=True)
    )


def marks(frame: Frame, shown: Sequence[Mark]) -> str:
    """Moments as dotted lines up, each with its word at the top where there is room."""
    parts = []
    free_from = frame.left
    for mark in sorted(shown):
        x = frame.across.at(mark.x)
        if not frame.left <= x <= frame.right:
            continue
        parts.append(
            f'<line class="mark-line" x1="{x:.1f}" x2="{x:.1f}" y1="{frame.top}" y2="{frame.bottom}"/>'
        )
        if free_from <= x <= frame.right - MARK_ROOM:
            parts.append(
                f'<text class="mark-name" x="{x + 3:.1f}" y="{frame.top + 9}">'
                f"{escape(mark.label)}</text>"
            )
            free_from = x + MARK_ROOM
    return "".join(parts)


def names(frame: Frame, curves: Sequence[Series]) -> str:
    """The curves' names at their ends, pushed apart where they meet."""
    ends = [frame.up.at(points_of(series)[-1][1]) + 4 for series in curves]
    return "".join(
        f'<text class="name name-{number}" x="{frame.right + 5}" y="{y:.1f}">'
        f"{escape(series.short or series.label)}</text>"
        for number, (series, y) in enumerate(
            zip(curves, spread(ends, LABEL_GAP, frame.top, frame.bottom), strict=True), start=1
        )
    )
