"""The law lists: one file in species/rules/ a list."""

from datetime import date, timedelta
from typing import Annotated, Literal

from pydantic import Field

from scripts.records.claim import Claim, Name, Slug, Text
from scripts.records.record import Record

DAY_MONTH_OR_YEAR = r"^[0-9]{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12][0-9]|3[01]))?)?$"
YEAR = timedelta(days=365)
Jurisdiction = Literal["us", "eu", "gb", "au", "nz"]
Basis = Literal["read-in-text", "second-hand", "memory"]  # how we know what a law says
Act = Literal["import", "keep", "grow", "sell", "give", "move", "cross", "release"]


class CommonName(Claim):
    """What people call a listed plant, as a law's text, a flora or an authority has it."""

    name: Name


class ListedName(Record):
    """One name on a list, as the list spells it. A genus alone stands for all its species.

    ``source`` and ``read_on`` are those of the list unless the entry was found elsewhere.
    ``common`` are names under which people know it, for those that have no record of their own.
    ``states`` are the single states that name it, on a list that holds in parts of a place alone;
    ``states_second_hand`` are more of them, by another body's word where ``basis`` is surer.
    """

    name: Name
    also: list[Name] = []  # synonyms: those that the list gives, and the name now in use
    common: list[CommonName] = []
    basis: Basis
    source: Slug | None = None
    read_on: date | None = None
    note: Text | None = None
    states: list[Name] = []
    states_second_hand: list[Name] = []


class Rule(Record):
    """A list of plants that a law restricts. Lists change; the authority's word is final.

    ``text_as_of`` is the day, month or year up to which the text that we read was current or, where it
    says no such thing, on which it was made or began; None where our copy bears no date.
    ``holds_in`` ``parts`` is a list gathered from single states: what it names is warned of with the
    state's name, and never said to be forbidden in the whole place. ``only_in`` names the parts of the
    place in which alone a list holds that is one law.
    """

    title: Name
    place: Jurisdiction
    holds_in: Literal["whole", "parts"] = "whole"
    only_in: list[Name] = []
    instrument: Text
    effect: Text
    short_effect: Annotated[str, Field(min_length=1, max_length=120)]
    forbids: list[Act] = []  # what the list itself forbids a private keeper; other law may add
    source: Slug
    read_on: date
    text_as_of: Annotated[str, Field(pattern=DAY_MONTH_OR_YEAR)] | None = None
    complete: bool  # whether every plant of the list that can live in fresh water is here
    note: Text | None = None
    entries: Annotated[list[ListedName], Field(min_length=1)]

    def is_old(self, day: date) -> bool:
        """Whether the text that we read may lie more than a year behind a day; an undated one may."""
        return self.text_as_of is None or last_day(self.text_as_of) < day - YEAR


def last_day(text: str) -> date:
    """The last day that a day, month or year of a law's text may mean. A wrong day of a month is its last."""
    year, *rest = (int(part) for part in text.split("-"))
    month = rest[0] if rest else 12
    last = (date(year + month // 12, month % 12 + 1, 1) - timedelta(days=1)).day
    return date(year, month, min(rest[1], last) if len(rest) > 1 else last)
