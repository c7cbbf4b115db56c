"""An answer as plain text, for the command line."""

from typing import Any

from calculators.core.declare import Spec
from calculators.core.paint import rows, show_value


def table(spec: Spec, answer: dict[str, Any]) -> str:
    """Title, inputs, outputs and notes, aligned."""
    given = [
        (field.key, show_value(field, answer["inputs"][field.key]), field.unit, field.label)
        for field in spec.inputs
    ]
    found = [
        (row["key"], row["value"], row["unit"], row["label"])
        for row in rows(spec, answer["outputs"])
    ]
    width = max(len(key) for key, *_ in [*given, *found])
    lines = [spec.title, ""]
    for part in (given, found):
        for key, value, unit, label in part:
            first, *more = f"{value} {unit}".strip().split("\n")
            lines.append(f"  {key:{width}}  {first:24}  {label}")
            lines += [f"  {'':{width}}  {line}" for line in more]
        lines.append("")
    lines += [f"{note['level']}: {note['text']}" for note in answer["notes"]]
    return "\n".join(lines).rstrip()
