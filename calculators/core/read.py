"""From what a person gave to values that a formula can take: every bad field is named at once."""

import binascii
import difflib
import math
import re
from collections.abc import Callable, Mapping
from typing import Any

from calculators.core.declare import Field
from calculators.core.nested import gather
from calculators.core.numbers import read_number, show_number
from calculators.core.read_keys import read_keys, show_json
from calculators.core.result import BadInput
from calculators.core.units import System, from_shown, to_shown, unit_shown

MAX_ROWS = 1_000
UNFIT = re.compile("[\x00-\x1f\x7f\ud800-\udfff]")  # control characters and halves of characters


def read_inputs(
    fields: tuple[Field, ...], given: Mapping[str, Any], *, typed: bool, system: System = "metric"
) -> dict[str, Any]:
    """Check ``given`` against the fields; a missing one takes its default.

    ``typed`` says that values are text from a form or command line; otherwise they come from JSON,
    where text for a number is an error. Raises ``BadInput`` with every bad field.
    """
    given = gather(fields, given)
    problems = [(key, unknown(key, fields)) for key in given if key not in keys_of(fields)]
    values: dict[str, Any] = {}
    for field in fields:
        if field.key not in given:
            values[field.key] = field.default
            if field.required:
                problems.append((field.key, f"is missing; {allowed(field, system)}"))
            continue
        try:
            values[field.key] = read_value(narrowed(field, given), given[field.key], typed, system)
        except BadInput as bad:
            problems.extend(bad.problems)
        except ValueError as wrong:
            problems.append((field.key, str(wrong)))
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


def keys_of(fields: tuple[Field, ...]) -> list[str]:
    """The keys of some fields, in order."""
    return [field.key for field in fields]


def unknown(key: str, fields: tuple[Field, ...]) -> str:
    """Say that a key is unknown, with the likeliest one meant."""
    close = difflib.get_close_matches(key, keys_of(fields), 1)
    hint = f"did you mean {close[0]}?" if close else f"known are {', '.join(keys_of(fields))}"
    return f"unknown input; {hint}"


def read_value(field: Field, value: Any, typed: bool, system: System) -> Any:
    """Read one value of any kind. Raises ``ValueError``, or ``BadInput`` for what is inside a list."""
    blank = typed and isinstance(value, str) and value.strip() in ("", "null")
    if value is None or blank:
        if field.nullable:
            return None
        raise ValueError(f"may not be empty; {allowed(field, system)}")
    read: Callable[[Field, Any, bool, System], Any] = READERS[field.kind]
    return read(field, value, typed, system)


def read_figure(field: Field, value: Any, typed: bool, system: System) -> float:
    """Read a number inside its possible range, whole where the field counts things."""
    if isinstance(value, bool) or not isinstance(value, str if typed else int | float):
        raise ValueError(f"{show_json(value)} is not a number; {allowed(field, system)}")
    try:
        number = read_number(value) if isinstance(value, str) else float(value)
    except OverflowError:
        raise ValueError(f"the number is too large; {allowed(field, system)}") from None
    except ValueError as wrong:
        raise ValueError(f"{wrong}; {allowed(field, system)}") from None
    if not math.isfinite(number):
        raise ValueError(f"{number} is not a number; {allowed(field, system)}")
    metric = from_shown(field, number, system)
    low, high = field.low, field.high
    if (low is not None and metric < low) or (high is not None and metric > high):
        raise ValueError(f"{show_number(number, 6)} is out of range; {allowed(field, system)}")
    if field.kind == "integer":
        if not number.is_integer():
            raise ValueError(f"{show_number(number, 6)} is not whole; {allowed(field, system)}")
        return int(number)
    return metric


def read_choice(field: Field, value: Any, typed: bool, system: System) -> str:
    """Read one of the declared choices, by its key."""
    if isinstance(value, str) and value.strip() in field.choices:
        return value.strip()
    close = difflib.get_close_matches(str(value).strip(), field.choices, 1)
    hint = f"did you mean {close[0]}? " if close else ""
    raise ValueError(f"{show_json(value)} is not a choice; {hint}{allowed(field, system)}")


