"""The shelf's pages as a keeper opens them: a new tank, demo tanks, no network, axe, a narrow phone.

Each test has a page of its own: what stands on the shelf lives on in a page that stays open.
"""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import axe_complaints, go, wait_for_answer, wait_for_offline_copy
from tests.browser.shelf_page import with_shelf
from tests.browser.shelf_tanks import LOBBY, OTHER, Taps, board, put, reading
from tests.effort import long_run, share_of


@long_run()
def test_a_second_tap_puts_no_second_tank_on_the_shelf(page):
    go(page, "shelf/new/")
    page.locator("#tank-name").fill("Window sill")
    expect(page.locator("#minute-size button").first).to_be_visible()
    page.get_by_role("button", name="Put it on the shelf").dblclick()
    expect(page.locator(".tank-card")).not_to_have_count(0)
    assert len(with_shelf(page, "return await shelf.tanks();")) == 1


def began(page):
    """The form of a new tank, in which some was filled in and a figure is being typed."""
    go(page, "shelf/new/")
    expect(page.locator("#minute-plants button").first).to_be_visible()
    page.locator("#tank-name").fill("Window sill")
    page.locator("#minute-size").get_by_role("button", name="54 l").tap()
    page.locator("#minute-age").get_by_role("button", name="two months").tap()
    page.locator("#minute-animals button").first.tap()
    page.locator("#new-tank summary").tap()
    page.locator("#tank-ph").fill("7.1")
    page.locator("#tank-kh_dh").press_sequentially("4")  # and the field is not left


def expect_as_begun(page):
    expect(page.locator("#new-draft")).to_contain_text("filled in before")
    expect(page.locator("#tank-name")).to_have_value("Window sill")
    for group, name in (("size", "54 l"), ("age", "two months")):
        chip = page.locator(f"#minute-{group}").get_by_role("button", name=name)
        expect(chip).to_have_attribute("aria-pressed", "true")
    expect(page.locator("#chosen-animals .living-row")).to_have_count(1)
    expect(page.locator("#tank-ph")).to_have_value("7.1")
    expect(page.locator("#tank-kh_dh")).to_have_value("4")


@long_run()
def test_a_tank_that_was_begun_is_there_again_after_a_reload_and_the_way_back(page):
    board(page)
    began(page)
    page.reload()
    expect_as_begun(page)
    page.go_back()
    expect(page.locator("#board-empty")).to_be_visible()
    page.get_by_role("link", name="New tank").tap()
    expect_as_begun(page)
    page.get_by_role("button", name="Put it on the shelf").tap()
    expect(page.locator(".tank-card h2")).to_have_text("Window sill")
    (tank,) = with_shelf(page, "return await shelf.tanks();")
    assert (tank["net_l"], tank["ph"], tank["kh_dh"]) == (54, 7.1, 4)
    page.get_by_role("link", name="New tank").tap()
    expect(page.locator("#minute-plants button").first).to_be_visible()
    expect(page.locator("#tank-name")).to_have_value("")  # made: nothing of it comes again
    expect(page.locator("#new-draft")).to_be_hidden()


@long_run()
def test_a_tank_that_was_begun_is_begun_afresh_with_a_tap_and_that_is_taken_back(page):
    began(page)
    page.reload()
    page.get_by_role("button", name="Begin afresh").tap()
    expect(page.locator("#tank-name")).to_have_value("")
    expect(page.locator("#new-tank [aria-pressed=true]:not([data-units])")).to_have_count(0)
    expect(page.locator("#tank-kh_dh")).to_have_value("")
    page.locator("#shelf-done button").tap()
    expect_as_begun(page)
    page.get_by_role("button", name="Begin afresh").tap()
    page.reload()
    expect(page.locator("#minute-plants button").first).to_be_visible()
    expect(page.locator("#tank-name")).to_have_value("")


def tap_after_typing(page, box):
    """Type a number in one row, and tap More in the next with the same thumb, once."""
    rows = page.locator(f"{box} .living-row")
    rows.nth(0).locator("input").press_sequentially("12")
    rows.nth(1).get_by_role("button", name="More").tap()
    expect(rows.nth(0).locator("input")).to_have_value("12")
    expect(rows.nth(1).locator("input")).to_have_value("1")


