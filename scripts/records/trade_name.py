"""An ambiguous trade name: one file in species/names/, its name the page's address.

The record says which plants a label may mean and how to tell; what each plant is like stays in
the plants' own records.
"""

from collections.abc import Iterator, Mapping
from typing import Annotated, Any, Literal

from pydantic import Field
from pydantic_core import PydanticCustomError

from scripts.records.claim import Claim, Name, Slug, Statement
from scripts.records.record import Record, Ruled

Line = Annotated[str, Field(min_length=10, max_length=400)]


class Candidate(Claim, Ruled):
    """A plant that is sold under the name.

    ``plant`` is its record; ``name`` its scientific name where there is no record, by which the law
    lists are searched. ``how_often`` is an honest word, not a count: nobody we found has counted.
    """

    plant: Slug | None = None
    name: Name | None = None
    how_often: Literal["mostly", "often", "sometimes", "seldom", "not-known"]
    text: Line

    @classmethod
    def broken_rules(cls, raw: Mapping[str, Any]) -> Iterator[PydanticCustomError]:
        """Refuse a candidate without a plant, or with two."""
        if (raw.get("plant") is None) == (raw.get("name") is None):
            yield PydanticCustomError("one_of", "needs plant (its record) or name, not both")


class DecidingMark(Claim):
    """One mark that decides between the candidates: where to look, and what it means."""

    look_at: Name
    text: Annotated[str, Field(min_length=10, max_length=600)]


class TradeName(Record):
    """A name on labels that stands for more than one plant."""

    name: Name
    other_names: list[Name] = []  # the same muddle under other spellings or words
    summary: Annotated[str, Field(min_length=20, max_length=240)]
    may_be: Annotated[list[Candidate], Field(min_length=2, max_length=8)]
    marks: Annotated[list[DecidingMark], Field(min_length=1, max_length=3)]
    ask: Annotated[list[Line], Field(min_length=1, max_length=5)]
    matters: Statement
    until_sure: Statement
