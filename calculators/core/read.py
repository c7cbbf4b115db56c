"""From what a person gave to values that a formula can take: every bad field is named at once."""

import binascii
import difflib
import re
from collections.abc import Callable, Mapping, Sequence
from typing import Any, NamedTuple

from calculators.core.declare import Field
from calculators.core.left_empty import is_blank, is_left_empty, is_needed, own_default
from calculators.core.limits import MAX_ROWS, allowed, keys_of
from calculators.core.nested import gather
from calculators.core.read_figure import read_figure
from calculators.core.read_keys import read_keys, show_json
from calculators.core.result import BadInput, StillNeeded
from calculators.core.units import System

UNFIT = re.compile("[\x00-\x1f\x7f\ud800-\udfff]")  # control characters and halves of characters


class Way(NamedTuple):
    """How inputs are read: as typed text or JSON, in which units, and whether they are a keeper's own."""

    typed: bool
    system: System
    own: bool


def read_inputs(
    fields: tuple[Field, ...],
    given: Mapping[str, Any],
    *,
    typed: bool,
    system: System = "metric",
    own: bool = False,
) -> dict[str, Any]:
    """Check ``given`` against the fields; a missing one takes its default.

    ``typed`` says that values are text from a form or command line; otherwise they come from JSON,
    where text for a number is an error. Raises ``BadInput`` with every bad field.

    With ``own`` the figures are a keeper's, and no example's figure stands in: what is left empty is
    None, or a default that may be assumed, or else ``StillNeeded`` is raised, with every bad field too.
    """
    given = gather(fields, given)
    way = Way(typed, system, own)
    problems = [(key, unknown(key, fields)) for key in given if key not in keys_of(fields)]
    needed: list[tuple[str, str]] = []
    values: dict[str, Any] = {}
    for field in fields:
        if field.key not in given or (own and is_left_empty(given[field.key])):
            values[field.key] = own_default(field) if own else field.default
            if own and is_needed(field):
                needed.append((field.key, field.label))
            elif field.required and not own:
                problems.append((field.key, f"is missing; {allowed(field, system)}"))
            continue
        try:
            values[field.key] = read_value(narrowed(field, given), given[field.key], way)
        except StillNeeded as still:
            needed += still.needed
            problems += still.problems
            values[field.key] = still.values
        except BadInput as bad:
            problems.extend(bad.problems)
        except ValueError as wrong:
            problems.append((field.key, str(wrong)))
    if needed:
        raise StillNeeded(needed, problems, values)
    if problems:
        raise BadInput(*problems)
    return values


def narrowed(field: Field, given: Mapping[str, Any]) -> Field:
    """The field with the range that goes with the choice beside it; as it is where that is unknown."""
    by = field.possible_by
    chosen = given.get(by.key) if by else None
    if not (by and isinstance(chosen, str) and chosen.strip() in by.ranges):
        return field
    low, high = by.ranges[chosen.strip()]
    return field._replace(low=low, high=high)


def unknown(key: str, fields: tuple[Field, ...]) -> str:
    """Say that a key is unknown, with the likeliest one meant."""
    close = difflib.get_close_matches(key, keys_of(fields), 1)
    hint = f"did you mean {close[0]}?" if close else f"known are {', '.join(keys_of(fields))}"
    return f"unknown input; {hint}"


def read_value(field: Field, value: Any, way: Way) -> Any:
    """Read one value of any kind. Raises ``ValueError``, or ``BadInput`` for what is inside a list."""
    if value is None or (way.typed and is_blank(value)):
        if field.nullable:
            return None
        raise ValueError(f"may not be empty; {allowed(field, way.system)}")
    read: Callable[[Field, Any, Way], Any] = READERS[field.kind]
    return read(field, value, way)


def read_number_of(field: Field, value: Any, way: Way) -> float:
    """Read a number, with or without its unit; see ``read_figure.py``."""
    return read_figure(field, value, way.typed, way.system)


def read_choice(field: Field, value: Any, way: Way) -> str:
    """Read one of the declared choices, by its key."""
    if isinstance(value, str) and value.strip() in field.choices:
        return value.strip()
    close = difflib.get_close_matches(str(value).strip(), field.choices, 1)
    hint = f"did you mean {close[0]}? " if close else ""
    raise ValueError(f"{show_json(value)} is not a choice; {hint}{allowed(field, way.system)}")


