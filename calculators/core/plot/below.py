"""What stands below a picture for hands and keys: the values at a place, a slider along it, a table.

Each place and its words are written here, so that the page's script only shows them. The slider is
the browser's own, so arrows, fingers and screen readers know it.
"""

import json
import re
from collections.abc import Sequence

from calculators.core.kept_together import kept_together
from calculators.core.paint.element import Attribute, Html, element
from calculators.core.plot.captions import place_word
from calculators.core.plot.parts import Frame
from calculators.core.plot.values import places, spoken, table
from calculators.core.result import Mark, Series

SMALL_FIGURES = str.maketrans("₀₁₂₃₄₅₆₇₈₉⁰¹²³⁴⁵⁶⁷⁸⁹", "01234567890123456789")
NOT_IN_A_NAME = re.compile(r"[^a-z0-9]+")


def cursor(frame: Frame) -> Html:
    """The line that a finger moves; it is not there until then."""
    ends = {"x1": "0", "x2": "0", "y1": str(frame.top), "y2": str(frame.bottom)}
    return element("line", {"class": "cursor", **ends})


def along(
    frame: Frame, curves: Sequence[Series], marks: Sequence[Mark], *, named: bool = False
) -> Html:
    """The line of values, at first of the last place or of now, and the slider.

    It is shorter where the curves are ``named`` at their ends.
    """
    shown = [
        (round(frame.across.at(place.x), 1), kept_together(spoken(place, curves, marks)))
        for place in places(curves)
    ]
    now = {mark.x for mark in marks if mark.is_now}
    begun = [place for place, one in enumerate(places(curves)) if one.x in now]
    start = begun[-1] if begun else len(shown) - 1
    words = shown[start][1]
    slider: dict[str, Attribute] = {
        "type": "range",
        "min": 0,
        "max": len(shown) - 1,
        "value": start,
        "aria-label": f"Values along {place_word(curves[0])}",
        "aria-valuetext": words,
        "data-places": json.dumps(shown, ensure_ascii=False, separators=(",", ":")),
    }
    kind = "along named" if named else "along"
    return element(
        "div",
        {"class": kind},
        element("input", slider),
        element("p", {"class": "values"}, words),
    )


def table_button(title: str, curves: Sequence[Series]) -> Html:
    """A button that saves the values; the page's script makes the file."""
    plain = title.translate(SMALL_FIGURES).lower()
    name = NOT_IN_A_NAME.sub("-", plain).strip("-")
    return element(
        "button",
        {
            "type": "button",
            "class": "as-table",
            "data-file": f"{name or 'values'}.csv",
            "data-type": "text/csv;charset=utf-8",
            "data-text": table(curves),
            "aria-label": f"Save as a table (CSV): {title}",
        },
        "Save as a table (CSV)",
    )
