"""The shelf keeps what was entered: in a season, in two tabs, when a page dies, when the store is damaged or full."""

import json
from datetime import datetime
from zoneinfo import ZoneInfo

import pytest

from tests.browser.conftest import PATIENCE, new_context
from tests.browser.shelf_page import in_page, open_page, with_shelf

TANKS, WEEKS, ENTRIES = 10, 26, 2_000
NEW_TANK = "const tank = await shelf.saveTank({ name: 'Foyer' });"
READING = "({ tank: tank.id, kind: 'reading', what: 'nitrate_mg_l', value: 10 })"


@pytest.fixture
def page(context):
    return open_page(context)


def reopened(page):
    """The same page, loaded anew."""
    page.reload()
    return page


def test_a_season_is_written_and_read(page, watch):
    asked_before = []
    page.context.on("request", lambda request: asked_before.append(request.url))
    with_shelf(
        page,
        """
        const tanks = [];
        for (let index = 0; index < given.tanks; index += 1) tanks.push(await shelf.saveTank({ name: `Tank ${index}`, net_l: 50 + index, plants: [{ plant: "rotala", wet_g: 20 }] }));
        const start = Date.parse("2026-05-01T08:00:00Z");
        const step = given.weeks * 7 * 86_400_000 / given.entries;
        const season = Array.from({ length: given.entries }, (_, index) => ({
          tank: tanks[index % given.tanks].id, at: new Date(start + index * step).toISOString(), kind: "reading", what: "nitrate_mg_l", value: index % 40 }));
        for (const entry of season) await shelf.log(entry);
        """,
        {"tanks": TANKS, "weeks": WEEKS, "entries": ENTRIES},
    )
    seen = with_shelf(
        reopened(page),
        """const [first] = await shelf.tanks();
        return { tanks: (await shelf.tanks()).length, entries: await shelf.entries(), ofFirst: (await shelf.entries({ tank: first.id })).length,
          late: (await shelf.entries({ since: "2026-10-01" })).length, last: await shelf.lastValues(first.id, "reading", "nitrate_mg_l"), troubles: shelf.troubles() };""",
    )
    assert (seen["tanks"], len(seen["entries"]), seen["troubles"]) == (TANKS, ENTRIES, [])
    assert [one["value"] for one in seen["entries"]] == [index % 40 for index in range(ENTRIES)]
    assert seen["ofFirst"] == ENTRIES // TANKS
    assert seen["late"] == len([one for one in seen["entries"] if one["at"] >= "2026-10-01"]) > 0
    assert seen["last"] == [30, 20, 10, 0]  # each once, the latest first
    own = page.url.removesuffix("about/")
    assert all(url.startswith(own) and "?" not in url for url in asked_before)


def test_what_a_form_read_earlier_does_not_undo_another_tab(context, page):
    tank = with_shelf(page, "return shelf.saveTank({ name: 'Foyer', ph: 7, gh_dh: 6 });")
    other = open_page(context)
    with_shelf(other, "await shelf.saveTank({ ...given, ph: 7.4 });", tank)
    with_shelf(page, "await shelf.saveTank({ ...given, gh_dh: 8, kh_dh: 3 });", tank)
    for one in (page, other):
        one.wait_for_function(
            "async () => { const { openShelf } = await import(new URL('../assets/shelf/store.js', location).href);"
            " const [tank] = await (await openShelf()).tanks(); return tank.ph === 7.4 && tank.gh_dh === 8 && tank.kh_dh === 3; }"
        )
    taken_away = with_shelf(
        page,
        "const { kh_dh, ...rest } = await shelf.tank(given.id); return shelf.saveTank(rest);",
        tank,
    )
    assert (taken_away["kh_dh"], taken_away["ph"]) == (None, 7.4)


def test_two_tabs_that_write_at_once_keep_everything(context, page):
    tank = with_shelf(page, "return shelf.saveTank({ name: 'Foyer' });")
    other = open_page(context)
    writing = """() => { window.writing = (async () => {
        const { openShelf } = await import(new URL('../assets/shelf/store.js', location).href);
        const shelf = await openShelf();
        window.heard = 0;
        shelf.onChange(({ from }) => { if (from === "elsewhere") window.heard += 1; });
        const [tank] = await shelf.tanks();
        for (let index = 0; index < 60; index += 1) await shelf.log({ tank: tank.id, kind: "feed", value: index });
    })(); }"""
    for one in (page, other):
        one.evaluate(writing)
    for one in (page, other):
        one.evaluate("() => window.writing")
    seen_all = """async () => { const { openShelf } = await import(new URL('../assets/shelf/store.js', location).href);
        return (await (await openShelf()).entries()).length === 120 && window.heard > 0; }"""
    for one in (page, other):
        one.wait_for_function(seen_all)
    assert tank["name"] == "Foyer"
    assert len(with_shelf(reopened(page), "return shelf.entries();")) == 120


WRITES = """(first) => { window.written = 0; window.batches = 0; (async () => {
    const { openShelf } = await import(new URL('../assets/shelf/store.js', location).href);
    const shelf = await openShelf();
    const [tank] = await shelf.tanks();
    for (let index = first; ; index += 1) {
      await shelf.log({ tank: tank.id, kind: "feed", value: index });
      window.written += 1;
      const entries = Array.from({ length: 50 }, (_, part) => ({ id: `${index} ${part}`, tank: tank.id, at: "2026-06-01T08:00:00Z", kind: "note", value: index }));
      await shelf.merge({ format: "mulmbook-tanks", version: 1, tanks: [], entries });
      window.batches += 1;
    } })(); }"""


def crash(page):
    """End the page's process at once, as a phone does that needs the memory."""
    session = page.context.new_cdp_session(page)
    with page.expect_event("crash"):
        session._impl_obj._connection.send  # noqa: B018
        page.evaluate("() => 0")
