"""Inputs inside an input, such as ``readings.ph``: one object, or dotted keys from a form or command."""

from collections.abc import Mapping
from typing import Any

from calculators.core.fields import InputField, Kind


def gather(fields: tuple[InputField, ...], given: Mapping[str, Any]) -> dict[str, Any]:
    """Gather dotted keys of an object's field into that object; all other keys stay as they are."""
    objects = {field.key for field in fields if field.kind == Kind.OBJECT}
    gathered: dict[str, Any] = {}
    for key, value in given.items():
        name, dot, part = key.partition(".")
        inside = gathered.setdefault(name, {}) if dot and name in objects else None
        if isinstance(inside, dict):
            inside[part] = value
        elif key in objects and isinstance(value, dict):
            gathered[key] = {**value, **gathered.get(key, {})}
        else:
            gathered[key] = value
    return gathered


def scatter(fields: tuple[InputField, ...], values: Mapping[str, Any]) -> dict[str, Any]:
    """The other way: an object as one dotted key for each part, objects inside it too.

    A form and its address need it so.
    """
    rows = {field.key: field.row for field in fields if field.kind == Kind.OBJECT}
    flat: dict[str, Any] = {}
    for key, value in values.items():
        if isinstance(value, dict) and key in rows:
            inside = scatter(rows[key], value)
            flat |= {f"{key}.{part}": inner for part, inner in inside.items()}
        else:
            flat[key] = value
    return flat
