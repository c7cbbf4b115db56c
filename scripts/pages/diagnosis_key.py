"""A printed key of yes and no questions, animals first.

The key is grown from the likelihoods that the calculator uses, so that the two cannot drift apart.
In each place it first runs through what can be seen there, the likeliest first; a yes leads to the
few problems which that sign speaks for, and further questions tell those apart.
"""

import math
from collections.abc import Mapping
from typing import NamedTuple

from calculators.core.diagnosis import CAUSES, FINDINGS, Cause, question_of, shares_of
from calculators.core.likelihood import ODDS, PRIOR_WEIGHT, normal
from calculators.core.next_check import OF_TEST, SURFACE, TEST_KIT
from calculators.core.posterior import OF_PLANT
from scripts.records.load import Library

FIRST = ("animals", "water")  # animals before leaves
NOT_WALKED = ("recently",)  # events tell problems apart, but nobody looks for a trouble there
SURE = 0.75  # a lead ends where one problem has this share
AFTER_YES = 4  # questions at most to tell apart what a sign speaks for
DEEPEST = 12  # questions in a row, nearly all of them plainly answered no
LEAST_BITS = 0.08
URGENT = 4.0  # problems that endanger animals are asked about sooner than their number earns
ELSEWHERE = 0.6  # a question about another part of the tank must tell this much more
NAMED, MOST_NAMED = (
    0.25,
    3,
)  # a lead names problems from this share of the first, and so many at most


class Lead(NamedTuple):
    """Where an answer leads: to another couplet, or to problems, the likeliest first; or to none."""

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
    """The key for one place where one looks; ``danger`` holds the signs of animals in danger alone."""

    where: str
    danger: bool
    first: Lead
    couplets: list[Couplet]
    walked: list[Couplet]  # those that run through the signs of the place


def key(library: Library) -> list[Section]:
    """The whole key, animals in danger first; couplets are numbered through."""
    sections, number = [], 1
    rest = [place for place in library.vocabulary["looks"] if place not in (*FIRST, *NOT_WALKED)]
    parts = [("animals", True), *((place, False) for place in (*FIRST, *rest))]
    for where, danger in parts:
        grower = Grower(where, danger, number)
        first = grower.walk(start(grower.signs), frozenset(), 0)
        couplets, walked = sorted(grower.couplets), sorted(grower.walked)
        sections.append(Section(where, danger, first, couplets, walked))
        number += len(grower.couplets)
    return sections


def signs(where: str, danger: bool) -> list[str]:
    """What one can point at in a place: signs that speak strongly for something.

    A sign that is a special case of another in the same place is left to be asked after that one.
    """
    found = [
        name
        for name, one in FINDINGS.items()
        if one.where == where
        and (where != "animals" or one.danger == danger)
        and not question_of(name).startswith(OF_PLANT)
        and any(speaks(cause, name, 4.0) for cause in CAUSES.values())
    ]
    return [name for name in found if not set(FINDINGS[name].implies) & set(found)]


def speaks(cause: Cause, finding: str, odds: float = 1.0) -> bool:
    """Whether a finding raises a problem's odds by more than this."""
    return finding in cause.rows and ODDS[cause.rows[finding].strength] > odds


def start(here: list[str]) -> dict[str, float]:
    """The problems that have a sign in a place, by how common they are, and sooner if urgent."""
    return {
        slug: PRIOR_WEIGHT[cause.prior] * (URGENT if cause.urgency == "now" else 1.0)
        for slug, cause in CAUSES.items()
        if any(speaks(cause, name) for name in here)
    }


