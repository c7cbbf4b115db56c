"""An answer as plain text, for the command line."""

from typing import Any

from calculators.core.declare import Field, Spec
from calculators.core.paint import rows, show_value


def table(spec: Spec, answer: dict[str, Any]) -> str:
    """Title, inputs, outputs and notes, aligned."""
    given = [
        (field.key, show_input(field, answer["inputs"][field.key]), field.unit, field.label)
        for field in spec.inputs
    ]
    found = [
        (row["key"], row["value"], row["unit"], row["label"])
        for row in rows(spec, answer["outputs"])
    ]
    width = max(len(key) for key, *_ in [*given, *found])
    lines = [spec.title, ""]
    for part in (given, found):
        lines += [
            f"  {key:{width}}  {f'{value} {unit}'.strip():24}  {label}"
            for key, value, unit, label in part
        ]
        lines.append("")
    lines += [f"{note['level']}: {note['text']}" for note in answer["notes"]]
    return "\n".join(lines).rstrip()


def show_input(field: Field, value: Any) -> str:
    """One input; a list by its number of rows, since rows would not fit."""
    return f"{len(value)} rows" if field.kind == "list" and value else show_value(field, value)
