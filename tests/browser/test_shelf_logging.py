"""Readings, plants and kits are logged with wet hands: taps counted, units kept, nothing lost."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import axe_complaints, go
from tests.browser.shelf_tanks import (
    LOBBY,
    OTHER,
    SMALL,
    Taps,
    board,
    entries_of,
    log_for_lobby,
    put,
    reading,
)
from tests.effort import long_run


@pytest.mark.starts_python
def test_a_reading_is_logged_from_the_board_in_three_taps_and_no_keyboard(page):
    put(page, LOBBY, entries=[reading(10, 9), reading(20, 2)])
    board(page, "kept")  # while Python starts
    tap = Taps()
    tap(page.get_by_role("button", name="Log: Lobby"))
    tap(page.get_by_role("dialog").get_by_role("button", name="Nitrate, NO₃"))
    offered = page.get_by_role("group", name=re.compile("^Logged last")).get_by_role("button")
    expect(offered).to_have_text(["20", "10"])  # the last ones, the latest first
    assert page.evaluate(SMALL) == []
    tap(offered.first)
    assert tap.count == 3
    expect(page.locator("#shelf-done")).to_contain_text("Nitrate, NO₃ 20 NO₃, Lobby")
    assert [one["value"] for one in entries_of(page)] == [10, 20, 20]
    page.locator("#shelf-done button").tap()
    expect(page.locator("#shelf-done")).to_have_text("Undone.")
    assert [one["value"] for one in entries_of(page)] == [10, 20]


@long_run()
def test_a_note_that_was_not_saved_is_there_again_after_the_way_back(page):
    put(page, LOBBY)
    board(page)
    note = page.locator("#log-note")
    log_for_lobby(page, "Note")
    note.press_sequentially("The big shrimp hides")
    page.keyboard.press("Escape")
    log_for_lobby(page, "Note")
    expect(note).to_have_value("The big shrimp hides")
    page.go_back()
    board(page)
    log_for_lobby(page, "Note")
    expect(note).to_have_value("The big shrimp hides")
    page.get_by_role("dialog").get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#shelf-done")).to_contain_text("Note, Lobby")
    log_for_lobby(page, "Note")
    expect(note).to_have_value("")
    assert [one["text"] for one in entries_of(page)] == ["The big shrimp hides"]


@long_run()
def test_a_figure_that_was_not_saved_is_there_again_for_this_tank_and_no_other(page):
    put(page, LOBBY, OTHER, entries=[reading(10, 9)])
    board(page)
    sheet, field, line = (
        page.get_by_role("dialog"),
        page.locator("#log-value"),
        page.locator(".not-saved"),
    )
    log_for_lobby(page, "Nitrate, NO₃")
    expect(line).to_have_count(0)
    field.fill("40")
    page.touchscreen.tap(195, 8)  # beside the sheet
    expect(sheet).to_have_count(0)
    expect(page.locator("#shelf-done")).to_contain_text("Not logged: Nitrate, NO₃ 40 NO₃, Lobby")
    assert [one["value"] for one in entries_of(page)] == [10]
    page.get_by_role("button", name="Log: Stairs").tap()
    expect(sheet).not_to_contain_text("40")
    sheet.get_by_role("button", name="Nitrate, NO₃").tap()
    expect(field).to_have_value("")  # where nothing was read nothing is offered
    expect(line).to_have_count(0)
    page.keyboard.press("Escape")
    page.go_back()
    board(page)
    page.get_by_role("button", name="Log: Lobby").tap()
    nitrate = sheet.get_by_role("button", name="Nitrate, NO₃")
    expect(nitrate).to_contain_text("40 NO₃ typed, not logged")
    nitrate.tap()
    expect(field).to_have_value("40")
    expect(line).to_contain_text(re.compile(r"Typed at \d\d:\d\d, not logged yet"))
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#shelf-done")).to_contain_text("Nitrate, NO₃ 40 NO₃, Lobby")
    assert [one["value"] for one in entries_of(page)] == [10, 40]
    log_for_lobby(page, "Nitrate, NO₃")
    expect(line).to_have_count(0)


@long_run()
def test_the_focus_comes_back_to_the_tanks_button_after_logging_and_to_the_line_after_undo(page):
    put(page, OTHER, LOBBY)
    board(page, "anew")
    log_for_lobby(page, "Nitrate, NO₃").get_by_role("button", name="Nitrate, NO₃ 45").tap()
    expect(page.locator("#board-cards")).to_contain_text("45 mg/L")  # its card was painted anew
    expect(page.get_by_role("button", name="Log: Lobby")).to_be_focused()
    page.locator("#shelf-done button").tap()
    expect(page.locator("#shelf-done")).to_have_text("Undone.")
    expect(page.locator("#shelf-done")).to_be_focused()


@long_run()
def test_a_figure_that_was_not_saved_is_left_out_by_a_tap_and_by_the_next_day(page):
    put(page, LOBBY)
    board(page)
    field, line = page.locator("#log-value"), page.locator(".not-saved")
    for leave in (
        lambda: page.get_by_role("button", name="Leave it out").tap(),
        lambda: page.evaluate(
            """() => sessionStorage.setItem("mulmbook-figures",
            sessionStorage.getItem("mulmbook-figures").replace(/\\d{4}-\\d\\d-\\d\\d/, "2026-01-01"))"""
        ),
    ):
        log_for_lobby(page, "Nitrate, NO₃")
        field.fill("40")
        page.keyboard.press("Escape")
        log_for_lobby(page, "Nitrate, NO₃")
        expect(line).to_be_visible()
        leave()
        page.keyboard.press("Escape")
        log_for_lobby(page, "Nitrate, NO₃")
        expect(field).to_have_value("")
        expect(line).to_have_count(0)
        page.keyboard.press("Escape")


@long_run()
def test_another_entry_saved_meanwhile_says_what_is_still_not_logged(page):
    put(page, LOBBY)
    board(page)
    sheet = log_for_lobby(page, "Nitrate, NO₃")
    page.locator("#log-value").fill("40")
    sheet.get_by_role("button", name="Something else").tap()
    sheet.get_by_role("button", name="pH", exact=True).tap()
    sheet.get_by_role("group").get_by_role("button").first.tap()
    expect(page.locator("#shelf-done")).to_contain_text("Not logged: Nitrate, NO₃ 40")
    (entry,) = entries_of(page)
    assert entry["what"] == "ph"


@long_run()
@pytest.mark.parametrize(
    ("floats", "offered"),
    [
        (["salvinia-natans"], ["Salvinia natans"]),
        ([], ["Rotala rotundifolia", "Anubias barteri"]),  # nothing is known to float
    ],
)
def test_of_thinned_floaters_only_what_floats_is_offered(page, floats, offered):
    plants = [*LOBBY["plants"], *({"plant": key, "wet_g": None} for key in floats)]
    put(page, {**LOBBY, "plants": plants})
    board(page)
    sheet = log_for_lobby(page, "Floaters thinned")
    which = sheet.get_by_role("group", name="Of which plant")
    expect(which.get_by_role("button")).to_have_text(offered)


@long_run()
def test_plants_that_move_to_another_tank_are_two_entries(page):
    put(page, LOBBY, OTHER)
    board(page)
    page.get_by_role("button", name="Log: Lobby").tap()
    sheet = page.get_by_role("dialog")
    sheet.get_by_role("button", name="Plants in or out").tap()
    sheet.get_by_role("button", name="Rotala rotundifolia").tap()
    sheet.get_by_role("button", name="Stairs").tap()
    sheet.get_by_role("button", name=re.compile(r"30 g$")).first.tap()
    expect(page.locator("#shelf-done")).to_contain_text("Rotala rotundifolia to Stairs")
    (out,), (into,) = entries_of(page), entries_of(page, "other")
    assert (out["value"], into["value"]) == (-30, 30)
    assert out["what"] == into["what"] == "rotala-rotundifolia"
    page.locator("#shelf-done button").tap()
    expect(page.locator("#shelf-done")).to_have_text("Undone.")
    assert entries_of(page) == entries_of(page, "other") == []


@long_run()
def test_a_kit_is_chosen_once_and_handfuls_are_weighed_once(page):
    put(page, LOBBY)
    board(page)
    sheet = log_for_lobby(page, "Nitrite, as nitrogen")
    sheet.get_by_role("button", name="nitrite, NO₂", exact=True).tap()
    sheet.locator("#log-value").fill("1")
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#shelf-done")).to_contain_text("1 NO₂")
    (entry,) = entries_of(page)
    # 14.007 / 46.005, from the standard atomic weights of nitrogen and oxygen (IUPAC 2021, abridged)
    assert entry["value"] == pytest.approx(0.3045, abs=1e-4)
    page.get_by_role("button", name="Log: Lobby").tap()
    sheet.get_by_role("button", name="Nitrite, as nitrogen").tap()
    expect(sheet.locator(".kit > summary")).to_contain_text("NO₂")
    last = sheet.get_by_role("group", name="Logged last, NO₂")
    expect(last.get_by_role("button")).to_have_text("1")
    sheet.get_by_role("button", name="Something else").tap()
    sheet.get_by_role("button", name="Trimmed").tap()
    sheet.get_by_role("button", name="40 g", exact=True).tap()
    sheet.get_by_role("button", name="2 handfuls").tap()
    expect(page.locator("#shelf-done")).to_contain_text("2 handfuls")
    assert entries_of(page)[-1]["value"] == 80


HELD_AT_ONCE = """() => {
  document.querySelector('dialog button.tap[aria-pressed=false]').click();
  const controls = [...document.querySelectorAll('dialog .new-parts :is(button, input)')];
  return [controls.length > 5, controls.every((one) => one.disabled)];
}"""


@long_run()
def test_nothing_is_saved_in_the_old_unit_while_another_kit_is_being_kept(page):
    put(page, LOBBY)
    board(page)
    sheet = log_for_lobby(page, "Nitrite, as nitrogen")
    sheet.locator("#log-value").fill("0.7")
    assert page.evaluate(HELD_AT_ONCE) == [True, True]
    expect(sheet.locator(".kit > summary")).to_contain_text("NO₂")
    # As read off the kit, whatever its unit.
    expect(sheet.locator("#log-value")).to_have_value("0.7")
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#shelf-done")).to_contain_text("0.7 NO₂")


@long_run()
def test_what_nobody_has_read_is_not_logged_by_a_tap_on_save(page):
    """A usual figure helps to step to one's own; it is no reading."""
    put(page, LOBBY)
    board(page, "anew")
    sheet = log_for_lobby(page, "Nitrite, as nitrogen")
    field = sheet.locator("#log-value")
    expect(field).to_have_value("")
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(sheet.locator("#log-value-problem")).to_have_text("Give a number.")
    assert entries_of(page) == []
    sheet.get_by_role("button", name="More: Nitrite").tap()
    usual = float(field.input_value())
    sheet.get_by_role("button", name="More: Nitrite").tap()
    assert float(field.input_value()) > usual


