"""What each dash, dot and shade of a picture stands for."""

from collections.abc import Sequence

from calculators.core.numbers import show_number
from calculators.core.paint.element import NOTHING, Html, element
from calculators.core.result import Line, Mark, Series


def legend(
    curves: Sequence[Series],
    bands: Sequence[Sequence[Series]],
    named: Sequence[Line],
    marks: Sequence[Mark],
) -> Html:
    """What each dash stands for; nothing where there is only one curve."""
    if len(curves) < 2 and not bands and not named and not marks:
        return NOTHING
    rows = [
        (f"dot dot-{number}" if curve.dots else f"curve curve-{number}", curve_words(curve))
        for number, curve in enumerate(curves, start=1)
    ]
    rows += [("band", "how unsure it is") for _ in bands]
    rows += [("level", f"{line.label}, {show_number(line.value)}") for line in named]
    rows += [("mark-line", "what you do")] if any(not mark.is_now for mark in marks) else []
    rows += [("now-line", mark.label) for mark in marks if mark.is_now]
    return element("ul", {"class": "legend"}, *(swatch(*row) for row in rows))


def curve_words(curve: Series) -> str:
    """The label of a curve; of single readings with the instrument's step, which is drawn with them."""
    if not curve.dots or not curve.step:
        return curve.label
    return f"{curve.label}, with the kit's step of {show_number(curve.step)} {curve.unit}".rstrip()


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
