"""A keeper takes a photo of the water, marks its corners with a thumb, and takes the cover to Floaters."""

import re
from functools import cache

import numpy as np
import pytest
from playwright.sync_api import expect

from tests.browser.conftest import axe_complaints, go, wait_for_answer
from tests.browser.shelf_tanks import LOBBY, OTHER, board, entries_of, put
from tests.effort import long_run, share_of
from tests.png import png
from tests.surface_pictures import GREEN, RED, SLANTED, photo, strewn

COLOURS = {"green": GREEN, "red": RED}


@cache
def drawn(colours="green"):
    """The octets of a picture as a file, and the cover that it has."""
    dice = np.random.default_rng(21)
    leaves, known = strewn(dice, 0.4, 1.2, COLOURS[colours])
    return png(photo(dice, leaves, "dark", SLANTED, noise=2.0)), known


def choose(page, octets):
    page.locator("input[data-photo]").last.set_input_files(
        {"name": "surface.png", "mimeType": "image/png", "buffer": octets}
    )
    expect(page.locator(".corner")).to_have_count(4)


def thumb(page, context, start, end):
    """A thumb goes down, moves in steps, and lifts: real touch events through the browser."""
    session = context.new_cdp_session(page)
    send = lambda kind, points: session.send(  # noqa: E731
        "Input.dispatchTouchEvent", {"type": kind, "touchPoints": points}
    )
    send("touchStart", [{"x": start[0], "y": start[1]}])
    for step in range(1, 5):
        x, y = (a + (b - a) * step / 4 for a, b in zip(start, end, strict=True))
        send("touchMove", [{"x": x, "y": y}])
    if page.locator(".loupe").is_hidden():
        raise AssertionError("the magnifier does not show what the thumb hides")
    send("touchEnd", [])


def mark_corners(page, context, corners=SLANTED):
    page.locator(".stage").scroll_into_view_if_needed()
    page.locator(".shown").evaluate("one => one.scrollIntoView({ block: 'center' })")
    box = page.locator(".shown").bounding_box()
    for number, (x, y) in enumerate(corners):
        page.wait_for_function(UP_TO_DATE)  # an answer that comes while it is dragged puts it back
        handle = page.locator(".corner").nth(number).bounding_box()
        start = handle["x"] + handle["width"] / 2, handle["y"] + handle["height"] / 2
        thumb(page, context, start, (box["x"] + x * box["width"], box["y"] + y * box["height"]))


def cover(page):
    """The cover in the table, once it is there."""
    text = page.locator("#rows tr", has_text="Floating cover").locator("td").inner_text()
    return float(re.match(r"[\d.]+", text)[0])


HEAR = """() => document.querySelector("#photo").closest("form").addEventListener(
    "answered", ({ detail }) => { window.answered = detail; })"""
UP_TO_DATE = """() => {
    const given = window.answered?.answer?.inputs;
    const here = (key, part) =>
      [...document.querySelectorAll(`[data-key="${key}"] [data-key="${part}"] input`)]
      .map((one) => Number(one.value));
    const there = (key, part) => given[key].map((one) => one[part]);
    const same = (key, part) => String(there(key, part)) === String(here(key, part));
    return given && ["corners", "taps"].every((key) => same(key, "x_percent") && same(key, "y_percent")); }"""


def open_page(page):
    """The page, with an ear for the answers that come."""
    go(page, "calculators/surface-cover/?length_cm=80&width_cm=35")
    wait_for_answer(page)
    page.evaluate("() => { window.answered = null; }")
    page.evaluate(HEAR)


def wait_for_count(page):
    """Until Python has answered for the marks that stand there now, not for those before them."""
    page.wait_for_function(UP_TO_DATE)
    expect(page.locator(".result.old")).to_have_count(0)
    expect(page.locator(".counted")).to_be_visible()


@long_run()
@pytest.mark.python_alive
def test_a_photo_is_marked_counted_and_taken_to_floaters(page, context, watch):
    open_page(page)
    octets, known = drawn()
    choose(page, octets)
    mark_corners(page, context)
    wait_for_count(page)
    expect(page.locator("#in-corners-3-x_percent")).to_have_value(re.compile(r"^9[67]"))
    expect(page.locator("#result-title")).to_have_text("Result")
    assert abs(cover(page) - known) <= 3
    assert "Floating cover" in page.locator(".counted").inner_text()
    assert "pixels" not in page.url
    assert len(page.url) < 200
    page.locator("#in-length_cm").fill("90")
    link = page.get_by_role("link", name="Use this cover in Floaters")
    expect(link).to_have_attribute("href", re.compile("length_cm=90"))
    found = cover(page)
    link.tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Floaters")
    expect(page.locator("#in-length_cm")).to_have_value("90")
    taken = float(page.locator("#in-cover_percent").input_value())
    assert taken == pytest.approx(
        found, abs=0.5
    )  # the table shows whole per cents, the link has more


