"""Names that the book knows, and what to say of one that it does not.

A list of plants takes any name, since a keeper may call a plant as they like. But a misspelt name must not
run on as if the book knew the plant.
"""

import difflib
from functools import cache
from typing import Any

from calculators.core.data import read_table
from calculators.core.fields import InputField
from calculators.core.form_hints import Suggest

LEAST_ALIKE = 0.6  # of the letters: "Rotla" is near "Rotala", "Fern A" near nothing
MOST_MEANT = 3
GROWTH = "doubling_days"  # what the book would have filled in


@cache
def names_by_folded(names: str) -> dict[str, str]:
    """The names of one list of the build, by their letters without capitals."""
    return {name.casefold(): name for name in read_table(f"names-{names}")["names"]}


def unknown_name(field: InputField, text: Any, row: tuple[InputField, ...]) -> str:
    """What to say of a text in a field that offers names; empty where it is one of them."""
    names = next((hint.names for hint in field.hints if isinstance(hint, Suggest)), None)
    if names is None or not isinstance(text, str) or not text.strip():
        return ""
    folded = " ".join(text.split()).casefold()
    if folded in names_by_folded(names):
        return ""
    meant = ", ".join(names_meant(folded, names_by_folded(names)))
    question = f" Meant: {meant}?" if meant else ""
    grows = any(part.key == GROWTH for part in row)
    alone = "; how fast it grows is yours to give" if grows else ""
    shown = f"\u2018{text.strip()[:80]}\u2019"
    return f"No plant of the book is called {shown}.{question} It is used as a plain name{alone}."


def names_meant(folded: str, names: dict[str, str]) -> list[str]:
    """The names that a misspelt one may stand for, the likeliest first; a genus alone is enough."""
    first_words: dict[str, list[str]] = {}
    for key in names:
        first_words.setdefault(key.split()[0], []).append(key)
    matches = difflib.get_close_matches(folded, names, MOST_MEANT, LEAST_ALIKE)
    for genus in difflib.get_close_matches(folded, first_words, 1, 0.75):
        matches += first_words[genus]
    return [names[key] for key in dict.fromkeys(matches)][:MOST_MEANT]
