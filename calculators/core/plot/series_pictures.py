"""Series as pictures with axes and units, a legend, and sentences for a screen reader.

Drawn here and not by a script in the page, so that the worked example has its pictures with no
script at all. Which series stand together, their named lines and their bands the series say.
"""

from collections.abc import Mapping, Sequence
from itertools import chain
from typing import NamedTuple

from calculators.core.paint.element import Html, element
from calculators.core.plot import below, parts
from calculators.core.plot.captions import axis, points_of, summary
from calculators.core.plot.legend import legend
from calculators.core.plot.meaning import meaning
from calculators.core.plot.scale import scale
from calculators.core.result import Line, Mark, Series

WIDTH, HEIGHT = 330, 228
LEFT, RIGHT, TOP, BOTTOM = 48, 318, 34, 184
NAMES_RIGHT = 250  # where the axes end if names stand at the curves' ends
NEAR = 2.0  # a line up to so many times the highest point is drawn


class Picture(NamedTuple):
    """What stands on one picture: curves, bands of two edges each, named lines, marks."""

    title: str
    curves: list[Series]
    bands: list[list[Series]]

    def of_all(self) -> list[Series]:
        """The curves and the edges of the bands."""
        return [*self.curves, *(edge for edges in self.bands for edge in edges)]

    def top(self) -> float:
        """The highest point of all."""
        return max(y for series in self.of_all() for _, y in points_of(series))

    def lines(self) -> list[Line]:
        """The named lines that the curves come near, and those that are always drawn."""
        near = NEAR * self.top()
        drawn = [line for series in self.curves for line in series.lines]
        return [line for line in dict.fromkeys(drawn) if line.always or line.value <= near]

    def names_its_ends(self) -> bool:
        """Whether the curves are named where they end: not where dots end before a curve does."""
        ends = {points_of(curve)[-1][0] for curve in self.curves}
        dotted = any(curve.dots for curve in self.curves)
        return len(self.curves) > 1 and not (dotted and len(ends) > 1)

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
        *(parts.names(frame, picture.curves) if picture.names_its_ends() else ()),
        parts.words("axis end", frame.right, HEIGHT - 6, across),
        below.cursor(frame),
    ]
    box = {"viewBox": f"0 0 {WIDTH} {HEIGHT}", "role": "img", "aria-label": words}
    return element(
        "figure",
        {"class": "plot"},
        element("svg", box, *inside),
        below.along(frame, picture.curves, picture.marks(), named=picture.names_its_ends()),
        legend(picture.curves, picture.bands, named, picture.marks()),
        element("figcaption", {}, first.caption or meaning(picture.curves, picture.bands, named)),
        below.table_button(picture.title or first.label, picture.of_all()),
    )


def framed(picture: Picture, named: Sequence[Line]) -> parts.Frame:
    """The axes: wide enough for every curve, band and named line."""
    shown = picture.of_all()
    xs = [x for series in shown for x, _ in points_of(series)]
    ys = [y for series in shown for _, y in points_of(series)] + [line.value for line in named]
    right = NAMES_RIGHT if picture.names_its_ends() else RIGHT
    return parts.Frame(
        scale(xs, LEFT, right, tight=True),
        scale(ys, BOTTOM, TOP, from_zero=True),
        LEFT,
        right,
        TOP,
        BOTTOM,
    )
