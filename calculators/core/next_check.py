"""Which question would tell the leading causes apart best: expected information."""

import math
from collections.abc import Mapping
from typing import NamedTuple

from calculators.core.case_read import Case
from calculators.core.diagnosis import CAUSES, QUESTIONS, question_of, shares_of
from calculators.core.likelihood import normal

LEAST_BITS = 0.005  # less than this is not worth a look
WORTH_TELLING_APART = 0.1  # of the first cause's chance
FEWEST = 2
OF_PLANT = "plant."  # what the plant's record settles is no question for the keeper


class Check(NamedTuple):
    """A finding worth looking for, and the chance of a cause if it is there and if it is not."""

    finding: str
    bits: float
    cause: str
    if_there: float
    if_not: float


def best_check(case: Case, chances: Mapping[str, float]) -> Check | None:
    """The finding that is expected to tell most among those not known; None if none tells enough."""
    open_questions = [
        question
        for question in sorted(QUESTIONS)
        if question not in case.answers
        and not question.startswith(OF_PLANT)
        and not any(question_of(key) == question for key in case.follows)
    ]
    if not open_questions:
        return None
    chances = leading(chances)
    bits = {question: information(question, chances) for question in open_questions}
    best = max(open_questions, key=lambda question: bits[question])
    if bits[best] < LEAST_BITS:
        return None
    finding = max(QUESTIONS[best], key=lambda key: answer_bits(best, (key,), chances))
    return compare(best, finding, bits[best], chances)


def leading(chances: Mapping[str, float]) -> dict[str, float]:
    """The causes worth telling apart, at least two, as chances that add up to 1."""
    order = sorted(CAUSES, key=lambda cause: (-chances[cause], cause))
    first = chances[order[0]]
    kept = [
        cause
        for place, cause in enumerate(order)
        if place < FEWEST or chances[cause] >= WORTH_TELLING_APART * first
    ]
    return dict(zip(kept, normal([chances[cause] for cause in kept]), strict=True))


def information(question: str, chances: Mapping[str, float]) -> float:
    """Expected information of a question about the cause, in bits."""
    return answer_bits(question, tuple(QUESTIONS[question]), chances)


def answer_bits(question: str, answers: tuple[str, ...], chances: Mapping[str, float]) -> float:
    """The mutual information of cause and answer: each of ``answers``, or none of them.

    I = sum over causes c and answers a of P(c) P(a|c) log2(P(a|c) / P(a)).
    """
    columns = []
    for cause, chance in chances.items():
        given = shares_of(cause, question)
        shown = [given[key] for key in answers]
        columns.append((chance, [*shown, max(0.0, 1 - sum(shown))]))
    total = [
        math.fsum(chance * column[place] for chance, column in columns)
        for place in range(len(answers) + 1)
    ]
    return math.fsum(
        chance * share * math.log2(share / whole)
        for chance, column in columns
        for share, whole in zip(column, total, strict=True)
        if share > 0 and chance > 0
    )


def compare(question: str, finding: str, bits: float, chances: Mapping[str, float]) -> Check:
    """The cause whose chance hangs most on a finding."""
    given = {cause: shares_of(cause, question)[finding] for cause in chances}
    there = math.fsum(chances[cause] * given[cause] for cause in chances)
    yes = {cause: chances[cause] * given[cause] / there for cause in chances}
    no = {cause: chances[cause] * (1 - given[cause]) / (1 - there) for cause in chances}
    swings = max(sorted(chances), key=lambda cause: abs(yes[cause] - no[cause]))
    return Check(finding, bits, swings, yes[swings], no[swings])