@long_run()
def test_a_tap_beside_a_number_that_is_being_typed_is_not_lost(page):
    go(page, "shelf/new/")
    for at in (0, 1):
        page.locator("#minute-animals button").nth(at).tap()
    tap_after_typing(page, "#chosen-animals")
    page.locator("#tank-name").fill("Window sill")
    page.get_by_role("button", name="Put it on the shelf").tap()
    expect(page.locator(".tank-card")).to_have_count(1)
    (tank,) = with_shelf(page, "return await shelf.tanks();")
    assert [one["count"] for one in tank["animals"]] == [12, 1]
    other = {"animal": "danio-rerio", "count": None}
    put(page, {**LOBBY, "animals": [{**LOBBY["animals"][0], "count": None}, other]})
    go(page, "shelf/tank/#mine")
    page.locator("#edit summary").first.tap()
    tap_after_typing(page, "[data-list=animals]")
    (held,) = [
        one for one in with_shelf(page, "return await shelf.tanks();") if one["id"] == "mine"
    ]
    assert [one["count"] for one in held["animals"]] == [12, 1]


@long_run()
def test_a_figure_that_was_being_typed_never_comes_again_in_another_unit(page):
    go(page, "shelf/new/")
    page.locator("#new-tank summary").tap()
    page.locator("#tank-temperature_c").press_sequentially("25")
    page.evaluate("() => localStorage.setItem('mulmbook-units', '\"us\"')")
    page.reload()
    expect(page.locator("#new-draft")).to_be_visible()
    expect(page.locator("#tank-temperature_c")).to_have_value("")


def test_a_tank_is_new_in_eight_taps_and_its_name(page):
    board(page)
    tap = Taps()
    tap(page.get_by_role("link", name="New tank"))
    expect(page.locator("#minute-plants button").first).to_be_visible()
    expect(page.locator("#tank-name")).to_be_focused()
    page.keyboard.type("Window sill")
    tap(page.locator("#minute-size").get_by_role("button", name="54 l"))
    tap(page.locator("#minute-age").get_by_role("button", name="two months"))
    tap(page.locator("#minute-animals button").first)
    for number in (0, 1):
        tap(page.locator("#minute-plants button").nth(number))
    tap(page.get_by_role("button", name="Put it on the shelf"))
    assert tap.count <= 8
    expect(page.locator(".tank-card h2")).to_have_text("Window sill")
    (tank,) = with_shelf(page, "return await shelf.tanks();")
    assert (tank["net_l"], len(tank["plants"]), len(tank["animals"])) == (54, 2, 1)
    assert tank["animals"][0]["count"] is None  # blank, never guessed
    assert "ph" not in tank


@long_run()
def test_demo_tanks_come_and_go_in_a_tap_and_are_always_marked(page):
    board(page)
    page.get_by_role("button", name="Try it with four demo tanks").tap()
    expect(page.locator(".tank-card")).to_have_count(4)
    expect(page.locator(".tank-card .demo")).to_have_count(4)
    page.locator("#stand-at-tank").select_option("reading-room")
    expect(page.locator(".stand-at label")).to_have_text("Demo")
    go(page, "calculators/dosing/")
    wait_for_answer(page)
    expect(page.locator("[data-key=volume_l] .from-tank")).to_have_text("from Reading Room, demo")
    for path in ("shelf/tank/#reading-room", "shelf/paper/#reading-room"):
        go(page, path)
        expect(page.locator("main")).to_contain_text(re.compile("demo", re.IGNORECASE))
    board(page)
    page.get_by_role("button", name="Remove the demo tanks").tap()
    expect(page.locator(".tank-card")).to_have_count(0)
    expect(page.locator("#board-empty")).to_be_visible()


def test_a_change_that_comes_while_an_answer_is_being_kept_is_painted(page):
    """An answer that is kept paints nothing anew; what the keeper does in that moment does."""
    put(page, LOBBY)
    painted = with_shelf(
        page,
        """const { onEachChange } = await import(at("standings"));
        let times = 0;
        onEachChange(shelf, document.body, () => { times += 1; });
        const kept = shelf.keepStanding("mine", { outputs: {} });
        const removed = shelf.removeTank("mine");
        await Promise.all([kept, removed]);
        await shelf.keepRound({ order: [] });
        return times;""",
    )
    assert painted == 1


@long_run()
def test_the_old_address_leads_to_the_shelf_and_what_was_kept_stands_there(page):
    go(page, "about/")
    kept = [
        {
            "id": "a",
            "tank": "Lobby",
            "calculator": "units",
            "title": "Units",
            "address": "?value=3",
            "when": "2026-01-01T10:00:00.000Z",
            "lines": ["Result: 3"],
        }
    ]
    page.evaluate("(kept) => localStorage.setItem('mulmbook-kept', JSON.stringify(kept))", kept)
    page.goto("my-tanks/")
    expect(page).to_have_url(re.compile("/shelf/$"))
    page.locator("#board-kept summary").tap()
    link = page.locator(".kept a")
    expect(link).to_have_text("Units")
    assert link.get_attribute("href").endswith("calculators/units/?value=3")


