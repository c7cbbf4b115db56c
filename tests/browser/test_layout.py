"""How pages keep their shape: large letters, a phone on its side, nothing that moves, the keyboard."""

import pytest
from playwright.sync_api import expect

from scripts.site.page_types import PAGE_TYPES
from tests.browser.conftest import wait_for_answer
from tests.effort import long_run, share_of

MOST_SHIFT = (
    0.02  # the sum of a page's layout shifts; below 0.1 counts as good: web.dev/articles/cls
)
DOUBLE = "() => { document.documentElement.style.fontSize = '200%'; }"
SIDEWAYS = "() => document.documentElement.scrollWidth"
# Cells of the table whose words do not stand in them.
MOVES_IN_ITSELF = """() => [...document.querySelectorAll("table.held :is(th, td)")]
    .filter((one) => one.scrollWidth > one.clientWidth + 1).map((one) => one.textContent)"""
ON_ITS_SIDE = {"width": 844, "height": 390}
LEAST_FREE = 0.5  # of the height of a phone on its side
# The height that stays over the bars that are fixed to an edge.
COVERED = """() => [...document.querySelectorAll("body *")]
    .filter((one) => getComputedStyle(one).position === "fixed" && one.offsetHeight)
    .reduce((sum, one) => sum + one.offsetHeight, 0)"""
# An entry that follows a tap is no fault; every other counts.
HEAR_SHIFTS = """window.shifts = 0; new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) if (!entry.hadRecentInput) window.shifts += entry.value;
}).observe({ type: "layout-shift", buffered: true })"""
SETTLED = (
    """() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"""
)


@pytest.fixture
def cold(chromium, address):
    """A page of a context of its own, in which Python has to start."""
    context = chromium.new_context(
        base_url=address, viewport={"width": 390, "height": 844}, has_touch=True
    )
    context.add_init_script(HEAR_SHIFTS)
    yield context.new_page()
    context.close()


@long_run()
def test_letters_of_twice_the_size_make_no_page_scroll_sideways(page):
    too_wide = {}
    for path in share_of(list(PAGE_TYPES.values()), 9):
        page.goto(path)
        page.wait_for_load_state("networkidle")
        page.evaluate(DOUBLE)
        width = page.evaluate(SIDEWAYS)
        if width > 390:
            too_wide[path] = width
    assert too_wide == {}


@long_run()
@pytest.mark.parametrize("size", ["100%", "200%"])
def test_on_a_phone_the_experiments_stand_whole_in_the_page(page, size):
    page.goto("nitrogen-model/")
    page.evaluate("(size) => { document.documentElement.style.fontSize = size; }", size)
    room, table = page.evaluate(
        "() => [document.querySelector('#main'), document.querySelector('table.held')]"
        ".map((one) => one.getBoundingClientRect().right)"
    )
    assert table <= room
    assert page.evaluate(MOVES_IN_ITSELF) == []


@long_run()
@pytest.mark.parametrize("size", share_of(["200%", "100%"], 2))
def test_a_phone_on_its_side_has_room_beside_the_bars(page, size):
    page.set_viewport_size(ON_ITS_SIDE)
    for path in ("", "plants/table/", "calculators/stocking/", "shelf/new/"):
        page.goto(path)
        page.evaluate("(size) => { document.documentElement.style.fontSize = size; }", size)
        free = 1 - page.evaluate(COVERED) / ON_ITS_SIDE["height"]
        assert free >= LEAST_FREE, (path, free)
        assert page.evaluate(SIDEWAYS) <= ON_ITS_SIDE["width"], path


@long_run()
@pytest.mark.parametrize(
    "name", share_of(["stocking", "units", "nitrogen-forecast", "surface-cover"], 4)
)
def test_nothing_moves_while_a_calculator_starts(cold, name):
    cold.goto(f"calculators/{name}/")
    wait_for_answer(cold)
    cold.evaluate(SETTLED)
    assert cold.evaluate("() => window.shifts") <= MOST_SHIFT


@long_run()
@pytest.mark.parametrize(
    "path", share_of(["shelf/", "plants/table/", "search/?q=ambulia", "shelf/new/"], 4)
)
def test_nothing_moves_while_a_page_opens(cold, path):
    cold.goto(path)
    cold.wait_for_load_state("networkidle")
    cold.evaluate(SETTLED)
    assert cold.evaluate("() => window.shifts") <= MOST_SHIFT


