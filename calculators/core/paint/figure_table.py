"""The figures of an answer as a table of two columns, and the same as lines of plain text."""

from collections.abc import Sequence

from calculators.core.messages import FigureRow
from calculators.core.paint.element import NOTHING, Html, element, joined


def figure_table(rows: Sequence[FigureRow]) -> Html:
    """One row an output."""
    made = element("tbody", {"id": "rows"}, *map(figure_row, rows))
    return element("table", {}, made)


def figure_row(row: FigureRow) -> Html:
    """Label with its help, value with its unit."""
    hint = joined([" ", element("small", {}, row["help"])]) if row["help"] else NOTHING
    unit = (
        joined([" ", element("span", {"class": "unit"}, row["unit"])]) if row["unit"] else NOTHING
    )
    head = element("th", {"scope": "row"}, row["label"], hint)
    return element("tr", {}, head, element("td", {}, row["value"], unit))


def figure_lines(rows: Sequence[FigureRow]) -> list[str]:
    """The rows as texts, to be kept beside an answer."""
    return [f"{row['label']}: {row['value']} {row['unit']}".strip() for row in rows]
