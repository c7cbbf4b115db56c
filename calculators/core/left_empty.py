"""Inputs that a person left empty: which must be asked for, and what stands in for the others."""

from collections.abc import Mapping
from typing import Any, NamedTuple

from calculators.core.fields import InputField, Kind
from calculators.core.messages import Origin
from calculators.core.nested import gather


def is_blank(value: Any) -> bool:
    """Whether a typed text says nothing."""
    return isinstance(value, str) and value.strip() in ("", "null")


def is_left_empty(value: Any) -> bool:
    """Whether a keeper left an input empty: no value, a blank text, or a list with nothing in its rows.

    A form shows one empty row of a list that is needed; its yes or no stands at no.
    """
    if isinstance(value, list):
        return all(isinstance(row, dict) and is_empty_row(row) for row in value)
    return value is None or is_blank(value)


def is_empty_row(row: Mapping[str, Any]) -> bool:
    """Whether nothing was put into a row."""
    return all(value == "false" or is_left_empty(value) for value in row.values())


def is_needed(field: InputField) -> bool:
    """Whether a keeper who leaves this input empty is to be asked for it."""
    if field.assumed:
        return False
    if field.kind == Kind.LIST:
        return bool(field.default) and not (field.may_be_empty or field.nullable)
    return field.asked_for or not field.nullable


def own_default(field: InputField) -> Any:
    """What stands for an input left empty: never the example's figure, unless it may be assumed."""
    if field.assumed:
        return field.default
    return [] if field.kind == Kind.LIST and not field.nullable else None


class StandIns(NamedTuple):
    """The inputs whose default stood in, by path: assumed ones, and the worked example's."""

    assumed: dict[str, tuple[InputField, Any]]
    example: dict[str, tuple[InputField, Any]]


def paths_of(stood_in: StandIns) -> Origin:
    """The paths of both as an answer carries them; a part with none is left out."""
    origin: Origin = {}
    if stood_in.example:
        origin["from_example"] = list(stood_in.example)
    if stood_in.assumed:
        origin["assumed"] = list(stood_in.assumed)
    return origin


def stand_ins(fields: tuple[InputField, ...], given: Mapping[str, Any], own: bool) -> StandIns:
    """Find them, inside rows too. A default that is nothing stands in for nothing."""
    stood_in = StandIns({}, {})
    given = gather(fields, given)
    for field in fields:
        value = given.get(field.key)
        if field.key in given and not (own and is_left_empty(value)):
            rows = value if isinstance(value, list) else []
            for number, row in enumerate(rows, start=1):
                if field.row and isinstance(row, dict):
                    inside = stand_ins(field.row, row, own)
                    stood_in.assumed.update(
                        {
                            f"{field.key}[{number}].{key}": stand_in
                            for key, stand_in in inside.assumed.items()
                        }
                    )
            continue
        if field.default is None or field.default == []:
            continue
        if field.assumed:
            stood_in.assumed[field.key] = (field, field.default)
        elif not own:
            stood_in.example[field.key] = (field, field.default)
    return stood_in
