"""Lists of known keys, such as the findings of a diagnosis."""

import difflib
from collections.abc import Sequence
from typing import Any

from calculators.core.result import BadInput


def read_keys(name: str, keys: Sequence[str], value: Any, typed: bool) -> list[str] | None:
    """Read keys from a list, or from text with commas between them; each key once, in order.

    None for what is no list. Raises ``BadInput`` with every unknown key by its place, from 1.
    """
    if typed and isinstance(value, str):
        value = [word.strip() for word in value.split(",") if word.strip()]
    if not isinstance(value, list):
        return None
    problems = [
        (f"{name}[{number}]", unknown_key(keys, key))
        for number, key in enumerate(value, start=1)
        if not isinstance(key, str) or key not in keys
    ]
    if problems:
        raise BadInput(*problems)
    return list(dict.fromkeys(value))


def unknown_key(keys: Sequence[str], key: Any) -> str:
    """Say that a key is none of the known ones, with the likeliest ones meant."""
    close = difflib.get_close_matches(str(key)[:80], keys, 3, 0.5)
    hint = f"did you mean {' or '.join(close)}? " if close else ""
    return f"{show_json(key)} is not a known key; {hint}allowed are those of its list, which --describe names"


def show_json(value: Any) -> str:
    """Show a wrong value in a message, cut short."""
    text = f"{value!r}"
    return text if len(text) <= 40 else f"{text[:37]}…"
