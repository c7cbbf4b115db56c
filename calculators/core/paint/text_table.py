"""An answer as plain text, for the command line."""

from typing import Any

from calculators.core.declare import Spec
from calculators.core.messages import Answer
from calculators.core.paint.answer import BREAK, show_row, show_value
from calculators.core.paint.answered_rows import value_rows

MOST_WIDE = 100


def table(spec: Spec, answer: Answer) -> str:
    """Title, inputs, outputs and notes, aligned."""
    given = [
        (field.key, show_value(field, answer["inputs"][field.key]), field.unit, field.label)
        for field in spec.inputs
    ]
    output_rows = [
        (
            row["key"],
            "below" if rowed(answer["outputs"].get(row["key"])) else row["value"],
            row["unit"],
            row["label"],
        )
        for row in value_rows(spec, answer)
    ]
    width = max(len(key) for key, *_ in [*given, *output_rows])
    lines = [spec.title, ""]
    for part in (given, output_rows):
        for key, value, unit, label in part:
            first, *more = lines_of(f"{value} {unit}".strip())
            lines.append(f"  {key:{width}}  {first:24}  {label}")
            lines += [f"  {'':{width}}  {line}" for line in more]
        lines.append("")
    for field in (output for output in spec.outputs if not output.unpainted):
        lines += block(field.key, field.label, answer["outputs"][field.key])
    lines += [f"{note['level']}: {note['text']}" for note in answer["notes"]]
    return "\n".join(lines).rstrip()


def lines_of(text: str) -> list[str]:
    """Figures by name stand under each other; what is too long for a column is named in a word."""
    lines = text.split(BREAK)
    fits = all(len(line) <= MOST_WIDE and "\n" not in line for line in lines)
    return lines if fits else ["see --json"]


def block(key: str, label: str, value: Any) -> list[str]:
    """The rows of a list below the table, one a line."""
    if not rowed(value):
        return []
    return [f"  {key}: {label}", *(f"    {show_row(row)}" for row in value), ""]


def rowed(value: Any) -> bool:
    """Whether a value is a list with something in it."""
    return isinstance(value, list) and bool(value)
