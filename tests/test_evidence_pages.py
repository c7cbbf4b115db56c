"""A problem's evidence on its page: every row in words, and what tells it from its neighbours."""

from html import unescape

import pytest

from calculators.core.run import run
from calculators.diagnose.problem_table import CAUSES, FINDINGS
from scripts.pages.problems.evidence_words import alike, apart, further_alike, grouped
from scripts.pages.problems.problem_page import problem_page
from tests.effort import share_of


def test_every_row_that_says_something_stands_on_the_page(library):
    for slug, problem in library.problems.items():
        rows = [row for _, found in grouped(problem) for row in found]
        assert len(rows) == sum(row.strength != "neutral" for row in problem.evidence), slug
        text = unescape(problem_page(slug, library)).replace("\u00a0", " ")
        for row in rows:
            assert f"sign-{row.finding}" in text or FINDINGS[row.finding].label[1:] in text, slug
            assert f"{row.why}"[:20] in text, (slug, row.why)


def test_strength_and_hallmark_are_said_in_words(library):
    text = problem_page("potassium-starvation", library)
    strong = text.split("Speaks strongly for it")[1].split("**Speaks for it**")[0]
    assert "sign-old-leaves-pinholes" in strong
    assert "nearly always there with this trouble" in strong
    assert "Likelier: tank three to twelve months old or tank more than a year old." in text
    assert "Week 2 to 4 (day 14 to 28)" in text


@pytest.mark.parametrize("slug", share_of([*CAUSES], 5))
def test_what_tells_two_alike_apart_does_so_in_the_diagnosis_too(slug, library):
    for one in further_alike(slug, library.problems[slug]):
        assert one.problem != slug
        assert one.problem not in {named.problem for named in library.problems[slug].mistaken_for}
        there = next(key for key in (slug, one.problem) if CAUSES[key].name == one.there)
        gone = ({slug, one.problem} - {there}).pop()

        def share(problem, answer, key=one.finding):
            found = run("diagnose", {answer: [key]})["outputs"]["ranked"]
            return next(
                (row["probability_percent"] for row in found if row["problem"] == problem), 0
            )

        assert share(there, "findings") >= share(there, "absent")
        assert share(there, "findings") >= share(gone, "findings")


def test_likeness_is_of_signs_not_of_ages():
    assert "ammonia-emergency" not in alike("potassium-starvation", set())
    assert "floater-shading" in alike("low-light-legginess", set())
    assert apart("dawn-low-oxygen", "ammonia-emergency").finding == "gasp-before-dawn-only"
