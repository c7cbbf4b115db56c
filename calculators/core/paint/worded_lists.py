"""Outputs that are declared ``InWords``, as lists on the page and as lines of text."""

from collections.abc import Iterator, Mapping
from typing import Any

from calculators.core.declare import Spec
from calculators.core.fields import OutputField
from calculators.core.in_words import RowInWords
from calculators.core.paint.cards import Lists, hint
from calculators.core.paint.element import NOTHING, Html, element, joined
from calculators.core.paint.note_list import address_of
from calculators.core.quantity import RowsPlace


def worded_lists(spec: Spec, answer: Mapping[str, Any], root: str) -> Lists:
    """HTML for each list in words, by its place; nothing for one that is empty.

    ``root`` leads from the page to the site's root.
    """
    made: Lists = {place: [] for place in RowsPlace}
    for field, place, rows in lists_in_words(spec, answer):
        items = (element("li", {}, row_html(row, root)) for row in rows)
        painted = [element("h3", {}, field.label), hint(field)]
        made[place].append(joined([*painted, element("ul", {"class": "picks"}, *items)]))
    return made


def worded_lines(spec: Spec, answer: Mapping[str, Any]) -> list[str]:
    """The same as texts, to be kept beside an answer: each list's label and titles."""
    return [f"{field.label}: {titles(rows)}" for field, _, rows in lists_in_words(spec, answer)]


def lists_in_words(
    spec: Spec, answer: Mapping[str, Any]
) -> Iterator[tuple[OutputField, RowsPlace, list[RowInWords]]]:
    """Each output that is a list in words, with its place and its rows; none that is empty."""
    for field in spec.outputs:
        if field.in_words and field.in_words.place and (rows := rows_in_words(field, answer)):
            yield field, field.in_words.place, rows


def rows_in_words(field: OutputField, answer: Mapping[str, Any]) -> list[RowInWords]:
    """An output's rows in words; none where it has no words of its own."""
    if field.in_words is None:
        return []
    return list(field.in_words.rows(answer["inputs"], answer["outputs"]))


def titles(rows: list[RowInWords]) -> str:
    """The titles of rows as one text."""
    return "; ".join(row.title for row in rows)


def row_html(row: RowInWords, root: str) -> Html:
    """A row's title, linked where there is a page, and its sentence."""
    title = element("b", {}, row.title) if row.text or row.link else row.title
    if row.link:
        title = element("a", {"href": address_of(row.link, root)}, title)
    return joined([title, element("p", {}, row.text) if row.text else NOTHING])
