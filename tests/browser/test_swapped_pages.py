"""A tapped link swaps the page while Python runs: the old writes nothing into the new, the last tap wins."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import example_address, go, wait_for_answer

FIRST = "calculators/free-ammonia/"
NEXT = "calculators/ammonia-change/"
OTHER = "calculators/oxygen/"

pytestmark = pytest.mark.python_alive


class Held:
    """The replies that a page waits for, kept back until they are let go."""

    def __init__(self, page, path):
        self.page, self.routes, self.address = page, [], f"**/{path}"
        page.route(self.address, lambda route: self.routes.append(route))

    def follow(self, path):
        """Tap a link to ``path``, whose page does not come yet."""
        self.page.evaluate(FOLLOW, path)
        while not self.routes:
            self.page.wait_for_timeout(10)

    def let_go(self):
        for route in self.routes:
            route.continue_()
        self.page.unroute(self.address)  # the page serves other tests too


FOLLOW = """(path) => {
    window.left = document.querySelector("main");
    const href = new URL(path, document.body.dataset.root).href;
    const link = Object.assign(document.createElement("a"), { href });
    document.body.append(link);
    link.click(); }"""


def arrived(page):
    page.wait_for_function("() => document.querySelector('main') !== window.left")
    return wait_for_answer(page)


def test_figures_of_a_page_that_is_left_do_not_reach_the_next(page):
    go(page, example_address("free-ammonia", temperature_c=24))
    wait_for_answer(page)
    answers = page.locator("#calculator").get_attribute("data-answered")
    held = Held(page, NEXT)
    held.follow(NEXT)
    page.locator("#in-ph").fill("8.1")
    expect(page.locator("#calculator")).not_to_have_attribute("data-answered", answers)
    held.let_go()
    arrived(page)
    expect(page).to_have_url(re.compile(f"/{NEXT}$"))
    expect(page.locator("#in-temperature_c")).to_have_value("")
    assert page.evaluate("() => history.state.given.ph") in (None, "")
    expect(page.locator("#left-out")).to_be_hidden()


def test_of_two_taps_the_last_decides_which_page_stands(page):
    go(page, FIRST)
    wait_for_answer(page)
    held = Held(page, NEXT)
    held.follow(NEXT)
    page.evaluate(FOLLOW, OTHER)
    arrived(page)
    expect(page.locator("#calculator")).to_have_attribute("data-calculator", "oxygen")
    held.let_go()
    page.wait_for_timeout(300)
    expect(page.locator("#calculator")).to_have_attribute("data-calculator", "oxygen")
    expect(page).to_have_url(re.compile(f"/{OTHER}$"))
