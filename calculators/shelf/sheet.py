"""A sheet of paper as plain data, and the same as HTML through the painter; each line can be edited."""

from typing import Literal, NamedTuple

from calculators.core.paint.element import Html, element


class SheetPart(NamedTuple):
    """A heading with lines below it, in a way of its own: what must never be done, or short lines to tick."""

    heading: str
    lines: list[str]
    way: Literal["", "never", "ticks"] = ""


class Sheet(NamedTuple):
    """A sheet: its title, what stands below the title, its parts, and its size, as A6."""

    title: str
    under: str
    parts: list[SheetPart]
    size: str


def sheet_html(sheet: Sheet) -> Html:
    """The sheet as one piece. A place is left for the tank's code where the page draws one."""
    return element(
        "article",
        {"class": f"paper paper-{sheet.size.lower()}"},
        element("h1", {}, sheet.title),
        element("p", {"class": "under", "contenteditable": "true"}, sheet.under),
        element("div", {"class": "code", "data-code": True}),
        *(part_html(part) for part in sheet.parts if part.lines),
    )


def part_html(part: SheetPart) -> Html:
    """One part of the sheet."""
    lines = (element("li", {"contenteditable": "true"}, line) for line in part.lines)
    return element(
        "section",
        {"class": part.way or None},
        element("h2", {}, part.heading),
        element("ul", {}, *lines),
    )
