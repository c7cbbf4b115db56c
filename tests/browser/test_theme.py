"""What the base theme brings: the drawer of pages, the sides of a wide screen, light and dark by choice."""

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import go
from tests.effort import long_run, share_of

DESKTOP = {"width": 1280, "height": 800}
PAPER = "() => getComputedStyle(document.body).backgroundColor"
SCHEME = "() => getComputedStyle(document.documentElement).colorScheme"
LIGHT, DARK = "rgb(246, 243, 234)", "rgb(18, 26, 22)"
FIRST_PAINT = """window.papers = []; new PerformanceObserver(() => {
    window.papers.push(getComputedStyle(document.body).backgroundColor);
}).observe({ type: "paint", buffered: true })"""


def open_drawer(page):
    page.locator("#pages").tap()
    expect(page.locator("#all-pages")).to_be_visible()


def test_the_drawer_opens_says_so_and_closes(page):
    page.goto("about/")
    button, pages = page.locator("#pages"), page.locator("#all-pages")
    expect(button).to_have_attribute("aria-expanded", "false")
    expect(pages).to_be_hidden()
    open_drawer(page)
    expect(button).to_have_attribute("aria-expanded", "true")
    expect(pages.get_by_role("link").first).to_be_focused()
    page.keyboard.press("Escape")
    expect(pages).to_be_hidden()
    expect(button).to_be_focused()
    open_drawer(page)
    page.touchscreen.tap(380, 500)  # beside it
    expect(pages).to_be_hidden()
    expect(button).to_have_attribute("aria-expanded", "false")


@long_run()
@pytest.mark.python_alive
def test_the_drawer_leads_on_and_is_closed_there(page):
    go(page, "about/")
    open_drawer(page)
    page.locator("#all-pages").get_by_role("link", name="Names on labels").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Names on labels")
    expect(page.locator("#all-pages")).to_be_hidden()
    here = page.locator("#all-pages [aria-current]")
    expect(here).to_have_text("Names on labels")


@pytest.mark.parametrize("device", share_of(["dark", "light"], 2))
def test_light_or_dark_is_chosen_against_the_device_and_kept(page, device):
    page.emulate_media(color_scheme=device)
    page.goto("about/")
    assert page.evaluate(PAPER) == {"light": LIGHT, "dark": DARK}[device]
    for chosen, paper in (("Dark", DARK), ("Light", LIGHT)):
        open_drawer(page)
        choice = page.locator("#scheme").get_by_role("button", name=chosen)
        choice.tap()
        expect(choice).to_have_attribute("aria-pressed", "true")
        assert page.evaluate(PAPER) == paper
        page.goto("plants/lemna-minor/")
        assert page.evaluate(PAPER) == paper
        assert page.evaluate(SCHEME) == chosen.lower()
    open_drawer(page)
    page.locator("#scheme").get_by_role("button", name="Device").tap()
    assert page.evaluate(PAPER) == {"light": LIGHT, "dark": DARK}[device]


def test_the_chosen_scheme_is_there_with_the_first_paint(page):
    page.emulate_media(color_scheme="light")
    page.goto("about/")
    page.evaluate("() => localStorage.setItem('mulmbook-scheme', 'dark')")
    page.add_init_script(FIRST_PAINT)
    page.reload()
    page.wait_for_function("() => window.papers.length")
    assert page.evaluate("() => window.papers[0]") == DARK


@long_run()
def test_a_wide_screen_has_the_pages_and_the_contents_beside_the_text(page):
    page.set_viewport_size(DESKTOP)
    page.goto("plants/hygrophila-difformis/")
    pages, text = page.locator("#all-pages"), page.locator("#main")
    contents = page.get_by_role("navigation", name="On this page")
    left, middle, right = (one.bounding_box() for one in (pages, text, contents))
    assert left["x"] + left["width"] <= middle["x"]
    assert middle["x"] + middle["width"] <= right["x"]
    contents.get_by_role("link", name="Sources").click()
    expect(page.locator("#sources")).to_be_in_viewport()
    expect(
        page.locator(".doors-below")
    ).to_be_hidden()  # the pages beside the text hold the four doors
    for door in ("Plants", "Something looks wrong", "Work it out", "The shelf"):
        expect(pages.get_by_role("link", name=door, exact=True)).to_be_visible()
    expect(page.get_by_role("link", name="Animals in danger")).to_be_in_viewport()


@long_run()
def test_without_a_script_no_button_is_there_that_does_nothing(chromium, address):
    context = chromium.new_context(base_url=address, java_script_enabled=False)
    page = context.new_page()
    page.goto("about/")
    expect(page.locator("#pages")).to_be_hidden()
    expect(page.locator("#scheme")).to_be_hidden()
    context.close()
