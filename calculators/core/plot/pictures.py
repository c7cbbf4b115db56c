"""Series as pictures with axes and units, a legend, and sentences for a screen reader.

Drawn here and not by a script in the page, so that the worked example has its pictures with no
script at all. Which series stand together, their named lines and their bands the series say.
"""

from collections.abc import Mapping, Sequence
from html import escape
from typing import NamedTuple

from calculators.core.numbers import show_number
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
        return max(y for one in shown for _, y in points_of(one))

    def lines(self) -> list[Line]:
        """The named lines that the curves come near, and those that are always drawn."""
        near = NEAR * self.top()
        found = [line for one in self.curves for line in one.lines]
        return [line for line in dict.fromkeys(found) if line.always or line.value <= near]

    def marks(self) -> list[Mark]:
        """The marks of all curves, each once."""
        return list(dict.fromkeys(mark for one in self.curves for mark in one.marks))


def plots(series: Mapping[str, Series]) -> list[str]:
    """One figure a picture, in the order in which their first series come."""
    return [draw(picture) for picture in pictures(series)]


def pictures(series: Mapping[str, Series]) -> list[Picture]:
    """Gather what stands together; a series without a finite point is left out."""
    shown = {key: one for key, one in series.items() if points_of(one)}
    found: dict[str, Picture] = {}
    for key, one in shown.items():
        if one.edge_of:
            continue
        picture = found.setdefault(one.picture or key, Picture(one.picture, [], []))
        picture.curves.append(one)
        edges = [edge for edge in shown.values() if edge.edge_of == key]
        if len(edges) == 2:
            picture.bands.append(edges)
    return list(found.values())


def draw(picture: Picture) -> str:
    """One picture as a figure with its caption."""
    first = picture.curves[0]
    several = len(picture.curves) > 1
    named = picture.lines()
    frame = framed(picture, named)
    words = escape(summary(picture.title, picture.curves, picture.bands, named))
    heading = axis(picture.title or first.label, first.unit)
    inside = [
        parts.grid(frame),
        *(parts.band(frame, edges) for edges in picture.bands),
        parts.marks(frame, picture.marks()),
        parts.lines(frame, named),
        parts.line_names(frame, named, picture.curves),
        *(parts.curve(frame, one, number) for number, one in enumerate(picture.curves, start=1)),
        parts.names(frame, picture.curves) if several else "",
    ]
    return (
        f'<figure class="plot"><svg viewBox="0 0 {WIDTH} {HEIGHT}" role="img" aria-label="{words}">'
        f'<text class="axis" x="4" y="14">{escape(heading)}</text>{"".join(inside)}'
        f'<text class="axis end" x="{frame.right}" y="{HEIGHT - 6}">'
        f"{escape(axis(first.x_label, first.x_unit))}</text></svg>"
        f"{legend(picture, named)}<figcaption>{words}</figcaption></figure>"
    )


def framed(picture: Picture, named: Sequence[Line]) -> parts.Frame:
    """The axes: wide enough for every curve, band and named line."""
    shown = [*picture.curves, *(edge for edges in picture.bands for edge in edges)]
    xs = [x for one in shown for x, _ in points_of(one)]
    ys = [y for one in shown for _, y in points_of(one)] + [line.value for line in named]
    right = NAMES_RIGHT if len(picture.curves) > 1 else RIGHT
    return parts.Frame(
        scale(xs, LEFT, right, tight=True),
        scale(ys, BOTTOM, TOP, from_zero=True),
        LEFT,
        right,
        TOP,
        BOTTOM,
    )


def legend(picture: Picture, named: Sequence[Line]) -> str:
    """What each dash stands for; nothing where there is only one curve."""
    if len(picture.curves) < 2 and not picture.bands and not named and not picture.marks():
        return ""
    rows = [
        (f"dot dot-{number}" if one.dots else f"curve curve-{number}", one.label)
        for number, one in enumerate(picture.curves, start=1)
    ]
    rows += [("band", "how unsure it is") for _ in picture.bands]
    rows += [("level", f"{line.label}, {show_number(line.value)}") for line in named]
    rows += [("mark-line", "what you do")] if picture.marks() else []
    return f'<ul class="legend">{"".join(swatch(*row) for row in rows)}</ul>'


def swatch(look: str, label: str) -> str:
    """One line of the legend."""
    sample = (
        '<rect class="band" width="32" height="12"/>'
        if look == "band"
        else f'<circle class="{look}" cx="16" cy="6" r="4"/>'
        if look.startswith("dot")
        else f'<line class="{look}" x1="0" x2="32" y1="6" y2="6"/>'
    )
    return f'<li><svg viewBox="0 0 32 12" aria-hidden="true">{sample}</svg>{escape(label)}</li>'
