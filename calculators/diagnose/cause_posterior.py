"""Bayes' rule over the causes, with room for something that stands in no record."""

import math
from typing import NamedTuple

from calculators.diagnose.case_read import Case
from calculators.diagnose.likelihood import (
    NAMED_BY_PLANT,
    PRIOR_WEIGHT,
    SOMETHING_ELSE_WEIGHT,
    ratio,
)
from calculators.diagnose.problem_table import CAUSES, QUESTIONS, question_of, shares_of
from calculators.science.evidence.weighing import SOMETHING_ELSE, chances_of, together

OF_PLANT = "plant."  # the questions that the plant's record settles


class Term(NamedTuple):
    """What one answer says about one cause: the logarithm of its likelihood ratio."""

    question: str
    present: str | None
    absent: frozenset[str]
    value: float | None
    log_ratio: float


def terms(cause: str, case: Case) -> list[Term]:
    """Every answer's word on a cause, sorted by question so that order never matters.

    What follows from a finding counts only where the cause says nothing about that finding itself.
    """
    evidence = []
    for question, answer in case.answers.items():
        evidence.append(term(cause, question, answer.present, answer.absent, answer.value))
    rows = CAUSES[cause].rows
    for key, (there, sources) in case.follows.items():
        if sources.isdisjoint(rows):
            gone = frozenset() if there else frozenset({key})
            evidence.append(term(cause, question_of(key), key if there else None, gone, None))
    return sorted(
        evidence,
        key=lambda entry: (
            entry.question,
            entry.present or "",
            sorted(entry.absent),
        ),
    )


def term(
    cause: str, question: str, present: str | None, absent: frozenset[str], value: float | None
) -> Term:
    """What one answer says about one cause, as the logarithm of its likelihood ratio.

    A reading's ``value`` is in the metric unit of its input.
    """
    usual, given = QUESTIONS[question], shares_of(cause, question)
    return Term(question, present, absent, value, math.log(ratio(given, usual, present, absent)))


def prior_weight(cause: str, named: tuple[str, ...]) -> float:
    """How likely a cause is before anything is seen; more where the plant's record names it.

    Where the kind of plant is the problem's hallmark, its record only says the same thing again.
    """
    counts = cause in named and not OF_ONE_KIND[cause]
    return PRIOR_WEIGHT[CAUSES[cause].prior] * (NAMED_BY_PLANT if counts else 1.0)


def is_of_one_kind(cause: str) -> bool:
    """Whether a problem comes with one kind of plant alone."""
    rows = CAUSES[cause].rows
    return any(row.hallmark and question_of(key).startswith(OF_PLANT) for key, row in rows.items())


OF_ONE_KIND = {cause: is_of_one_kind(cause) for cause in CAUSES}


def posterior(case: Case, named: tuple[str, ...]) -> dict[str, float]:
    """The probability of each cause, from 0 to 1, and of something else.

    weight = prior x what all answers say together (weighing.together); something else has a ratio of 1 for
    every finding.
    """
    logs = {
        cause: math.log(prior_weight(cause, named))
        + together([term.log_ratio for term in terms(cause, case)])
        for cause in CAUSES
    }
    logs[SOMETHING_ELSE] = math.log(SOMETHING_ELSE_WEIGHT)
    return chances_of(logs)
