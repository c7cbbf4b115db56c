"""A new version is taken whole or not at all, and only when the reader says so."""

import json
import shutil
import threading

import pytest
from playwright.sync_api import expect

from scripts.setup.paths import ROOT
from scripts.site.offline import write_offline_list
from scripts.site.server import make_server
from tests.browser.conftest import wait_for_offline_copy


@pytest.fixture
def book(site, tmp_path):
    """A copy of the site that can be changed, on a server of its own."""
    folder = tmp_path / "site"
    shutil.copytree(site, folder)
    server = make_server(folder, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield folder, f"http://127.0.0.1:{server.server_address[1]}/"
    server.shutdown()


def publish(folder, *, spoil=None):
    """Change the plants' page and publish; ``spoil`` names a file that arrives damaged."""
    page = folder / "plants" / "index.html"
    page.write_text(
        page.read_text(encoding="utf-8").replace(
            "plants, by the way", "plants, freshly printed, by the way"
        ),
        encoding="utf-8",
    )
    shutil.copyfile(ROOT / "docs" / "service-worker.js", folder / "service-worker.js")
    version = write_offline_list(folder)
    if spoil:
        with (folder / spoil).open("ab") as file:
            file.write(b" ")
    return version


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
