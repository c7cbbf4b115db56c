"""An address, a kept or a shared diagnosis may hold words that this book does not know (any more).

The way to help must not break on them: they are left out, named, and the rest is answered.
"""

import difflib
from collections.abc import Iterable, Mapping
from typing import Any, NamedTuple

from calculators.core.fields import InputField, Kind
from calculators.core.unknown_words import flat_keys, keys_in, unknown_sentence
from calculators.diagnose.problem_table import FINDINGS, question_of

DID_NOT_FIT = " or it did not fit the rest"


class ReadableInputs(NamedTuple):
    """The inputs that can be read, and each word that was left out, in order."""

    given: dict[str, Any]
    dropped: list[str]


def readable_only(fields: tuple[InputField, ...], given: Mapping[str, Any]) -> ReadableInputs:
    """Leave out inputs by unknown keys, unknown keys in lists and choices, and answers at odds.

    ``given`` is flat text, as a page sends it. A figure that cannot be read stays: it has a field.
    """
    field_keys = flat_keys(fields)
    dropped = [key for key in given if key not in field_keys]
    readable = {key: value for key, value in given.items() if key in field_keys}
    for field in fields:
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
    return ReadableInputs(*agreeing(readable, dropped))


def without(given: Mapping[str, Any], bad: Iterable[str]) -> dict[str, Any]:
    """The inputs without those that cannot be read; a list inside is named as ``findings[2]``."""
    names = {key.partition("[")[0] for key in bad}
    return {key: value for key, value in given.items() if key not in names}


def agreeing(given: dict[str, Any], dropped: list[str]) -> tuple[dict[str, Any], list[str]]:
    """One answer to each question: that of danger, else the last; what is present is not absent."""
    if not isinstance(given.get("findings"), list):
        return given, dropped
    answers: dict[str, str] = {}
    for key in given["findings"]:
        before = answers.get(question_of(key))
        if before and before != key and FINDINGS[before].danger and not FINDINGS[key].danger:
            dropped.append(key)
            continue
        if before and before != key:
            dropped.append(before)
        answers[question_of(key)] = key
    present = list(answers.values())
    readable = given | {"findings": present}
    if isinstance(given.get("absent"), list):
        readable["absent"] = [key for key in given["absent"] if key not in present]
    return readable, dropped


def left_out(dropped: list[str], wrong: list[str]) -> str:
    """What was left out in a sentence or two; empty where nothing was. ``wrong`` are labels of fields."""
    unread = f"Not used, as it cannot be read: {', '.join(wrong)}." if wrong else ""
    return f"{unknown_sentence(dropped, DID_NOT_FIT)} {unread}".strip()


def left_out_of(
    fields: tuple[InputField, ...], given: Mapping[str, Any]
) -> tuple[dict[str, Any], str]:
    """The inputs that the book knows, and a sentence that names the others; empty where all are known.

    A slip of typing, near a word of the book, is left for the form to tell beside its field.
    """
    if any(is_slip(field, word) for field in fields for word in words_in(field, given)):
        return dict(given), ""
    readable = readable_only(fields, given)
    # A form sends keys as one text with commas between.
    kept_values = {
        key: ",".join(value) if isinstance(value, list) else value
        for key, value in readable.given.items()
    }
    return kept_values, left_out(readable.dropped, []) if readable.dropped else ""


def words_in(field: InputField, given: Mapping[str, Any]) -> list[str]:
    """The words that were given for a field of keys."""
    value = given.get(field.key)
    return [word for word in keys_in(value) if word] if field.kind == Kind.KEYS and value else []


def is_slip(field: InputField, word: str) -> bool:
    """Whether a word is none of a field's keys, but near one."""
    return word not in field.choices and bool(difflib.get_close_matches(word, field.choices, 1))