@long_run()
@pytest.mark.python_alive
def test_a_tap_corrects_the_count_and_can_be_undone(page, context):
    open_page(page)
    octets, known = drawn("red")
    choose(page, octets)
    mark_corners(page, context)
    wait_for_count(page)
    expect(page.locator("#answer")).to_contain_text("red floaters")
    picture = photo_colours(octets)
    red, dark = place_of(picture, RED[0]), place_of(picture, (30, 38, 36))
    tap_picture(page, "Plant", red)
    expect(page.locator("#answer")).to_contain_text("Only one kind")
    tap_picture(page, "Water", dark)
    expect(page.locator("#answer")).not_to_contain_text("Only one kind")
    expect(page.locator("#rows tr").first).to_contain_text("doubtful")  # it needed marks
    assert abs(cover(page) - known) <= 3
    page.get_by_role("button", name="Undo a tap").tap()
    page.get_by_role("button", name="Undo a tap").tap()
    expect(page.locator("#rows tr").first).to_contain_text("hard to tell")


def photo_colours(octets):
    """The picture that the file holds, drawn once more."""
    dice = np.random.default_rng(21)
    leaves, _ = strewn(dice, 0.4, 1.2, RED)
    return photo(dice, leaves, "dark", SLANTED, noise=2.0)


