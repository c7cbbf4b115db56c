"""Whatever happens to the store, what was entered before stays, and the keeper hears what is wrong."""

import json
import os
import signal

import pytest

from tests.browser.conftest import new_context
from tests.browser.own_browser import own_browser, processes
from tests.browser.shelf_page import at_book, in_page, open_page, with_shelf
from tests.effort import long_run, share_of

BATCH = 50
STATE = "return { entries: await shelf.entries(), troubles: shelf.troubles() };"
# One entry, then fifty in one import, and so on until the page dies.
WRITE_ON = """
window.written = { singles: given.first, batches: given.first };
(async () => {
  for (let value = given.first; ; value += 1) {
    await shelf.log({ tank: given.tank, kind: "feed", value });
    window.written.singles = value + 1;
    const note = { tank: given.tank, at: "2026-06-01T08:00:00Z", kind: "note", text: "x".repeat(200), value };
    const entries = Array.from({ length: given.batch }, (_, part) => ({ ...note, id: `${value} ${part}` }));
    await shelf.merge({ tanks: [], entries });
    window.written.batches = value + 1;
  }
})();
"""
LOG_IT = """
const [tank] = await shelf.tanks();
return attempt(() => shelf.log({ tank: tank.id, kind: "feed", value: given }));
"""


@pytest.fixture
def page(page):
    return at_book(page)


def check_whole(seen, first, written):
    """Every write that was told as done is there, and none is there in part. Returns the next value."""
    alone = sorted(one["value"] for one in seen["entries"] if one["kind"] == "feed")
    batched = [one["value"] for one in seen["entries"] if one["kind"] == "note"]
    assert seen["troubles"] == []
    assert alone == list(range(len(alone)))
    assert len(alone) >= written["singles"]
    assert {batched.count(value) for value in batched} == {BATCH}
    assert set(range(first, written["batches"])) <= set(batched) <= set(alone)
    return len(alone)


def write_on(page, tank, first):
    """Let a page write without end; returns what it had told as done a moment ago."""
    with_shelf(page, WRITE_ON, {"tank": tank, "first": first, "batch": BATCH})
    page.wait_for_function("(first) => window.written.batches > first", arg=first)
    return page.evaluate("() => window.written")


@long_run()
def test_a_page_killed_at_many_moments_leaves_a_whole_log(chromium, address, tmp_path):
    with own_browser(chromium, tmp_path, address) as context:
        tank = with_shelf(open_page(context), "return (await shelf.saveTank({ name: 'Jar' })).id;")
        first = 0
        for _ in range(12):
            page = open_page(context)
            written = write_on(page, tank, first)
            ended = processes(context, "renderer")
            with page.expect_event("crash"):
                for process in ended:
                    os.kill(process, signal.SIGKILL)
            page.close()
            while set(ended) & set(processes(context, "renderer")):
                pass  # a new page might be given to a process that is just ending
            first = check_whole(with_shelf(open_page(context), STATE), first, written)


@long_run()
def test_a_browser_killed_right_after_a_write_has_it(chromium, address, tmp_path):
    tank, first = None, 0
    for _ in range(2):
        with own_browser(chromium, tmp_path, address) as context:
            page = open_page(context)
            tank = tank or with_shelf(page, "return (await shelf.saveTank({ name: 'Jar' })).id;")
            written = write_on(page, tank, first)
            with context.expect_event("close"):
                for process in processes(context, "browser"):
                    os.kill(process, signal.SIGKILL)
        with own_browser(chromium, tmp_path, address) as context:
            first = check_whole(with_shelf(open_page(context), STATE), first, written)


def made(**parts):
    """An operation that is right but for what a case changes; TANK stands for the id of a tank."""
    usual = {"id": "x", "at": "2099-01-01T00:00:00.000Z", "action": "a", "op": "tank", "key": "k"}
    return {**usual, "values": {"name": "n"}, **parts}


def without(*names, **parts):
    """The same without some of its parts."""
    return {name: part for name, part in made(**parts).items() if name not in names}


def nested(depth):
    """A list in a list, and so on."""
    return [nested(depth - 1)] if depth else []


