"""From what a person gave to values that a formula can take: every bad field is named at once."""

import difflib
from collections.abc import Callable, Mapping
from typing import Any

from calculators.core.fields import InputField, Kind
from calculators.core.left_empty import is_blank, is_left_empty, is_needed, own_default
from calculators.core.limits import MAX_ROWS, allowed, keys_of, most_rows
from calculators.core.nested import gather
from calculators.core.problem_paths import labelled, needed_of, under
from calculators.core.read_single import LONGEST_COMPARED, SINGLE, ReadingMode
from calculators.core.result import BadInput, StillNeeded
from calculators.core.shown_units import System


def read_inputs(
    fields: tuple[InputField, ...],
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
    way = ReadingMode(typed, system, own)
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


def narrowed(field: InputField, given: Mapping[str, Any]) -> InputField:
    """The field with the range that goes with the choice beside it; as it is where that is unknown."""
    by = field.possible_by
    chosen = given.get(by.key) if by else None
    if not (by and isinstance(chosen, str) and chosen.strip() in by.ranges):
        return field
    low, high = by.ranges[chosen.strip()]
    return field._replace(low=low, high=high)


def unknown(key: str, fields: tuple[InputField, ...]) -> str:
    """Say that a key is unknown, with the likeliest one meant."""
    close = difflib.get_close_matches(key[:LONGEST_COMPARED], keys_of(fields), 1)
    hint = f"did you mean {close[0]}?" if close else f"known are {', '.join(keys_of(fields))}"
    return f"unknown input; {hint}"


def read_value(field: InputField, value: Any, way: ReadingMode) -> Any:
    """Read one value of any kind. Raises ``ValueError``, or ``BadInput`` for what is inside a list."""
    if value is None or (way.typed and is_blank(value)):
        if field.nullable:
            return None
        raise ValueError(f"may not be empty; {allowed(field, way.system)}")
    return (SINGLE | INSIDE)[field.kind](field, value, way)


def read_list(field: InputField, value: Any, way: ReadingMode) -> list[dict[str, Any]]:
    """Read a list of rows; a problem inside is named as ``plants[2].wet_g``, counted from 1.

    Raises ``ValueError`` for what is no list or has too many rows, ``BadInput`` with the problems
    inside, and ``StillNeeded`` where figures are missing.
    """
    if not isinstance(value, list) or len(value) > most_rows(field):
        raise ValueError(allowed(field, way.system))
    if (count := rows_in_all(field, value)) > MAX_ROWS and not field.from_file:
        words = f"holds {count:,} rows, with those inside; allowed are {MAX_ROWS:,} in all"
        raise ValueError(words)
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


def rows_in_all(field: InputField, rows: list[Any]) -> int:
    """How many rows a list has, with those of the lists inside its rows."""
    inside = [part for part in field.row if part.kind == Kind.LIST]
    return len(rows) + sum(
        rows_in_all(part, row[part.key])
        for part in inside
        for row in rows
        if isinstance(row, dict) and isinstance(row.get(part.key), list)
    )


def read_row(field: InputField, row: dict[str, Any], way: ReadingMode) -> dict[str, Any]:
    """Read one row of a list, or the parts of an object; of a file's, what is not known is let pass.

    Raises ``BadInput`` with every bad part.
    """
    if field.from_file:
        known = set(keys_of(field.row))
        row = {key: value for key, value in row.items() if key.partition(".")[0] in known}
    return read_inputs(field.row, row, typed=way.typed, system=way.system, own=way.own)


def read_object(field: InputField, value: Any, way: ReadingMode) -> dict[str, Any]:
    """Read an object by its parts; a problem inside is named as ``readings.ph``.

    Raises ``ValueError`` for what is no object, ``BadInput`` with the problems inside, and
    ``StillNeeded`` where figures are missing.
    """
    if not isinstance(value, dict):
        raise ValueError(allowed(field, way.system))
    try:
        return read_row(field, value, way)
    except BadInput as bad:
        problems, needed = under(field.key, bad.problems), under(field.key, needed_of(bad))
    if needed:
        raise StillNeeded(labelled(field.label, needed), problems, {})
    raise BadInput(*problems)


INSIDE: dict[Kind, Callable[[InputField, Any, ReadingMode], Any]] = {
    Kind.LIST: read_list,
    Kind.OBJECT: read_object,
}