def place_of(picture, colour):
    """A place, as shares of the picture, with such a colour all around it."""
    off = np.abs(picture.astype(int) - colour).max(2)
    high, wide = off.shape
    for row in range(high // 3, high - 40, 3):
        for column in range(wide // 3, 2 * wide // 3, 3):
            if off[row - 8 : row + 9, column - 8 : column + 9].max() < 16:
                return column / wide, row / high
    raise AssertionError("no such place")


def tap_picture(page, button, place):
    page.get_by_role("button", name=button, exact=True).tap()
    box = page.locator(".shown").bounding_box()
    before = page.locator('[data-key="taps"] .row').count()
    page.locator(".shown").tap(
        position={"x": place[0] * box["width"], "y": place[1] * box["height"]}
    )
    expect(page.locator('[data-key="taps"] .row')).to_have_count(before + 1)
    page.wait_for_function(UP_TO_DATE)
    expect(page.locator(".result.old")).to_have_count(0)


@long_run()
def test_corners_move_by_arrow_keys_and_the_picture_outlives_a_reload(page):
    open_page(page)
    octets, _ = drawn()
    choose(page, octets)
    first = page.get_by_role("button", name="Corner 1 of the water")
    first.focus()
    for _ in range(4):
        first.press("ArrowRight")
    expect(page.locator("#in-corners-1-x_percent")).to_have_value("12.00")
    wait_for_count(page)
    page.reload()
    expect(page.locator(".stage")).to_be_visible()
    expect(page.locator("#in-corners-1-x_percent")).to_have_value("12.00")
    expect(page.locator(".counted")).to_be_visible()
    page.get_by_role("button", name="Empty all fields").tap()
    expect(page.locator(".stage")).to_be_hidden()


@long_run()
@pytest.mark.python_alive
def test_bad_files_and_bad_corners_are_said_beside_the_picture(page):
    open_page(page)
    page.locator("input[data-photo]").last.set_input_files(
        {"name": "words.png", "mimeType": "image/png", "buffer": b"no picture"}
    )
    expect(page.locator(".photo-problem")).to_contain_text("no picture that the browser can read")
    octets, _ = drawn()
    choose(page, octets)
    page.get_by_role("button", name="Marks as numbers").tap()
    page.locator("#in-corners-3-x_percent").fill("20")
    page.locator("#in-corners-3-y_percent").fill("20")
    expect(page.locator(".photo-problem")).to_contain_text("between the others")


@long_run()
@pytest.mark.python_alive
def test_nothing_of_a_photo_leaves_the_device(page, context):
    sent = []
    open_page(page)
    context.on("request", lambda request: sent.append(request))
    octets, _ = drawn()
    choose(page, octets)
    wait_for_count(page)
    assert [one for one in sent if one.method != "GET" or one.post_data] == []
    assert all(len(one.url) < 300 for one in sent)


@long_run()
@pytest.mark.python_alive
def test_a_marked_photo_passes_axe_and_has_targets_for_a_thumb(page):
    open_page(page)
    octets, _ = drawn()
    choose(page, octets)
    wait_for_count(page)
    page.locator(".photo summary").tap()
    page.get_by_role("button", name="Marks as numbers").tap()
    assert axe_complaints(page) == []
    small = page.evaluate(
        """() => [...document.querySelectorAll('button, label.button, .corner, summary')]
        .filter((one) => one.offsetParent && one.getBoundingClientRect().height < 44)
        .map((one) => one.outerHTML.slice(0, 80))"""
    )
    assert small == []
    assert page.evaluate("() => document.documentElement.scrollWidth") <= 390


def readings_of_cover(page):
    return [
        (one["tank"], one["value"], one["step"])
        for tank in ("mine", "other")
        for one in entries_of(page, tank)
        if one["what"] == "cover_percent"
    ]


def count_at_tank(page, context):
    """A photo is chosen and its corners are dragged; the sizes are the tank's."""
    page.evaluate(HEAR)
    octets, known = drawn()
    choose(page, octets)
    mark_corners(page, context)
    wait_for_count(page)
    return known


@long_run()
@pytest.mark.parametrize("as_swap", share_of([True, False], 2))
def test_the_cover_counted_from_the_log_is_logged_in_one_tap_and_can_be_undone(
    page, context, as_swap
):
    put(page, LOBBY, OTHER, chosen="other")
    board(page)
    page.get_by_role("button", name="Log: Lobby").tap()
    page.get_by_role("dialog").get_by_role("button", name="Floating cover").tap()
    page.get_by_role("link", name="Count it in a photo").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Cover from a photo")
    expect(page.get_by_role("dialog")).to_have_count(0)
    expect(page.get_by_label("At", exact=True)).to_have_value("mine")  # who counts stands there
    if not as_swap:
        page.reload()
    expect(page.locator("#in-length_cm")).to_have_value("80")
    expect(page.locator("#answer")).to_be_hidden()
    known = count_at_tank(page, context)
    button = page.get_by_role("button", name=re.compile(r"^Log \d+ % cover for Lobby"))
    expect(button).to_be_visible()
    assert button.bounding_box()["height"] >= 56
    assert readings_of_cover(page) == []  # nothing without a tap
    found = cover(page)
    button.tap()
    expect(page.locator("#shelf-done")).to_contain_text(f"{found:.0f} % cover logged, Lobby")
    (one,) = readings_of_cover(page)
    assert one[:2] == ("mine", found)
    assert abs(found - known) <= 3
    assert one[2] >= 3  # the width of the count's range
    expect(page.locator("#to-log")).to_contain_text("is in the log of Lobby")
    page.get_by_role("button", name="Undo", exact=True).tap()
    expect(button).to_be_visible()
    assert readings_of_cover(page) == []


@long_run()
def test_without_a_chosen_tank_the_count_asks_which_and_writes_nothing_by_itself(page, context):
    put(page, LOBBY, OTHER)
    open_page(page)
    count_at_tank(page, context)
    offered = page.get_by_role("group", name=re.compile("at which tank do you stand"))
    expect(offered.get_by_role("button")).to_have_text(["Lobby", "Stairs"])
    offered.get_by_role("button", name="Stairs").tap()
    expect(page.get_by_label("At", exact=True)).to_have_value("other")
    button = page.get_by_role("button", name=re.compile(r"^Log \d+ % cover for Stairs"))
    expect(button).to_be_visible()
    assert readings_of_cover(page) == []
    page.get_by_label("At", exact=True).select_option("mine")
    button = page.get_by_role("button", name=re.compile(r"^Log \d+ % cover for Lobby"))
    expect(button).to_be_visible()
    assert axe_complaints(page) == []
    button.tap()
    expect(page.locator("#shelf-done")).to_contain_text("% cover logged, Lobby")
    assert [one[0] for one in readings_of_cover(page)] == ["mine"]


@long_run()
def test_a_count_is_offered_to_no_log_before_its_corners_are_dragged_or_without_a_tank(
    page, context
):
    open_page(page)
    page.evaluate(HEAR)
    octets, _ = drawn()
    choose(page, octets)
    wait_for_count(page)
    expect(page.locator("#answer")).to_contain_text("Drag the corners")
    expect(page.locator("#to-log")).to_have_count(0)
    mark_corners(page, context)
    wait_for_count(page)
    expect(page.locator("#to-log")).to_contain_text("begin a tank first")