def read_flag(field: Field, value: Any, way: Way) -> bool:
    """Read yes or no: true or false in JSON, the same words from a form."""
    if isinstance(value, bool):
        return value
    if way.typed and isinstance(value, str) and value.strip().lower() in field.choices:
        return value.strip().lower() == "true"
    raise ValueError(f"{show_json(value)} will not do; {allowed(field, way.system)}")


def read_text(field: Field, value: Any, way: Way) -> str:
    """Read a short text, such as a name."""
    if not isinstance(value, str) or not value.strip() or len(value) > 80 or UNFIT.search(value):
        raise ValueError(f"{show_json(value)} will not do; {allowed(field, way.system)}")
    return value.strip()


def read_octets(field: Field, value: Any, way: Way) -> str:
    """Read base64, as text; what it holds is the formula's affair."""
    try:
        size = len(binascii.a2b_base64(value.strip(), strict_mode=True))
    except (AttributeError, TypeError, ValueError):
        raise ValueError(f"{show_json(value)} is no base64; {allowed(field, way.system)}") from None
    assert field.octets
    if size > field.octets.most:
        raise ValueError(f"{size} octets are too many; {allowed(field, way.system)}")
    text: str = value.strip()
    return text


def read_list(field: Field, value: Any, way: Way) -> list[dict[str, Any]]:
    """Read a list of rows; a problem inside is named as ``plants[2].wet_g``, counted from 1."""
    if not isinstance(value, list) or len(value) > MAX_ROWS:
        raise ValueError(allowed(field, way.system))
    rows: list[dict[str, Any]] = []
    problems: list[tuple[str, str]] = []
    needed: list[tuple[str, str]] = []
    for number, row in enumerate(value, start=1):
        place = f"{field.key}[{number}]"
        if not isinstance(row, dict):
            problems.append((place, f"must be an object with {', '.join(keys_of(field.row))}"))
            continue
        try:
            rows.append(read_row(field, row, way))
        except BadInput as bad:
            problems += under(place, bad.problems)
            needed += labelled(f"{field.label} {number}", under(place, needed_of(bad)))
    if needed:
        raise StillNeeded(needed, problems, {})
    if problems:
        raise BadInput(*problems)
    return rows


def read_row(field: Field, row: dict[str, Any], way: Way) -> dict[str, Any]:
    """Read one row of a list, or the parts of an object."""
    return read_inputs(field.row, row, typed=way.typed, system=way.system, own=way.own)


def needed_of(bad: BadInput) -> Sequence[tuple[str, str]]:
    """What a keeper has yet to give, if that is what is wrong."""
    return bad.needed if isinstance(bad, StillNeeded) else ()


def under(place: str, found: Sequence[tuple[str, str]]) -> list[tuple[str, str]]:
    """What was found inside a row, by its path from outside."""
    return [(f"{place}.{key}", text) for key, text in found]


def labelled(name: str, found: Sequence[tuple[str, str]]) -> list[tuple[str, str]]:
    """The same with the row's name before each label."""
    return [(path, f"{name}: {label}") for path, label in found]


def read_known(field: Field, value: Any, way: Way) -> list[str]:
    """Read a list of a field's keys."""
    keys = read_keys(field.key, field.choices, value, way.typed)
    if keys is None or len(keys) > MAX_ROWS:
        raise ValueError(allowed(field, way.system))
    return keys


def read_object(field: Field, value: Any, way: Way) -> dict[str, Any]:
    """Read an object by its parts; a problem inside is named as ``readings.ph``."""
    if not isinstance(value, dict):
        raise ValueError(allowed(field, way.system))
    try:
        return read_row(field, value, way)
    except BadInput as bad:
        problems, needed = under(field.key, bad.problems), under(field.key, needed_of(bad))
    if needed:
        raise StillNeeded(labelled(field.label, needed), problems, {})
    raise BadInput(*problems)


READERS: dict[str, Callable[[Field, Any, Way], Any]] = {
    "number": read_number_of,
    "integer": read_number_of,
    "choice": read_choice,
    "text": read_text,
    "octets": read_octets,
    "flag": read_flag,
    "list": read_list,
    "keys": read_known,
    "object": read_object,
}