ENTRY = {"tank": "TANK", "at": "2026-01-01T00:00:00Z", "kind": "feed"}
DAMAGED = {
    "no operation": {"id": "x"},
    "no time": without("at"),
    "a time that is none": made(at="noon"),
    "a time far away": made(at="9999-12-31T23:59:59Z"),
    "a day that is none": made(at="2026-13-45T00:00:00Z"),
    "a number for an id": made(id=7),
    "a list for an id": made(id=[1, 2]),
    "no action": without("action"),
    "a place in words": made(place="first"),
    "no key": without("key"),
    "a key that is an object": made(key={}),
    "no values": without("values", op="entry"),
    "values that are a list": made(op="entry", values=[1]),
    "values that are nothing": made(key="TANK", values=None),
    "an order that is a text": made(op="order", values={"ids": "TANK"}),
    "an order of numbers": made(op="order", values={"ids": [1, None]}),
    "a drop of nothing known": made(op="drop", of="shelf", key="TANK"),
    "an undo of nothing": made(op="undo"),
    "an entry without its kind": made(op="entry", values={**ENTRY, "kind": None}),
    "a value that is a text": made(op="entry", values={**ENTRY, "value": "5"}),
    "a tank whose name is an object": made(values={"name": {}}),
    "a hostile key": made(key="__proto__", whole=True),
    "values nested too deep": made(values={"name": "n", "plants": nested(40)}),
    "a calculation in parts": made(op="kept", values={"tank": "Foyer"}),
}
NEWER = {"an unknown operation": made(op="swap"), "a later version": made(v=2)}
TANK_AND_ENTRY = """
const tank = await shelf.saveTank({ name: "Foyer", ph: 7 });
await shelf.log({ tank: tank.id, kind: "feed", value: 1 });
"""
SPOIL = f"""{TANK_AND_ENTRY}
await raw("readwrite", (operations) => operations.put(JSON.parse(given.replaceAll("TANK", tank.id))));
"""
REST = """
return {
  tanks: (await shelf.tanks()).map((one) => [one.name, one.ph ?? null]),
  entries: (await shelf.entries()).map((one) => one.value),
  troubles: shelf.troubles(),
  stored: await raw("readonly", (operations) => operations.count()),
  polluted: ({}).name ?? null,
};
"""


@pytest.mark.parametrize("name", share_of([*NEWER, *DAMAGED], 8))
def test_a_damaged_operation_is_left_out_and_said_and_the_rest_is_shown(page, name):
    spoilt, word = (DAMAGED | NEWER)[name], "newer" if name in NEWER else "damaged"
    with_shelf(page, SPOIL, json.dumps(spoilt))
    page.reload()
    seen = with_shelf(page, REST)
    assert (seen["tanks"], seen["entries"]) == ([["Foyer", 7]], [1])
    assert len(seen["troubles"]) == 1
    assert word in seen["troubles"][0]
    assert seen["stored"] == 3  # left where it is
    assert seen["polluted"] is None
    assert with_shelf(page, LOG_IT, 2)["value"]["value"] == 2
    assert with_shelf(page, REST)["entries"] == [1, 2]


def test_entries_whose_tank_lost_its_record_stay_in_sight(page):
    lose = """await raw("readwrite", (operations) => { operations.openCursor().onsuccess = ({ target }) => {
      if (target.result?.value.op === "tank") target.result.delete();
      target.result?.continue();
    }; });"""
    with_shelf(page, TANK_AND_ENTRY + lose)
    page.reload()
    seen = with_shelf(page, REST)
    assert seen["tanks"] == [["Tank without its record", None]]
    assert seen["entries"] == [1]
    assert "lost its own record" in seen["troubles"][0]
    name_it = (
        "const [tank] = await shelf.tanks(); await shelf.saveTank({ ...tank, name: 'Foyer' });"
    )
    with_shelf(page, name_it)
    seen = with_shelf(page, REST)
    assert (seen["tanks"], seen["entries"], seen["troubles"]) == ([["Foyer", None]], [1], [])


REFUSALS = {
    "taken away": "Object.defineProperty(window, 'indexedDB', { value: undefined })",
    "refused": "IDBFactory.prototype.open = () => { throw new DOMException('', 'SecurityError'); }",
    "failing": "IDBDatabase.prototype.transaction = () => { throw new DOMException('', 'UnknownError'); }",
}


