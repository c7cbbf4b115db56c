"""The JSON Schema (draft 2020-12) of the shelf file, made from the declared fields.

It says what a schema can say; ids that repeat and entries of unknown tanks are found by the check alone.
"""

from collections.abc import Callable
from typing import Any

from calculators.core.dates import DAY, MOMENT
from calculators.core.fields import InputField, Kind
from calculators.science.shelf.entries import (
    ENTRY_FIELDS,
    ENTRY_MUST_HAVE,
    KINDS,
    MOST_ENTRIES,
    READINGS,
    Measured,
)
from calculators.science.shelf.shelf_tank import MOST_TANKS, MUST_HAVE, TANK_FIELDS
from calculators.science.shelf.text_forms import RECORD, RECORD_KEY, RESERVED
from calculators.shelf.shelf_file import FORMAT, VERSION

DRAFT = "https://json-schema.org/draft/2020-12/schema"
Schema = dict[str, Any]
# A date and time of RFC 3339, which may go without seconds and without a zone.
DAY_PATTERN = r"(19|2[0-9])[0-9]{2}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])"
CLOCK_PATTERN = r"([01][0-9]|2[0-3]):[0-5][0-9](:[0-5][0-9]([.][0-9]+)?)?"
MOMENT_PATTERN = rf"^{DAY_PATTERN}[T ]{CLOCK_PATTERN}(Z|[+-][0-9]{{2}}:?[0-9]{{2}})?$"


def shelf_schema() -> Schema:
    """The whole schema; keys that are not named are let pass everywhere."""
    return {
        "$schema": DRAFT,
        "title": "The shelf: a keeper's tanks and their log",
        "description": f"Version {VERSION}. Unknown keys are kept. Units are in the keys.",
        "type": "object",
        "required": ["format", "version", "saved", "tanks", "entries"],
        "properties": {
            "format": {"const": FORMAT},
            "version": {"const": VERSION},
            "saved": {"type": "string", "maxLength": MOMENT.most, "pattern": MOMENT_PATTERN},
            "tanks": rows(object_of(TANK_FIELDS, MUST_HAVE), MOST_TANKS),
            "entries": rows(entry(), MOST_ENTRIES),
        },
    }


def rows(one: Schema, most: int) -> Schema:
    """A list of at most so many."""
    return {"type": "array", "maxItems": most, "items": one}


def entry() -> Schema:
    """One entry, with what each kind and each reading asks for besides."""
    made = object_of(ENTRY_FIELDS, ENTRY_MUST_HAVE)
    made["allOf"] = [
        *(kind_rule(kind) for kind in KINDS),
        *(reading_rule(what, of) for what, of in READINGS.items()),
    ]
    return made


def kind_rule(kind: str) -> Schema:
    """What a kind of entry may not lack, and the limits of its value."""
    of = KINDS[kind]
    then: Schema = {"required": list(of.must)}
    properties: Schema = {key: {"not": {"type": "null"}} for key in of.must}
    if kind == "reading":
        properties["what"] = {"enum": list(READINGS)}
    if of.value:
        properties["value"] = {**properties.get("value", {}), **limits(of.value)}
    return {"if": holds_value("kind", kind), "then": {**then, "properties": properties}}


def reading_rule(what: str, of: Measured) -> Schema:
    """The limits of one reading."""
    given = {"kind": {"const": "reading"}, "what": {"const": what}}
    condition = {"properties": given, "required": list(given)}
    return {"if": condition, "then": {"properties": {"value": limits(of)}}}


def holds_value(key: str, value: str) -> Schema:
    """Whether a key holds a value."""
    return {"properties": {key: {"const": value}}, "required": [key]}


def limits(of: Measured) -> Schema:
    """The limits of a value, as a schema."""
    return {"minimum": of.low, "maximum": of.high}


def object_of(fields: tuple[InputField, ...], must: tuple[str, ...] | None = None) -> Schema:
    """An object with these fields. What has no default and may not be empty must be there."""
    needed = [one.key for one in fields if one.required] if must is None else list(must)
    properties = {one.key: value_of(one, nullable=one.key not in needed) for one in fields}
    made: Schema = {"type": "object", "properties": properties}
    return {**made, "required": needed} if needed else made


def value_of(field: InputField, *, nullable: bool) -> Schema:
    """One field, null where it may be empty and need not be there."""
    made = BY_KIND[field.kind](field)
    made["title"] = field.label
    if field.unit:
        made["description"] = f"{field.unit}. {field.help}".strip()
    elif field.help:
        made["description"] = field.help
    if not (field.nullable and nullable):
        return made
    if "enum" in made:
        return {**made, "enum": [*made["enum"], None]}
    return {**made, "type": [made["type"], "null"]}


def number(field: InputField) -> Schema:
    """A number with its limits."""
    kind = "integer" if field.kind == Kind.INTEGER else "number"
    ends = {"minimum": field.low, "maximum": field.high}
    return {"type": kind, **{key: end for key, end in ends.items() if end is not None}}


def text(field: InputField) -> Schema:
    """A text with its form: a day, a moment, a record's key, or so many letters."""
    form = field.text_form
    made: Schema = {"type": "string", "minLength": 1, "maxLength": form.most if form else 80}
    if form is DAY:
        made |= {"format": "date", "pattern": f"^{DAY_PATTERN}$"}
    elif form is MOMENT:
        made |= {"pattern": MOMENT_PATTERN}
    elif form is RECORD:
        made |= {"pattern": f"^{RECORD_KEY.pattern}$"}
    elif field.key == "id":
        made |= {"not": {"enum": sorted(RESERVED)}}
    return made


def plain_list(field: InputField) -> Schema:
    """A list of rows."""
    assert field.from_file
    return rows(object_of(field.row), field.from_file.most)


BY_KIND: dict[Kind, Callable[[InputField], Schema]] = {
    Kind.NUMBER: number,
    Kind.INTEGER: number,
    Kind.TEXT: text,
    Kind.FLAG: lambda field: {"type": "boolean"},
    Kind.CHOICE: lambda field: {"enum": list(field.choices)},
    Kind.OBJECT: lambda field: object_of(field.row),
    Kind.LIST: plain_list,
}
