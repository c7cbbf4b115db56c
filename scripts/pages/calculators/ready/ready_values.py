"""The ready values of a calculator's page, folded; nothing for a calculator that has none."""

from calculators.core.paint.element import NOTHING, Html, element, joined
from scripts.pages.calculators.ready.ammonia_table import ammonia_values
from scripts.pages.calculators.ready.change_table import water_change_values
from scripts.pages.calculators.ready.cover_table import floaters_values
from scripts.pages.calculators.ready.dose_table import dosing_values
from scripts.pages.calculators.ready.oxygen_table import oxygen_values
from scripts.pages.calculators.ready.table import ReadyRow, ReadyTable, ReadyValues

READY = {
    "free-ammonia": ammonia_values,
    "water-change": water_change_values,
    "dosing": dosing_values,
    "floaters": floaters_values,
    "oxygen": oxygen_values,
}


def ready_values(calculator: str) -> Html:
    """The tables as one folded piece of HTML; what the page's script opens where Python cannot start."""
    if calculator not in READY:
        return NOTHING
    ready = READY[calculator]()
    return element(
        "details",
        {"class": "fold ready", "id": "ready"},
        element(
            "summary", {}, f"Ready values, to print: {ready.title[0].lower()}{ready.title[1:]}"
        ),
        *parts(ready),
    )


def parts(ready: ReadyValues) -> list[Html]:
    """Harm first, then the tables, then what holds for all of them."""
    danger = element("a", {"class": "button", "href": "../../danger/"}, "Animals in danger")
    return [
        element("ul", {}, *(element("li", {}, text) for text in ready.first)),
        element("p", {}, danger),
        *map(table, ready.tables),
        element("ul", {}, *(element("li", {}, text) for text in ready.after)),
    ]


def table(one: ReadyTable) -> Html:
    """One table with its caption; it scrolls sideways on a narrow phone."""
    heads = [element("th", {"scope": "col"}, text) for text in (one.corner, *one.columns)]
    made = element(
        "table",
        {},
        element("caption", {}, one.caption),
        element("thead", {}, element("tr", {}, *heads)),
        element("tbody", {}, *map(row, one.rows)),
    )
    region = {"class": "wide", "tabindex": "0", "role": "region", "aria-label": one.caption}
    return element("div", region, made)


def row(one: ReadyRow) -> Html:
    """One row with its heading."""
    cells = joined(element("td", {}, text) for text in one.cells)
    return element("tr", {}, element("th", {"scope": "row"}, one.heading), cells)
