"""Drawings of signs in the diagnosis: beside what is tapped, asked and answered, of one file."""

from playwright.sync_api import expect

from scripts.drawings.signs.sign_symbols import sign_drawings
from scripts.pages.problems.drawn_signs import drawn
from tests.browser.conftest import go
from tests.effort import long_run

WIDTH = "(one) => one.getBoundingClientRect().width"
MOST_TAPS = 6
USED = "(all) => all.map((one) => one.getAttribute('href').split('#')[1])"
ONE_LINE = 36  # px, of words
TALLEST = 52  # px, of a sign that stands in one line; a button of words alone has 48


def drawn_in(place):
    return place.locator("use").evaluate_all(USED)


@long_run()
def test_each_sign_to_tap_shows_its_drawing_and_stands_hardly_taller(page):
    go(page, "problems/?place=coating&listing=1")
    chips = page.locator("#diagnosis-chips button")
    expect(chips.first).to_be_visible()
    shown = 0
    for chip in chips.all():
        key = chip.get_attribute("data-present")
        assert drawn_in(chip) == [key] * (key in sign_drawings()), key
        shown += key in sign_drawings()
        if chip.locator("span").bounding_box()["height"] < ONE_LINE:
            assert chip.bounding_box()["height"] <= TALLEST
    assert shown > 5


@long_run()
def test_a_question_of_yes_or_no_shows_what_it_asks_for(page):
    go(page, "problems/?place=coating&findings=coat-black-tufts&asked=coat-black-tufts")
    expect(page.locator("#diagnosis-causes details").first).to_be_visible()
    yes = page.locator("#diagnosis-chips button:has-text('Yes')")
    for _ in range(MOST_TAPS):
        if yes.count():
            break
        before = page.locator("#diagnosis-question").inner_text()
        page.locator("#diagnosis-chips button:has-text('Don’t know')").click()
        expect(page.locator("#diagnosis-question")).not_to_have_text(before)
    expect(yes).to_have_count(1)
    key = yes.get_attribute("data-present")
    assert drawn_in(page.locator("#diagnosis-question")) == [key] * (key in sign_drawings())
    assert drawn_in(page.locator("#diagnosis-chips")) == []


def test_each_problem_of_the_answer_shows_the_sign_that_its_page_shows_first(page, library):
    go(page, "problems/?place=water&findings=water-white-cloud")
    causes = page.locator("#diagnosis-causes details")
    expect(causes.first).to_be_visible()
    for cause in causes.all():
        problem = library.problems[cause.get_attribute("data-problem")]
        assert drawn_in(cause.locator("summary")) == drawn(problem, library)[:1]


def test_all_drawings_come_as_one_file_and_the_first_screen_waits_for_none(page):
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    go(page, "problems/")
    page.wait_for_load_state("networkidle")
    assert not any("signs.svg" in url for url in asked)
    page.locator('#diagnosis-places summary:has-text("Surface")').click()
    expect(page.locator("#diagnosis-chips use").first).to_be_attached()
    page.wait_for_load_state("networkidle")
    assert sum("signs.svg" in url for url in asked) <= 1


def test_the_index_of_symptoms_shows_them_with_no_script(page):
    go(page, "problems/symptoms/")
    shown = page.locator("#main li > .thumb")
    assert shown.count() > 80
    assert shown.first.evaluate(WIDTH) == 48
