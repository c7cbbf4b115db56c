"""An answer as a person reads it: labels, rounded figures with units, words for choices.

Used by the page at build time and by the page's worker, so that both show the same.
"""

from typing import Any

from calculators.core.declare import Spec
from calculators.core.fields import Field, Kind
from calculators.core.messages import FigureRow, File
from calculators.core.numbers import show_number
from calculators.core.shown_units import System, to_shown, unit_shown

NOT_POSSIBLE = "–"
BREAK = ";\n"  # between figures by name; the style sheet keeps the new line


def rows(spec: Spec, outputs: dict[str, Any], system: System = "metric") -> list[FigureRow]:
    """One row an output: key, label, value, unit, help. A verdict or rating comes first.

    An output that is a file's text is left to ``downloads``, one that is a list of rows to ``cards``.
    """
    ordered = sorted(spec.outputs, key=lambda field: field.kind != Kind.CHOICE)
    return [
        {
            "key": field.key,
            "label": field.label,
            "value": show_value(field, outputs[field.key], system),
            "unit": "" if has_no_unit(outputs[field.key]) else unit_shown(field, system),
            "help": field.help,
        }
        for field in ordered
        if field.download is None and field.as_rows is None and not field.unpainted
    ]


def downloads(spec: Spec, outputs: dict[str, Any]) -> list[File]:
    """The outputs that are files, where there are any: label, file_name, media_type, text."""
    return [
        {
            "label": field.label,
            "file_name": field.download.file_name,
            "media_type": field.download.media_type,
            "text": outputs[field.key],
        }
        for field in spec.outputs
        if field.download and outputs[field.key]
    ]


def has_no_unit(value: Any) -> bool:
    """Whether no unit goes behind the value: there is none, or its lines carry the unit already."""
    return value is None or isinstance(value, dict)


def show_value(field: Field, value: Any, system: System = "metric") -> str:
    """One value as text, without its unit; a table of figures as lines that carry the unit."""
    if value is None:
        return field.when_none or NOT_POSSIBLE
    if field.kind == Kind.CHOICE:
        return field.words[field.choices.index(value)]
    if field.kind == Kind.KEYS:
        words = dict(zip(field.choices, field.words, strict=True))
        return ", ".join(words.get(key, key) for key in value) or NOT_POSSIBLE
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        quantity = field.quantity
        if quantity and 0 < abs(value) < quantity.least:
            return f"under {show_number(to_shown(field, quantity.least, system))}"
        return show_number(to_shown(field, value, system), quantity.digits if quantity else 3)
    if isinstance(value, dict) and all(map(is_figure, value.values())):
        return show_figures(field, value, system)
    return show_data(value)


def show_data(value: Any) -> str:
    """Named figures and rows as one line of text."""
    if isinstance(value, dict):
        return ", ".join(f"{key} {show_data(part)}" for key, part in value.items()) or NOT_POSSIBLE
    if isinstance(value, list):
        return "; ".join(map(show_row, value)) or NOT_POSSIBLE
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return show_number(value)
    return NOT_POSSIBLE if value is None else str(value)


def show_row(row: Any) -> str:
    """One row of a list, its values in the order of its columns."""
    return ", ".join(map(show_data, row.values())) if isinstance(row, dict) else show_data(row)


def is_figure(value: Any) -> bool:
    """Whether a value is a number or not known."""
    return value is None or (isinstance(value, int | float) and not isinstance(value, bool))


def show_figures(field: Field, figures: dict[str, float | None], system: System) -> str:
    """Figures by name, one a line; what is nothing or not known is gathered in a last line each."""
    unit = unit_shown(field, system)
    lines = [
        f"{name} {show_value(field, figure, system)} {unit}".rstrip()
        for name, figure in figures.items()
        if figure
    ]
    nothing = [name for name, figure in figures.items() if figure == 0]
    unknown = [name for name, figure in figures.items() if figure is None]
    if nothing:
        lines.append(f"none: {', '.join(nothing)}")
    if unknown:
        lines.append(f"not known: {', '.join(unknown)}")
    return BREAK.join(lines)
