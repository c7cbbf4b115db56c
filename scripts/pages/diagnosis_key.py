"""A printed key of yes and no questions, animals first.

The key is grown from the likelihoods that the calculator uses, so that the two cannot drift apart.
"""

import math
from collections.abc import Mapping
from typing import NamedTuple

from calculators.core.diagnosis import CAUSES, FINDINGS, Cause, question_of, shares_of
from calculators.core.likelihood import PRIOR_WEIGHT, normal
from calculators.core.posterior import OF_PLANT
from scripts.records.load import Library

FIRST = ("animals", "water")  # animals before leaves
SURE = 0.7  # a lead ends where one problem has this share
DEEPEST = 12  # questions in a row; mostly a chain of signs that are plainly not there
LEAST_BITS = 0.03
URGENT = 4.0  # problems that endanger animals are asked about sooner than their number earns
ELSEWHERE = 0.6  # a question about another part of the tank must tell this much more
PAIR = 0.8  # ... or two together: their pages say how to tell them apart
HOPELESS = 0.06  # of the leading share: below it a problem is left out of a branch
NAMED, MOST_NAMED = (
    0.2,
    4,
)  # a lead names problems from this share of the first, and at most so many


class Lead(NamedTuple):
    """Where an answer leads: to another couplet, or to problems, the likeliest first."""

    couplet: int | None
    problems: tuple[str, ...] = ()


class Couplet(NamedTuple):
    """One numbered question of the key."""

    number: int
    finding: str
    question: str
    yes: Lead
    no: Lead


class Section(NamedTuple):
    """The key for one place where one looks."""

    where: str
    first: Lead
    couplets: list[Couplet]


def key(library: Library) -> list[Section]:
    """The whole key, animals first; couplets are numbered through."""
    sections, number = [], 1
    places = [*FIRST, *(place for place in library.vocabulary["looks"] if place not in FIRST)]
    for where in places:
        weights = {
            slug: PRIOR_WEIGHT[cause.prior] * (URGENT if cause.urgency == "now" else 1.0)
            for slug, cause in CAUSES.items()
            if belongs(cause, where)
        }
        if weights:
            grower = Grower(where, number)
            sections.append(Section(where, grower.grow(weights, frozenset(), 0), grower.sorted()))
            number += len(grower.couplets)
    return sections


def belongs(cause: Cause, where: str) -> bool:
    """Whether one would look for a problem here: a strong sign, or any sign where animals suffer."""
    strengths = {
        row.strength
        for name, row in cause.rows.items()
        if FINDINGS[name].where == where and not (FINDINGS[name].input or "").startswith(OF_PLANT)
    }
    urgent = cause.urgency == "now" and where == "animals"
    return "strong-for" in strengths or (urgent and "for" in strengths)


def is_settled(chances: Mapping[str, float]) -> bool:
    """Whether one problem, or two together, have most of the chance."""
    first, *rest = sorted(chances.values(), reverse=True)
    return first >= SURE or first + sum(rest[:1]) >= PAIR


class Grower:
    """Grows the couplets of one section, each numbered before those it leads to."""

    def __init__(self, where: str, number: int) -> None:
        self.where = where
        self.next = number
        self.couplets: list[Couplet] = []

    def sorted(self) -> list[Couplet]:
        """The couplets in the order of their numbers."""
        return sorted(self.couplets)

    def grow(self, weights: Mapping[str, float], asked: frozenset[str], depth: int) -> Lead:
        """Ask what tells most, and follow both answers, until one problem stands out."""
        chances = dict(zip(weights, normal(list(weights.values())), strict=True))
        finding = None if is_settled(chances) else self.best(chances, asked)
        if finding is None or depth == DEEPEST:
            return Lead(None, named(chances))
        number, self.next = self.next, self.next + 1
        asked |= {question_of(finding)}
        shown = {slug: shares_of(slug, question_of(finding))[finding] for slug in chances}
        there = {slug: chance * shown[slug] for slug, chance in chances.items()}
        gone = {slug: chance * (1 - shown[slug]) for slug, chance in chances.items()}
        yes = self.grow(hopeful(there), asked, depth + 1)
        no = self.grow(hopeful(gone), asked, depth + 1)
        self.couplets.append(Couplet(number, finding, FINDINGS[finding].question, yes, no))
        return Lead(number)

    def best(self, chances: Mapping[str, float], asked: frozenset[str]) -> str | None:
        """The finding that tells most about these problems, sooner one of this section's place."""
        bits = {
            finding: self.told(finding, chances)
            for finding in FINDINGS
            if question_of(finding) not in asked
        }
        found = max(bits, key=lambda finding: bits[finding])
        return found if bits[found] >= LEAST_BITS else None

    def told(self, finding: str, chances: Mapping[str, float]) -> float:
        """Mutual information of problem and answer in bits, less for another part of the tank."""
        shown = {slug: shares_of(slug, question_of(finding))[finding] for slug in chances}
        mean = math.fsum(chance * shown[slug] for slug, chance in chances.items())
        parts = math.fsum(chance * uncertainty(shown[slug]) for slug, chance in chances.items())
        here = FINDINGS[finding].where == self.where
        return (uncertainty(mean) - parts) * (1 if here else ELSEWHERE)


def uncertainty(chance: float) -> float:
    """The entropy of yes and no, in bits."""
    return -math.fsum(p * math.log2(p) for p in (chance, 1 - chance) if p > 0)


def hopeful(weights: Mapping[str, float]) -> dict[str, float]:
    """The problems that are still worth following."""
    least = HOPELESS * max(weights.values())
    return {slug: weight for slug, weight in weights.items() if weight >= least}


def named(chances: Mapping[str, float]) -> tuple[str, ...]:
    """The problems that a lead names."""
    order = sorted(chances, key=lambda slug: (-chances[slug], slug))
    least = NAMED * chances[order[0]]
    return tuple(slug for slug in order if chances[slug] >= least)[:MOST_NAMED]
