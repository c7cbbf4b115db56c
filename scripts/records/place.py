"""What the law of a place means for a keeper, in plain words: one entry of species/places.yml."""

from typing import Annotated

from pydantic import Field

from scripts.records.claim import Statement, Text
from scripts.records.record import Record

Statements = Annotated[list[Statement], Field(min_length=1)]


class Jurisdiction(Record):
    """Consequences in the words of a keeper; the lists themselves are in species/rules/."""

    ask: Text  # whose word is final, by name
    may_not: (
        Statements  # keep, sell, give, move, release: what a listed plant may not have done to it
    )
    if_you_have_one: Statements  # in order, the first step first
    cuttings: Statement  # how trimmings are destroyed
    differs: Statements  # states, nations, regions and islands
