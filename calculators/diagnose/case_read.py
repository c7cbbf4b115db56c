"""From what a keeper says and measures to answers: present, absent, or not known."""

import itertools
from collections.abc import Collection, Iterator, Mapping
from typing import Any, NamedTuple

from calculators.diagnose.problem_table import FINDINGS, QUESTIONS, question_of


class CaseAnswer(NamedTuple):
    """The answer to one question. ``value`` is the reading that gave it."""

    present: str | None
    absent: frozenset[str] = frozenset()
    value: float | None = None


class NewWater(NamedTuple):
    """What is known of the water that changes are made with; None is not read."""

    tap_ph: float | None = None
    tap_kh_dh: float | None = None
    tap_gh_dh: float | None = None
    tap_nitrate_mg_l: float | None = None
    tap_ammonia_mg_n_l: float | None = None


UNREAD = NewWater()


class Case(NamedTuple):
    """All that is known: answers by question, what follows from them, and what did not agree.

    ``follows`` has, for each finding that follows, whether it is there and which findings say so.
    The water for changes is no evidence: it decides only how water may be changed.
    """

    answers: dict[str, CaseAnswer]
    follows: dict[str, tuple[bool, frozenset[str]]]
    disagree: list[str]
    tap: NewWater = UNREAD

    def present(self) -> set[str]:
        """Every finding that is there, said or following."""
        present = {answer.present for answer in self.answers.values() if answer.present}
        return present | {key for key, (there, _) in self.follows.items() if there}

    def at_odds(self) -> list[tuple[str, str]]:
        """Pairs of findings that were both said to be there though one excludes the other."""
        present = {answer.present for answer in self.answers.values() if answer.present}
        return [
            (first, other)
            for first, other in itertools.combinations(sorted(present), 2)
            if excluded(first, other) or excluded(other, first)
        ]


def excluded(first: str, other: str) -> bool:
    """Whether a finding, or what it implies, excludes another."""
    implied = closure(first)
    return any(other in FINDINGS[key].excludes for key in implied)


def read_case(
    present: Collection[str],
    absent: Collection[str],
    figures: Mapping[str, Any],
    tap: NewWater = UNREAD,
) -> Case:
    """Put together findings, findings looked for and not there, figures by input key, and the ``tap``.

    A figure settles its question; a finding that says otherwise is named in ``disagree``.
    """
    answers = {key: measured(key, value) for key, value in figures.items() if key in QUESTIONS}
    disagree = []
    for question in {question_of(key) for key in (*present, *absent)}:
        there = [key for key in QUESTIONS[question] if key in present]
        gone = frozenset(key for key in QUESTIONS[question] if key in absent)
        if question not in answers:
            answers[question] = CaseAnswer(there[0] if there else None, gone)
        elif (there and answers[question].present != there[0]) or answers[question].present in gone:
            disagree += [*there, *sorted(gone)]
    return Case(answers, consequences(answers), sorted(disagree), tap)


def measured(question: str, value: Any) -> CaseAnswer:
    """The answer that a figure gives."""
    bands = QUESTIONS[question]
    hit = next((key for key in bands if in_band(key, value)), None)
    shown = value if isinstance(value, float | int) else None
    return CaseAnswer(hit, frozenset() if hit else frozenset(bands), shown)


def in_band(key: str, value: Any) -> bool:
    """Whether a figure makes a finding true."""
    finding = FINDINGS[key]
    if finding.equals is not None:
        return bool(value == finding.equals)
    above = finding.above is None or value > finding.above
    return above and (finding.up_to is None or value <= finding.up_to)


def consequences(answers: Mapping[str, CaseAnswer]) -> dict[str, tuple[bool, frozenset[str]]]:
    """What follows from the answers for questions that have none, and from which findings."""
    consequences_by_key: dict[str, tuple[bool, frozenset[str]]] = {}
    for answer in answers.values():
        for key, there, source in following(answer):
            if question_of(key) in answers:
                continue
            before = consequences_by_key.get(key, (there, frozenset[str]()))
            # two findings may say opposite things of a third; then it counts as there
            consequences_by_key[key] = (before[0] or there, before[1] | {source})
    return consequences_by_key


def following(answer: CaseAnswer) -> Iterator[tuple[str, bool, str]]:
    """What follows from one answer, as (finding, whether it is there, the finding that says so)."""
    if answer.present:
        implied = closure(answer.present)
        for key in implied:
            if key != answer.present:
                yield key, True, answer.present
            for out in FINDINGS[key].excludes:
                yield out, False, answer.present
        for key, finding in FINDINGS.items():
            if not implied.isdisjoint(finding.excludes) and key not in implied:
                yield key, False, answer.present
    for gone in answer.absent:
        for key in FINDINGS:
            if key != gone and gone in closure(key):
                yield key, False, gone


def closure(key: str) -> set[str]:
    """A finding and all that it implies."""
    implied, waiting = set[str](), [key]
    while waiting:
        finding = waiting.pop()
        if finding not in implied:
            implied.add(finding)
            waiting += FINDINGS[finding].implies
    return implied
