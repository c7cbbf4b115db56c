"""Reads JSON that somebody else wrote: size, depth, numbers, keys and texts have their limits.

What a browser might take for a part of its own objects, and what no JSON has, such as NaN, is refused.
"""

import json
import math
import re
from collections.abc import Iterator
from typing import Any, NoReturn

from calculators.core.read_single import UNFIT_LINES
from calculators.science.shelf.text_forms import KEY_LETTERS, RESERVED

MOST_OCTETS = 20_000_000
DEEPEST = 20
LONGEST_TEXT = 20_000
MOST_FAULTS = 20
# Beyond so many levels nothing is parsed at all: the browser's Python has a small stack, and dies of it.
DEEPEST_PARSED = 200
STRING_OR_BRACKET = re.compile(r'"[^"\\]*(?:\\.[^"\\]*)*"?|[\[\]{}]', re.DOTALL)


class BadText(ValueError):
    """A text that is no JSON, or none that is read here; ``field`` is the place that it names."""

    def __init__(self, why: str, field: str = "file") -> None:
        super().__init__(why)
        self.field = field


def read_json(text: str) -> Any:
    """The content of a JSON text. Raises ``BadText`` with the reason and the limit."""
    size = len(text)  # octets are no fewer than letters
    if size > MOST_OCTETS:
        raise BadText(f"{size} letters are too many; allowed are {MOST_OCTETS}")
    if is_too_deep(text):
        raise BadText(f"is nested too deep; allowed are {DEEPEST} levels")
    try:
        return json.loads(
            text.removeprefix("\ufeff"), object_pairs_hook=once, parse_constant=no_constant
        )
    except BadText:
        raise
    except ValueError as wrong:
        raise BadText(f"is not JSON: {wrong}") from None


def is_too_deep(text: str) -> bool:
    """Whether brackets outside strings stand in each other too often for a parser's own stack."""
    depth = 0
    for found in STRING_OR_BRACKET.finditer(text):
        sign = found[0]
        depth += (sign in "[{") - (sign in "]}")
        if depth > DEEPEST_PARSED:
            return True
    return False


def once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """An object; a key that it gives twice is refused. Raises ``BadText``."""
    made = dict(pairs)
    if len(made) < len(pairs):
        keys = [key for key, _ in pairs]
        twice = next(key for place, key in enumerate(keys) if key in keys[:place])
        raise BadText(f"the key {twice[:40]!r} is given twice in one object; once is allowed")
    return made


def no_constant(word: str) -> NoReturn:
    """Refuse NaN and Infinity, which are no JSON. Raises ``BadText``."""
    raise BadText(f"{word} is no number of JSON; allowed are finite numbers")


def structure_faults(data: Any) -> list[tuple[str, str]]:
    """What no part of a file may have, known or not, as (place, why); the first 20."""
    found: list[tuple[str, str]] = []
    waiting = [("", data, 1)]
    while waiting and len(found) < MOST_FAULTS:
        place, value, depth = waiting.pop()
        if why := own_fault(value, depth):
            found.append((place or "file", why))
            continue
        for name, part in parts_of(value):
            if isinstance(value, dict) and (why := key_fault(name)):
                found.append((place or "file", why))
            else:
                inside = f"[{name}]" if isinstance(value, list) else f".{name}"
                waiting.append((f"{place}{inside}".lstrip("."), part, depth + 1))
    return found


def parts_of(value: Any) -> Iterator[tuple[str, Any]]:
    """The parts of an object by key, of a list by number from 1, as complaints count."""
    if isinstance(value, dict):
        yield from value.items()
    elif isinstance(value, list):
        yield from ((str(number), part) for number, part in enumerate(value, start=1))


def own_fault(value: Any, depth: int) -> str:
    """What is wrong with one value itself; empty where nothing is."""
    if depth > DEEPEST and isinstance(value, dict | list):
        return f"is nested too deep; allowed are {DEEPEST} levels"
    if isinstance(value, float) and not math.isfinite(value):
        return "is too large for a number; allowed are finite numbers"
    if isinstance(value, int) and not isinstance(value, bool) and abs(value) > 2**53:
        return "is too large for a whole number; allowed is up to 2 to the power of 53"
    if isinstance(value, str) and len(value) > LONGEST_TEXT:
        return f"{len(value)} characters are too many; allowed are {LONGEST_TEXT}"
    if isinstance(value, str) and UNFIT_LINES.search(value):
        return "has a control character; allowed are letters, line breaks and tabs"
    return ""


def key_fault(key: Any) -> str:
    """What is wrong with the name of a key; empty where nothing is."""
    if not isinstance(key, str) or len(key) > KEY_LETTERS or UNFIT_LINES.search(key):
        return f"has a key that is no text of up to {KEY_LETTERS} letters"
    if key in RESERVED:
        return f"has the key {key!r}, which may not stand in a file"
    return ""
