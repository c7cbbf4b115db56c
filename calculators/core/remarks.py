"""What stands beside a field that can be used: how a number was understood, or that a name is not known."""

from collections.abc import Iterator, Mapping
from itertools import islice
from typing import Any

from calculators.core.fields import InputField, Kind
from calculators.core.name_hints import unknown_name
from calculators.core.nested import gather
from calculators.core.numbers import PLAIN, show_number
from calculators.core.read_figure import parts, read_figure
from calculators.core.shown_units import System, to_shown, unit_shown
from calculators.core.written_units import plainly

DIGITS = 4
MOST_REMARKS = 30


def remarks(
    fields: tuple[InputField, ...], given: Mapping[str, Any], system: System
) -> dict[str, str]:
    """The remarks on typed inputs, by path as in ``plants[2].name``; most inputs have none.

    No more than ``MOST_REMARKS``: to look for what a name may mean takes some milliseconds each.
    """
    return dict(islice(all_remarks(fields, given, system), MOST_REMARKS))


def all_remarks(
    fields: tuple[InputField, ...], given: Mapping[str, Any], system: System, within: str = ""
) -> Iterator[tuple[str, str]]:
    """Each remark with its path, one after the other as they are asked for."""
    given = gather(fields, given)
    for field in fields:
        value, path = given.get(field.key), f"{within}{field.key}"
        if field.kind == Kind.LIST and isinstance(value, list):
            for number, row in enumerate(value, start=1):
                if isinstance(row, dict):
                    yield from all_remarks(field.row, row, system, f"{path}[{number}].")
        elif field.kind == Kind.OBJECT and isinstance(value, dict):
            yield from all_remarks(field.row, value, system, f"{path}.")
        elif text := remark(field, value, fields, system):
            yield path, text


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
