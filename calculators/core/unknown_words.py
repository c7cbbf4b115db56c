"""Words of an address that this book does not know (any more): they are named, and the rest is answered."""

import json
from collections.abc import Mapping, Sequence
from typing import Any

from calculators.core.fields import InputField, Kind

MOST_NAMED, LONGEST = 5, 40  # of what was left out; an address may hold anything


def flat_keys(fields: Sequence[InputField]) -> set[str]:
    """Every key that a page may send, with those inside an object by their dotted name."""
    inside = {f"{field.key}.{part.key}" for field in fields for part in field.row}
    return {field.key for field in fields} | inside


def unknown_words(fields: Sequence[InputField], address: Mapping[str, Any]) -> list[str]:
    """The keys and choices of an address that no input has, in order; ``address`` holds texts by key."""
    field_keys = flat_keys(fields)
    words = [key for key in address if key not in field_keys]
    for field in fields:
        if field.kind == Kind.OBJECT:
            inside = {part.key: address.get(f"{field.key}.{part.key}") for part in field.row}
            words += unknown_words(field.row, inside)
        else:
            words += unknown_in(field, address.get(field.key))
    return words


def unknown_in(field: InputField, value: Any) -> list[str]:
    """What one input does not know of its value."""
    if value in (None, ""):
        return []
    if field.kind in (Kind.CHOICE, Kind.FLAG):
        return [] if str(value).strip().lower() in field.choices else [str(value)]
    if field.kind == Kind.KEYS:
        return [word for word in keys_in(value) if word and word not in field.choices]
    if field.kind == Kind.LIST:
        rows = rows_in(value)
        if rows is None:
            return [field.key]
        return [word for row in rows for word in unknown_words(field.row, row)]
    return []


def keys_in(value: Any) -> list[str]:
    """The keys in a list, or in text with commas; what is neither holds none."""
    words = value.split(",") if isinstance(value, str) else value
    return [str(key).strip() for key in words] if isinstance(words, list | tuple) else []


def rows_in(value: Any) -> list[dict[str, Any]] | None:
    """The rows of a list, or of one as JSON text; None for a text that was cut short, or is no list."""
    try:
        rows = json.loads(value) if isinstance(value, str) else value
    except (ValueError, RecursionError):
        return None
    if not isinstance(rows, list) or not all(isinstance(row, dict) for row in rows):
        return None
    return rows


def unknown_sentence(words: Sequence[str], or_else: str = "") -> str:
    """One sentence that names the words; empty for none. ``or_else`` says why else they were left out."""
    if not words:
        return ""
    names = list(dict.fromkeys(words))
    shown = ", ".join(
        f"“{name[: LONGEST - 1]}…”" if len(name) > LONGEST else f"“{name}”"
        for name in names[:MOST_NAMED]
    )
    more = f" and {len(names) - MOST_NAMED} more" if len(names) > MOST_NAMED else ""
    return f"Left out, as this book does not know it{or_else}: {shown}{more}."
