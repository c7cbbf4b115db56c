"""Names that the book knows, and what to say of one that it does not.

A list of plants takes any name, since a keeper may call a plant as they like. But a misspelt name must not
run on as if the book knew the plant.
"""

import difflib
from collections.abc import Iterable, Iterator
from functools import cache, lru_cache
from typing import Any, NamedTuple

from calculators.core.data import read_table
from calculators.core.fields import InputField
from calculators.core.form_hints import Suggest

LEAST_ALIKE = 0.6  # of the letters: "Rotla" is near "Rotala", "Fern A" near nothing
LEAST_ALIKE_GENUS = 0.75
ROUNDING = 1e-9  # so that what lies on the line is left for difflib to judge
MOST_MEANT = 3
MOST_KEPT = 128  # misspelt names whose likely meanings are kept
LONGEST_NAME = 80  # letters; no name is longer, and comparing more would take seconds
GROWTH = "doubling_days"  # what the book would have filled in


class LetterPlaces:
    """A bit for each letter and how often it has come, so that two bit sets share what two texts share."""

    def __init__(self, texts: Iterable[str]) -> None:
        self._places: dict[tuple[str, int], int] = {}
        for text in texts:
            for pair in numbered_letters(text):
                self._places.setdefault(pair, 1 << len(self._places))

    def bits(self, text: str) -> int:
        """The letters of a text as a set of bits; letters that no known text has are left out."""
        return sum(self._places.get(pair, 0) for pair in numbered_letters(text))


def numbered_letters(text: str) -> Iterator[tuple[str, int]]:
    """Each letter with how often it has come before."""
    seen: dict[str, int] = {}
    for letter in text:
        before = seen.get(letter, 0)
        yield letter, before
        seen[letter] = before + 1


class KnownTexts:
    """Texts of the book that a misspelt one is held against."""

    def __init__(self, texts: Iterable[str]) -> None:
        texts = tuple(texts)
        self._places = LetterPlaces(texts)
        self._bits = {text: self._places.bits(text) for text in texts}

    def near(self, word: str, most: int, least_alike: float) -> list[str]:
        """What ``difflib.get_close_matches`` finds, the likeliest first.

        ``least_alike`` is a share of the letters, 0 to 1. Texts that have too few letters of the word in
        any order are passed over by their bits: difflib counts them one by one, which takes milliseconds.
        """
        bits, length = self._places.bits(word), len(word)
        possible = [
            text
            for text, own in self._bits.items()
            if 2.0 * (bits & own).bit_count() >= least_alike * (length + len(text)) - ROUNDING
        ]
        return difflib.get_close_matches(word, possible, most, least_alike)


class NameList(NamedTuple):
    """One list of names: each by its letters without capitals, and those of a first word by it."""

    by_folded: dict[str, str]
    by_first_word: dict[str, list[str]]
    folded: KnownTexts
    first_words: KnownTexts


@cache
def name_list(names: str) -> NameList:
    """One list of the build, ready to be held against."""
    by_folded = {name.casefold(): name for name in read_table(f"names-{names}")["names"]}
    by_first_word: dict[str, list[str]] = {}
    for key in by_folded:
        by_first_word.setdefault(key.split()[0], []).append(key)
    return NameList(by_folded, by_first_word, KnownTexts(by_folded), KnownTexts(by_first_word))


def unknown_name(field: InputField, text: Any, row: tuple[InputField, ...]) -> str:
    """What to say of a text in a field that offers names; empty where it is one of them."""
    names = next((hint.names for hint in field.hints if isinstance(hint, Suggest)), None)
    if names is None or not isinstance(text, str) or not text.strip():
        return ""
    folded = " ".join(text.split()).casefold()
    if folded in name_list(names).by_folded:
        return ""
    near = len(folded) <= LONGEST_NAME
    meant = ", ".join(names_meant(folded, names)) if near else ""
    question = f" Meant: {meant}?" if meant else ""
    grows = any(part.key == GROWTH for part in row)
    alone = "; how fast it grows is yours to give" if grows else ""
    shown = f"\u2018{text.strip()[:80]}\u2019"
    return f"No plant of the book is called {shown}.{question} It is used as a plain name{alone}."


@lru_cache(maxsize=MOST_KEPT)
def names_meant(folded: str, names: str) -> tuple[str, ...]:
    """The names of a list that a misspelt one may stand for, the likeliest first.

    A genus alone is enough. Each change of a form asks of all its names again, so answers are kept.
    """
    known = name_list(names)
    matches = known.folded.near(folded, MOST_MEANT, LEAST_ALIKE)
    for genus in known.first_words.near(folded, 1, LEAST_ALIKE_GENUS):
        matches += known.by_first_word[genus]
    return tuple(known.by_folded[key] for key in dict.fromkeys(matches))[:MOST_MEANT]
