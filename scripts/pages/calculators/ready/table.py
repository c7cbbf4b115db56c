"""A table of ready values, and the calculator that works it out cell by cell."""

from collections.abc import Iterable
from typing import Any, NamedTuple

from calculators.core.listing import load_all
from calculators.core.messages import Answer, NoteData
from calculators.core.numbers import show_number
from calculators.core.paint.answer import show_value
from calculators.core.run import run
from calculators.core.shown_units import to_shown, unit_shown

URGENT = ("danger", "caution")


class ReadyRow(NamedTuple):
    """One row: its heading, and a text for each column."""

    heading: str
    cells: tuple[str, ...]


class ReadyTable(NamedTuple):
    """A table of texts; ``corner`` says what the headings down and across are."""

    caption: str
    corner: str
    columns: tuple[str, ...]
    rows: tuple[ReadyRow, ...]


class ReadyValues(NamedTuple):
    """What a calculator's page holds ready: how to read it, harm first; the tables; what holds for all."""

    title: str
    first: tuple[str, ...]
    tables: tuple[ReadyTable, ...]
    after: tuple[str, ...]


class WorkedCell(NamedTuple):
    """One run of a calculator, and what it came to."""

    calculator: str
    answer: Answer

    def shown(self, key: str) -> str:
        """One output as the calculator's page shows it, without its unit."""
        outputs = {field.key: field for field in load_all()[self.calculator].outputs}
        return show_value(outputs[key], self.value(key))

    def value(self, key: str) -> Any:
        """One output as data."""
        return self.answer["outputs"][key]


def cell(calculator: str, **given: Any) -> WorkedCell:
    """Run a calculator for one cell. Raises ``BadInput`` where the table asks for what cannot be."""
    return WorkedCell(calculator, run(calculator, given))


def heading(calculator: str, key: str, value: float) -> str:
    """An input's value with its unit; where there is another customary unit, that too."""
    field = next(field for field in load_all()[calculator].inputs if field.key == key)
    text = f"{show_number(value)} {field.unit}".strip()
    if not (field.quantity and field.quantity.us):
        return text
    other = show_number(to_shown(field, value, "us"), 2 if value < 100 else 3)
    return f"{text} ({other} {unit_shown(field, 'us')})"


def said_of_all(cells: Iterable[WorkedCell]) -> tuple[str, ...]:
    """The cautions and dangers that each of these answers has, worded alike; in order."""
    answers = [cautions(one.answer["notes"]) for one in cells]
    return tuple(text for text in answers[0] if all(text in other for other in answers))


def cautions(notes: Iterable[NoteData]) -> list[str]:
    """The texts of the notes that warn."""
    return [note["text"] for note in notes if note["level"] in URGENT]
