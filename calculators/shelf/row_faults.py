"""What is wrong with the fields of one row of a shelf file: a tank or an entry."""

from collections.abc import Mapping
from typing import Any, NamedTuple

from calculators.core.fields import InputField, Kind
from calculators.core.limits import allowed
from calculators.core.read import read_inputs
from calculators.core.read_keys import show_json
from calculators.core.result import BadInput


class Complaint(NamedTuple):
    """What is wrong with one field of a file, and what is allowed."""

    field: str
    why: str


def row_faults(
    place: str, row: Any, fields: tuple[InputField, ...], must: tuple[str, ...]
) -> list[Complaint]:
    """What is wrong with the fields of one tank or entry; what is not known is let pass."""
    if not isinstance(row, dict):
        return [Complaint(place, f"{show_json(row)} is no object; it must have {', '.join(must)}")]
    missing = [key for key in must if row.get(key) is None]
    found = [Complaint(f"{place}.{key}", "is missing, and may not be empty") for key in missing]
    keys = {field.key for field in fields} - set(missing)
    found += [Complaint(f"{place}.{path}", why) for path, why in written_numbers(fields, row)]
    if found:
        return found
    try:
        read_inputs(fields, {key: row[key] for key in row if key in keys}, typed=False)
    except BadInput as bad:
        found += [Complaint(f"{place}.{path}", why) for path, why in bad.problems]
    return found


def written_numbers(
    fields: tuple[InputField, ...], row: Mapping[str, Any]
) -> list[tuple[str, str]]:
    """Texts where a number belongs: a form takes "5 gal", a file does not."""
    found = []
    for field in fields:
        value = row.get(field.key)
        if field.kind in (Kind.NUMBER, Kind.INTEGER) and isinstance(value, str):
            found.append((field.key, f"{show_json(value)} is a text; {allowed(field)}"))
        elif field.kind == Kind.OBJECT and isinstance(value, dict):
            inside = written_numbers(field.row, value)
            found += [(f"{field.key}.{path}", why) for path, why in inside]
        elif field.kind == Kind.LIST and isinstance(value, list):
            for number, part in enumerate(value, start=1):
                inside = written_numbers(field.row, part) if isinstance(part, dict) else []
                found += [(f"{field.key}[{number}].{path}", why) for path, why in inside]
    return found
