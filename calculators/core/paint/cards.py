"""Outputs that are lists of rows, as cards, a table, or a list that opens."""

from typing import Any

from calculators.core.declare import Spec
from calculators.core.fields import OutputField
from calculators.core.numbers import show_number
from calculators.core.paint.answer import show_value
from calculators.core.paint.element import NOTHING, Html, element, joined
from calculators.core.quantity import AsRows, RowsPlace, RowsStyle
from calculators.core.shown_units import System, unit_shown

Rows = list[dict[str, Any]]


Lists = dict[RowsPlace, list[Html]]  # of an answer, by where they stand


def lists(spec: Spec, outputs: dict[str, Any], system: System, root: str) -> Lists:
    """HTML for each output that is declared ``AsRows``, by its place; nothing for an empty one.

    ``root`` leads from the page to the site's root.
    """
    made: Lists = {place: [] for place in RowsPlace}
    for field in spec.outputs:
        shape = field.as_rows
        if shape and outputs[field.key]:
            painted = STYLES[shape.style](field, shape, outputs[field.key], system, root)
            made[shape.place].append(painted)
    return made


def cards(field: OutputField, shape: AsRows, rows: Rows, system: System, root: str) -> Html:
    """An ordered list of cards: title with link, bar, sentences."""
    made = (
        element("li", {}, heading(shape, row, root), bar(shape, row), sentences(shape, row))
        for row in rows
    )
    picks = element("ol", {"class": "picks"}, *made)
    return joined([element("h3", {}, field.label), hint(field), picks])


def closed(field: OutputField, shape: AsRows, rows: Rows, system: System, root: str) -> Html:
    """A list that opens when tapped; the page's script keeps it open by its id."""
    made = (element("li", {}, heading(shape, row, root), sentences(shape, row)) for row in rows)
    return element(
        "details",
        {"id": f"list-{field.key}"},
        element("summary", {}, f"{field.label}: {len(rows)}"),
        hint(field),
        element("ul", {"class": "picks"}, *made),
    )


def table(field: OutputField, shape: AsRows, rows: Rows, system: System, root: str) -> Html:
    """A small table: the title, then the columns named in the declaration."""
    parts = [next(part for part in field.row if part.key == key) for key in shape.columns]
    title = next(part for part in field.row if part.key == shape.title)
    heads = [title.label, *(head(part, system) for part in parts)]
    top = element("tr", {}, *(element("th", {"scope": "col"}, words) for words in heads))
    made = (
        element(
            "tr",
            {},
            element("th", {"scope": "row"}, heading(shape, row, root)),
            *(element("td", {}, show_value(part, row[part.key], system)) for part in parts),
        )
        for row in rows
    )
    body = element(
        "table", {"class": "set"}, element("thead", {}, top), element("tbody", {}, *made)
    )
    return joined([element("h3", {}, field.label), hint(field), body])


def head(part: OutputField, system: System) -> str:
    """A column's head with its unit."""
    unit = unit_shown(part, system)
    return f"{part.label}, {unit}" if unit else part.label


def heading(shape: AsRows, row: dict[str, Any], root: str) -> Html:
    """A row's title, linked to its page, and its subtitle."""
    name = element("b", {}, str(row[shape.title]))
    if shape.subtitle and row[shape.subtitle]:
        name = joined([name, element("span", {}, str(row[shape.subtitle]))], " ")
    if not shape.page:
        return name
    return element("a", {"href": root + shape.page.format(**row)}, picture(shape, row, root), name)


def picture(shape: AsRows, row: dict[str, Any], root: str) -> Html:
    """The small picture of what a row is about; the words beside it name it."""
    if not shape.picture:
        return NOTHING
    box = {"class": "thumb", "aria-hidden": "true", "viewBox": "0 0 48 48"}
    return element("svg", box, element("use", {"href": root + shape.picture.format(**row)}))


def bar(shape: AsRows, row: dict[str, Any]) -> Html:
    """A figure from 0 to 100 as a bar with its words."""
    if not shape.bar:
        return NOTHING
    value = row[shape.bar]
    words = shape.bar_words(value) if shape.bar_words else ""
    label = f"{row[shape.title]}: {words or f'{show_number(value)} of 100'}"
    meter = element("meter", {"min": 0, "max": 100, "value": f"{value:.1f}", "aria-label": label})
    return element("p", {"class": "score"}, meter, f" {words or f'{show_number(value, 2)} of 100'}")


def sentences(shape: AsRows, row: dict[str, Any]) -> Html:
    """A row's sentences."""
    said = list(row[shape.lines]) if shape.lines else []
    said += [f"Against it: {text}" for text in row[shape.contrary]] if shape.contrary else []
    made = [element("li", {}, text) for text in said]
    return element("ul", {}, *made) if made else NOTHING


def hint(field: OutputField) -> Html:
    """The output's help, where it has one."""
    return element("p", {"class": "hint"}, field.help) if field.help else NOTHING


STYLES = {RowsStyle.CARDS: cards, RowsStyle.CLOSED: closed, RowsStyle.TABLE: table}