@pytest.mark.parametrize("refusal", share_of([*REFUSALS], 3))
def test_where_nothing_can_be_stored_the_page_works_and_says_so(chromium, address, refusal):
    context = new_context(chromium, address)
    context.add_init_script(REFUSALS[refusal])
    seen = with_shelf(
        open_page(context),
        """const tank = await shelf.saveTank({ name: "Foyer" });
        await shelf.log({ tank: tank.id, kind: "feed", value: 1 });
        await shelf.saveSetting("place", "gb");
        return {
          reason: shelf.trouble instanceof ShelfError && shelf.trouble.reason,
          durable: shelf.durable,
          troubles: shelf.troubles(),
          entries: (await shelf.entries()).length,
          place: await shelf.setting("place"),
        };""",
    )
    context.close()
    assert (seen["reason"], seen["durable"]) == ("closed", False)
    assert "until this page is closed" in seen["troubles"][0]
    assert (seen["entries"], seen["place"]) == (1, "gb")


def test_a_full_device_is_said_and_the_value_stays_in_the_form(page, address):
    session = page.context.new_cdp_session(page)
    quota = {"origin": address[:-1]}
    session.send("Storage.overrideQuotaForOrigin", {**quota, "quotaSize": 100_000})
    with_shelf(page, "await shelf.saveTank({ name: 'Foyer' });")
    seen = with_shelf(
        page,
        """const [tank] = await shelf.tanks();
        for (let value = 0; value < 400; value += 1) {
          const codes = crypto.getRandomValues(new Uint16Array(2_000)).map((one) => 1_000 + (one % 7_000));
          const text = String.fromCharCode(...codes); // of chance, since the browser packs what repeats
          const came = await attempt(() => shelf.log({ tank: tank.id, kind: "note", text, value }));
          if (came.reason) return { ...came, value, there: (await shelf.entries()).length };
        }
        return null;""",
    )
    assert seen["reason"] == "full"
    assert "room" in seen["message"]
    assert seen["unsaved"]["value"] == seen["value"] == seen["there"] > 0
    page.reload()
    assert len(with_shelf(page, "return shelf.entries();")) == seen["there"]
    session.send("Storage.overrideQuotaForOrigin", quota)
    again = with_shelf(page, "return attempt(() => shelf.log(given));", seen["unsaved"])
    assert again["value"]["value"] == seen["value"]


def test_a_newer_book_in_another_tab_may_take_over_and_the_older_loses_nothing(context, page):
    with_shelf(page, "await shelf.saveTank({ name: 'Foyer' });")
    upgraded = in_page(
        open_page(context),
        """return new Promise((resolve) => {
          const request = indexedDB.open("mulmbook-shelf", 2);
          request.onblocked = () => resolve("blocked");
          request.onsuccess = () => { request.result.close(); resolve("upgraded"); };
        });""",
    )
    assert upgraded == "upgraded"
    refused = with_shelf(page, LOG_IT, 1)
    assert (refused["reason"], refused["unsaved"]["value"]) == ("newer", 1)
    page.reload()
    after = with_shelf(
        page,
        """const refused = await attempt(() => shelf.saveTank({ name: "Jar" }));
        return { reason: shelf.trouble.reason, refused: refused.reason, troubles: shelf.troubles() };""",
    )
    assert (after["reason"], after["refused"]) == ("newer", "newer")
    assert "until this page is closed" not in after["troubles"][0]


@long_run()
def test_a_store_that_is_cleared_under_an_open_page_is_made_anew(context, page):
    with_shelf(page, "await shelf.saveTank({ name: 'Foyer' });")
    cleared = in_page(
        open_page(context),
        """return new Promise((resolve) => {
          const request = indexedDB.deleteDatabase("mulmbook-shelf");
          request.onblocked = () => resolve("blocked");
          request.onsuccess = () => resolve("cleared");
        });""",
    )
    assert cleared == "cleared"
    seen = with_shelf(
        page,
        """await shelf.saveTank({ name: "Jar" });
        return until(async () => (await shelf.tanks()).map((tank) => tank.name).join() === "Jar");""",
    )
    assert seen is True
    page.reload()
    assert with_shelf(page, "return (await shelf.tanks()).map((tank) => tank.name);") == ["Jar"]
