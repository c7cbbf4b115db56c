"""A real browser before the built site; whatever it complains of, or asks of others, fails the test.

A worker has one browser and, for most tests, one context in it: what a page stores is wiped after each
test, and only the browser's own cache of files and compiled code stays. Pages of it borrow their Python
(see ``lent_python``), but in tests marked ``starts_python``. Tests marked ``python_alive`` also share a
page that is never loaded anew. Tests marked ``offline_copy`` have a context of their own, in which the
service worker is at work and the copy of the book stays from test to test.
"""

import os
import threading
from functools import partial
from urllib.parse import urlencode, urlsplit

import pytest
from playwright.sync_api import expect, sync_playwright

from calculators.core.address import address as address_of
from calculators.core.listing import load_all
from calculators.core.nested import gather
from scripts.setup.chromium import find_chromium
from scripts.setup.node import browser_parts
from scripts.site.server import Handler, make_server
from tests.browser.lent_python import BORROW, OWN_PYTHON, open_lender
from tests.browser.spare_page import FORGET, SparePage

PHONE = {"width": 390, "height": 844}
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    # Python's machine code is made once, quickly: making the fast kind too takes as long as a start itself.
    "--js-flags=--liftoff-only",
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


class KeptFiles(Handler):
    """Serves files that a browser need not ask for again: during a run none of them changes."""

    def send_header(self, keyword, value):
        super().send_header(keyword, "max-age=3600" if keyword == "Cache-Control" else value)


@pytest.fixture(scope="session")
def address(site):
    server = make_server(site, 0)
    server.RequestHandlerClass = partial(KeptFiles, directory=str(site))
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
            self.complaints.append(f"{message.text} {message.location.get('url', '')}".strip())

    def error(self, error):
        self.complaints.append(f"{error}\n{getattr(error, 'stack', '')}".strip())

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


ALL = "all"
ALL_BUT_THE_COPY = "cookies,file_systems,indexeddb,local_storage"


def wipe(context, address, storage=ALL):
    """Forget what pages stored; the cache of files and of compiled code is the browser's own."""
    session = context.new_cdp_session(context.pages[0])
    session.send("Storage.clearDataForOrigin", {"origin": address[:-1], "storageTypes": storage})
    session.detach()
    context.clear_cookies()


@pytest.fixture(scope="session")
def shared_context(chromium, address):
    made = new_context(chromium, address)
    made.add_init_script(NO_SERVICE_WORKER)
    made.add_init_script(BORROW)
    yield made
    made.close()


@pytest.fixture(scope="session")
def offline_context(chromium, address):
    """One in which the service worker is at work; an empty page keeps it open."""
    made = new_context(chromium, address)
    made.new_page()
    yield made
    made.close()


@pytest.fixture(scope="session")
def lender(shared_context, address):
    """The page whose Python the others borrow."""
    return open_lender(shared_context, address)


@pytest.fixture(scope="session")
def living_page(lender, shared_context):
    """The page in which Python stays alive from test to test."""
    return shared_context.new_page()


@pytest.fixture(scope="session")
def spare_page(lender, shared_context):
    """The page that other tests use one after another."""
    return SparePage(shared_context, PHONE)


@pytest.fixture
def context(request, chromium, address, watch):
    if request.node.get_closest_marker("offline_copy"):
        made = request.getfixturevalue("offline_context")
        watch.context(made)
        yield made
        watch.leave(made)
        made.set_offline(False)
        for page in made.pages[1:]:
            page.close()
        wipe(made, address, ALL_BUT_THE_COPY)
        return
    made, lender, living, spare = map(
        request.getfixturevalue, ("shared_context", "lender", "living_page", "spare_page")
    )
    spare.prepare()
    watch.page(lender)
    watch.context(made)
    yield made
    watch.leave(made)
    made.unroute_all()
    spare.give_back()
    for page in made.pages:
        if page not in (lender, living, spare.page):
            page.close()
    wipe(made, address)


