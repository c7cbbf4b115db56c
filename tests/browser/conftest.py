"""A real browser before the built site; whatever it complains of, or asks of others, fails the test.

A worker has one browser and, for most tests, one context in it: what a page stores is wiped after each
test, and only the browser's own cache of files and compiled code stays. Tests marked ``offline_copy``
have a context of their own, in which the service worker is at work.
"""

import os
import threading
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import expect, sync_playwright

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
ON_A_PHONE = {"viewport": PHONE, "has_touch": True, "locale": "en-GB"}
NO_SERVICE_WORKER = "delete Navigator.prototype.serviceWorker"  # as on a host without https

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
        page.on("console", self.console)
        page.on("pageerror", self.error)

    def context(self, context):
        context.on("page", self.page)
        context.on("request", self.request)

    def console(self, message):
        if message.type in ("error", "warning"):
            self.complaints.append(message.text)

    def error(self, error):
        self.complaints.append(str(error))

    def request(self, request):
        self.hosts.add(urlsplit(request.url).netloc)

    def leave(self, context):
        context.remove_listener("page", self.page)
        context.remove_listener("request", self.request)
        for page in context.pages:
            page.remove_listener("console", self.console)
            page.remove_listener("pageerror", self.error)


@pytest.fixture
def watch(address):
    watching = Watch()
    yield watching
    assert watching.complaints == []
    assert {host for host in watching.hosts if host} <= {urlsplit(address).netloc}


def new_context(chromium, address):
    made = chromium.new_context(base_url=address, **ON_A_PHONE)
    made.set_default_timeout(PATIENCE)
    return made


def wipe(context, address):
    """Forget what pages stored; the cache of files and of compiled code is the browser's own."""
    page = context.pages[0] if context.pages else context.new_page()
    session = context.new_cdp_session(page)
    session.send("Storage.clearDataForOrigin", {"origin": address[:-1], "storageTypes": "all"})
    session.detach()
    context.clear_cookies()


@pytest.fixture(scope="session")
def shared_context(chromium, address):
    made = new_context(chromium, address)
    made.add_init_script(NO_SERVICE_WORKER)
    yield made
    made.close()


@pytest.fixture
def context(request, chromium, address, watch):
    if request.node.get_closest_marker("offline_copy"):
        made = new_context(chromium, address)
        watch.context(made)
        yield made
        made.close()
        return
    made = request.getfixturevalue("shared_context")
    watch.context(made)
    yield made
    watch.leave(made)
    wipe(made, address)
    for page in made.pages:
        page.close()


@pytest.fixture
def page(context):
    return context.new_page()


@pytest.fixture(scope="session")
def living_page(chromium, address):
    """A page whose Python was started once, in a context of its own."""
    made = new_context(chromium, address)
    made.add_init_script(NO_SERVICE_WORKER)
    page = made.new_page()
    page.goto("calculators/units/")
    wait_for_answer(page)
    yield page
    made.close()


@pytest.fixture
def running(living_page, address, watch):
    """The page where Python runs already; ``visit`` goes from page to page as a tapped link does."""
    page, context = living_page, living_page.context
    page.set_viewport_size(PHONE)
    watch.page(page)
    watch.context(context)
    yield page
    watch.leave(context)
    wipe(context, address)


def visit(page, path):
    """Open a page of the site by its address, with Python kept alive, once its script has run."""
    page.evaluate(
        """async (path) => {
        const root = new URL(document.body.dataset.root, location).href;
        window.still_here = true; // a page loaded anew would not have it
        await navigation.navigate(new URL(path, root).href).finished; }""",
        path,
    )
    assert page.evaluate("() => window.still_here"), f"{path} was loaded anew"
    return page


def wait_for_answer(page):
    """Until Python has answered for the first time on this page."""
    expect(page.locator("#result-title")).to_have_text("Result")
    return page


def wait_for_offline_copy(page):
    """Until the service worker holds the whole book and serves this page."""
    page.evaluate(
        """async () => {
        const { serviceWorker } = navigator;
        const taken = new Promise((done) => serviceWorker.addEventListener("controllerchange", done));
        await serviceWorker.ready;
        if (!serviceWorker.controller) await taken; }"""
    )