def test_an_entry_is_changed_set_back_and_taken_out_on_the_tanks_page(page):
    put(page, LOBBY, entries=[reading(10, 1)])
    go(page, "shelf/tank/#mine")
    page.get_by_role("button", name=re.compile("^Change: Nitrate")).tap()
    page.locator("#log-value").fill("2000")
    page.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#log-value-problem")).to_contain_text("0 to 1000")  # refused, nothing lost
    page.locator("#log-at").fill("2026-11-20T08:30")
    page.locator("#log-value").fill("15")
    page.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#tank-entries li").first).to_contain_text("15 mg/L")
    (entry,) = entries_of(page)
    assert entry["value"] == 15
    assert entry["at"].startswith("2026-11-20T08:30")
    page.get_by_role("button", name=re.compile("^Change: Nitrate")).tap()
    page.get_by_role("button", name="Take it out of the log").tap()
    expect(page.locator("#tank-entries")).to_contain_text("Nothing is logged")
    page.locator("#shelf-done button").tap()
    expect(page.locator("#tank-entries li").first).to_contain_text("15 mg/L")


@long_run()
def test_axe_finds_nothing_on_the_sheet_to_log_on(page):
    put(page, LOBBY, entries=[reading(10, 9)])
    board(page)
    page.get_by_role("button", name="Log: Lobby").tap()
    assert axe_complaints(page) == []
    page.get_by_role("dialog").get_by_role("button", name="Nitrate, NO₃").tap()
    expect(page.locator("#log-value")).to_be_visible()
    assert axe_complaints(page) == []