@pytest.fixture
def page(request, context, watch):
    """An empty page; for tests marked ``python_alive`` the one where Python runs already."""
    marked = request.node.get_closest_marker
    if marked("offline_copy"):
        return context.new_page()
    if marked("starts_python"):
        made = context.new_page()
        made.add_init_script(OWN_PYTHON)
        return made
    if not marked("python_alive"):
        return request.getfixturevalue("spare_page").take(watch)
    living = request.getfixturevalue("living_page")
    living.evaluate(FORGET)
    living.bring_to_front()  # behind another page nothing is drawn, and nothing comes to rest
    living.set_viewport_size(PHONE)
    living.emulate_media(color_scheme="null")
    watch.page(living)
    # The first test, one after a page that was loaded anew, or after tests that filled the shelf.
    if not living.evaluate(IS_ALIVE) or living.evaluate(HOLDS_A_SHELF):
        living.goto("calculators/units/")
        wait_for_answer(living)
        living.evaluate("() => { window.python_is_alive = true; }")
    return living


IS_ALIVE = "() => Boolean(window.python_is_alive)"
# A page that stays open hears what others write on the shelf, and keeps it though the storage is wiped.
HOLDS_A_SHELF = """async () => {
    const root = new URL(document.body.dataset.root, location);
    const { openShelf } = await import(new URL("assets/shelf/store.js", root).href);
    const shelf = await openShelf();
    return (await shelf.tanks()).length + (await shelf.kept()).length > 0; }"""


def go(page, path):
    """Open a page of the site: where Python runs, as a tapped link does, so that it stays alive."""
    if path.endswith(".html") or not page.evaluate(IS_ALIVE):
        return page.goto(path)
    page.evaluate(
        """async (path) => {
        const root = new URL(document.body.dataset.root, location).href;
        window.left = document.querySelector("main");
        // A page that puts its state into the address meanwhile ends the navigation, but not the swap.
        const { finished } = navigation.navigate(new URL(path, root).href, { history: "push" });
        await finished.catch((wrong) => { if (wrong.name !== "AbortError") throw wrong; }); }""",
        path,
    )
    page.wait_for_function("() => document.querySelector('main') !== window.left")
    assert page.evaluate(IS_ALIVE), f"{path} was loaded anew"
    return None


# A scheme changes colours alone, so in dark only the rules that look at colours can come out otherwise.
RULES_BY_SCHEME = {"light": None, "dark": ["color-contrast", "link-in-text-block"]}


def axe_complaints(page):
    """What axe finds wrong with the page as it stands, in light and, of its colours, in dark."""
    if not page.evaluate("() => Boolean(window.axe)"):
        page.evaluate((browser_parts() / "axe-core" / "axe.min.js").read_text(encoding="utf-8"))
    complaints = []
    for scheme, rules in RULES_BY_SCHEME.items():
        page.emulate_media(color_scheme=scheme)
        found = page.evaluate(
            """async (rules) => (await axe.run(document, {
            resultTypes: ["violations"],
            ...(rules ? { runOnly: { type: "rule", values: rules } } : {}) })).violations""",
            rules,
        )
        complaints += [
            f"{scheme}: {one['id']}: {node['html'][:120]} {(node['failureSummary'] or '')[:200]}"
            for one in found
            for node in one["nodes"]
        ]
    return complaints


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
    values = {field.key: field.default for field in spec.inputs} | gather(spec.inputs, own)
    return f"calculators/{name}/?{urlencode(address_of(spec, values, 'metric'))}"


def wait_for_offline_copy(page):
    """Until the service worker holds the whole book and serves this page."""
    page.evaluate(
        """async () => {
        const { serviceWorker } = navigator;
        const taken = new Promise((done) => serviceWorker.addEventListener("controllerchange", done));
        await serviceWorker.ready;
        if (!serviceWorker.controller) await taken; }"""
    )
