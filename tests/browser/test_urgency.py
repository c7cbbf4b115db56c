"""How urgent a problem is: a badge of a line of its own, with a shape beside its word."""

import pytest
from playwright.sync_api import expect

from calculators.diagnose.questioning_answers import URGENCY
from tests.browser.conftest import go
from tests.effort import long_run

EMERGENCY = "ammonia-emergency"


@pytest.fixture(scope="module")
def words(library):
    """The word of each urgency, as the vocabulary has it."""
    return {key: row["label"] for key, row in library.vocabulary["urgency"].items()}


def lines(place):
    """What is read of a part of the page, line by line."""
    return [line.strip() for line in place.inner_text().splitlines() if line.strip()]


def test_the_calculator_says_the_words_of_the_vocabulary(words):
    assert words == URGENCY


@long_run()
def test_in_the_list_of_all_problems_it_stands_below_the_title(page, words):
    go(page, "problems/all/")
    cards = page.locator(".cards a")
    assert cards.count() > 50
    for card in cards.all():
        title, urgency, *_ = lines(card)
        assert title == card.locator("b").inner_text()
        assert urgency in words.values()


@long_run()
def test_in_search_it_stands_below_the_title(page, words):
    go(page, "search/?q=ammonia")
    card = page.locator(f'#found a[href$="problems/{EMERGENCY}/"]')
    expect(card).to_be_visible()
    title, under, *_ = lines(card)
    assert title == card.locator("b").inner_text()
    assert under.startswith(f"{words['now']} problem")
    others = page.locator("#found a:not([href*='problems/'])")
    assert others.count() > 0
    expect(others.locator(".badge")).to_have_count(0)


def test_on_the_page_of_a_problem_it_is_a_line_of_its_own(page, words):
    go(page, f"problems/{EMERGENCY}/")
    urgency, means, *_ = lines(page.locator("#main > .first"))
    assert urgency == words["now"]
    assert means.startswith("Animals")


def test_in_the_index_of_symptoms_urgent_problems_are_told_apart(page, words):
    go(page, "problems/symptoms/")
    links = page.locator(f'#main li a[href$="/{EMERGENCY}/"]')
    beside = links.evaluate_all("all => all.map((one) => one.nextElementSibling?.innerText)")
    assert beside
    assert set(beside) == {words["now"]}
    texts = page.locator("#main li:has(.badge)").all_inner_texts()
    assert all(f" {words['now']}" in text for text in texts)


def test_in_the_answer_of_the_diagnosis_it_stands_below_the_title(page, words):
    go(page, "problems/?place=water&findings=water-white-cloud")
    causes = page.locator("#diagnosis-causes summary")
    expect(causes.first).to_be_visible()
    for cause in causes.all():
        title, urgency, *_ = lines(cause)
        assert title == cause.locator("b").inner_text()
        assert urgency in words.values()


@long_run()
def test_each_urgency_has_a_shape_of_its_own(page, words):
    go(page, "problems/all/")
    shapes = {
        key: page.locator(f".badge.{key}").first.evaluate(
            "(one) => { const shape = getComputedStyle(one, '::before');"
            " return shape.clipPath + shape.borderTopWidth; }"
        )
        for key in words
    }
    assert len(set(shapes.values())) == len(words), shapes
