"""What stands together in a form: rows of fields that are one idea, and the line of a closed part."""

from collections.abc import Sequence

from calculators.core.fields import InputField
from calculators.core.form_hints import InRow, Part
from calculators.core.paint.element import Html, element
from calculators.core.shown_units import System, unit_shown
from scripts.pages.calculators.form_fields import hint, value_text
from scripts.pages.calculators.form_rows import field_or_rows

MOST_NAMED = 3  # assumptions in the line of a closed part; all stand in its fields


def in_rows(fields: Sequence[InputField]) -> list[list[InputField]]:
    """The fields in their order; those of one legend as one list, in the place of the first."""
    rows: dict[str, list[InputField]] = {}
    for field in fields:
        in_row = hint(field, InRow)
        rows.setdefault(f"row {in_row.legend}" if in_row else field.key, []).append(field)
    return list(rows.values())


def row_or_field(fields: Sequence[InputField]) -> Html:
    """One field or list, or a row of fields below their legend."""
    inside = [field_or_rows(field, None, "", marks=field.private) for field in fields]
    in_row = hint(fields[0], InRow)
    if in_row is None:
        return inside[0]
    return element("fieldset", {"class": "together"}, element("legend", {}, in_row.legend), *inside)


def closed_part(heading: Part, fields: Sequence[InputField]) -> Html:
    """A part behind a tap, whose line says what is assumed where it stays closed."""
    metric, us = assumed_line(fields, "metric"), assumed_line(fields, "us")
    lines = [("assumes", metric)] if metric == us else [("in-metric", metric), ("in-us", us)]
    said = (element("small", {"class": name}, line) for name, line in lines if line)
    name = element("summary", {}, element("span", {}, heading.heading), *said)
    body = element("div", {}, *map(row_or_field, in_rows(fields)))
    return element("details", {"class": "part"}, name, body)


def assumed_line(fields: Sequence[InputField], system: System) -> str:
    """The first few figures that stand in where fields stay empty; nothing where none does."""
    assumed = [field for field in fields if field.assumed and value_text(field, field.default)]
    named = [assumed_words(field, system) for field in assumed[:MOST_NAMED]]
    rest = len(assumed) - len(named)
    more = [f"{rest} more inside"] if rest else []
    return f"Where empty: {'; '.join(named + more)}." if named else ""


def assumed_words(field: InputField, system: System) -> str:
    """One such figure: label, value and unit."""
    words = dict(zip(field.choices, field.words, strict=True))
    value = value_text(field, field.default, system)
    return f"{field.label} {words.get(value, value)} {unit_shown(field, system)}".rstrip()
