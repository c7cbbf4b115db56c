"""A calculator's form as plain HTML, from its declaration. It says what is allowed with no script."""

import json
from collections.abc import Sequence
from typing import Any

from markupsafe import Markup

from calculators.core.declare import Spec
from calculators.core.fields import Field, InputField, Kind
from calculators.core.form_hints import FINER, Part
from calculators.core.nested import scatter
from calculators.core.paint.element import Attributes, Html, element, joined
from scripts.pages.calculators.form_fields import hint, value_text
from scripts.pages.calculators.form_groups import closed_part, in_rows, row_or_field
from scripts.pages.calculators.photo import photo_html

FORM: Attributes = {"class": "inputs", "id": "inputs", "autocomplete": "off", "novalidate": True}


def form(spec: Spec) -> Markup:
    """All fields of a calculator, empty, in the parts that it declares; its worked example as ghost text.

    The page's script fills in the whole example from ``data-example`` when asked to.
    """
    if any(field.octets for field in spec.inputs):
        return photo_form(spec)
    grouped = in_parts(spec.inputs)
    made = (
        part_html(heading, fields, number) for number, (heading, fields) in enumerate(grouped, 1)
    )
    filled = json.dumps(example_texts(spec), ensure_ascii=False)
    return Markup(element("form", {**FORM, "data-example": filled}, *made))


def example_texts(spec: Spec) -> dict[str, Any]:
    """The worked example as it stands in the fields, in metric units; lists as rows of the same."""
    values = {field.key: field.default for field in spec.inputs if field.default is not None}
    return scatter(
        spec.inputs,
        {
            field.key: texts_of(field, values[field.key])
            for field in spec.inputs
            if field.key in values
        },
    )


def texts_of(field: InputField, value: Any) -> Any:
    """One value as text; a row or an object by its keys."""
    if field.kind == Kind.LIST:
        return [scatter(field.row, row_texts(field, row)) for row in value]
    return row_texts(field, value) if field.kind == Kind.OBJECT else value_text(field, value)


def row_texts(field: InputField, row: dict[str, Any]) -> dict[str, Any]:
    """The values of one row as text."""
    return {
        part.key: texts_of(part, row[part.key]) for part in field.row if row[part.key] is not None
    }


def in_parts(fields: Sequence[InputField]) -> list[tuple[Part | None, list[InputField]]]:
    """The fields by part, in the order in which the parts come; closed ones last, finer points at the end."""
    fields_by_part: dict[Part | None, list[InputField]] = {}
    for field in fields:
        fields_by_part.setdefault(hint(field, Part), []).append(field)
    return sorted(
        fields_by_part.items(),
        key=lambda item: (item[0] is not None and item[0].closed, item[0] == FINER),
    )


def part_html(heading: Part | None, fields: Sequence[InputField], number: int) -> Html:
    """One part: its fields below a heading, or behind one that opens by a tap."""
    if heading is not None and heading.closed:
        return closed_part(heading, fields)
    inside = [row_or_field(row) for row in in_rows(fields)]
    if heading is None:
        return joined(inside)
    body = element("div", {}, *inside)
    title = f"part-{number}"
    name = element("h2", {"id": title}, heading.heading)
    return element("div", {"class": "part", "role": "group", "aria-labelledby": title}, name, body)


def photo_form(spec: Spec) -> Markup:
    """The form of a calculator that counts in a photograph: what belongs to the marks is marked so.

    The page's script hides those fields and fills them from the picture; they can be shown as numbers.
    """
    taps = next((field for field in spec.inputs if any(part.choices for part in field.row)), None)
    fields = (
        photo_html(row[0], taps) if row[0].octets else row_or_field(row)
        for row in in_rows(spec.inputs)
    )
    return Markup(element("form", FORM, *fields))


def has_us_units(spec: Spec) -> bool:
    """Whether anything of a calculator is shown differently in US units."""
    fields: list[Field] = [*spec.inputs, *spec.outputs]
    for field in fields:
        fields += field.row
    return any(field.quantity and field.quantity.us for field in fields)
