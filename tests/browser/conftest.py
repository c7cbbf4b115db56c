"""A real browser before the built site; whatever it complains of, or asks of others, fails the test."""

import os
import threading
from urllib.parse import urlencode, urlsplit

import pytest
from playwright.sync_api import expect, sync_playwright

from calculators.bridge import address as address_of
from calculators.core.listing import load_all
from scripts.server import make_server
from scripts.setup.chromium import find_chromium

PHONE = {"width": 390, "height": 844}
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
]
PATIENCE = int(
    os.environ.get("MULMBOOK_PATIENCE", "60000")
)  # ms; a loaded machine may start Python slowly

expect.set_options(timeout=PATIENCE)


@pytest.fixture(scope="session")
def chromium():
    path = os.environ.get("CHROMIUM") or find_chromium()
    assert path, "no Chromium: run python3 scripts/test.py, which installs one"
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=ARGUMENTS)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def address(site):
    server = make_server(site, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_address[1]}/"
    server.shutdown()


class Watch:
    """What the browser complained of, and which hosts it asked."""

    def __init__(self):
        self.complaints, self.hosts = [], set()

    def page(self, page):
        page.on(
            "console",
            lambda message: (
                message.type in ("error", "warning") and self.complaints.append(message.text)
            ),
        )
        page.on("pageerror", lambda error: self.complaints.append(str(error)))

    def context(self, context):
        context.on("page", self.page)
        context.on("request", lambda request: self.hosts.add(urlsplit(request.url).netloc))


@pytest.fixture
def watch(address):
    watching = Watch()
    yield watching
    assert watching.complaints == []
    assert {host for host in watching.hosts if host} <= {urlsplit(address).netloc}


@pytest.fixture
def context(chromium, address, watch):
    made = chromium.new_context(viewport=PHONE, base_url=address, has_touch=True, locale="en-GB")
    made.set_default_timeout(PATIENCE)
    watch.context(made)
    yield made
    made.close()


@pytest.fixture
def page(context):
    return context.new_page()


def wait_for_answer(page):
    """Until Python has answered for the first time on this page, be it that something is still needed."""
    expect(page.locator("#calculator[data-answered]")).to_be_attached()
    return page


def show_example(page):
    """Fill in the whole worked example, as a keeper does with its button."""
    wait_for_answer(page)
    page.locator("#example").tap()
    expect(page.locator("#borrowed")).to_be_visible()
    return page


def example_address(name, **own):
    """A calculator's address with all of its worked example, but for some inputs of one's own."""
    spec = load_all()[name]
    values = {field.key: field.default for field in spec.inputs} | own
    return f"calculators/{name}/?{urlencode(address_of(spec, values, 'metric'))}"


def wait_for_offline_copy(page):
    """Until the service worker holds the whole book and serves this page."""
    page.evaluate("async () => { await navigator.serviceWorker.ready; }")
    for _ in range(PATIENCE // 100):
        if page.evaluate("() => Boolean(navigator.serviceWorker.controller)"):
            return
        page.wait_for_timeout(100)
    raise AssertionError("the offline copy never came")
