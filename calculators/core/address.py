"""Inputs as text: for a page's address, and in another system of units."""

import json
from collections.abc import Mapping
from typing import Any

from calculators.core.declare import Spec
from calculators.core.fields import InputField, Kind
from calculators.core.nested import gather, scatter
from calculators.core.numbers import read_number, show_plain
from calculators.core.shown_units import System, from_shown, to_shown

# Fewer figures on the way back, so that 31.5 cm, shown as 12.4016 in, is 31.5 cm again.
CONVERTED_DIGITS = {"us": 6, "metric": 5}


def change_units(
    fields: tuple[InputField, ...], given: Mapping[str, Any], before: System, after: System
) -> dict[str, Any]:
    """Change the text of each field that is a number; anything else stays as the person typed it."""
    changed = gather(fields, given)
    for field in fields:
        value = changed.get(field.key)
        if field.kind == Kind.OBJECT and isinstance(value, dict):
            changed[field.key] = change_units(field.row, value, before, after)
        elif field.kind == Kind.LIST and isinstance(value, list):
            changed[field.key] = [
                change_units(field.row, row, before, after) if isinstance(row, dict) else row
                for row in value
            ]
        elif isinstance(value, str) and field.quantity and field.quantity.us:
            changed[field.key] = change_text(field, value, before, after)
    return scatter(fields, changed)


def change_text(field: InputField, text: str, before: System, after: System) -> str:
    """One number's text in the other unit; text that is no number stays."""
    try:
        metric = from_shown(field, read_number(text), before)
    except ValueError:
        return text
    return show_plain(to_shown(field, metric, after), CONVERTED_DIGITS[after])


def address(spec: Spec, values: Mapping[str, Any], system: System) -> dict[str, str]:
    """Every input that the answer used, as text in metric units, for the page's address.

    All but private ones, and those at their default too: an address that is opened fills in what it
    has and nothing else, so that a later change of a default cannot change a kept answer.
    """
    digits = 12 if system == "metric" else CONVERTED_DIGITS["metric"]
    changed = {
        field.key: ",".join(values[field.key] or ())
        if field.kind == Kind.KEYS
        else values[field.key]
        for field in spec.inputs
        if values.get(field.key) not in (None, []) and not field.private
    }
    flat = scatter(spec.inputs, changed)
    return {key: write(value, digits) for key, value in flat.items() if value is not None}


def write(value: Any, digits: int) -> str:
    """One input as text for an address."""
    if isinstance(value, float):
        return show_plain(value, digits)
    return value if isinstance(value, str) else json.dumps(value, ensure_ascii=False)
