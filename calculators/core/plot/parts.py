"""The parts of a picture as SVG: grid, curves, bands, named lines, marks, and labels at the curves.

No style attribute is written: colours and dashes come from the page's style sheet by class, and
each curve has a dash of its own, so that colour alone tells nothing.
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.core.paint.element import Html, element
from calculators.core.plot.captions import points_of
from calculators.core.plot.labels import place_names
from calculators.core.plot.scale import Scale, spread
from calculators.core.result import Line, Mark, Series

LABEL_GAP = 15  # between labels, in units of the picture
MARK_ROOM = 54  # across, that the word at a mark takes


class Frame(NamedTuple):
    """Where the axes stand, and their scales."""

    across: Scale
    up: Scale
    left: float
    right: float
    top: float
    bottom: float


def grid(frame: Frame) -> list[Html]:
    """Lines and numbers of both axes."""
    made = []
    for tick in frame.up.ticks:
        y = frame.up.at(tick)
        made.append(line_across(frame, "grid", y))
        made.append(words("tick end", frame.left - 6, f"{y + 4:.1f}", show_number(tick)))
    for tick in frame.across.ticks:
        place = f"{frame.across.at(tick):.1f}"
        made.append(words("tick mid", place, frame.bottom + 18, show_number(tick)))
    return made


def words(css: str, x: float | str, y: float | str, text: str) -> Html:
    """A text with its foot at a place."""
    return element("text", {"class": css, "x": str(x), "y": str(y)}, text)


def line_across(frame: Frame, css: str, y: float) -> Html:
    """A line from one side to the other."""
    ends = {"x1": str(frame.left), "x2": str(frame.right), "y1": f"{y:.1f}", "y2": f"{y:.1f}"}
    return element("line", {"class": css, **ends})


def curve(frame: Frame, series: Series, number: int) -> list[Html]:
    """A course as a line, or single readings as dots."""
    places = list(placed(frame, series))
    if series.dots:
        css = f"dot dot-{number}"
        dots = [
            element("circle", {"class": css, "cx": f"{x:.1f}", "cy": f"{y:.1f}", "r": 4})
            for x, y in places
        ]
        return [*whiskers(frame, series), *dots]
    css = f"curve curve-{number}"
    return [element("polyline", {"class": css, "points": points_text(places)})]


def whiskers(frame: Frame, series: Series) -> list[Html]:
    """What the instrument cannot tell apart, as a line through each dot; none where its step is not known."""
    if not series.step:
        return []
    least, most = sorted((frame.up.low, frame.up.high))
    made = []
    for x, y in points_of(series):
        across = f"{frame.across.at(x):.1f}"
        ends = [min(most, max(least, y + side * series.step / 2)) for side in (-1, 1)]
        low, high = (f"{frame.up.at(end):.1f}" for end in ends)
        made.append(
            element("line", {"class": "whisker", "x1": across, "x2": across, "y1": low, "y2": high})
        )
    return made


def points_text(places: Iterable[tuple[float, float]]) -> str:
    """Places as an attribute has them."""
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in places)


def band(frame: Frame, edges: Sequence[Series]) -> Html:
    """The room between two edges, shaded."""
    there, back = (list(placed(frame, edge)) for edge in edges)
    around = points_text([*there, *reversed(back)])
    return element("polygon", {"class": "band", "points": around})


def placed(frame: Frame, series: Series) -> Iterable[tuple[float, float]]:
    """The places of a series' points on the picture, each a pair across and down."""
    return ((frame.across.at(x), frame.up.at(y)) for x, y in points_of(series))


def lines(frame: Frame, shown: Sequence[Line]) -> list[Html]:
    """Named lines across."""
    return [line_across(frame, "level", frame.up.at(line.value)) for line in shown]


def line_names(frame: Frame, shown: Sequence[Line], curves: Sequence[Series]) -> list[Html]:
    """The names of the lines, clear of the curves where there is room."""
    names_at = [(line.label, frame.up.at(line.value)) for line in shown]
    courses = [list(placed(frame, series)) for series in curves]
    boxes = place_names(names_at, courses, frame.left, frame.right, frame.bottom)
    return [
        words("level-name", f"{box.left:.1f}", f"{box.foot:.1f}", line.label)
        for line, box in zip(shown, boxes, strict=True)
    ]


def marks(frame: Frame, shown: Sequence[Mark]) -> list[Html]:
    """Moments as dotted lines up, each with its word at the top where there is room."""
    made = []
    free_from = frame.left
    now = [frame.across.at(mark.x) for mark in shown if mark.is_now]
    for mark in sorted(shown):
        x = frame.across.at(mark.x)
        if not frame.left <= x <= frame.right:
            continue
        ends = {"x1": f"{x:.1f}", "x2": f"{x:.1f}", "y1": str(frame.top), "y2": str(frame.bottom)}
        made.append(element("line", {"class": mark_class(mark), **ends}))
        covers_now = not mark.is_now and any(abs(x - place) < MARK_ROOM for place in now)
        if not covers_now and free_from <= x <= frame.right - MARK_ROOM:
            made.append(words("mark-name", f"{x + 3:.1f}", frame.top + 10, mark.label))
            free_from = x + MARK_ROOM
    return made


def mark_class(mark: Mark) -> str:
    """How a mark's line is drawn: what is now stands out from what is done."""
    return "now-line" if mark.is_now else "mark-line"


def names(frame: Frame, curves: Sequence[Series]) -> list[Html]:
    """The curves' names at their ends, pushed apart where they meet."""
    ends = [frame.up.at(points_of(series)[-1][1]) + 4 for series in curves]
    places = spread(ends, LABEL_GAP, frame.top, frame.bottom)
    return [
        words(f"name name-{number}", frame.right + 5, f"{y:.1f}", series.short or series.label)
        for number, (series, y) in enumerate(zip(curves, places, strict=True), start=1)
    ]
