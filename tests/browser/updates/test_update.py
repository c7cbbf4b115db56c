"""A new version is taken whole or not at all, and only when the reader says so."""

import hashlib
import json
import re

import pytest
from playwright.sync_api import expect

from scripts.site.offline import is_stored
from tests.browser.conftest import wait_for_answer, wait_for_offline_copy
from tests.browser.updates.published import look_again, publish, reads_with_no_network
from tests.effort import long_run, share_of


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


@long_run()
def test_a_version_that_arrives_damaged_is_not_installed(reader, book):
    folder, _ = book
    publish(folder, spoil="plants/index.html")
    look_again(reader)
    expect(reader.locator("#news")).to_be_hidden()
    reader.reload()
    expect(reader.locator("main")).not_to_contain_text("freshly printed")
    reads_with_no_network(reader)


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
    reads_with_no_network(reader)


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
