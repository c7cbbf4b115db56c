"""Grows one part of the printed key: through the signs of a place, then among what a sign speaks for."""

import math
from collections.abc import Mapping
from typing import NamedTuple

from calculators.diagnose.cause_posterior import OF_PLANT
from calculators.diagnose.likelihood import ODDS, PRIOR_WEIGHT
from calculators.diagnose.next_check import OF_TEST, SURFACE, TEST_KIT
from calculators.diagnose.problem_table import CAUSES, FINDINGS, CauseEntry, question_of, shares_of
from calculators.science.evidence.weighing import normal

SURE = 0.75  # a lead ends where one problem has this share
AFTER_YES = 4  # questions at most to tell apart what a sign speaks for
DEEPEST = 12  # questions in a row, nearly all of them plainly answered no
LEAST_BITS = 0.08
ELSEWHERE = 0.6  # a question about another part of the tank must tell this much more
NAMED, MOST_NAMED = (
    0.25,
    3,
)  # a lead names problems from this share of the first, and so many at most
STRONGLY = ODDS["for"]  # a sign to point at raises the odds of something by more than this


class Branch(NamedTuple):
    """Where an answer leads: to another couplet, or to problems, the likeliest first; or to none."""

    couplet: int | None
    problems: tuple[str, ...] = ()


class Couplet(NamedTuple):
    """One numbered question of the key."""

    number: int
    finding: str
    question: str
    yes: Branch
    no: Branch


class Grower:
    """Grows the couplets of one section, each numbered before those it leads to."""

    def __init__(self, where: str, signs: list[str], number: int) -> None:
        self.where = where
        self.signs = signs
        self.next = number
        self.couplets: list[Couplet] = []
        self.walked: list[Couplet] = []

    def walk(self, weights: Mapping[str, float], denied: frozenset[str], depth: int) -> Branch:
        """Run through the signs of the place until one is there."""
        left = [
            name
            for name in self.signs
            if name not in denied
            and any(raises_odds(CAUSES[slug], name, STRONGLY) for slug in weights)
        ]
        if not left or depth == DEEPEST:
            return Branch(None)
        chances = dict(zip(weights, normal(list(weights.values())), strict=True))
        finding = max(left, key=lambda name: (information_bits(name, chances), name))
        number, self.next = self.next, self.next + 1
        pointed = {
            slug: PRIOR_WEIGHT[CAUSES[slug].prior] * share(slug, finding)
            for slug in chances
            if raises_odds(CAUSES[slug], finding)
        }
        yes = self.settle(pointed, frozenset({question_of(finding)}), 0)
        no = self.walk(self.without(chances, finding, denied), denied | {finding}, depth + 1)
        self.walked.append(Couplet(number, finding, FINDINGS[finding].question, yes, no))
        self.couplets.append(self.walked[-1])
        return Branch(number)

    def without(
        self, chances: Mapping[str, float], finding: str, denied: frozenset[str]
    ) -> dict[str, float]:
        """What is left when a sign is not there: no problem all of whose signs here are denied.

        By problem, as weights that need not add up to 1.
        """
        gone = {*denied, finding}
        return {
            slug: chance * (1 - share(slug, finding))
            for slug, chance in chances.items()
            if any(raises_odds(CAUSES[slug], name) for name in self.signs if name not in gone)
        }

    def settle(self, weights: Mapping[str, float], asked: frozenset[str], depth: int) -> Branch:
        """Tell apart the problems that a sign speaks for."""
        chances = dict(zip(weights, normal(list(weights.values())), strict=True))
        if max(chances.values()) >= SURE or depth == AFTER_YES:
            return Branch(None, likeliest_problems(chances))
        finding = self.best(chances, asked)
        if finding is None:
            return Branch(None, likeliest_problems(chances))
        number, self.next = self.next, self.next + 1
        asked |= {question_of(finding)}
        there = {slug: chance * share(slug, finding) for slug, chance in chances.items()}
        gone = {slug: chance * (1 - share(slug, finding)) for slug, chance in chances.items()}
        yes, no = (self.settle(left_over, asked, depth + 1) for left_over in (there, gone))
        if yes == no:  # both answers lead to the same page: no need to ask
            self.next = number
            return yes
        self.couplets.append(Couplet(number, finding, FINDINGS[finding].question, yes, no))
        return Branch(number)

    def best(self, chances: Mapping[str, float], asked: frozenset[str]) -> str | None:
        """The finding that tells most about these problems, sooner one that is seen in this place."""
        bits = {
            name: information_bits(name, chances) * self.worth(name)
            for name in FINDINGS
            if question_of(name) not in asked and any(name in CAUSES[slug].rows for slug in chances)
        }
        finding = max(bits, key=lambda name: (bits[name], name), default=None)
        return finding if finding and bits[finding] >= LEAST_BITS else None

    def worth(self, name: str) -> float:
        """What a question is worth here beside what it tells.

        It is a factor for the bits that it tells.
        """
        if self.where == SURFACE and question_of(name).startswith(OF_PLANT):
            return 0.0  # who looks at floating plants knows what they are
        if question_of(name).startswith(OF_TEST):
            return TEST_KIT
        return 1.0 if name in self.signs else ELSEWHERE


def raises_odds(cause: CauseEntry, finding: str, odds: float = 1.0) -> bool:
    """Whether a finding raises a problem's odds by more than this."""
    return finding in cause.rows and ODDS[cause.rows[finding].strength] > odds


def share(slug: str, finding: str) -> float:
    """The probability of a finding, given a problem."""
    return shares_of(slug, question_of(finding))[finding]


def information_bits(finding: str, chances: Mapping[str, float]) -> float:
    """Mutual information of problem and answer, in bits."""
    mean = math.fsum(chance * share(slug, finding) for slug, chance in chances.items())
    parts = math.fsum(
        chance * uncertainty(share(slug, finding)) for slug, chance in chances.items()
    )
    return round(uncertainty(mean) - parts, 12)


def uncertainty(chance: float) -> float:
    """The entropy of yes and no, in bits."""
    return -math.fsum(p * math.log2(p) for p in (chance, 1 - chance) if p > 0)


def likeliest_problems(chances: Mapping[str, float]) -> tuple[str, ...]:
    """The problems that a lead names."""
    order = sorted(chances, key=lambda slug: (-chances[slug], slug))
    least = NAMED * chances[order[0]]
    return tuple(slug for slug in order if chances[slug] >= least)[:MOST_NAMED]
