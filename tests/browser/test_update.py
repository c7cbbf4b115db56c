"""A new version is taken whole or not at all, and only when the reader says so."""

import hashlib
import itertools
import json
import os
import re
import shutil
import threading
import time

import pytest
from playwright.sync_api import expect

from scripts.setup.paths import ROOT
from scripts.site.offline import is_stored, write_offline_list
from scripts.site.server import Handler, make_server
from tests.browser.conftest import wait_for_answer, wait_for_offline_copy
from tests.effort import long_run, share_of

KEPT_PAGES = ("lemna-minor", "units")
STAND_IN = 1_000  # octets of each file of the browser's Python, which hardly a test here starts
LATER = itertools.count(2, 2)  # seconds


@pytest.fixture(scope="module")
def few_pages(site, tmp_path_factory):
    """The site with few of the pages of each door; the whole of it is copied in test_look_up.py."""
    folder = tmp_path_factory.mktemp("book") / "site"
    shutil.copytree(site, folder)
    for door in ("plants", "problems", "animals", "names", "rules", "guides", "calculators"):
        for page in (folder / door).iterdir():
            if page.is_dir() and page.name not in KEPT_PAGES:
                shutil.rmtree(page)
    for file in (folder / "runtime").iterdir():
        if file.suffix != ".json":
            file.write_bytes(file.read_bytes()[:STAND_IN])
    for file in (folder / "data").rglob("*"):  # never kept on a device
        if file.is_file() and file.suffix != ".html":
            file.unlink()
    list_anew(folder)
    return folder


@pytest.fixture
def book_with_python(book, site):
    """The same with the whole of the browser's Python."""
    folder, _ = book
    shutil.copytree(site / "runtime", folder / "runtime", dirs_exist_ok=True)
    list_anew(folder)
    return book


