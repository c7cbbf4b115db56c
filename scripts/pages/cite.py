"""The sources of one page: numbered in the order in which its claims name them."""

from collections.abc import Mapping
from typing import NamedTuple

from scripts.records.claim import COMMON_PRACTICE, Claim
from scripts.records.source import Source


class Reference(NamedTuple):
    """A source with its number on the page."""

    number: int
    key: str
    source: Source


class Citations:
    """Handed to a template, which asks for the tag of each claim as it prints it."""

    def __init__(self, sources: Mapping[str, Source]) -> None:
        self.known = sources
        self.numbers: dict[str, int] = {}

    def number(self, key: str) -> int:
        """The number of a source on this page; a new one is given the next."""
        return self.numbers.setdefault(key, len(self.numbers) + 1)

    def named(self, claim: Claim) -> list[tuple[int, str]]:
        """Number and key of each source of a claim but common practice."""
        return [(self.number(key), key) for key in claim.sources if key != COMMON_PRACTICE]

    def is_practice(self, claim: Claim) -> bool:
        """Whether the claim rests on common practice, alone or beside sources."""
        return COMMON_PRACTICE in claim.sources

    def references(self) -> list[Reference]:
        """All that were named, in order. Ask for it last."""
        return [Reference(number, key, self.known[key]) for key, number in self.numbers.items()]
