"""Whatever a server does amid an update, the old book stays whole and a repaired version is taken.

Each fault: a new version is published and comes damaged; the old one reads as before, with no network too;
once the server is right again the new version is offered and taken.
"""

import json
import os
import random
import shutil
import signal

import pytest
from playwright.sync_api import expect

from scripts.site.server import Handler, serving
from tests.browser.conftest import wait_for_offline_copy
from tests.browser.own_browser import own_browser, processes
from tests.browser.updates.published import list_anew, look_again, publish, reads_with_no_network
from tests.effort import long_run, share_of

PAGE = "plants/"
SCRIPT = "assets/search.js"
LIST = "offline-list.json"
WORKER = "service-worker.js"
NEW = "freshly printed"
KILLS = 50
MOST_MS = 2_000  # a kill comes at the latest then


def answer_with(status, body=b"", kind="text/html; charset=utf-8", **headers):
    """A reply in place of the file's own."""

    def reply(handler, plain):
        handler.send_response(status)
        for name, value in {"Content-Type": kind, "Content-Length": len(body), **headers}.items():
            handler.send_header(name.replace("_", "-"), str(value))
        handler.end_headers()
        handler.wfile.write(body)

    return reply


def cut_short(handler, plain):
    """Half of the file, and a connection that closes."""
    body = handler.whole_file()
    handler.send_response(200)
    handler.send_header("Content-Length", str(len(body)))
    handler.end_headers()
    handler.wfile.write(body[: len(body) // 2])
    handler.close_connection = True


def half_as_if_whole(handler, plain):
    """Half of the file, and a length that says it is all."""
    body = handler.whole_file()
    answer_with(200, body[: len(body) // 2], handler.guess_type(handler.path))(handler, plain)


def one_octet_other(handler, plain):
    """The file with its last octet changed: the right length, the wrong hash."""
    body = handler.whole_file()
    spoilt = body[:-1] + bytes([body[-1] ^ 1])
    answer_with(200, spoilt, handler.guess_type(handler.path))(handler, plain)


def vanish(handler, plain):
    """No reply at all."""
    handler.close_connection = True


SORRY = b"<!doctype html><title>Sorry</title><p>Back soon."
FAULTS = {
    "a page answers 500": (PAGE, answer_with(500, SORRY)),
    "the list answers 500": (LIST, answer_with(500, SORRY)),
    "the worker answers 500": (WORKER, answer_with(500, SORRY)),
    "a page is cut short": (PAGE, cut_short),
    "the list is cut short": (LIST, cut_short),
    "a page is half, as if whole": (PAGE, half_as_if_whole),
    "the list is half, as if whole": (LIST, half_as_if_whole),
    "a page with one octet changed": (PAGE, one_octet_other),
    "a script with one octet changed": (SCRIPT, one_octet_other),
    "a page in place of a script": (SCRIPT, answer_with(200, SORRY)),
    "a page in place of the list": (LIST, answer_with(200, SORRY)),
    "a page in place of the worker": (WORKER, answer_with(200, SORRY)),
    "a page leads elsewhere": (PAGE, answer_with(302, Location="/search/")),
    "a script leads to another host": (SCRIPT, answer_with(302, Location="http://127.0.0.1:9/x.js")),
    "the worker leads elsewhere": (WORKER, answer_with(302, Location="/search/")),
    "a page is not there": (PAGE, answer_with(404, SORRY)),
    "an empty list": (LIST, answer_with(200, b"{}", "application/json")),
    "the server vanishes at a page": (PAGE, vanish),
    "the server vanishes at the list": (LIST, vanish),
}  # fmt: skip


@pytest.fixture
def fault(monkeypatch):
    """Names what goes wrong from now on: ``fault(address, reply)``; ``fault(None)`` ends it."""
    wrong = {"address": None, "reply": None, "times": 0}
    plain = Handler.do_GET

    def whole_file(self):
        path = self.translate_path(self.path)
        path = os.path.join(path, "index.html") if os.path.isdir(path) else path
        with open(path, "rb") as file:
            return file.read()

    def do_get(self):
        address = self.path.partition("?")[0].lstrip("/")
        if wrong["address"] is None or address != wrong["address"]:
            return plain(self)
        wrong["times"] += 1
        return wrong["reply"](self, plain)

    def choose(address, reply=None):
        wrong.update(address=address, reply=reply)
        return wrong

    monkeypatch.setattr(Handler, "whole_file", whole_file, raising=False)
    monkeypatch.setattr(Handler, "do_GET", do_get)
    yield choose
    choose(None)


def old_book_is_whole(page):
    """The version from before reads, with a network and without one."""
    expect(page.get_by_role("button", name="Take it")).to_be_hidden()
    page.goto(PAGE)
    expect(page.locator("main")).not_to_contain_text(NEW)
    reads_with_no_network(page)
    page.goto("search/?q=duckweed")
    expect(page.locator("#found li").first).to_contain_text("uckweed")
    page.context.set_offline(False)
    page.goto(PAGE)


def takes_the_new(page, words=NEW):
    """The new version is offered, comes whole when it is taken, and nothing of the old one stays."""
    look_again(page)
    page.get_by_role("button", name="Take it").click()
    expect(page.locator("main")).to_contain_text(words)
    expect(page.locator("#news")).to_be_hidden()
    assert len(page.evaluate("async () => await caches.keys()")) == 1


@long_run()
@pytest.mark.parametrize("name", share_of(list(FAULTS), 19))
def test_the_old_book_stays_whole_and_a_repaired_version_is_taken(reader, book, fault, name):
    folder, _ = book
    address, reply = FAULTS[name]
    script = folder / SCRIPT
    script.write_text(script.read_text(encoding="utf-8") + "\n// anew\n", encoding="utf-8")
    publish(folder)
    wrong = fault(address, reply)
    look_again(reader)
    assert wrong["times"], "the fault was never met"
    old_book_is_whole(reader)
    fault(None)
    takes_the_new(reader)


@long_run()
def test_an_older_version_that_is_put_back_is_taken_like_any_other(reader, book, tmp_path):
    folder, _ = book
    before = tmp_path / "before"
    shutil.copytree(folder, before)
    publish(folder)
    takes_the_new(reader)
    shutil.copytree(before, folder, dirs_exist_ok=True)
    publish(folder, words="plants, as they were, by the way")
    takes_the_new(reader, "as they were")
    expect(reader.locator("main")).not_to_contain_text(NEW)


@long_run()
def test_with_no_room_the_old_book_stays_and_with_room_the_new_one_comes(reader, book):
    session = reader.context.new_cdp_session(reader)
    origin = book[1].rstrip("/")
    used = reader.evaluate("async () => (await navigator.storage.estimate()).usage")
    session.send("Storage.overrideQuotaForOrigin", {"origin": origin, "quotaSize": int(used)})
    publish(book[0])
    look_again(reader)
    old_book_is_whole(reader)
    session.send("Storage.overrideQuotaForOrigin", {"origin": origin})
    takes_the_new(reader)


@long_run()
@pytest.mark.parametrize("year", ["2001", "2099"])
def test_a_clock_that_is_wrong_by_years_neither_hides_nor_loses_anything(reader, book, year):
    reader.clock.set_fixed_time(f"{year}-03-01T12:00:00Z")
    reader.reload()
    old_book_is_whole(reader)
    publish(book[0])
    takes_the_new(reader)
    reader.goto("about/")
    expect(reader.locator("#copy")).to_contain_text("The whole book is on this device")


@long_run()
def test_in_a_folder_of_a_host_the_copy_and_an_update_are_the_folders_own(
    chromium,
    book,
    tmp_path,
):
    folder = tmp_path / "host" / "shelf of books" / "mulm"
    shutil.copytree(book[0], folder)
    neighbour = tmp_path / "host" / "index.html"
    neighbour.write_text("<!doctype html><title>Host</title><p>Another site.", encoding="utf-8")
    list_anew(folder)
    with serving(tmp_path / "host") as base:
        context = chromium.new_context(base_url=f"{base}shelf%20of%20books/mulm/")
        page = context.new_page()
        page.goto("plants/")
        wait_for_offline_copy(page)
        publish(folder)
        takes_the_new(page)
        context.set_offline(True)
        page.goto("plants/lemna-minor/")
        expect(page.get_by_role("heading", level=1)).to_contain_text("Lemna minor")
        context.set_offline(False)
        page.goto(base)
        expect(page.locator("p")).to_have_text("Another site.")
        context.close()


# Each file of the whole versions, whether its octets are those of the list; and how many come in parts.
WHOLE = """async () => {
  const seen = { wrong: [], whole: 0, parts: 0 };
  for (const name of await caches.keys()) {
    const cache = await caches.open(name);
    const list = await cache.match(new URL("offline-list.json", location.origin));
    if (!list) {
      seen.parts += 1;
      continue;
    }
    seen.whole += 1;
    for (const [path, hash] of Object.entries(await list.json())) {
      const kept = await cache.match(new URL(path, location.origin));
      const octets = kept && new Uint8Array(await crypto.subtle.digest("SHA-256", await kept.arrayBuffer()));
      const found = octets && Array.from(octets, (octet) => octet.toString(16).padStart(2, "0")).join("");
      if (found !== hash) seen.wrong.push(`${name} ${path}`);
    }
  }
  return seen;
}"""
# Begins an update, and ends once so many files of the new version are in their cache, or after ``most`` ms.
UNTIL = """async ({ version, files, take, most }) => {
  const end = performance.now() + most;
  const registration = await navigator.serviceWorker.getRegistration();
  if (take) registration.waiting?.postMessage("take");
  registration.update().catch(() => {});
  const cache = await caches.open("mulmbook-" + version);
  const early = async () => (await cache.keys()).length < files && performance.now() < end;
  while (await early()) await new Promise((done) => setTimeout(done));
}"""


@long_run()
def test_a_browser_killed_at_fifty_moments_of_an_update_has_a_whole_book(chromium, book, tmp_path):
    """A new version is on its way when the whole browser is killed; then the book is read with no network."""
    folder, base = book
    draw = random.Random(50)
    profile = tmp_path / "profile"
    with own_browser(chromium, profile, base) as context:
        page = context.new_page()
        page.goto(PAGE)
        wait_for_offline_copy(page)
    parts = 0
    for kill in range(KILLS):
        version = publish(folder, words=f"plants, printing {kill}, by the way")
        files = len(json.loads((folder / LIST).read_text(encoding="utf-8")))
        with own_browser(chromium, profile, base) as context:
            page = context.new_page()
            page.goto(PAGE)
            moment = {"version": version, "files": draw.randint(0, files), "take": kill % 3 == 0}
            page.evaluate(UNTIL, {**moment, "most": MOST_MS})
            with context.expect_event("close"):
                for process in processes(context, "browser"):
                    os.kill(process, signal.SIGKILL)
        with own_browser(chromium, profile, base) as context:
            context.set_offline(True)
            page = context.new_page()
            page.goto("plants/lemna-minor/")
            expect(page.get_by_role("heading", level=1)).to_contain_text("Lemna minor")
            seen = page.evaluate(WHOLE)
            assert seen["wrong"] == []
            assert seen["whole"] >= 1
            parts += seen["parts"] > 0
            context.set_offline(False)
    assert parts > 0, "no kill came in the middle"
    # The last version may have been whole by then, and is taken by a browser that starts: see the test below.
    publish(folder)
    with own_browser(chromium, profile, base) as context:
        page = context.new_page()
        page.goto(PAGE)
        takes_the_new(page)


@long_run()
def test_a_whole_version_that_waited_is_taken_by_a_browser_that_starts_anew(
    chromium, book, tmp_path
):
    """Nobody reads the old one any more as the browser starts: then no button is needed."""
    folder, base = book
    profile = tmp_path / "profile"
    with own_browser(chromium, profile, base) as context:
        page = context.new_page()
        page.goto(PAGE)
        wait_for_offline_copy(page)
        publish(folder)
        look_again(page)
        expect(page.get_by_role("button", name="Take it")).to_be_visible()
        expect(page.locator("main")).not_to_contain_text(NEW)
    with own_browser(chromium, profile, base) as context:
        context.set_offline(True)
        page = context.new_page()
        page.goto(PAGE)
        expect(page.locator("main")).to_contain_text(NEW)
        expect(page.locator("#news")).to_be_hidden()
        assert len(page.evaluate("async () => await caches.keys()")) == 1