def read_flag(field: Field, value: Any, typed: bool, system: System) -> bool:
    """Read yes or no: true or false in JSON, the same words from a form."""
    if isinstance(value, bool):
        return value
    if typed and isinstance(value, str) and value.strip().lower() in field.choices:
        return value.strip().lower() == "true"
    raise ValueError(f"{show_json(value)} will not do; {allowed(field, system)}")


def read_text(field: Field, value: Any, typed: bool, system: System) -> str:
    """Read a short text, such as a name."""
    if not isinstance(value, str) or not value.strip() or len(value) > 80 or UNFIT.search(value):
        raise ValueError(f"{show_json(value)} will not do; {allowed(field, system)}")
    return value.strip()


def read_octets(field: Field, value: Any, typed: bool, system: System) -> str:
    """Read base64, as text; what it holds is the formula's affair."""
    try:
        size = len(binascii.a2b_base64(value.strip(), strict_mode=True))
    except (AttributeError, TypeError, ValueError):
        raise ValueError(f"{show_json(value)} is no base64; {allowed(field, system)}") from None
    assert field.octets
    if size > field.octets.most:
        raise ValueError(f"{size} octets are too many; {allowed(field, system)}")
    text: str = value.strip()
    return text


def read_list(field: Field, value: Any, typed: bool, system: System) -> list[dict[str, Any]]:
    """Read a list of rows; a problem inside is named as ``plants[2].wet_g``, counted from 1."""
    if not isinstance(value, list) or len(value) > MAX_ROWS:
        raise ValueError(allowed(field, system))
    rows, problems = [], []
    for number, row in enumerate(value, start=1):
        place = f"{field.key}[{number}]"
        if not isinstance(row, dict):
            problems.append((place, f"must be an object with {', '.join(keys_of(field.row))}"))
            continue
        try:
            rows.append(read_inputs(field.row, row, typed=typed, system=system))
        except BadInput as bad:
            problems.extend((f"{place}.{key}", message) for key, message in bad.problems)
    if problems:
        raise BadInput(*problems)
    return rows


def read_known(field: Field, value: Any, typed: bool, system: System) -> list[str]:
    """Read a list of a field's keys."""
    keys = read_keys(field.key, field.choices, value, typed)
    if keys is None or len(keys) > MAX_ROWS:
        raise ValueError(allowed(field, system))
    return keys


def read_object(field: Field, value: Any, typed: bool, system: System) -> dict[str, Any]:
    """Read an object by its parts; a problem inside is named as ``readings.ph``."""
    if not isinstance(value, dict):
        raise ValueError(allowed(field, system))
    try:
        return read_inputs(field.row, value, typed=typed, system=system)
    except BadInput as bad:
        problems = [(f"{field.key}.{key}", message) for key, message in bad.problems]
    raise BadInput(*problems)


READERS: dict[str, Callable[[Field, Any, bool, System], Any]] = {
    "number": read_figure,
    "integer": read_figure,
    "choice": read_choice,
    "text": read_text,
    "octets": read_octets,
    "flag": read_flag,
    "list": read_list,
    "keys": read_known,
    "object": read_object,
}


def allowed(field: Field, system: System = "metric") -> str:
    """Say what a field takes, in the unit shown."""
    if field.kind in ("choice", "flag"):
        return f"allowed are {', '.join(field.choices)}"
    if field.kind == "keys":
        return "allowed is a list of its keys, which --describe names"
    if field.kind == "object":
        return f"allowed is an object with {', '.join(keys_of(field.row))}"
    if field.kind == "text":
        return "allowed is a text of 1 to 80 characters"
    if field.octets:
        return f"allowed is base64 of at most {field.octets.most} octets"
    if field.kind == "list":
        return f"allowed is a list of at most {MAX_ROWS} rows with {', '.join(keys_of(field.row))}"
    unit = f" {unit_shown(field, system)}".rstrip()
    whole = "a whole number, " if field.kind == "integer" else ""
    return f"allowed is {whole}{span(field, system)}{unit}"


def span(field: Field, system: System) -> str:
    """The possible range in the unit shown, open where it has no end."""
    low, high = (
        None if end is None else show_number(to_shown(field, end, system), 6)
        for end in (field.low, field.high)
    )
    if high is None:
        return f"{low} or more"
    return f"up to {high}" if low is None else f"{low} to {high}"
