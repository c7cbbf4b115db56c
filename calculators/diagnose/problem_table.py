"""The findings and causes of the records, as the diagnosis needs them."""

from itertools import pairwise
from typing import Any, NamedTuple

from calculators.core.data import read_table
from calculators.diagnose.likelihood import ODDS, USUAL, shares


class FindingEntry(NamedTuple):
    """Something that a keeper can see, remember or measure."""

    where: str
    label: str
    question: str
    usual: str  # a class of how often it shows without the cause in question
    danger: bool = False  # animals may be in danger, whatever the cause
    input: str | None = None  # the input that settles it
    above: float | None = None  # not including
    up_to: float | None = None  # including
    equals: str | None = None
    implies: tuple[str, ...] = ()
    excludes: tuple[str, ...] = ()


class EvidenceRow(NamedTuple):
    """What a finding says about a cause."""

    strength: str
    hallmark: bool
    why: str


class ChangeOrdered(NamedTuple):
    """The change of water that a first action orders: its share by a word, and the words that order it."""

    share: str
    words: str


class CauseEntry(NamedTuple):
    """A problem record, as far as the diagnosis needs it.

    ``shared_root``: a word that problems of one root share. ``slowly``: a large, quick change of water
    would do harm. ``change``: the change of water that the first action orders, and ``besides``: the first
    action without it; None where it orders none.
    """

    name: str
    urgency: str
    prior: str
    shared_root: str | None
    first_action: str
    slowly: bool
    change: ChangeOrdered | None
    besides: str | None
    this_week: tuple[str, ...]
    expect: tuple[dict[str, Any], ...]
    ask: str
    calculators: tuple[dict[str, Any], ...]
    rows: dict[str, EvidenceRow]


def read_cause(fields: dict[str, Any]) -> CauseEntry:
    """One cause, from its fields by name."""
    rows = {name: EvidenceRow(*row) for name, row in fields["rows"].items()}
    change = ChangeOrdered(**fields["change"]) if fields["change"] else None
    return CauseEntry(**{**fields, "rows": rows, "change": change})


class PlantEvidence(NamedTuple):
    """A plant record: what of it is evidence, and the problems that it names."""

    name: str
    habit: str
    genus: str
    nitrogen_role: str
    bought_as: str
    troubles: tuple[str, ...] = ()


TABLE = read_table("diagnosis")
FINDINGS = {key: FindingEntry(**fields) for key, fields in TABLE["findings"].items()}
CAUSES = {key: read_cause(fields) for key, fields in TABLE["causes"].items()}
PLANTS = {key: PlantEvidence(**fields) for key, fields in TABLE["plants"].items()}
WHERE: dict[str, str] = TABLE["where"]


def upper_edge(key: str) -> float:
    """The figure up to which a finding of a reading holds, in the reading's metric unit.

    Raises ``ValueError`` where it has none.
    """
    edge = FINDINGS[key].up_to
    if edge is None:
        raise ValueError(f"the finding {key} has no upper edge")
    return edge


def question_of(key: str) -> str:
    """The question that a finding answers: findings of one input are answers to the same one."""
    return FINDINGS[key].input or key


def covers_all(bands: list[FindingEntry]) -> bool:
    """Whether bands leave no figure out, so that one of them must be true."""
    ordered = sorted(bands, key=lambda band: -1.0 if band.above is None else band.above)
    if ordered[0].equals or ordered[0].above is not None or ordered[-1].up_to is not None:
        return False
    return all(low.up_to == high.above for low, high in pairwise(ordered))


def read_questions() -> dict[str, dict[str, float]]:
    """Each question with the probability of its answers when the trouble is something else."""
    questions: dict[str, dict[str, float]] = {}
    for key, finding in FINDINGS.items():
        questions.setdefault(question_of(key), {})[key] = USUAL[finding.usual]
    for answers in questions.values():
        if len(answers) > 1 and covers_all([FINDINGS[key] for key in answers]):
            total = sum(answers.values())
            answers.update({key: share / total for key, share in answers.items()})
    return questions


QUESTIONS = read_questions()


def read_shares(cause: CauseEntry) -> dict[str, dict[str, float]]:
    """The probability of each answer given a cause, for the questions it says something about."""
    return {
        question: shares(
            answers,
            {key: ODDS[cause.rows[key].strength] for key in answers if key in cause.rows},
            [key for key in answers if key in cause.rows and cause.rows[key].hallmark],
        )
        for question, answers in QUESTIONS.items()
        if not cause.rows.keys().isdisjoint(answers)
    }


SHARES = {key: read_shares(cause) for key, cause in CAUSES.items()}
# The same by question: the causes that say something about it.
TELLING = {
    question: {cause: told[question] for cause, told in SHARES.items() if question in told}
    for question in QUESTIONS
}


def shares_of(cause: str, question: str) -> dict[str, float]:
    """The probability of each answer to a question given a cause; of a question that tells nothing about
    it, that of any other trouble. Raises ``KeyError`` for a cause or question that is unknown."""
    return SHARES[cause].get(question, QUESTIONS[question])