@long_run()
@pytest.mark.offline_copy
def test_the_shelf_works_with_no_network_and_sends_nothing(page, context, address):
    page.goto("shelf/")
    wait_for_offline_copy(page)
    context.set_offline(True)
    asked = []
    context.on("request", lambda request: asked.append(request))
    page.reload()
    page.get_by_role("button", name="Try it with four demo tanks").tap()
    expect(page.locator("#board[data-shown=anew]")).to_be_attached()
    page.get_by_role("button", name="Log: Foyer (demo)").tap()
    page.get_by_role("dialog").get_by_role("button", name="Nitrate, NO₃").tap()
    page.get_by_role("dialog").get_by_role("group").get_by_role("button").first.tap()
    expect(page.locator("#shelf-done")).to_contain_text("Foyer")
    page.goto("shelf/tank/#foyer")
    expect(page.locator("#answer figure").first).to_be_visible()
    page.goto("shelf/paper/#foyer")
    expect(page.locator(".paper .code svg")).to_be_visible()
    expect(page.locator(".shelf-stays")).to_have_count(0)
    assert all(one.method == "GET" and not one.post_data for one in asked)
    sent = [one.url.partition("#")[0] for one in asked]  # no browser sends a fragment
    assert all(one.startswith(address) and "foyer" not in one and "?" not in one for one in sent)


PAGES = ["shelf/", "shelf/new/", "shelf/tank/#mine", "shelf/round/", "shelf/paper/#mine"]


@pytest.mark.parametrize("path", share_of(PAGES, 6))
def test_axe_finds_nothing_and_no_page_scrolls_sideways(page, path):
    readings = [reading(value, 40 - 9 * at) for at, value in enumerate((10, 15, 20, 30, 40))]
    put(page, LOBBY, OTHER, entries=readings, chosen="mine")
    go(page, path)
    expect(page.locator(".shelf").first).to_be_visible()
    if path == "shelf/":
        expect(page.locator("#board[data-shown=anew]")).to_be_attached()
    if path.startswith("shelf/paper"):
        expect(page.locator(".paper")).to_be_visible()
    if path.startswith("shelf/tank"):
        expect(page.locator("#answer figure").first).to_be_attached()
        page.evaluate(
            "for (const fold of document.querySelectorAll('#answer details')) fold.open = true"
        )
        expect(page.locator("#answer figure").first).to_be_visible()
        page.locator("#tank-share summary").tap()
        page.get_by_role("button", name="Make the link").tap()
    assert axe_complaints(page) == []
    for width in (320, 390, 1280):
        page.set_viewport_size({"width": width, "height": 844})
        assert page.evaluate("() => document.documentElement.scrollWidth") <= width, width


@long_run()
def test_an_empty_shelf_shows_the_way_on_and_nothing_that_needs_a_tank(page):
    go(page, "shelf/round/")
    expect(page.locator("#round-none a")).to_be_visible()
    expect(page.locator("#round-again")).to_be_hidden()
    go(page, "shelf/")
    expect(page.locator("#copy-read").locator("..")).to_be_visible()
    expect(page.locator("#copy-save")).to_be_hidden()
    for path in ("shelf/tank/#gone", "shelf/paper/#gone"):
        go(page, path)
        expect(page.locator("#main > h1")).to_have_text("No such tank on this device")
        expect(page.locator("#no-tank a")).to_be_visible()
    put(page, LOBBY)
    for path in ("shelf/tank/", "shelf/paper/"):
        go(page, f"{path}#{LOBBY['id']}")
        expect(page.locator("#main > h1")).to_contain_text("Lobby")
        expect(page.locator("#no-tank")).to_be_hidden()


@long_run()
def test_the_head_with_a_tank_fits_letters_of_twice_the_size(page, address):
    file = page.request.get(f"{address}assets/shelf/demo.json").json()
    go(page, "about/")
    with_shelf(page, "await shelf.merge(given); await shelf.choose(given.tanks[0].id);", file)
    for path in ("about/", "shelf/round/", f"shelf/tank/#{file['tanks'][0]['id']}"):
        go(page, path)
        expect(page.locator("#stand-at-log")).to_be_visible()
        page.evaluate("() => { document.documentElement.style.fontSize = '200%'; }")
        assert page.evaluate("() => document.documentElement.scrollWidth") == 390, path
        page.evaluate("() => { document.documentElement.style.fontSize = ''; }")
