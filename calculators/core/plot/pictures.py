"""Series as pictures with axes and units, a legend, and sentences for a screen reader.

Drawn here and not by a script in the page, so that the worked example has its pictures with no
script at all. Which series stand together, their named lines and their bands the series say.
"""

from collections.abc import Mapping, Sequence
from itertools import chain
from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.core.paint.element import NOTHING, Html, element
from calculators.core.plot import parts as parts
from calculators.core.plot.captions import axis, points_of, summary
from calculators.core.plot.scale import scale
from calculators.core.result import Line, Mark, Series

WIDTH, HEIGHT = 360, 228
LEFT, RIGHT, TOP, BOTTOM = 50, 346, 34, 186
NAMES_RIGHT = 284  # where the axes end if names stand at the curves' ends
NEAR = 2.0  # a line up to so many times the highest point is drawn


class Picture(NamedTuple):
    """What stands on one picture: curves, bands of two edges each, named lines, marks."""

    title: str
    curves: list[Series]
    bands: list[list[Series]]

    def top(self) -> float:
        """The highest point of all."""
        shown = [*self.curves, *(edge for edges in self.bands for edge in edges)]
        return max(y for series in shown for _, y in points_of(series))

    def lines(self) -> list[Line]:
        """The named lines that the curves come near, and those that are always drawn."""
        near = NEAR * self.top()
        drawn = [line for series in self.curves for line in series.lines]
        return [line for line in dict.fromkeys(drawn) if line.always or line.value <= near]

    def marks(self) -> list[Mark]:
        """The marks of all curves, each once."""
        return list(dict.fromkeys(mark for series in self.curves for mark in series.marks))


def plots(series: Mapping[str, Series]) -> list[Html]:
    """One figure a picture, in the order in which their first series come."""
    return [draw(picture) for picture in pictures(series)]


def pictures(series: Mapping[str, Series]) -> list[Picture]:
    """Gather what stands together; a series without a finite point is left out."""
    shown = {key: curve for key, curve in series.items() if points_of(curve)}
    by_name: dict[str, Picture] = {}
    for key, curve in shown.items():
        if curve.edge_of:
            continue
        picture = by_name.setdefault(curve.picture or key, Picture(curve.picture, [], []))
        picture.curves.append(curve)
        edges = [edge for edge in shown.values() if edge.edge_of == key]
        if len(edges) == 2:
            picture.bands.append(edges)
    return list(by_name.values())


def draw(picture: Picture) -> Html:
    """One picture as a figure with its caption."""
    first = picture.curves[0]
    several = len(picture.curves) > 1
    named = picture.lines()
    frame = framed(picture, named)
    words = summary(picture.title, picture.curves, picture.bands, named)
    across = axis(first.x_label, first.x_unit)
    inside = [
        parts.words("axis", 4, 14, axis(picture.title or first.label, first.unit)),
        *parts.grid(frame),
        *(parts.band(frame, edges) for edges in picture.bands),
        *parts.marks(frame, picture.marks()),
        *parts.lines(frame, named),
        *parts.line_names(frame, named, picture.curves),
        *chain.from_iterable(
            parts.curve(frame, curve, number)
            for number, curve in enumerate(picture.curves, start=1)
        ),
        *(parts.names(frame, picture.curves) if several else ()),
        parts.words("axis end", frame.right, HEIGHT - 6, across),
    ]
    box = {"viewBox": f"0 0 {WIDTH} {HEIGHT}", "role": "img", "aria-label": words}
    return element(
        "figure",
        {"class": "plot"},
        element("svg", box, *inside),
        legend(picture, named),
        element("figcaption", {}, words),
    )


def framed(picture: Picture, named: Sequence[Line]) -> parts.Frame:
    """The axes: wide enough for every curve, band and named line."""
    shown = [*picture.curves, *(edge for edges in picture.bands for edge in edges)]
    xs = [x for series in shown for x, _ in points_of(series)]
    ys = [y for series in shown for _, y in points_of(series)] + [line.value for line in named]
    right = NAMES_RIGHT if len(picture.curves) > 1 else RIGHT
    return parts.Frame(
        scale(xs, LEFT, right, tight=True),
        scale(ys, BOTTOM, TOP, from_zero=True),
        LEFT,
        right,
        TOP,
        BOTTOM,
    )


def legend(picture: Picture, named: Sequence[Line]) -> Html:
    """What each dash stands for; nothing where there is only one curve."""
    if len(picture.curves) < 2 and not picture.bands and not named and not picture.marks():
        return NOTHING
    rows = [
        (f"dot dot-{number}" if curve.dots else f"curve curve-{number}", curve.label)
        for number, curve in enumerate(picture.curves, start=1)
    ]
    rows += [("band", "how unsure it is") for _ in picture.bands]
    rows += [("level", f"{line.label}, {show_number(line.value)}") for line in named]
    rows += [("mark-line", "what you do")] if picture.marks() else []
    return element("ul", {"class": "legend"}, *(swatch(*row) for row in rows))


def swatch(css: str, label: str) -> Html:
    """One line of the legend."""
    if css == "band":
        sample = element("rect", {"class": css, "width": 32, "height": 12})
    elif css.startswith("dot"):
        sample = element("circle", {"class": css, "cx": 16, "cy": 6, "r": 4})
    else:
        sample = element("line", {"class": css, "x1": "0", "x2": 32, "y1": 6, "y2": 6})
    box = {"viewBox": "0 0 32 12", "aria-hidden": "true"}
    return element("li", {}, element("svg", box, sample), label)
