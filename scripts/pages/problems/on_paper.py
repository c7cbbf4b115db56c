"""Diagnosis on paper: pages of the printed key and of the index of symptoms, from the same records."""

from collections.abc import Iterator
from typing import NamedTuple

from calculators.diagnose.likelihood import ODDS, PRIOR_WEIGHT
from calculators.diagnose.problem_table import CAUSES, FINDINGS
from scripts.drawings.signs.sign_symbols import sign_drawings
from scripts.pages.problems.printed_key import key
from scripts.pages.template import render
from scripts.records.load import Library


class Symptom(NamedTuple):
    """A finding, and the problems for which it speaks strongly, and those for which it speaks."""

    key: str
    label: str
    strongly: tuple[str, ...]
    also: tuple[str, ...]


def symptom_index(library: Library) -> Iterator[tuple[str, list[Symptom]]]:
    """Every finding that speaks for a problem, by where one looks."""
    for where in library.vocabulary["looks"]:
        symptoms = [
            Symptom(
                name,
                finding.label,
                problems_with_strength(name, "strong-for"),
                problems_with_strength(name, "for"),
            )
            for name, finding in FINDINGS.items()
            if finding.where == where
        ]
        yield where, [symptom for symptom in symptoms if symptom.strongly or symptom.also]


def problems_with_strength(finding: str, strength: str) -> tuple[str, ...]:
    """The problems for which a finding has this strength, the commonest first."""
    assert strength in ODDS
    order = sorted(CAUSES, key=lambda slug: (-PRIOR_WEIGHT[CAUSES[slug].prior], slug))
    return tuple(
        slug
        for slug in order
        if finding in CAUSES[slug].rows and CAUSES[slug].rows[finding].strength == strength
    )


def key_page(library: Library) -> str:
    """The printed key as Markdown."""
    return render(
        "key.md.j2",
        sections=key(library),
        causes=CAUSES,
        findings=FINDINGS,
        words=library.vocabulary,
    )


def symptoms_page(library: Library) -> str:
    """The index of symptoms as Markdown."""
    return render(
        "symptoms.md.j2",
        index=[(where, symptoms) for where, symptoms in symptom_index(library) if symptoms],
        drawn=sign_drawings(),
        causes=CAUSES,
        words=library.vocabulary,
    )
