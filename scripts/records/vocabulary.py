"""The vocabulary: which words species/vocabulary.yml must explain, and what it says of each."""

from collections.abc import Iterator
from typing import Annotated, Any, get_args

from pydantic import Field, ValidationError

from scripts.records.animal import Animal, Body, BodyShape, Harm
from scripts.records.claim import Grade, Name, Text
from scripts.records.error_sentences import word
from scripts.records.finding import Looks, Usual
from scripts.records.parse import Place
from scripts.records.plant import BoughtAs, NitrogenRole, Plant, Uptake
from scripts.records.problem import Evidence, Problem, Where
from scripts.records.record import Record
from scripts.records.rule import Act, Basis, Jurisdiction
from scripts.records.trade_name import Candidate


class Word(Record):
    """What a reader sees for a word, and what it means. ``taxa``: genera and families, by blanks."""

    label: Name
    means: Text
    plural: Name | None = None
    taxa: Annotated[str, Field(min_length=1, max_length=240)] | None = None


def allowed(model: type[Record], field: str) -> tuple[str, ...]:
    """The words that a field of a model allows."""
    return get_args(model.model_fields[field].annotation)


WORDS: dict[str, tuple[str, ...]] = {
    "sure": get_args(Grade),
    "place": get_args(Jurisdiction),
    "basis": get_args(Basis),
    "act": get_args(Act),
    "where": get_args(Where),
    "looks": get_args(Looks),
    "usual": get_args(Usual),
    "habit": allowed(Plant, "habit"),
    "roots": allowed(Plant, "roots"),
    "uptake": allowed(Uptake, "value"),
    "nitrogen_role": allowed(NitrogenRole, "value"),
    "bought_as": allowed(BoughtAs, "value"),
    "urgency": allowed(Problem, "urgency"),
    "prior": allowed(Problem, "prior"),
    "strength": allowed(Evidence, "strength"),
    "animal_group": allowed(Animal, "group"),
    "measured": allowed(Body, "measured"),
    "body_form": allowed(BodyShape, "form"),
    "plant_harm": allowed(Harm, "does"),
    "how_often": allowed(Candidate, "how_often"),
}
OPEN = ("grazer", "term")  # lists that the vocabulary alone decides


def word_faults(vocabulary: dict[str, Any]) -> Iterator[tuple[Place, str]]:
    """What is wrong with the vocabulary, by place."""
    for kind in (*WORDS, *OPEN):
        if kind not in vocabulary:
            yield (), f"lacks the list {kind}, whose words records use"
    for kind, words in vocabulary.items():
        if kind not in (*WORDS, *OPEN):
            yield (kind,), f"is no list that records use; there are {', '.join((*WORDS, *OPEN))}"
        elif not isinstance(words, dict) or not words:
            yield (kind,), "must hold words by key, each with label and means"
        else:
            yield from list_faults(kind, words)


def list_faults(kind: str, words: dict[str, Any]) -> Iterator[tuple[Place, str]]:
    """What is wrong with one list of words."""
    for key in WORDS.get(kind, ()):
        if key not in words:
            yield (kind,), f"lacks the word {key}, which records may use"
    for key, entry in words.items():
        if kind in WORDS and key not in WORDS[kind]:
            yield (kind, key), f"is no word of records; there are {', '.join(WORDS[kind])}"
        try:
            Word.model_validate(entry)
        except ValidationError as wrong:
            for error in wrong.errors():
                yield (kind, key, *error["loc"]), word(error, Word)
        if kind == "grazer" and isinstance(entry, dict) and "taxa" not in entry:
            yield (kind, key, "taxa"), "is missing; it says which animals belong here"
