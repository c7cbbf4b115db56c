"""An answer as a person reads it: labels, rounded figures with units, words for choices.

Used by the page at build time and by the page's worker, so that both show the same.
"""

from typing import Any

from calculators.core.declare import Field, Spec
from calculators.core.numbers import show_number
from calculators.core.units import System, to_shown, unit_shown

NOT_POSSIBLE = "–"


def rows(spec: Spec, outputs: dict[str, Any], system: System = "metric") -> list[dict[str, str]]:
    """One row an output: key, label, value, unit, help. A verdict or rating comes first."""
    ordered = sorted(spec.outputs, key=lambda field: field.kind != "choice")
    return [
        {
            "key": field.key,
            "label": field.label,
            "value": show_value(field, outputs[field.key], system),
            "unit": unit_shown(field, system) if outputs[field.key] is not None else "",
            "help": field.help,
        }
        for field in ordered
    ]


def show_value(field: Field, value: Any, system: System = "metric") -> str:
    """One value as text, without its unit."""
    if value is None:
        return NOT_POSSIBLE
    if field.kind == "choice":
        return field.words[field.choices.index(value)]
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        digits = field.quantity.digits if field.quantity else 3
        return show_number(to_shown(field, value, system), digits)
    return show_data(value)


def show_data(value: Any) -> str:
    """Named figures and rows as one line of text."""
    if isinstance(value, dict):
        return ", ".join(f"{key} {show_data(part)}" for key, part in value.items()) or NOT_POSSIBLE
    if isinstance(value, list):
        return "; ".join(map(show_row, value)) or NOT_POSSIBLE
    if isinstance(value, int | float) and not isinstance(value, bool):
        return show_number(value)
    return NOT_POSSIBLE if value is None else str(value)


def show_row(row: Any) -> str:
    """One row of a list, its values in the order of its columns."""
    return ", ".join(map(show_data, row.values())) if isinstance(row, dict) else show_data(row)
