"""Lists of rows in a form: the rows, a mould for each kind of new one, and the buttons that add it."""

from typing import Any

from calculators.core.fields import InputField, Kind
from calculators.core.form_hints import InOrder, Preset, Presets
from calculators.core.left_empty import is_needed
from calculators.core.paint.element import Html, element, joined
from scripts.pages.calculators.form_fields import HIDDEN_MARK, field_html, hint, problem_html


def field_or_rows(
    field: InputField,
    value: Any,
    within: str,
    row: dict[str, Any] | None = None,
    *,
    marks: bool = False,
) -> Html:
    """One field or list of rows.

    ``within`` is the path of the row around it, as in ``tanks-1-``, and ``row`` its values.
    ``marks`` says that it belongs to the marks on a picture.
    """
    if field.kind == Kind.LIST:
        return rows_html(field, value or [], within, marks=marks)
    if field.kind == Kind.OBJECT:  # its parts stand in the form by their dotted keys
        inside = (part.renamed(f"{field.key}.{part.key}") for part in field.row)
        return joined(field_or_rows(part, None, within) for part in inside)
    return field_html(field, value, within, row, marks=marks)


def rows_html(
    field: InputField, rows: list[dict[str, Any]], within: str, *, marks: bool = False
) -> Html:
    """A list: its rows, the moulds for new ones, and buttons. The page's script moves the rows."""
    path = f"{within}{field.key}"
    field = with_ghosts(field)
    if not rows and not within and is_needed(field):
        rows = [new_row(field)]
    order, presets = hint(field, InOrder), hint(field, Presets)
    ordering = {"data-order": order.key, "data-step": f"{order.step:g}"} if order else {}
    buttons = [Preset("", {}), *(presets.buttons if presets else ())]
    moulds = (
        element("template", {"data-mould": number}, mould(field, button, f"{path}-mould{number}-"))
        for number, button in enumerate(buttons)
    )
    return element(
        "fieldset",
        {"class": "rows", **(HIDDEN_MARK if marks else {}), "data-key": field.key, **ordering},
        element("legend", {}, field.label),
        element("p", {"class": "hint"}, field.help),
        *(row_html(field, row, f"{path}-{number}-") for number, row in enumerate(rows, 1)),
        *moulds,
        add_buttons(field.label, presets),
        problem_html(path),
    )


def with_ghosts(field: InputField) -> InputField:
    """The field with what the worked example's first row holds as that which shows through a new one."""
    if not field.default:
        return field
    example = field.default[0]
    return field._replace(
        row=tuple(
            part._replace(default=example.get(part.key))
            if part.required or part.kind == Kind.LIST
            else part
            for part in field.row
        )
    )


def new_row(field: InputField) -> dict[str, Any]:
    """What a new row holds: yes or no and choices at their default, all else empty."""
    return {
        part.key: part.default
        for part in field.row
        if part.kind in (Kind.CHOICE, Kind.FLAG) and part.assumed and not part.required
    }


def mould(field: InputField, button: Preset, within: str) -> Html:
    """A new row with what its button puts into it."""
    values = new_row(field) | button.values
    return row_html(field, values, within)


def add_buttons(name: str, presets: Presets | None) -> Html:
    """The buttons below a list: one for an empty row, or one for each kind of row."""
    if presets is None:
        return add_button(0, f"Add to: {name}", "Add")
    buttons = (
        add_button(number, f"Add: {button.label}", button.label)
        for number, button in enumerate(presets.buttons, start=1)
    )
    return element(
        "div", {"class": "adding", "role": "group", "aria-label": f"Add to: {name}"}, *buttons
    )


def add_button(number: int, spoken: str, label: str) -> Html:
    """A button that adds a row from one of the moulds; ``spoken`` is its name for a screen reader."""
    attributes = {"type": "button", "class": "add", "data-mould": str(number), "aria-label": spoken}
    return element("button", attributes, label)


def row_html(field: InputField, row: dict[str, Any], within: str) -> Html:
    """One row of a list; ``within`` ends in its number."""
    number = within.rstrip("-").rpartition("-")[2]
    class_names = "row compact" if hint(field, InOrder) else "row"
    spoken = f"Remove from: {field.label}"
    return element(
        "div",
        {"class": class_names, "role": "group", "aria-label": f"{field.label}, {number}"},
        *(field_or_rows(part, row.get(part.key), within, row) for part in field.row),
        element("button", {"type": "button", "class": "remove", "aria-label": spoken}, "Remove"),
    )
