"""Lists of rows in a form: the rows, a mould for each kind of new one, and the buttons that add it."""

from html import escape
from typing import Any

from calculators.core.fields import InputField, Kind
from calculators.core.form_hints import InOrder, Preset, Presets
from calculators.core.left_empty import is_needed
from scripts.pages.calculators.form_fields import field_html, hint


def field_or_rows(
    field: InputField, value: Any, within: str, row: dict[str, Any] | None = None
) -> str:
    """One field or list of rows.

    ``within`` is the path of the row around it, as in ``tanks-1-``, and ``row`` its values.
    """
    if field.kind == Kind.LIST:
        return rows_html(field, value or [], within)
    if field.kind == Kind.OBJECT:  # its parts stand in the form by their dotted keys
        inside = (one.renamed(f"{field.key}.{one.key}") for one in field.row)
        return "".join(field_html(one, one.default, within) for one in inside)
    return field_html(field, value, within, row)


def rows_html(field: InputField, rows: list[dict[str, Any]], within: str) -> str:
    """A list: its rows, the moulds for new ones, and buttons. The page's script moves the rows."""
    path = f"{within}{field.key}"
    field = with_ghosts(field)
    if not rows and not within and is_needed(field):
        rows = [new_row(field)]
    made = "".join(row_html(field, row, f"{path}-{number}-") for number, row in enumerate(rows, 1))
    name, order, presets = escape(field.label), hint(field, InOrder), hint(field, Presets)
    kept = f' data-order="{escape(order.key)}" data-step="{order.step:g}"' if order else ""
    buttons = [Preset("", {}), *(presets.buttons if presets else ())]
    moulds = "".join(
        f'<template data-mould="{number}">{mould(field, button, f"{path}-mould{number}-")}</template>'
        for number, button in enumerate(buttons)
    )
    return (
        f'<fieldset class="rows" data-key="{escape(field.key)}"{kept}><legend>{name}</legend>'
        f'<p class="hint">{escape(field.help)}</p>{made}{moulds}{add_buttons(name, presets)}'
        f'<p class="problem" id="problem-{escape(path)}" hidden></p></fieldset>'
    )


def with_ghosts(field: InputField) -> InputField:
    """The field with what the worked example's first row holds as that which shows through a new one."""
    if not field.default:
        return field
    example = field.default[0]
    return field._replace(
        row=tuple(
            one._replace(default=example.get(one.key))
            if one.required or one.kind == Kind.LIST
            else one
            for one in field.row
        )
    )


def new_row(field: InputField) -> dict[str, Any]:
    """What a new row holds: yes or no and choices at their default, all else empty."""
    return {
        one.key: one.default
        for one in field.row
        if one.kind in (Kind.CHOICE, Kind.FLAG) and one.assumed and not one.required
    }


def mould(field: InputField, button: Preset, within: str) -> str:
    """A new row with what its button puts into it."""
    values = new_row(field) | button.values
    return row_html(field, values, within)


def add_buttons(name: str, presets: Presets | None) -> str:
    """The buttons below a list: one for an empty row, or one for each kind of row."""
    if presets is None:
        return (
            f'<button type="button" class="add" data-mould="0" aria-label="Add to: {name}">'
            "Add</button>"
        )
    buttons = "".join(
        f'<button type="button" class="add" data-mould="{number}" '
        f'aria-label="Add: {escape(button.label)}">{escape(button.label)}</button>'
        for number, button in enumerate(presets.buttons, start=1)
    )
    return f'<div class="adding" role="group" aria-label="Add to: {name}">{buttons}</div>'


def row_html(field: InputField, row: dict[str, Any], within: str) -> str:
    """One row of a list; ``within`` ends in its number."""
    fields = "".join(field_or_rows(one, row.get(one.key), within, row) for one in field.row)
    name = escape(field.label)
    number = within.rstrip("-").rpartition("-")[2]
    look = "row compact" if hint(field, InOrder) else "row"
    return (
        f'<div class="{look}" role="group" aria-label="{name}, {number}">{fields}<button type="button" '
        f'class="remove" aria-label="Remove from: {name}">Remove</button></div>'
    )
