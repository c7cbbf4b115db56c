"""Tanks for tests of the shelf's pages, and how a test puts them there and reads the log back."""

from datetime import UTC, datetime, timedelta

from playwright.sync_api import expect

from tests.browser.conftest import go
from tests.browser.shelf_page import with_shelf

NO_WORKER = "window.Worker = class { constructor() { throw new Error('no worker here'); } };"


TARGETS = "main button, dialog button, dialog select, main .tick, .tap, .stepper input"


NOT_WET = ".after, #demo-there, .kept, .shelf-preview"  # done at a desk


SMALL = f"""() => [...document.querySelectorAll('{TARGETS}')]
    .filter((one) => one.offsetParent && !one.closest('{NOT_WET}') && one.getBoundingClientRect().height < 56)
    .map((one) => one.outerHTML.slice(0, 90))"""


LOBBY = {
    "id": "mine",
    "name": "Lobby",
    "net_l": 96,
    "length_cm": 80,
    "width_cm": 30,
    "place": "gb",
    "change": {"percent": 20, "every_days": 7},
    "temperature_c": 24,
    "ph": 7.2,
    "plants": [
        {"plant": "rotala-rotundifolia", "wet_g": 50},
        {"plant": "anubias-barteri", "wet_g": None},
    ],
    "animals": [{"animal": "neocaridina-davidi", "count": 12}],
}


OTHER = {"id": "other", "name": "Stairs"}


class Taps:
    """Counts the taps of a hand."""

    def __init__(self):
        self.count = 0

    def __call__(self, place):
        place.tap()
        self.count += 1


def put(page, *tanks, entries=(), chosen=None):
    """Put tanks and entries on the shelf, from a small page of the book; then stay there."""
    go(page, "about/")
    with_shelf(
        page,
        """for (const tank of given.tanks) await shelf.saveTank(tank);
        for (const entry of given.entries) await shelf.log(entry);
        if (given.chosen) await shelf.choose(given.chosen);""",
        {"tanks": list(tanks), "entries": list(entries), "chosen": chosen},
    )


def without_python(context):
    """A page in which Python cannot start."""
    made = context.new_page()
    made.add_init_script(NO_WORKER)
    return made


def reading(value, days_ago, what="nitrate_mg_l"):
    """A reading of the keeper's tank so many days ago."""
    at = (datetime.now(UTC) - timedelta(days=days_ago)).isoformat()
    return {"tank": "mine", "at": at, "kind": "reading", "what": what, "value": value}


def logged(page, **entry):
    """Log an entry of today, or of ``at``."""
    with_shelf(page, "await shelf.log(given);", {"tank": "mine", **entry})


def entries_of(page, tank="mine"):
    return with_shelf(page, "return await shelf.entries({ tank: given });", tank)


def board(page, state=None):
    """The board, as it was kept or made anew; ``state`` says which of the two to wait for."""
    go(page, "shelf/")
    shown = f"#board[data-shown={state}]" if state else "#board[data-shown]"
    expect(page.locator(shown)).to_be_attached()
    return page


def log_for_lobby(page, what):
    """From the board: the sheet that asks for this value."""
    page.get_by_role("button", name="Log: Lobby").tap()
    sheet = page.get_by_role("dialog")
    sheet.get_by_role("button", name=what).tap()
    return sheet
