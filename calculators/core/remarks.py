"""What stands beside a field that can be used: how a number was understood, or that a name is not known."""

from collections.abc import Mapping
from typing import Any

from calculators.core.fields import InputField, Kind
from calculators.core.name_hints import unknown_name
from calculators.core.nested import gather
from calculators.core.numbers import PLAIN, show_number
from calculators.core.read_figure import parts, read_figure
from calculators.core.units import System, to_shown, unit_shown
from calculators.core.written_units import plainly

DIGITS = 4


def remarks(
    fields: tuple[InputField, ...], given: Mapping[str, Any], system: System, within: str = ""
) -> dict[str, str]:
    """The remarks on typed inputs, by path as in ``plants[2].name``; most inputs have none."""
    by_path: dict[str, str] = {}
    given = gather(fields, given)
    for field in fields:
        value, path = given.get(field.key), f"{within}{field.key}"
        if field.kind == Kind.LIST and isinstance(value, list):
            for number, row in enumerate(value, start=1):
                if isinstance(row, dict):
                    by_path |= remarks(field.row, row, system, f"{path}[{number}].")
        elif field.kind == Kind.OBJECT and isinstance(value, dict):
            by_path |= remarks(field.row, value, system, f"{path}.")
        elif text := remark(field, value, fields, system):
            by_path[path] = text
    return by_path


def remark(field: InputField, value: Any, row: tuple[InputField, ...], system: System) -> str:
    """The remark on one typed input; empty where there is none."""
    if field.kind == Kind.TEXT:
        return unknown_name(field, value, row)
    if field.kind not in (Kind.NUMBER, Kind.INTEGER) or not isinstance(value, str):
        return ""
    return understood(field, value, system)


def understood(field: InputField, text: str, system: System) -> str:
    """How a number was read that has a unit of its own or a decimal comma, in the unit shown."""
    plain = PLAIN.fullmatch(text.strip()) and "," not in text
    if plain or not text.strip():
        return ""
    try:
        _, unit = parts(field, text, True, system)
        metric = read_figure(field, text, True, system)
    except ValueError:
        return ""
    shown = unit_shown(field, system)
    if unit and plainly(unit) == plainly(shown) and "," not in text:
        return ""
    return f"Read as {show_number(to_shown(field, metric, system), DIGITS)} {shown}".rstrip()