@long_run()
def test_the_switch_of_tanks_has_its_room_before_it_comes(cold):
    cold.goto("shelf/")
    cold.locator("#demo-load").tap()
    expect(cold.locator("#stand-at")).to_be_visible()
    cold.goto("plants/")
    expect(cold.locator("#stand-at")).to_be_visible()
    cold.evaluate(SETTLED)
    assert cold.evaluate("() => window.shifts") <= MOST_SHIFT


@long_run()
def test_a_slash_leads_to_search_and_arrows_go_through_what_it_found(page):
    page.goto("plants/")
    page.keyboard.press("/")
    expect(page.locator("#finder")).to_be_visible()
    field = page.locator("#query")
    field.fill("ambulia")
    links = page.locator("#found a")
    expect(links.nth(1)).to_be_visible()
    field.press("ArrowDown")
    expect(links.nth(0)).to_be_focused()
    page.keyboard.press("ArrowDown")
    expect(links.nth(1)).to_be_focused()
    page.keyboard.press("ArrowUp")
    page.keyboard.press("ArrowUp")
    expect(field).to_be_focused()


@long_run()
def test_a_slash_that_is_typed_stays_typed(page):
    page.goto("search/")
    page.locator("#query").press("/")
    expect(page.locator("#query")).to_have_value("/")
    page.goto("")
    page.keyboard.press("/")
    expect(page.locator("#query")).to_be_focused()
    expect(page.locator("#query")).to_have_value("")


def test_on_a_wide_screen_the_answer_stands_beside_the_form_and_stays_in_view(page):
    page.set_viewport_size({"width": 1280, "height": 800})
    page.goto("calculators/stocking/")
    form, result = (page.locator(one).bounding_box() for one in ("#inputs", ".result"))
    assert result["x"] >= form["x"] + form["width"]
    assert result["y"] < 800
    page.locator("#inputs").evaluate("(one) => one.scrollIntoView({ block: 'end' })")
    expect(page.locator("#result-title")).to_be_in_viewport()


@long_run()
def test_on_a_wide_screen_a_range_in_words_and_its_mark_stand_below_the_bar(context):
    page = context.new_page()
    page.set_viewport_size({"width": 1280, "height": 800})
    for path in ("animals/paracheirodon-innesi/", "plants/hygrophila-difformis/"):
        page.goto(path)
        beside = page.locator(".bars dd").evaluate_all(
            """(rows) => rows.filter((row) => {
            const bar = row.querySelector(".bar").getBoundingClientRect();
            const words = row.querySelector("b").getBoundingClientRect();
            const mark = row.querySelector(".mark").getBoundingClientRect();
            return words.top < bar.bottom - 1 || mark.top < bar.bottom - 1;
        }).map((row) => row.textContent)"""
        )
        assert page.locator(".bars dd").count() > 3
        assert beside == [], path
    page.close()


@long_run()
def test_buttons_in_a_row_stand_at_one_height_the_one_for_a_file_too(context):
    page = context.new_page()
    page.set_viewport_size({"width": 1280, "height": 800})
    page.goto("shelf/")
    page.locator("#demo-load").click()
    expect(page.locator("#copy-save")).to_be_visible()
    tops = page.locator("#board-copy .after > :is(button, .button)").evaluate_all(
        "(buttons) => buttons.map((one) => Math.round(one.getBoundingClientRect().top))"
    )
    assert len(tops) == 3
    assert len(set(tops)) == 1
    page.close()


LONE_SIGNS = """() => [...document.querySelectorAll("#main .mark.sign:has(.hidden)")].filter((sign) => {
    const before = sign.previousSibling;
    if (before?.nodeType !== Node.TEXT_NODE || !before.textContent.trim()) return false;
    const range = document.createRange();
    range.selectNodeContents(before);
    const last = [...range.getClientRects()].at(-1);
    return sign.getClientRects()[0].top > last.bottom;
}).map((sign) => sign.parentElement.textContent)"""


@long_run()
def test_no_sign_of_how_sure_a_claim_is_stands_on_a_line_alone(page):
    signs = 0
    for width in range(340, 440, 20):
        page.set_viewport_size({"width": width, "height": 844})
        page.goto("problems/ammonia-emergency/")
        signs += page.locator("#main .mark.sign").count()
        assert page.evaluate(LONE_SIGNS) == [], width
    page.set_viewport_size({"width": 390, "height": 844})
    assert signs > 50
