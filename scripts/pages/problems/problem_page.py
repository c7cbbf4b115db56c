"""Pages of problems."""

from functools import cache

from calculators.diagnose.diagnosis_at_tank import MOST_TAPS
from calculators.diagnose.follow_up import when
from calculators.diagnose.likelihood import ODDS
from calculators.diagnose.problem_table import CAUSES
from scripts.drawings.signs.sign_symbols import sign_drawings
from scripts.pages.cite import Citations
from scripts.pages.problems import drawn_signs, evidence_words, first_questions
from scripts.pages.template import book_query, render
from scripts.pages.terms import terms_used
from scripts.records.load import Library
from scripts.records.problem import Problem

URGENCY_ORDER = ("now", "this-week", "this-month", "watch")


def problem_page(slug: str, library: Library) -> str:
    """One problem as Markdown."""
    problem = library.problems[slug]
    return render(
        "problem.md.j2",
        slug=slug,
        problem=problem,
        evidence=evidence_words.grouped(problem),
        hallmark=evidence_words.HALLMARK,
        findings=library.findings,
        in_index=in_index(),
        ages=evidence_words.ages(problem),
        more=evidence_words.further_alike(slug, problem),
        when=when,
        words=library.vocabulary,
        signs=signs(problem, library),
        pictures=drawn_signs.pictures(problem, library),
        filled=[(filled, book_query(filled.inputs)) for filled in problem.calculators],
        suffers=[
            (plant_slug, plant)
            for plant_slug, plant in library.plants.items()
            if any(trouble.problem == slug for trouble in plant.troubles)
        ],
        cite=Citations(library.sources),
        problems=library.problems,
        terms=terms_used(problem, library.vocabulary["term"]),
        guides={key: guide for key, guide in library.guides.items() if slug in guide.problems},
    )


@cache
def in_index() -> frozenset[str]:
    """The signs that stand in the index of symptoms."""
    return frozenset(
        key
        for cause in CAUSES.values()
        for key, row in cause.rows.items()
        if ODDS[row.strength] > 1
    )


def signs(problem: Problem, library: Library) -> list[tuple[str, list[object]]]:
    """The signs by where one looks, in the vocabulary's order."""
    grouped = [
        (where, [sign for sign in problem.signs if sign.where == where])
        for where in library.vocabulary["where"]
    ]
    return [(where, list(findings)) for where, findings in grouped if findings]


def problems_page(library: Library) -> str:
    """The door "something looks wrong": the diagnosis at the tank, and the other ways in."""
    shown = first_questions.places(library)
    return render(
        "problems.md.j2",
        drawing=first_questions.drawing(library),
        places=shown,
        questions=first_questions.first_questions(shown),
        fields=first_questions.reading_fields(),
        names=first_questions.plant_names(library),
        most_taps=MOST_TAPS,
        drawn=sign_drawings(),
        shows={
            slug: drawn_signs.drawn(problem, library)[0]
            for slug, problem in library.problems.items()
        },
    )


def all_problems_page(library: Library) -> str:
    """Every problem, by where one sees it; the urgent ones first."""
    ordered = sorted(
        library.problems.items(), key=lambda item: URGENCY_ORDER.index(item[1].urgency)
    )
    by_place = {
        where: [
            (slug, problem, drawn_signs.drawn_at(problem, where, library))
            for slug, problem in ordered
            if any(sign.where == where for sign in problem.signs)
        ]
        for where in library.vocabulary["where"]
    }
    return render(
        "all-problems.md.j2",
        by_place={where: listed for where, listed in by_place.items() if listed},
        words=library.vocabulary,
        findings=library.findings,
    )
