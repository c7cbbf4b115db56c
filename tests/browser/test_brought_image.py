"""A first visit starts Python from an image that the site brings, over a quick line and where it serves."""

import gzip

import pytest

from tests.browser.test_python_start import ANSWERS, NAMES, in_page, marks, visit
from tests.effort import long_run

BROUGHT = "image brought"  # what the worker marks
START_IMAGE = "**/runtime/start-*"


@long_run()
@pytest.mark.starts_python
def test_a_first_visit_over_a_quick_line_starts_from_the_image_that_the_site_brings(
    chromium, address, page, watch
):
    visit(page)
    assert BROUGHT in marks(page)
    _, answers = in_page(page, ANSWERS, NAMES)
    context = chromium.new_context(base_url=address)
    context.route(START_IMAGE, lambda route: route.abort())
    plain = context.new_page()
    visit(plain)
    assert BROUGHT not in marks(plain)
    assert in_page(plain, ANSWERS, NAMES) == [False, answers]
    context.close()


@long_run()
@pytest.mark.starts_python
@pytest.mark.parametrize("octets", [b"", gzip.compress(bytes(21_000_000)), b"<!doctype html>"])
def test_a_brought_image_that_does_not_serve_leaves_python_to_its_parts(page, octets):
    page.context.route(START_IMAGE, lambda route: route.fulfill(body=octets))
    visit(page)
    assert "Python started" in marks(page)
    assert in_page(page, ANSWERS, NAMES[:1])[1]


@pytest.mark.starts_python
def test_a_brought_image_that_never_comes_is_waited_for_a_moment_only(page):
    page.context.route(START_IMAGE, lambda route: None)
    visit(page)
    assert BROUGHT not in marks(page)
    page.context.unroute_all()


@long_run()
@pytest.mark.starts_python
def test_an_engine_that_tells_of_no_files_starts_python_from_its_parts(page):
    mute = """
        performance.getEntriesByName = () => [];
        PerformanceObserver.prototype.observe = () => {};
    """

    def silence(route):
        whole = route.fetch()
        route.fulfill(response=whole, body=mute + whole.text())

    page.route("**/calculator-worker.js*", silence)
    visit(page)
    assert BROUGHT not in marks(page)
    page.unroute_all()


def test_a_line_is_quick_by_how_its_first_large_file_came(page):
    page.goto("about/")
    asked = """
        const { isQuick } = await import(new URL("assets/brought-image.js", root));
        return given.map(([encodedBodySize, responseEnd]) =>
          isQuick(encodedBodySize && { encodedBodySize, responseStart: 100, responseEnd }));
    """
    of_bytes_by_ms = [(180_000, 228), (180_000, 229), (800_000, 100), (0, 101), (None, 0)]
    assert in_page(page, asked, of_bytes_by_ms) == [True, False, True, False, False]
