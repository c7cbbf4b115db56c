"""What the shelf's buttons save is read by readers of others, and a table comes in by its own button."""

import csv
import io
import json

import icalendar
from jsonschema import Draft202012Validator
from playwright.sync_api import expect

from calculators.shelf.file_schema import shelf_schema
from tests.browser.conftest import go
from tests.browser.shelf_tanks import LOBBY, board, entries_of, put, reading
from tests.effort import long_run

CHANGED = {**reading(20, 9, None), "kind": "change"}  # two days late by the tank's own plan


def saved_by(page, name):
    """The text of the file that a button saves."""
    with page.expect_download() as download:
        page.get_by_role("button", name=name).tap()
    with open(download.value.path(), encoding="utf-8", newline="") as file:
        return file.read()


@long_run()
def test_the_copy_and_the_readings_that_the_board_saves_hold_all(page):
    put(page, LOBBY, entries=[reading(10, 9), reading(20, 2), CHANGED])
    board(page)
    file = json.loads(saved_by(page, "Save or send a copy"))
    expect(page.locator("#copy-age")).to_contain_text("Last copy saved")
    assert list(Draft202012Validator(shelf_schema()).iter_errors(file)) == []
    assert [tank["name"] for tank in file["tanks"]] == ["Lobby"]
    assert sorted(entry["value"] for entry in file["entries"]) == [10, 20, 20]
    rows = list(csv.DictReader(io.StringIO(saved_by(page, "Readings as a table"))))
    assert [(row["tank"], row["what"], float(row["value"])) for row in rows] == [
        ("Lobby", "nitrate_mg_l", 10),
        ("Lobby", "nitrate_mg_l", 20),
    ]


@long_run()
def test_the_calendar_that_the_round_saves_has_what_is_due(page):
    put(page, LOBBY, entries=[reading(10, 9), CHANGED])
    go(page, "shelf/round/")
    expect(page.locator("#round-calendar")).to_be_visible()
    calendar = icalendar.Calendar.from_ical(saved_by(page, "Calendar file of 28 days"))
    events = [str(one["summary"]) for one in calendar.walk("VEVENT")]
    assert any("Lobby" in event and "change water" in event.lower() for event in events), events


@long_run()
def test_a_table_of_readings_comes_in_by_the_boards_button_once_it_is_agreed_to(page):
    put(page, LOBBY)
    board(page)
    text = "tank,at,what,value\nLobby,2026-11-01,nitrate_mg_l,15\nJar,2026-11-02,ph,7.1\n"
    payload = {"name": "mine.csv", "mimeType": "text/csv", "buffer": text.encode()}
    page.locator("#copy-read").set_input_files(payload)
    preview = page.locator("#copy-preview")
    expect(preview).to_contain_text("Jar: new; entries 1 new")
    expect(preview).to_contain_text("Nothing has changed yet.")
    assert entries_of(page) == []
    preview.get_by_role("button", name="Take it in").tap()
    expect(page.locator(".tank-card")).to_have_count(2)
    assert [one["value"] for one in entries_of(page)] == [15]
    page.locator("#copy-read").set_input_files(payload)  # the same again
    expect(preview).to_contain_text("Jar: the same; entries 1 the same")
