"""Where Python cannot start, a page still has its worked example and, for five of them, tables."""

import re

import pytest
from playwright.sync_api import expect

from scripts.pages.calculators.ready.ready_values import READY
from tests.browser.conftest import axe_complaints
from tests.effort import long_run, share_of

# Put before the worker's own script: what an old browser lacks, or a full phone refuses.
MISSING = {
    "no WebAssembly": "delete self.WebAssembly;",
    "nothing that unpacks": "delete self.DecompressionStream;",
    "memory refused": "WebAssembly.Memory = function () { throw new RangeError('out of memory'); };",
}


@pytest.fixture(params=share_of([*MISSING], 3))
def crippled(request, page):
    """A page whose worker lacks something that Python needs."""

    def spoil(route):
        whole = route.fetch()
        route.fulfill(response=whole, body=MISSING[request.param] + whole.text())

    page.route("**/calculator-worker.js*", spoil)
    yield page
    page.unroute_all()


def open_without_python(page, name):
    page.goto(f"calculators/{name}/")
    expect(page.locator("#loading-text")).to_contain_text("Python could not start")


@pytest.mark.starts_python
def test_the_worked_example_and_the_tables_stand_in_the_page(crippled, watch):
    open_without_python(crippled, "free-ammonia")
    expect(crippled.locator("#instead")).to_contain_text("Ready values")
    expect(crippled.locator("#answer #rows")).to_be_visible()
    expect(crippled.locator("#ready")).to_have_attribute("open", "")
    expect(crippled.locator("#ready td", has_text="DEADLY").first).to_be_visible()
    crippled.locator("#in-ph").fill("8")  # what is typed stays, and is not answered by the example
    expect(crippled.locator("#result-title")).to_have_text("No answer yet")
    expect(crippled.locator("#in-ph")).to_have_value("8")
    expect(crippled.locator("#ready table").first).to_be_visible()
    # The browser may name what it lacks before the page has heard of it.
    watch.complaints = [one for one in watch.complaints if "WebAssembly is not defined" not in one]


@long_run()
@pytest.mark.parametrize("name", share_of([*READY], 5))
def test_tables_fit_a_phone_and_print(name, page):
    page.route(re.compile("calculator-worker"), lambda route: route.abort())
    page.goto(f"calculators/{name}/")
    page.evaluate("() => { document.querySelector('#ready').open = true; }")
    width = "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"
    assert page.evaluate(width) == 0
    page.emulate_media(media="print")
    for table in page.locator("#ready table").all():
        expect(table).to_be_visible()
    cut = "() => [...document.querySelectorAll('#ready .wide')].map((one) => getComputedStyle(one).overflowX)"
    assert set(page.evaluate(cut)) == {"visible"}
    page.emulate_media(media="screen")


@long_run()
def test_the_tables_are_accessible(page):
    page.goto("calculators/free-ammonia/")
    page.evaluate("() => { document.querySelector('#ready').open = true; }")
    assert axe_complaints(page) == []


@long_run()
@pytest.mark.starts_python
def test_a_calculator_without_tables_points_to_its_worked_example(page):
    page.route("**/calculator-worker.js*", lambda route: route.fulfill(
        body="postMessage({ failed: 'no memory' });", content_type="text/javascript"))  # fmt: skip
    open_without_python(page, "units")
    expect(page.locator("#instead")).to_have_text("The worked example below stays.")
    page.unroute_all()
    page.get_by_role("button", name="Try again").tap()
    expect(page.locator("#calculator[data-answered]")).to_be_attached()
    expect(page.locator("#instead")).to_be_hidden()
