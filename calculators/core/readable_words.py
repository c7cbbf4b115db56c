"""An address, a kept or a shared question may hold words that this book does not know (any more).

The way to help must not break on them: they are left out, named, and the rest is answered.
"""

from collections.abc import Iterable, Mapping
from typing import Any, NamedTuple

from calculators.core.fields import InputField, Kind
from calculators.core.unknown_words import flat_keys, keys_in, unknown_sentence

DID_NOT_FIT = " or it did not fit the rest"


class ReadableInputs(NamedTuple):
    """The inputs that can be read, and each word that was left out, in order."""

    given: dict[str, Any]
    dropped: list[str]


def readable_only(fields: tuple[InputField, ...], given: Mapping[str, Any]) -> ReadableInputs:
    """Leave out inputs by unknown keys, and unknown words in lists and choices.

    ``given`` is flat text, as a page sends it. A figure that cannot be read stays: it has a field.
    """
    field_keys = flat_keys(fields)
    dropped = [key for key in given if key not in field_keys]
    readable = {key: value for key, value in given.items() if key in field_keys}
    for field in (*fields, *parts_of(fields)):
        value = readable.get(field.key)
        if field.kind == Kind.KEYS and value is not None:
            words = [word for word in keys_in(value) if word]
            dropped += [word for word in words if word not in field.choices]
            readable[field.key] = [word for word in words if word in field.choices]
        elif value and field.kind == Kind.CHOICE and value not in field.choices:
            dropped.append(str(readable.pop(field.key)))
        elif field.kind == Kind.OBJECT and isinstance(value, str):
            dropped.append(field.key)
            del readable[field.key]
    return ReadableInputs(readable, dropped)


def parts_of(fields: tuple[InputField, ...]) -> list[InputField]:
    """The parts of each object, under their dotted keys."""
    return [
        part.renamed(f"{field.key}.{part.key}")
        for field in fields
        if field.kind == Kind.OBJECT
        for part in field.row
    ]


def labels_of(fields: tuple[InputField, ...], keys: Iterable[str]) -> list[str]:
    """What inputs are called on the page, by their keys or dotted keys."""
    labels = {field.key: field.label for field in (*fields, *parts_of(fields))}
    return [labels.get(key, key) for key in keys]


def without(given: Mapping[str, Any], bad: Iterable[str]) -> dict[str, Any]:
    """The inputs without those that cannot be read; a list inside is named as ``findings[2]``."""
    names = {key.partition("[")[0] for key in bad}
    return {key: value for key, value in given.items() if key not in names}


def left_out(dropped: list[str], wrong: list[str]) -> str:
    """What was left out in a sentence or two; empty where nothing was. ``wrong`` are labels of fields."""
    unread = f"Not used, as it cannot be read: {', '.join(wrong)}." if wrong else ""
    return f"{unknown_sentence(dropped, DID_NOT_FIT)} {unread}".strip()