@pytest.fixture
def book(few_pages, tmp_path):
    """A copy of the book that can be changed, on a server of its own."""
    folder = tmp_path / "site"
    shutil.copytree(few_pages, folder)
    server = make_server(folder, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield folder, f"http://127.0.0.1:{server.server_address[1]}/"
    server.shutdown()


def list_anew(folder):
    """The list and the worker of the files that stand there; the version."""
    shutil.copyfile(ROOT / "docs" / "service-worker.js", folder / "service-worker.js")
    return write_offline_list(folder)


def publish(folder, *, spoil=None, words="plants, freshly printed, by the way"):
    """Change the plants' page and publish; ``spoil`` names a file that arrives damaged."""
    page = folder / "plants" / "index.html"
    text = re.sub(r"plants, (?:[\w ]+, )?by the way", words, page.read_text(encoding="utf-8"))
    page.write_text(text, encoding="utf-8")
    version = list_anew(folder)
    if spoil:
        with (folder / spoil).open("ab") as file:
            file.write(b" ")
    printed_later(folder, page)
    return version


def printed_later(folder, page):
    """Date what was published apart: a server tells times by the second, and two may share one."""
    stamp = time.time() + next(LATER)
    for path in (page, *folder.glob("*.js*"), *folder.glob("assets/*.json")):
        os.utime(path, (stamp, stamp))


@pytest.fixture
def drip(monkeypatch):
    """Names a file that from now on comes octet by octet and never ends; None ends that."""
    dripping = {"file": None, "over": threading.Event()}
    plain = Handler.copyfile

    def copyfile(self, source, output):
        if dripping["file"] is None or not str(source.name).endswith(dripping["file"]):
            return plain(self, source, output)
        while not dripping["over"].wait(0.2):
            output.write(source.read(1))
            output.flush()

    def choose(name):
        if name is None:
            dripping["over"].set()
        dripping["file"] = name

    monkeypatch.setattr(Handler, "copyfile", copyfile)
    yield choose
    choose(None)


@pytest.fixture
def reader(chromium, book):
    context = chromium.new_context(base_url=book[1])
    context.set_default_timeout(60_000)
    page = context.new_page()
    page.goto("plants/")
    wait_for_offline_copy(page)
    yield page
    context.close()


def look_again(page):
    """Look for a new version, until it is installed or given up."""
    page.evaluate(
        """async () => {
        const registration = await navigator.serviceWorker.ready;
        await registration.update().catch(() => {});
        const worker = registration.installing;
        if (!worker) return;
        await new Promise((done) => {
          const look = () => worker.state === "installing" || done();
          worker.addEventListener("statechange", look);
          look();
        }); }"""
    )


def test_the_old_version_stays_until_the_new_is_taken(reader, book):
    publish(book[0])
    look_again(reader)
    expect(reader.locator("#news")).to_be_visible()
    reader.reload()
    expect(reader.locator("main")).not_to_contain_text("freshly printed")
    expect(reader.locator("#news")).to_be_visible()
    reader.get_by_role("button", name="Take it").click()
    expect(reader.locator("main")).to_contain_text("freshly printed")
    expect(reader.locator("#news")).to_be_hidden()
    assert len(reader.evaluate("async () => (await caches.keys())")) == 1


def test_a_version_that_arrives_damaged_is_not_installed(reader, book):
    folder, _ = book
    publish(folder, spoil="plants/index.html")
    look_again(reader)
    expect(reader.locator("#news")).to_be_hidden()
    reader.reload()
    expect(reader.locator("main")).not_to_contain_text("freshly printed")
    reader.context.set_offline(True)
    reader.goto("plants/lemna-minor/")
    expect(reader.get_by_role("heading", level=1)).to_contain_text("Lemna minor")


@long_run()
def test_only_what_changed_is_fetched_again(reader, book):
    folder, _ = book
    asked = []
    reader.context.on("request", lambda request: asked.append(request.url))
    publish(folder)
    look_again(reader)
    expect(reader.locator("#news")).to_be_visible()
    changed = [url for url in asked if url.endswith((".wasm", "pyodide.asm.js"))]
    assert changed == []
    old = json.loads((folder / "offline-list.json").read_text(encoding="utf-8"))
    assert len(old) > 40


def copy_words(page):
    """What the page about the book says of the copy on this device."""
    page.goto("about/")
    expect(page.locator("#copy")).not_to_be_empty()
    return page.locator("#copy").inner_text()


@long_run()
def test_the_copy_is_said_when_it_is_whole(chromium, book):
    context = chromium.new_context(base_url=book[1])
    page = context.new_page()
    page.goto("plants/")
    expect(page.locator("#news")).to_contain_text(
        "The whole book is on this device now", timeout=60_000
    )
    kept = [
        path
        for path in book[0].rglob("*")
        if path.is_file() and is_stored(str(path.relative_to(book[0])))
    ]
    megabytes = sum(path.stat().st_size for path in kept) / 1e6
    said = copy_words(page)
    assert said.startswith("The whole book is on this device since ")
    assert abs(float(re.search(r"([\d.]+) MB", said)[1]) - megabytes) < 0.2
    version = hashlib.sha256((book[0] / "offline-list.json").read_bytes()).hexdigest()
    assert f"version {version[:8]}" in said
    context.close()


@long_run()
@pytest.mark.parametrize("lost", share_of(["one page", "everything"], 2))
def test_a_lost_copy_is_brought_again_at_the_next_visit(reader, lost):
    reader.evaluate(
        """async (lost) => {
        for (const name of await caches.keys()) {
          if (lost === "everything") await caches.delete(name);
          else await (await caches.open(name)).delete(new URL("plants/lemna-minor/", location.origin));
        } }""",
        lost,
    )
    reader.goto("search/")
    assert copy_words(reader).startswith("The whole book is on this device")
    reader.context.set_offline(True)
    reader.goto("plants/lemna-minor/")
    expect(reader.get_by_role("heading", level=1)).to_contain_text("Lemna minor")


@long_run()
def test_a_copy_that_cannot_be_mended_is_said(reader, book):
    folder, _ = book
    (folder / "plants" / "lemna-minor" / "index.html").unlink()
    session = reader.context.new_cdp_session(reader)
    session.send("Network.clearBrowserCache")  # from which it would be mended
    reader.evaluate(
        "async () => { for (const name of await caches.keys()) await caches.delete(name); }"
    )
    assert "is not whole on this device: plants/lemna-minor/" in copy_words(reader)


@long_run()
def test_another_tab_is_not_reloaded_and_its_next_link_is_loaded_anew(reader, book):
    other = reader.context.new_page()
    other.goto("search/")
    other.fill("input[type=search]", "half-typed")
    publish(book[0])
    look_again(reader)
    reader.get_by_role("button", name="Take it").click()
    expect(reader.locator("main")).to_contain_text("freshly printed")
    expect(other.locator("#news")).to_contain_text("renewed in another tab")
    assert other.input_value("input[type=search]") == "half-typed"
    other.evaluate("() => { window.old = true; }")
    other.locator("#all-pages").get_by_role("link", name="Plants", exact=True).click()
    expect(other.locator("main")).to_contain_text("freshly printed")
    assert not other.evaluate("() => Boolean(window.old)")


@long_run()
def test_a_tab_from_before_the_worker_swaps_no_new_page_into_an_old_script(
    chromium, book_with_python
):
    """Python runs in it, so that a link would swap the page; a version taken elsewhere forbids that."""
    book = book_with_python
    context = chromium.new_context(base_url=book[1])
    context.set_default_timeout(60_000)
    first = context.new_page()
    first.goto("calculators/units/")
    wait_for_answer(first)
    wait_for_offline_copy(first)
    second = context.new_page()
    second.goto("plants/")
    publish(book[0])
    look_again(second)
    second.get_by_role("button", name="Take it").click()
    expect(second.locator("main")).to_contain_text("freshly printed")
    expect(first.locator("#news")).to_contain_text("renewed in another tab")
    first.evaluate("() => { window.old = true; }")
    first.locator("#all-pages").get_by_role("link", name="Plants", exact=True).click()
    expect(first.locator("main")).to_contain_text("freshly printed")
    assert not first.evaluate("() => Boolean(window.old)")
    context.close()


@long_run()
def test_half_a_version_that_was_given_up_is_swept_away(reader, book):
    folder, _ = book
    publish(folder, spoil="plants/index.html")
    look_again(reader)
    assert (
        len(reader.evaluate("async () => await caches.keys()")) == 2
    )  # what came of it waits for a repair
    publish(folder, words="plants, printed once more, by the way")
    look_again(reader)
    expect(reader.locator("#news")).to_be_visible()
    assert len(reader.evaluate("async () => await caches.keys()")) == 2
    reader.get_by_role("button", name="Take it").click()
    expect(reader.locator("main")).to_contain_text("once more")
    assert len(reader.evaluate("async () => await caches.keys()")) == 1


@long_run()
def test_a_server_that_drips_is_given_up_and_the_next_version_taken(reader, book, drip):
    folder, _ = book
    publish(folder)
    worker = folder / "service-worker.js"
    worker.write_text(
        worker.read_text(encoding="utf-8").replace("180_000", "1_500"), encoding="utf-8"
    )
    drip("plants/index.html")
    look_again(reader)
    expect(reader.locator("#news")).to_be_hidden()
    drip(None)
    publish(folder, words="plants, printed once more, by the way")
    look_again(reader)
    expect(reader.locator("#news")).to_be_visible()