class Grower:
    """Grows the couplets of one section, each numbered before those it leads to."""

    def __init__(self, where: str, danger: bool, number: int) -> None:
        self.where = where
        self.signs = signs(where, danger)
        self.next = number
        self.couplets: list[Couplet] = []
        self.walked: list[Couplet] = []

    def walk(self, weights: Mapping[str, float], denied: frozenset[str], depth: int) -> Lead:
        """Run through the signs of the place until one is there."""
        left = [
            name
            for name in self.signs
            if name not in denied and any(speaks(CAUSES[slug], name, 4.0) for slug in weights)
        ]
        if not left or depth == DEEPEST:
            return Lead(None)
        chances = dict(zip(weights, normal(list(weights.values())), strict=True))
        finding = max(left, key=lambda name: (told(name, chances), name))
        number, self.next = self.next, self.next + 1
        pointed = {
            slug: PRIOR_WEIGHT[CAUSES[slug].prior] * share(slug, finding)
            for slug in chances
            if speaks(CAUSES[slug], finding)
        }
        yes = self.settle(pointed, frozenset({question_of(finding)}), 0)
        no = self.walk(self.without(chances, finding, denied), denied | {finding}, depth + 1)
        self.walked.append(Couplet(number, finding, FINDINGS[finding].question, yes, no))
        self.couplets.append(self.walked[-1])
        return Lead(number)

    def without(
        self, chances: Mapping[str, float], finding: str, denied: frozenset[str]
    ) -> dict[str, float]:
        """What is left when a sign is not there: no problem all of whose signs here are denied."""
        gone = {*denied, finding}
        return {
            slug: chance * (1 - share(slug, finding))
            for slug, chance in chances.items()
            if any(speaks(CAUSES[slug], name) for name in self.signs if name not in gone)
        }

    def settle(self, weights: Mapping[str, float], asked: frozenset[str], depth: int) -> Lead:
        """Tell apart the problems that a sign speaks for."""
        chances = dict(zip(weights, normal(list(weights.values())), strict=True))
        if max(chances.values()) >= SURE or depth == AFTER_YES:
            return Lead(None, named(chances))
        finding = self.best(chances, asked)
        if finding is None:
            return Lead(None, named(chances))
        number, self.next = self.next, self.next + 1
        asked |= {question_of(finding)}
        there = {slug: chance * share(slug, finding) for slug, chance in chances.items()}
        gone = {slug: chance * (1 - share(slug, finding)) for slug, chance in chances.items()}
        yes, no = (self.settle(one, asked, depth + 1) for one in (there, gone))
        if yes == no:  # both answers lead to the same page: no need to ask
            self.next = number
            return yes
        self.couplets.append(Couplet(number, finding, FINDINGS[finding].question, yes, no))
        return Lead(number)

    def best(self, chances: Mapping[str, float], asked: frozenset[str]) -> str | None:
        """The finding that tells most about these problems, sooner one that is seen in this place."""
        bits = {
            name: told(name, chances) * self.worth(name)
            for name in FINDINGS
            if question_of(name) not in asked and any(name in CAUSES[slug].rows for slug in chances)
        }
        found = max(bits, key=lambda name: (bits[name], name), default=None)
        return found if found and bits[found] >= LEAST_BITS else None

    def worth(self, name: str) -> float:
        """What a question is worth here beside what it tells."""
        if self.where == SURFACE and question_of(name).startswith(OF_PLANT):
            return 0.0  # who looks at floating plants knows what they are
        if question_of(name).startswith(OF_TEST):
            return TEST_KIT
        return 1.0 if name in self.signs else ELSEWHERE


def share(slug: str, finding: str) -> float:
    """The probability of a finding, given a problem."""
    return shares_of(slug, question_of(finding))[finding]


def told(finding: str, chances: Mapping[str, float]) -> float:
    """Mutual information of problem and answer, in bits."""
    mean = math.fsum(chance * share(slug, finding) for slug, chance in chances.items())
    parts = math.fsum(
        chance * uncertainty(share(slug, finding)) for slug, chance in chances.items()
    )
    return round(uncertainty(mean) - parts, 12)


def uncertainty(chance: float) -> float:
    """The entropy of yes and no, in bits."""
    return -math.fsum(p * math.log2(p) for p in (chance, 1 - chance) if p > 0)


def named(chances: Mapping[str, float]) -> tuple[str, ...]:
    """The problems that a lead names."""
    order = sorted(chances, key=lambda slug: (-chances[slug], slug))
    least = NAMED * chances[order[0]]
    return tuple(slug for slug in order if chances[slug] >= least)[:MOST_NAMED]


def steps(section: Section) -> list[int]:
    """How many questions each end of a section takes."""
    by_number = {one.number: one for one in section.couplets}

    def below(lead: Lead, depth: int) -> list[int]:
        if lead.couplet is None:
            return [depth]
        one = by_number[lead.couplet]
        return [*below(one.yes, depth + 1), *below(one.no, depth + 1)]

    return below(section.first, 0)
