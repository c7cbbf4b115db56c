"""The law lists: one file in species/rules/ a list."""

from datetime import date
from typing import Annotated, Literal

from pydantic import Field

from scripts.records.claim import Name, Slug, Text
from scripts.records.record import Record

Jurisdiction = Literal["us", "eu", "gb", "au", "nz"]
Basis = Literal["read-in-text", "second-hand", "memory"]  # how we know what a law says
Act = Literal["import", "keep", "grow", "sell", "give", "move", "cross", "release"]


class ListedName(Record):
    """One name on a list, as the list spells it. A genus alone stands for all its species.

    ``source`` and ``read_on`` are those of the list unless the entry was found elsewhere.
    """

    name: Name
    also: list[Name] = []  # synonyms: those that the list gives, and the name now in use
    basis: Basis
    source: Slug | None = None
    read_on: date | None = None
    note: Text | None = None


class Rule(Record):
    """A list of plants that a law restricts. Lists change; the authority's word is final."""

    title: Name
    place: Jurisdiction
    instrument: Text
    effect: Text
    short_effect: Annotated[str, Field(min_length=1, max_length=120)]
    forbids: list[Act] = []  # what the list itself forbids a private keeper; other law may add
    source: Slug
    read_on: date
    complete: bool  # whether every plant of the list that can live in fresh water is here
    note: Text | None = None
    entries: Annotated[list[ListedName], Field(min_length=1)]
