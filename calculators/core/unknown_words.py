"""Words of an address that this book does not know (any more): they are named, and the rest is answered."""

import json
from collections.abc import Mapping, Sequence
from typing import Any

from calculators.core.fields import InputField, Kind
from calculators.core.limits import MOST_LINK_ROWS
from calculators.core.wording import first_of

MOST_NAMED, LONGEST = 5, 40  # of what was left out; an address may hold anything
MOST_CHOICES = 12  # of a field that are named


def flat_keys(fields: Sequence[InputField]) -> set[str]:
    """Every key that a page may send, with those inside an object by their dotted name."""
    inside = {f"{field.key}.{part.key}" for field in fields for part in field.row}
    return {field.key for field in fields} | inside


def unknown_words(fields: Sequence[InputField], address: Mapping[str, Any]) -> list[str]:
    """The keys of an address that no input has, in order; ``address`` holds texts by key.

    Choices that a field does not have are told by ``unknown_choices``, beside those that it has.
    """
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
    if field.kind == Kind.KEYS:
        return [word for word in keys_in(value) if word and word not in field.choices]
    if field.kind == Kind.LIST:
        rows = rows_in(value)
        if rows is None:
            return [field.key]
        return [word for row in rows for word in unknown_words(field.row, row)]
    return []


def unknown_choices(
    fields: Sequence[InputField], address: Mapping[str, Any], within: str = ""
) -> list[str]:
    """A sentence for each choice of an address that its field does not have, with those that it has.

    ``within`` is the name of what the fields are part of, for the rows of a list.
    """
    told = []
    for field in fields:
        value, name = address.get(field.key), f"{within}{field.label}"
        if field.kind == Kind.OBJECT:
            inside = {part.key: address.get(f"{field.key}.{part.key}") for part in field.row}
            told += unknown_choices(field.row, inside, f"{name}: ")
        elif field.kind == Kind.LIST:
            for number, row in enumerate(rows_in(value or []) or [], start=1):
                told += unknown_choices(field.row, row, f"{name} {number}: ")
        elif is_no_choice(field, value):
            told.append(f"{name}: {quoted(str(value))} is not a choice; {choices_of(field)}.")
    return told


def is_no_choice(field: InputField, value: Any) -> bool:
    """Whether a value was given for a field of choices that it does not have."""
    if field.kind not in (Kind.CHOICE, Kind.FLAG) or value in (None, ""):
        return False
    return str(value).strip().lower() not in field.choices


def choices_sentence(told: Sequence[str]) -> str:
    """What was said of unknown choices, and what stands in their place; empty for none."""
    if not told:
        return ""
    more = len(told) - MOST_NAMED
    others = f" {more} more are no choices of their fields." if more > 0 else ""
    return f"{' '.join(told[:MOST_NAMED])}{others} Nothing was taken from it: choose in the form."


def choices_of(field: InputField) -> str:
    """The choices of a field, as the page words them; of many, the first and how many more."""
    words = [
        word or key for key, word in zip(field.choices, field.words or field.choices, strict=True)
    ]
    return f"allowed are {first_of(words, MOST_CHOICES, '; ')}"


def quoted(word: str) -> str:
    """A word of an address between quotation marks, cut short."""
    return f"“{word[: LONGEST - 1]}…”" if len(word) > LONGEST else f"“{word}”"


def too_long(fields: Sequence[InputField], address: Mapping[str, Any]) -> str:
    """A sentence for each list of an address that has more rows than a link may carry; mostly empty."""
    return " ".join(
        f"{field.label}: this link has {len(rows):,} rows, and at most {MOST_LINK_ROWS} are taken; none was."
        for field in fields
        if field.kind == Kind.LIST
        and (rows := rows_in(address.get(field.key))) is not None
        and len(rows) > MOST_LINK_ROWS
    )


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
    names = [quoted(word) for word in dict.fromkeys(words)]
    return f"Left out, as this book does not know it{or_else}: {first_of(names, MOST_NAMED)}."
