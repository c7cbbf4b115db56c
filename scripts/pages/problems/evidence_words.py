"""A problem's evidence in words: what speaks for it and against it, and what tells it from its neighbours."""

import math
from typing import NamedTuple

from calculators.diagnose.cause_posterior import OF_PLANT
from calculators.diagnose.likelihood import ODDS
from calculators.diagnose.next_check import answer_bits
from calculators.diagnose.problem_table import CAUSES, FINDINGS, QUESTIONS, question_of, shares_of
from scripts.records.problem import Evidence, Problem

TITLES = {
    "strong-for": "Speaks strongly for it",
    "for": "Speaks for it",
    "against": "Speaks against it",
    "rules-out": "All but rules it out",
}
HALLMARK = "nearly always there with this trouble"
MOST_ALIKE = 2
LEAST_ALIKE = 2.0  # shared signs, as the sum of the weaker log odds; one shared strong sign is 2.8
AGE, PLANTED = "tank_age_days", "days_since_planting"


class TellingSign(NamedTuple):
    """A problem that looks alike, and the one observation that tells the two apart best."""

    problem: str
    name: str
    finding: str
    there: str
    gone: str


def grouped(problem: Problem) -> list[tuple[str, list[Evidence]]]:
    """Evidence rows by strength in words, hallmarks first; what says nothing is left out."""
    groups = []
    for strength, title in TITLES.items():
        rows = [row for row in problem.evidence if row.strength == strength]
        if rows:
            groups.append((title, sorted(rows, key=lambda row: not row.hallmark)))
    return groups


def apart(slug: str, other: str) -> TellingSign | None:
    """The observation that tells two problems apart best, or None where the records know none."""
    bits = {key: bits_between(key, slug, other) for key in FINDINGS if is_observation(key)}
    best = max(bits, key=lambda key: bits[key])
    if bits[best] <= 0:
        return None
    mine, theirs = (shares_of(problem, question_of(best))[best] for problem in (slug, other))
    this, that = CAUSES[slug].name, CAUSES[other].name
    there, gone = (this, that) if mine > theirs else (that, this)
    return TellingSign(other, that, best, there, gone)


def bits_between(finding: str, slug: str, other: str) -> float:
    """What a finding tells between two problems, in bits."""
    name = question_of(finding)
    pair = [(problem, 0.5, shares_of(problem, name)) for problem in (slug, other)]
    return answer_bits(pair, (finding,))


def is_observation(key: str) -> bool:
    """Whether a finding is seen or read at the tank, rather than being the kind of plant."""
    return not question_of(key).startswith(OF_PLANT)


def alike(slug: str, besides: set[str]) -> list[str]:
    """The problems that share most of its signs, but those named already."""
    others = {
        other: likeness(slug, other) for other in CAUSES if other != slug and other not in besides
    }
    order = sorted(others, key=lambda other: (-others[other], other))
    return [other for other in order if others[other] >= LEAST_ALIKE][:MOST_ALIKE]


def likeness(slug: str, other: str) -> float:
    """How much the signs for two problems have in common: the weaker of the two log odds, summed."""
    mine, theirs = CAUSES[slug].rows, CAUSES[other].rows
    return math.fsum(
        min(math.log(ODDS[row.strength]), math.log(ODDS[theirs[key].strength]))
        for key, row in mine.items()
        if key in theirs
        and FINDINGS[key].input is None  # troubles of one age of tank need not look alike
        and ODDS[row.strength] > 1
        and ODDS[theirs[key].strength] > 1
    )


def further_alike(slug: str, problem: Problem) -> list[TellingSign]:
    """The likest problems that the record does not name itself, with what tells them apart."""
    named = {
        alike_problem.problem for alike_problem in problem.mistaken_for if alike_problem.problem
    }
    return [difference for other in alike(slug, named) if (difference := apart(slug, other))]


def ages(problem: Problem) -> list[str]:
    """At which age of the tank, and how long after planting, it is likelier or unlikely."""
    sentences = []
    for name in (AGE, PLANTED):
        rows = {row.finding: ODDS[row.strength] for row in problem.evidence}
        bands = [key for key in QUESTIONS[name] if key in rows]
        for words, likelier in (("Likelier", True), ("Unlikely", False)):
            labels = [
                FINDINGS[key].label
                for key in bands
                if rows[key] != 1 and (rows[key] > 1) == likelier
            ]
            if labels:
                sentences.append(f"{words}: {' or '.join(labels)}.")
    return sentences
