"""A validation error as a sentence that says what is allowed."""

import difflib
import typing
from typing import Any

from pydantic import BaseModel
from pydantic_core import ErrorDetails

from scripts.records.parse import Place

MOST_WORDED = 200  # errors of one record that are put into our words
WORDS = {
    "missing": "is missing; it is required here",
    "float_type": "must be a number without a unit or quotes, the unit is in the key; got {value}",
    "int_type": "must be a whole number; got {value}",
    "string_type": "must be a text; got {value}",
    "bool_type": "must be true or false; got {value}",
    "list_type": "must be a list; got {value}",
    "dict_type": "must hold keys of its own; got {value}",
    "model_type": "must hold keys of its own; got {value}",
    "date_type": "must be a date such as 2026-11-25; got {value}",
    "finite_number": "must be a finite number; got {value}",
    "too_short": "must have at least {min_length} entry; got {actual_length}",
    "string_too_short": "must have at least {min_length} characters; got {value}",
    "string_too_long": "must have at most {max_length} characters; got {length}",
    "greater_than_equal": "must be {ge} or more; got {value}",
    "less_than_equal": "must be {le} or less; got {value}",
}
OWN_WORDS = ("impossible", "range_order", "one_of", "group_order", "empty", "upside_down")
HOLDS_KEYS = ("model_type", "model_attributes_type", "dict_type")
PATTERNS = {
    "^[a-z0-9]": "must be lower-case words joined by hyphens, such as salvinia-auriculata; got {value}",
    "^https://": "must be an address that starts with https:// and a host's name, with no user before it, "
    "no blank and no quotation mark; got {value}",
}


def word(error: ErrorDetails, model: type[BaseModel]) -> str:
    """One error in our words."""
    kind, context = error["type"], dict(error.get("ctx", {}))
    value = short(error.get("input"))
    if kind in HOLDS_KEYS and not error.get("input"):
        return "is empty; it must hold keys of its own"
    if kind == "extra_forbidden":
        return unknown_key(error["loc"], model)
    if kind == "literal_error":
        return f"must be one of {str(context['expected']).replace(chr(39), '')}; got {value}"
    if kind == "string_pattern_mismatch":
        pattern = str(context["pattern"])
        form = next((text for start, text in PATTERNS.items() if pattern.startswith(start)), "")
        return form.format(value=value) if form else f"must match {pattern}; got {value}"
    if kind in WORDS:
        length = len(error["input"]) if isinstance(error.get("input"), str) else 0
        return WORDS[kind].format(value=value, length=length, **context)
    return f"{error['msg']}; got {value}" if kind not in OWN_WORDS else error["msg"]


def unknown_key(place: Place, model: type[BaseModel]) -> str:
    """Say that a key is unknown, with the likeliest one and all that are allowed."""
    name, known = str(place[-1]), keys_at(model, place[:-1])
    close = difflib.get_close_matches(name, known, 1)
    hint = f"did you mean {close[0]}? " if close else ""
    return f"unknown key; {hint}Allowed here: {', '.join(known)}" if known else "unknown key"


def keys_at(model: Any, place: Place) -> list[str]:
    """The keys that a model allows at a place inside it."""
    for step in place:
        if isinstance(step, int):
            continue
        field = getattr(model, "model_fields", {}).get(step)
        if field is None:
            continue  # the name of a union's branch, which stands in no file
        model = next(iter(models_in(field.annotation)), None)
    return list(getattr(model, "model_fields", {}))


def models_in(hint: Any) -> list[type[BaseModel]]:
    """The models named anywhere in an annotation."""
    if isinstance(hint, type) and issubclass(hint, BaseModel):
        return [hint]
    return [model for part in typing.get_args(hint) for model in models_in(part)]


def short(value: Any) -> str:
    """A wrong value, cut short."""
    text = repr(value)
    return text if len(text) <= 60 else f"{text[:57]}…"
