"""Which question would tell the leading causes apart best: expected information."""

import math
from collections.abc import Mapping
from typing import NamedTuple

from calculators.diagnose.case_read import Case
from calculators.diagnose.cause_posterior import OF_PLANT
from calculators.diagnose.problem_table import (
    CAUSES,
    FINDINGS,
    QUESTIONS,
    TELLING,
    question_of,
    shares_of,
)
from calculators.diagnose.triage import animals_come_first
from calculators.science.evidence.information import information_bits
from calculators.science.evidence.weighing import LEADING, SOMETHING_ELSE
from calculators.science.rounding import COMPARED_DIGITS

LEAST_BITS = 0.002  # less than this is not worth a look
# What a question is worth to someone who stands elsewhere, or must fetch a test kit; our judgement.
ELSEWHERE, TEST_KIT = 0.7, 0.5
OF_TEST = "readings."
SURFACE, ANIMALS = "surface", "animals"

Column = tuple[str, float, dict[str, float]]  # name, chance, probability of each answer


class Check(NamedTuple):
    """A finding worth looking for, and the chance of a leading cause with it and without it."""

    finding: str
    cause: str
    if_there: float
    if_not: float


class Viewpoint(NamedTuple):
    """Where the keeper stands now, and which questions could not be answered.

    ``stays``: nothing is to be asked about other places.
    """

    where: str
    passed: frozenset[str] = frozenset()
    stays: bool = False


def check_of_animals(
    case: Case, chances: Mapping[str, float], passed: frozenset[str] = frozenset()
) -> Check | None:
    """What to look for on the animals, before all else, where they may be in danger and nobody looked yet.

    None where they are not, where something was said of them, or where one of ``passed``, the questions
    that could not be answered, was about them.
    """
    if not animals_come_first(case):
        return None
    said = {key for one in case.answers.values() for key in (one.present, *one.absent) if key}
    asked = {key for question in passed if question in QUESTIONS for key in QUESTIONS[question]}
    if any(FINDINGS[key].where == ANIMALS for key in said | asked):
        return None
    return best_check(case, chances, Viewpoint(ANIMALS, passed, stays=True))


def best_check(
    case: Case, chances: Mapping[str, float], looking: Viewpoint | None = None
) -> Check | None:
    """The finding that is expected to tell most among those not known; None if none tells enough.

    For someone who stands at a place, a question about another place must tell more; and what
    kind of plant it is may be asked too, for it can be seen.
    """
    leaders = leading(chances)
    bits = {
        question: answer_bits(columns(question, chances, leaders), tuple(QUESTIONS[question]))
        * place_factor(question, looking)
        for question in sorted(QUESTIONS)
        if question not in case.answers
        and (looking or not question.startswith(OF_PLANT))
        and not (looking and question in looking.passed)
        and not any(question_of(key) == question for key in case.follows)
    }
    best = max(bits, key=lambda question: bits[question], default=None)
    if best is None or bits[best] < LEAST_BITS:
        return None
    informative_columns = columns(best, chances, leaders)
    finding = max(QUESTIONS[best], key=lambda key: answer_bits(informative_columns, (key,)))
    return compare(informative_columns, finding)


def place_factor(question: str, looking: Viewpoint | None) -> float:
    """What an answer is worth to someone at a place, beside what it tells.

    A factor for the bits that it tells: 0 where it cannot be looked at, 1 at the place itself.
    """
    if looking and looking.where == SURFACE and question.startswith(OF_PLANT):
        return 0.0  # who looks at floating plants knows what they are
    if looking is None or any(FINDINGS[key].where == looking.where for key in QUESTIONS[question]):
        return 1.0
    if looking.stays:
        return 0.0
    return TEST_KIT if question.startswith(OF_TEST) else ELSEWHERE


def leading(chances: Mapping[str, float]) -> list[str]:
    """The causes that come near the first."""
    first = max(chances[cause] for cause in CAUSES)
    return [cause for cause in sorted(CAUSES) if chances[cause] >= LEADING * first]


def columns(question: str, chances: Mapping[str, float], leaders: list[str]) -> list[Column]:
    """Each leading cause, and all the rest as one, with the probability of each answer.

    Of a question most causes say nothing: to those the answers come as to something else, and they
    are counted together.
    """
    usual = QUESTIONS[question]
    shown = [(cause, chances[cause], shares_of(cause, question)) for cause in leaders]
    weight = math.fsum(chance for cause, chance in chances.items() if cause not in leaders)
    telling = [
        (chances[cause], given)
        for cause, given in TELLING[question].items()
        if cause in chances and cause not in leaders
    ]
    silent = max(0.0, weight - math.fsum(chance for chance, _ in telling))
    mixed = {
        key: math.fsum([silent * share, *(chance * given[key] for chance, given in telling)])
        / weight
        for key, share in usual.items()
    }
    return [*shown, (SOMETHING_ELSE, weight, mixed)]


def answer_bits(informative_columns: list[Column], answers: tuple[str, ...]) -> float:
    """The mutual information of cause and answer in bits: each of ``answers``, or none of them."""
    table = []
    for _, chance, given in informative_columns:
        shown = [given[key] for key in answers]
        table.append((chance, [*shown, max(0.0, 1 - sum(shown))]))
    return information_bits(table)


def compare(informative_columns: list[Column], finding: str) -> Check:
    """The leading cause whose chance hangs most on a finding."""
    there = math.fsum(chance * given[finding] for _, chance, given in informative_columns)
    moved = [
        (name, chance * given[finding] / there, chance * (1 - given[finding]) / (1 - there))
        for name, chance, given in informative_columns
        if name != SOMETHING_ELSE
    ]
    name, yes, no = max(moved, key=lambda move: round(abs(move[1] - move[2]), COMPARED_DIGITS))
    return Check(finding, name, yes, no)
