"""Findings of an address that do not go together, and words that the diagnosis does not know (any more)."""

import difflib
from collections.abc import Mapping
from itertools import islice
from typing import Any

from calculators.core.fields import InputField, Kind
from calculators.core.readable_words import ReadableInputs, left_out, readable_only
from calculators.core.unknown_words import keys_in
from calculators.diagnose.problem_table import FINDINGS, question_of

LONGEST_WORD = 80  # letters that are compared
MOST_COMPARED = 100  # words that are held against the book's own; each costs a millisecond or more


def readable_case(fields: tuple[InputField, ...], given: Mapping[str, Any]) -> ReadableInputs:
    """The inputs that can be read, without answers at odds; ``given`` is flat text, as a page sends it."""
    return ReadableInputs(*agreeing(*readable_only(fields, given)))


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


def left_out_of(
    fields: tuple[InputField, ...], given: Mapping[str, Any]
) -> tuple[dict[str, Any], str]:
    """The inputs that the book knows, and a sentence that names the others; empty where all are known.

    A slip of typing, near a word of the book, is left for the form to tell beside its field.
    """
    words = ((field, word) for field in fields for word in words_in(field, given))
    if any(is_slip(field, word) for field, word in islice(words, MOST_COMPARED)):
        return dict(given), ""
    readable = readable_case(fields, given)
    # A form sends keys as one text with commas between.
    kept_values = {
        key: ",".join(map(str, value)) if isinstance(value, list) else value
        for key, value in readable.given.items()
    }
    return kept_values, left_out(readable.dropped, []) if readable.dropped else ""


def words_in(field: InputField, given: Mapping[str, Any]) -> list[str]:
    """The words that were given for a field of keys."""
    value = given.get(field.key)
    return [word for word in keys_in(value) if word] if field.kind == Kind.KEYS and value else []


def is_slip(field: InputField, word: str) -> bool:
    """Whether a word is none of a field's keys, but near one."""
    if word in field.choices:
        return False
    return bool(difflib.get_close_matches(word[:LONGEST_WORD], field.choices, 1))
