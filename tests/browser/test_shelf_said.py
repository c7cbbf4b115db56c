"""What the shelf could not store or read is said where the keeper looks, and what was entered is not lost."""

import json
from itertools import product

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import go, new_context
from tests.browser.shelf_page import at_book, in_page, with_shelf
from tests.browser.shelf_tanks import LOBBY, NO_WORKER, OTHER, board, entries_of, put
from tests.browser.test_shelf_faults import REFUSALS
from tests.effort import long_run, share_of

FULL = """() => {
  const put = IDBDatabase.prototype.transaction;
  window.makeRoom = () => { IDBDatabase.prototype.transaction = put; };
  IDBDatabase.prototype.transaction = function (stores, mode, ...rest) {
    if (mode === "readwrite") throw new DOMException("", "QuotaExceededError");
    return put.call(this, stores, mode, ...rest);
  };
}"""


@pytest.mark.parametrize(
    ("path", "refusal"),
    share_of(list(product(["shelf/", "shelf/new/", "shelf/round/"], REFUSALS)), 5),
)
def test_where_nothing_can_be_stored_the_page_says_so(chromium, address, path, refusal):
    context = new_context(chromium, address)
    context.add_init_script(REFUSALS[refusal])
    context.add_init_script(NO_WORKER)
    page = context.new_page()
    page.goto(path)
    expect(page.locator(".shelf-troubles")).to_contain_text("until this page is closed")
    context.close()


@long_run()
def test_a_damaged_record_is_said_on_the_board_and_the_tanks_page(page):
    put(page, LOBBY)
    in_page(page, 'await raw("readwrite", (operations) => operations.add({ id: "spoilt" }));')
    page.reload()
    for path in ("shelf/", "shelf/tank/#mine"):
        go(page, path)
        expect(page.locator(".shelf-troubles")).to_contain_text("1 record of the shelf is damaged")


def test_a_page_with_a_whole_shelf_says_nothing_of_the_kind(page):
    board(page)
    expect(page.locator(".shelf-troubles")).to_be_hidden()


def nitrate_sheet(page):
    """The sheet of the one tank that asks for a reading of nitrate."""
    put(page, LOBBY)
    board(page)
    page.get_by_role("button", name="Log: Lobby").tap()
    sheet = page.get_by_role("dialog")
    sheet.get_by_role("button", name="Nitrate, NO₃").tap()
    return sheet


@long_run()
def test_on_a_full_device_the_value_stays_in_its_sheet_and_can_be_saved_again(page):
    sheet = nitrate_sheet(page)
    page.evaluate(FULL)
    sheet.locator("#log-value").fill("17")
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(sheet.get_by_role("alert").first).to_contain_text("no room left")
    expect(sheet.locator("#log-value")).to_have_value("17")
    assert entries_of(page) == []
    page.evaluate("() => window.makeRoom()")
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#shelf-done")).to_contain_text("17")
    assert [one["value"] for one in entries_of(page)] == [17]


def test_two_quick_taps_on_a_value_log_it_once(page):
    sheet = nitrate_sheet(page)
    expect(sheet.locator(".new-parts .tap").first).to_be_visible()
    page.evaluate(
        "() => { const one = document.querySelector('dialog .new-parts .tap'); one.click(); one.click(); }"
    )
    expect(page.locator("#shelf-done")).to_contain_text("Lobby")
    assert len(entries_of(page)) == 1


@long_run()
def test_where_the_keeper_lives_is_said_once_for_all_tanks(page):
    put(page, {**LOBBY, "place": None}, OTHER, {"id": "shown", "name": "Shown", "demo": True})
    go(page, "shelf/tank/#mine")
    page.locator("#tank-edit").tap()
    page.locator("#tank-form [data-path=place] select").select_option("nz")
    expect(page.locator("#shelf-done")).to_contain_text("Saved to all your tanks.")
    places = "return (await shelf.tanks()).map((tank) => tank.place ?? null);"
    assert with_shelf(page, places) == ["nz", "nz", None]
    go(page, "shelf/new/")
    page.locator("#tank-name").fill("Third")
    expect(page.locator("#minute-size button").first).to_be_visible()
    page.get_by_role("button", name="Put it on the shelf").tap()
    expect(page.locator(".tank-card")).to_have_count(4)
    assert with_shelf(page, places) == ["nz", "nz", None, "nz"]


@pytest.mark.parametrize(
    ("name", "change", "words"),
    share_of(
        [
            ("mine.json", {"ph": 99}, "ph"),
            ("mine.json", {"net_l": -5}, "net_l"),
            ("mine.json", {"plants": "all"}, "plants"),
        ],
        3,
    ),
)
def test_a_file_with_an_impossible_figure_is_refused_on_the_board_with_its_field(
    page, name, change, words
):
    """Its structure holds; what its figures mean is Python's to judge."""
    put(page, LOBBY)
    board(page)
    file = {
        "format": "mulmbook-tanks",
        "version": 1,
        "saved": "2026-11-28T18:00:00Z",
        "tanks": [{**LOBBY, "id": "theirs", **change}],
        "entries": [],
    }
    payload = {"name": name, "mimeType": "application/json", "buffer": json.dumps(file).encode()}
    page.locator("#copy-read").set_input_files(payload)
    expect(page.locator("#copy-said")).to_contain_text(f"{name} was not taken in.")
    expect(page.locator("#copy-said")).to_contain_text(words)
    expect(page.locator("#copy-said")).to_contain_text("Nothing was changed.")
    assert len(with_shelf(page, "return shelf.tanks();")) == 1


def test_a_day_of_another_year_is_said_with_its_year(page):
    """Else a copy or a reading of a year ago reads as if it were of today."""
    words = """const { dayInWords } = await import(at("day")); const year = new Date().getFullYear();
        return [`${year}-06-01`, `${year - 1}-06-01`].map(dayInWords).concat(String(year - 1));"""
    of_this, of_last, last = in_page(at_book(page), words)
    assert last not in of_this
    assert last in of_last
