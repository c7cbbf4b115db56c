"""The printed sheets of the demo tanks: a card of one A6 page, a holiday sheet of one A4, nothing cut."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import go
from tests.browser.shelf_page import with_shelf
from tests.effort import long_run, share_of

# Width and height in points (1/72 inch); ISO 216: A6 is 105 x 148 mm, A4 210 x 297 mm.
A6_ACROSS, A4 = (419.5, 297.6), (595.3, 841.9)
LONGEST_HOLIDAY_DAYS = 60
MAY_DIFFER = 1.0  # points; browsers round to whole pixels


def pages(page):
    """The size of each page of the printed page."""
    pdf = page.pdf(prefer_css_page_size=True)
    assert len(re.findall(rb"/Type\s*/Page\b", pdf)) == len(re.findall(rb"/MediaBox", pdf))
    boxes = re.findall(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]", pdf)
    return [(float(width), float(height)) for width, height in boxes]


def is_one_page_of(page, size):
    assert pages(page) == [pytest.approx(size, abs=MAY_DIFFER)]


def nothing_is_cut(page, width_mm):
    """No line is wider than the sheet between its margins."""
    before = page.viewport_size
    page.set_viewport_size({"width": round(width_mm * 96 / 25.4), "height": 844})
    page.emulate_media(media="print")
    sheet = page.locator("#paper-sheet article")
    assert sheet.evaluate("(one) => one.scrollWidth <= one.clientWidth")
    page.emulate_media(media="null")
    page.set_viewport_size(before)


@long_run()
def test_the_demo_tanks_cards_and_holiday_sheets_are_one_page_each(page, address):
    file = page.request.get(f"{address}assets/shelf/demo.json").json()
    go(page, "about/")
    with_shelf(page, "await shelf.merge(given);", file)
    go(page, f"shelf/paper/#{file['tanks'][0]['id']}")
    for tank in share_of(file["tanks"], 4):
        page.evaluate("(id) => { location.hash = id; }", tank["id"])
        page.locator("[data-sheet=card]").tap()
        expect(page.locator(".paper-a6 h1")).to_have_text(f"{tank['name']} (demo)")
        expect(page.locator(".paper-a6 .code svg")).to_be_visible()
        is_one_page_of(page, A6_ACROSS)
        nothing_is_cut(page, 148 - 12)
        page.locator("[data-sheet=holiday]").tap()
        page.locator("input#paper-from").fill("2026-12-01")
        page.locator("input#paper-to").fill("2027-01-30")
        page.locator("input#paper-to").blur()
        expect(page.locator(".paper-a4 h1")).to_contain_text("2026-12-01 to 2027-01-30")
        expect(page.locator(".paper-a4 h1")).to_contain_text(tank["name"])
        days = LONGEST_HOLIDAY_DAYS // 2 if tank["feed_g_week"] else 0  # nothing is fed in one
        expect(page.locator(".paper-a4 .ticks li")).to_have_count(days)
        is_one_page_of(page, A4)
        nothing_is_cut(page, 210 - 28)


@long_run()
def test_a_reload_keeps_the_sheet_its_days_and_what_was_written_over_it(page, address):
    file = page.request.get(f"{address}assets/shelf/demo.json").json()
    go(page, "about/")
    with_shelf(page, "await shelf.merge(given);", file)
    first, other = (tank["id"] for tank in file["tanks"][:2])
    go(page, f"shelf/paper/#{first}")
    back = page.locator("#paper-back")
    page.locator("[data-sheet=holiday]").tap()
    page.locator("input#paper-from").fill("2026-12-01")
    page.locator("input#paper-to").fill("2026-12-14")
    page.locator("input#paper-to").blur()
    expect(page.locator(".paper-a4 h1")).to_contain_text("2026-12-01 to 2026-12-14")
    expect(back).to_be_hidden()
    line = page.locator(".paper-a4 .never li").first
    written = line.inner_text()
    line.fill("The key hangs <b>behind</b> the door.")
    expect(back).to_be_visible()
    page.emulate_media(media="print")
    expect(back).to_be_hidden()
    page.emulate_media(media="null")
    page.reload()
    expect(page.locator("[data-sheet=holiday]")).to_have_attribute("aria-pressed", "true")
    expect(page.locator(".paper-a4 h1")).to_contain_text("2026-12-01 to 2026-12-14")
    expect(line).to_have_text("The key hangs <b>behind</b> the door.")
    page.evaluate("(id) => { location.hash = id; }", other)
    expect(page.locator(".paper-a4 h1")).to_contain_text(file["tanks"][1]["name"])
    expect(back).to_be_hidden()
    page.evaluate("(id) => { location.hash = id; }", first)
    expect(line).to_have_text("The key hangs <b>behind</b> the door.")
    back.tap()
    expect(line).to_have_text(written)
    expect(back).to_be_hidden()
    page.locator("[data-sheet=card]").tap()
    expect(page.locator(".paper-a6")).to_be_visible()
    page.reload()
    expect(page.locator(".paper-a6")).to_be_visible()


@long_run()
def test_days_in_the_address_that_are_none_are_left_out(page, address):
    file = page.request.get(f"{address}assets/shelf/demo.json").json()
    go(page, "about/")
    with_shelf(page, "await shelf.merge(given);", file)
    go(page, f"shelf/paper/?sheet=holiday&from=soon&to=2026-13-40#{file['tanks'][0]['id']}")
    expect(page.locator(".paper-a4")).to_be_visible()
    expect(page.locator("#paper-said")).to_have_text("")
    expect(page.locator("input#paper-from")).to_have_value(re.compile(r"^\d{4}-\d\d-\d\d$"))
