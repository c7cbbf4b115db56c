"""The problem record: one file in species/problems/, its name the page's address."""

from collections.abc import Iterator, Mapping
from typing import Annotated, Any, Literal

from pydantic import Field
from pydantic_core import PydanticCustomError

from calculators.core import quantities as q
from scripts.records.claim import Claim, Name, Range, Slug, Statement, Text, Within
from scripts.records.record import Record, Ruled

Where = Literal[
    "old-leaves", "new-leaves", "whole-plant", "stem", "roots", "surface", "water", "animals"
]


class Sign(Statement):
    """What one sees, and where one looks for it."""

    where: Where


class MistakenFor(Claim):
    """Another problem that looks the same, and the one observation that separates them."""

    name: Name
    problem: Slug | None = None
    tell_apart: Annotated[str, Field(min_length=10, max_length=600)]


class Cause(Claim):
    """A cause with what speaks for it and against it, in the order of how often it is the one."""

    cause: Annotated[str, Field(min_length=5, max_length=240)]
    evidence_for: Annotated[list[Text], Field(min_length=1)]
    evidence_against: Annotated[list[Text], Field(min_length=1)]


class Evidence(Claim):
    """What a finding of species/findings.yml says about this problem.

    ``strength`` is a class of calculators/diagnose/likelihood.py. A ``hallmark`` shows nearly always
    with this problem, so that its absence all but rules the problem out.
    """

    finding: Slug
    strength: Literal["strong-for", "for", "neutral", "against", "rules-out"]
    hallmark: bool = False
    why: Annotated[str, Field(min_length=5, max_length=160)]


class Expect(Statement):
    """What should have changed, and by which day."""

    by_days: Annotated[Range, Within(q.Days)]


class FilledCalculator(Record):
    """A calculator with this problem's figures already in it.

    ``readings``: which reading of the diagnosis an input of another name takes, in the same unit.
    """

    calculator: Slug
    inputs: dict[str, float | str] = {}
    readings: dict[str, str] = {}
    why: Annotated[str, Field(min_length=5, max_length=240)]


class OrderedChange(Record):
    """The change of water that a first action orders: how much of the water, and the words that order it.

    ``share`` is the largest at a time. The diagnosis puts what a tap forbids before the sentence of the
    ``words``, which are those of the first action, letter by letter.
    """

    share: Literal["half", "third", "quarter", "tenth"]
    words: Annotated[str, Field(min_length=5, max_length=80)]


class Problem(Ruled):
    """Something that looks wrong. The first safe action comes before any explanation.

    A first action that orders a change of water has it under ``change``, and without it under ``besides``.
    """

    name: Name
    other_names: list[Name] = []
    summary: Annotated[str, Field(min_length=20, max_length=240)]
    urgency: Literal["now", "this-week", "this-month", "watch"]
    prior: Literal["common", "usual", "uncommon", "rare"]  # among troubles in such tanks
    shared_root: Slug | None = None  # a word shared by problems of one root, whose chances add up
    first_action: Statement
    slowly: bool = False  # a large, quick change of water would do harm, also to animals in danger
    change: OrderedChange | None = None
    besides: Statement | None = None  # the first action but for its change of water
    signs: Annotated[list[Sign], Field(min_length=1)]
    normal_when: Statement | None = None
    mistaken_for: list[MistakenFor] = []
    causes: Annotated[list[Cause], Field(min_length=1)]
    evidence: Annotated[list[Evidence], Field(min_length=4)]
    this_week: Annotated[list[Statement], Field(min_length=1)]
    expect: Annotated[list[Expect], Field(min_length=1)]
    stop_and_ask: Statement
    do_not: Annotated[list[Statement], Field(min_length=1)]
    calculators: list[FilledCalculator] = []

    @classmethod
    def broken_rules(cls, raw: Mapping[str, Any]) -> Iterator[PydanticCustomError]:
        """Refuse a change of water whose words are not those of the first action, or that stands alone."""
        change, action = raw.get("change"), raw.get("first_action")
        if bool(change) != bool(raw.get("besides")):
            yield PydanticCustomError(
                "change_alone",
                "change and besides go together: a first action that orders a change of water has both",
            )
        words = change.get("words") if isinstance(change, Mapping) else None
        said = action.get("text") if isinstance(action, Mapping) else None
        if isinstance(words, str) and isinstance(said, str) and words not in said:
            yield PydanticCustomError(
                "change_words",
                "the words of change are not those of first_action: {words!r}; copy them letter by letter",
                {"words": words},
            )
