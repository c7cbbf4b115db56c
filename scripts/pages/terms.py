"""The words of the trade and of botany that a page uses, with what they mean."""

import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from pydantic import BaseModel

Term = Mapping[
    str, str
]  # an entry of the vocabulary's list ``term``: label, means, and plural or none


def terms_used(record: BaseModel, terms: Mapping[str, Term]) -> list[Term]:
    """The terms that the record's sentences use, by label; a term in no sentence is left out."""
    text = " ".join(sentences(record.model_dump())).lower()
    found = [
        term
        for term in terms.values()
        if any(word.lower() in text for word in forms(term)) and pattern(*forms(term)).search(text)
    ]
    return sorted(found, key=lambda term: term["label"].lower())


def forms(term: Term) -> tuple[str, ...]:
    """What is looked for: the label, the label with an s, and the form that the entry names."""
    label = term["label"]
    return (label, f"{label}s", *([term["plural"]] if "plural" in term else []))


@cache
def pattern(*words: str) -> re.Pattern[str]:
    """Any of the words by itself, whatever the case of its letters."""
    return re.compile(rf"\b(?:{'|'.join(map(re.escape, words))})\b", re.IGNORECASE)


def sentences(value: Any) -> Iterator[str]:
    """Every text of more than one word below a value: keys and slugs have but one."""
    if isinstance(value, str):
        if " " in value:
            yield value
    elif isinstance(value, Mapping):
        for part in value.values():
            yield from sentences(part)
    elif isinstance(value, list):
        for part in value:
            yield from sentences(part)
