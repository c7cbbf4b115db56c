"""A tank's page: what it answers on screen one, the weeks ahead as a picture, and what is folded."""

import json
import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import PHONE, go
from tests.browser.shelf_page import with_shelf
from tests.browser.shelf_tanks import LOBBY, board, put
from tests.effort import long_run

MOST_HIGH = 4_000  # CSS px, as the page opens on a phone
LEAST_ROOM, LEAST_GAP = 24, 12  # CSS px


@pytest.fixture
def tank(page):
    """The page of a demo tank whose readings tell."""
    go(page, "shelf/")
    page.get_by_role("button", name="Try it with four demo tanks").tap()
    expect(page.locator(".tank-card")).to_have_count(4)
    go(page, "shelf/tank/#reading-room")
    expect(page.locator("#answer figure").first).to_be_visible()
    expect(page.locator("#tank-nitrogen .painted")).not_to_be_empty()
    return page


@long_run()
@pytest.mark.parametrize("leave", ["reload", "back", "link"])
def test_a_figure_that_is_being_typed_is_kept_when_the_page_is_left(page, leave):
    put(page, LOBBY)
    board(page)
    go(page, "shelf/tank/#mine")
    page.locator("#edit > summary").tap()
    page.locator("#tank-gh_dh").press_sequentially("8")  # and the field is not left
    if leave == "reload":
        page.reload()
    elif leave == "back":
        page.go_back()
    else:
        page.evaluate("() => document.querySelector('#main a[href*=paper]').click()")
    go(page, "about/")
    assert with_shelf(page, "return (await shelf.tank('mine')).gh_dh ?? null;") == 8


@long_run()
def test_after_a_tank_is_taken_off_the_page_shows_that_it_is_gone(page):
    put(page, LOBBY)
    go(page, "shelf/tank/#mine")
    page.locator("#tank-remove").tap()
    expect(page.locator("#tank-title")).to_be_in_viewport()
    expect(page.locator("#tank-title")).to_be_focused()
    page.locator("#shelf-done button").tap()
    expect(page.locator("#tank-title")).to_have_text("Lobby")


def ends(page, place):
    """The foot of something, in CSS px from the top of the page."""
    box = page.locator(place).first.bounding_box()
    return box["y"] + box["height"]


def test_the_page_answers_on_screen_one_and_opens_short(tank):
    tank.evaluate("() => window.scrollTo(0, 0)")
    for place in ("#tank-log", "#answer .notes li", "#first-lists tbody tr"):
        assert ends(tank, place) < PHONE["height"] - 60, place  # above the doors below
    assert tank.evaluate("() => document.documentElement.scrollHeight") <= MOST_HIGH
    headings = tank.locator("#tank-page summary").all_inner_texts()
    for words in ("Readings: nitrate", "Nitrogen of the last 30 days: ", "3 kinds of plant"):
        assert any(words in one for one in headings), words


@long_run()
def test_the_choice_of_units_has_room_around_it(tank):
    """A thumb that means to change units takes no tank off the shelf, and opens no fold."""
    units = tank.locator("#shelf-units").bounding_box()
    below = tank.locator("#tank-remove").bounding_box()
    assert units["y"] - ends(tank, "#tank-share") >= LEAST_ROOM
    assert below["y"] - units["y"] - units["height"] >= LEAST_ROOM
    assert tank.locator("#tank-lives").bounding_box()["y"] - ends(tank, "#tank-more") >= LEAST_GAP


@long_run()
def test_the_weeks_ahead_are_read_by_keys_and_saved_as_a_table(tank):
    figure = tank.locator("#answer figure", has_text="four readings in five")
    expect(figure.locator(".now-line")).not_to_have_count(0)
    expect(figure.locator(".values")).to_contain_text("today")
    figure.locator("input[type=range]").press("ArrowRight")
    expect(figure.locator(".values")).not_to_contain_text("; today")
    expect(figure.locator(".values")).to_contain_text(re.compile(r"fitted [\d.]+\smg/L"))
    with tank.expect_download() as saved:
        figure.get_by_role("button", name=re.compile("Save as a table")).tap()
    text = saved.value.path().read_text(encoding="utf-8")
    assert all(words in text.splitlines()[0] for words in ("read", "fitted", "at least", "at most"))


@long_run()
def test_on_paper_nothing_is_folded_and_afterwards_all_is_as_it_was(tank):
    tank.locator("#answer details", has_text="Readings: ").locator("summary").first.tap()
    folds = "#tank-page details"
    before = open_folds(tank, folds)
    tank.evaluate("() => window.dispatchEvent(new Event('beforeprint'))")
    assert all(open_folds(tank, folds))
    tank.evaluate("() => window.dispatchEvent(new Event('afterprint'))")
    assert open_folds(tank, folds) == before
    assert any(before)


@long_run()
def test_a_fold_stays_open_when_the_answer_is_painted_anew(tank):
    readings = tank.locator("#answer details", has_text="Readings: ").first
    readings.locator("summary").first.tap()
    expect(readings.locator("table")).to_be_visible()
    tank.locator("#tank-log").tap()
    sheet = tank.get_by_role("dialog")
    sheet.get_by_role("button", name="Nitrate, NO₃").tap()
    sheet.locator("#log-value").fill("19")
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(tank.locator("#answer details summary", has_text="nitrate 19 mg/L")).to_be_visible()
    expect(
        tank.locator("#answer details", has_text="Readings: ").first.locator("table")
    ).to_be_visible()


def open_folds(page, places):
    """Whether each fold is open, in the order of the page."""
    script = (
        "(places) => JSON.stringify([...document.querySelectorAll(places)].map((one) => one.open))"
    )
    return json.loads(page.evaluate(script, places))
