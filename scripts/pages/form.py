"""A calculator's form as plain HTML, from its declaration. It says what is allowed with no script."""

from html import escape
from typing import Any

from markupsafe import Markup

from calculators.core.declare import Field, Spec
from calculators.core.numbers import show_number, show_plain
from calculators.core.units import System, to_shown, unit_shown
from scripts.pages.photo import photo_html

KEYPADS = {"number": "decimal", "integer": "numeric", "text": "text", "keys": "text"}


def form(spec: Spec) -> Markup:
    """All fields of a calculator, with its worked example filled in."""
    if any(field.octets for field in spec.inputs):
        return photo_form(spec)
    fields = "".join(part(field, field.default, "") for field in spec.inputs)
    return Markup(f'<form class="inputs" id="inputs" autocomplete="off" novalidate>{fields}</form>')


def photo_form(spec: Spec) -> Markup:
    """The form of a calculator that counts in a photograph: what belongs to the marks is marked so.

    The page's script hides those fields and fills them from the picture; they can be shown as numbers.
    """
    taps = next((field for field in spec.inputs if any(one.choices for one in field.row)), None)
    fields = ""
    for field in spec.inputs:
        if field.octets:
            fields += photo_html(field, taps)
        else:
            html = part(field, field.default, "")
            fields += (
                html.replace(' data-key="', ' data-mark hidden data-key="', 1)
                if field.private
                else html
            )
    return Markup(f'<form class="inputs" id="inputs" autocomplete="off" novalidate>{fields}</form>')


def has_us_units(spec: Spec) -> bool:
    """Whether anything of a calculator is shown differently in US units."""
    fields = [*spec.inputs, *spec.outputs]
    for field in fields:
        fields += field.row
    return any(field.quantity and field.quantity.us for field in fields)


def part(field: Field, value: Any, within: str) -> str:
    """One field or list of rows; ``within`` is the path of the row around it, as in ``tanks-1-``."""
    if field.kind == "list":
        return rows_html(field, value or [], within)
    if field.kind == "object":  # its parts stand in the form by their dotted keys
        inside = (one._replace(key=f"{field.key}.{one.key}") for one in field.row)
        return "".join(field_html(one, one.default, within) for one in inside)
    return field_html(field, value, within)


def rows_html(field: Field, rows: list[dict[str, Any]], within: str) -> str:
    """A list: its rows, the mould for a new one, and buttons. The page's script moves the rows."""
    path = f"{within}{field.key}"
    made = "".join(row_html(field, row, f"{path}-{number}-") for number, row in enumerate(rows, 1))
    empty = {one.key: one.default for one in field.row}
    mould = row_html(field, empty, f"{path}-0-")
    name = escape(field.label)
    return (
        f'<fieldset class="rows" data-key="{escape(field.key)}"><legend>{name}</legend>'
        f'<p class="hint">{escape(field.help)}</p>{made}<template>{mould}</template>'
        f'<button type="button" class="add" aria-label="Add to: {name}">Add</button>'
        f'<p class="problem" id="problem-{escape(path)}" hidden></p></fieldset>'
    )


def row_html(field: Field, row: dict[str, Any], within: str) -> str:
    """One row of a list."""
    fields = "".join(part(one, row.get(one.key), within) for one in field.row)
    return (
        f'<div class="row">{fields}<button type="button" class="remove" '
        f'aria-label="Remove from: {escape(field.label)}">Remove</button></div>'
    )


def field_html(field: Field, value: Any, within: str) -> str:
    """One field: label, entry, hint, and the place where a problem is said."""
    path = escape(f"{within}{field.key}")
    return (
        f'<div class="field" data-key="{escape(field.key)}">'
        f'<label for="in-{path}">{escape(field.label)}</label>'
        f'<div class="entry">{entry(field, value, path)}{both(field, unit_shown, "unit")}</div>'
        f'<p class="hint" id="hint-{path}">{escape(field.help)} {both(field, span_text, "span")}</p>'
        f'<p class="problem" id="problem-{path}" hidden></p></div>'
    )


def entry(field: Field, value: Any, path: str) -> str:
    """What the person types into or chooses from."""
    common = f'id="in-{path}" aria-describedby="hint-{path} problem-{path}"'
    if field.kind == "choice":
        return f"<select {common}>{options(field, value)}</select>"
    if field.kind == "flag":
        chosen = value if value is None else str(value).lower()
        return f"<select {common}>{options(field, chosen)}</select>"
    metric, us = (escape(value_text(field, value, system)) for system in ("metric", "us"))
    if field.is_date:
        return f'<input {common} type="date" value="{metric}">'
    return (
        f'<input {common} type="text" inputmode="{KEYPADS[field.kind]}" '
        f'value="{metric}" data-us="{us}">'
    )


def options(field: Field, value: Any) -> str:
    """The choices of a field, one of them chosen; an empty one where none need be."""
    parts = ['<option value=""></option>'] if field.nullable or value is None else []
    for choice, words in zip(field.choices, field.words, strict=True):
        chosen = " selected" if choice == value else ""
        parts.append(f'<option value="{escape(choice)}"{chosen}>{escape(words)}</option>')
    return "".join(parts)


def value_text(field: Field, value: Any, system: System = "metric") -> str:
    """A value as it stands in the field."""
    if value is None:
        return ""
    if isinstance(value, str):
        return value
    if isinstance(value, list):
        return ", ".join(value)
    return show_plain(to_shown(field, value, system), 6 if system == "us" else 12)


def span_text(field: Field, system: System) -> str:
    """The possible range in words."""
    if field.low is None or field.high is None:
        return "May be left empty." if field.nullable else ""
    low, high = (show_number(to_shown(field, end, system), 4) for end in (field.low, field.high))
    return f"{low} to {high}." + (" May be left empty." if field.nullable else "")


def both(field: Field, text: Any, name: str) -> str:
    """A text in both systems of units; the style sheet shows the one that is chosen."""
    metric, us = text(field, "metric"), text(field, "us")
    if metric == us:
        return f'<span class="{name}">{escape(metric)}</span>' if metric else ""
    return (
        f'<span class="{name} in-metric">{escape(metric)}</span>'
        f'<span class="{name} in-us">{escape(us)}</span>'
    )
