"""A printed key of yes and no questions, animals first.

The key is grown from the likelihoods that the calculator uses, so that the two cannot drift apart.
In each place it first runs through what can be seen there, the likeliest first; a yes leads to the
few problems which that sign speaks for, and further questions tell those apart.
"""

from typing import NamedTuple

from calculators.diagnose.cause_posterior import OF_PLANT
from calculators.diagnose.likelihood import PRIOR_WEIGHT
from calculators.diagnose.problem_table import CAUSES, FINDINGS, question_of
from scripts.pages.problems.key_grower import STRONGLY, Branch, Couplet, Grower, raises_odds
from scripts.records.load import Library

FIRST = ("animals", "water")  # animals before leaves
NOT_WALKED = ("recently",)  # events tell problems apart, but nobody looks for a trouble there
URGENT = 4.0  # problems that endanger animals are asked about sooner than their number earns


class Section(NamedTuple):
    """The key for one place where one looks; ``danger`` holds the signs of animals in danger alone."""

    where: str
    danger: bool
    first: Branch
    couplets: list[Couplet]
    walked: list[Couplet]  # those that run through the signs of the place


def key(library: Library) -> list[Section]:
    """The whole key, animals in danger first; couplets are numbered through."""
    sections, number = [], 1
    rest = [place for place in library.vocabulary["looks"] if place not in (*FIRST, *NOT_WALKED)]
    parts = [("animals", True), *((place, False) for place in (*FIRST, *rest))]
    for where, danger in parts:
        grower = Grower(where, signs(where, danger), number)
        first = grower.walk(start(grower.signs), frozenset(), 0)
        couplets, walked = sorted(grower.couplets), sorted(grower.walked)
        sections.append(Section(where, danger, first, couplets, walked))
        number += len(grower.couplets)
    return sections


def signs(where: str, danger: bool) -> list[str]:
    """What one can point at in a place: signs that speak strongly for something.

    A sign that is a special case of another in the same place is left to be asked after that one.
    """
    names = [
        name
        for name, finding in FINDINGS.items()
        if finding.where == where
        and (where != "animals" or finding.danger == danger)
        and not question_of(name).startswith(OF_PLANT)
        and any(raises_odds(cause, name, STRONGLY) for cause in CAUSES.values())
    ]
    return [name for name in names if not set(FINDINGS[name].implies) & set(names)]


def start(here: list[str]) -> dict[str, float]:
    """The problems that have a sign in a place, by how common they are, and sooner if urgent."""
    return {
        slug: PRIOR_WEIGHT[cause.prior] * (URGENT if cause.urgency == "now" else 1.0)
        for slug, cause in CAUSES.items()
        if any(raises_odds(cause, name) for name in here)
    }


def steps(section: Section) -> list[int]:
    """How many questions each end of a section takes."""
    by_number = {couplet.number: couplet for couplet in section.couplets}

    def below(lead: Branch, depth: int) -> list[int]:
        if lead.couplet is None:
            return [depth]
        couplet = by_number[lead.couplet]
        return [*below(couplet.yes, depth + 1), *below(couplet.no, depth + 1)]

    return below(section.first, 0)
