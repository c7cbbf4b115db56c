"""Python starts early where it will be asked, and on later visits from an image of its memory."""

import re

import pytest
from playwright.sync_api import expect

from calculators.core.listing import load_all
from tests.browser.conftest import wait_for_answer, wait_for_offline_copy
from tests.browser.lent_python import LENDING
from tests.effort import long_run

CALCULATOR = "calculators/free-ammonia/?ammonia_mg_l=2&ph=8&temperature_c=25"
NAMES = [name for name in load_all() if name not in ("surface-cover", "standing", "round")]
MODULES = """
    const root = new URL(document.body.dataset.root, location);
    const { ask, isFromImage, isRunning, prepare, prepareAhead } =
      await import(new URL("assets/runtime.js", root));
    const { isImageKept } = await import(new URL("assets/python-image.js", root));
    const parts = await (await fetch(new URL("runtime/parts.json", root))).json();
    const address = new URL(`runtime/${parts.image}`, root).href;
    const until = async (holds) => {
      while (!(await holds())) await new Promise((done) => setTimeout(done, 100));
    };
"""
ANSWERS = """
    const answers = {};
    for (const calculator of given) {
      answers[calculator] = await ask({ calculator, given: {}, units: "metric" });
    }
    return [isFromImage(), answers];
"""
SPOIL = """
    const cache = await caches.open("python-images");
    const { headers } = await cache.match(address);
    const zeros = new Uint8Array(Number(headers.get("Content-Length")));
    await cache.put(address, new Response(zeros, { headers }));
"""


FILES = """() => performance.getEntriesByType("resource").map(({ name, startTime }) =>
    [name.split("/").at(-1).split("-")[0], startTime])"""


def in_page(page, body, given=None):
    return page.evaluate(f"async (given) => {{ {MODULES} {body} }}", given)


def marks(page):
    """What the worker of this page has marked so far."""
    return page.workers[0].evaluate(
        "() => performance.getEntriesByType('mark').map(({ name }) => name)"
    )


def visit(page):
    page.goto(CALCULATOR)
    wait_for_answer(page)


@long_run()
@pytest.mark.offline_copy
def test_a_later_visit_starts_from_the_image_and_answers_alike(page):
    visit(page)
    from_image, plain = in_page(page, ANSWERS, NAMES)
    assert not from_image
    wait_for_offline_copy(page)
    in_page(page, "await until(() => isImageKept(address));")
    visit(page)
    from_image, answers = in_page(page, ANSWERS, NAMES)
    assert from_image
    assert answers == plain
    asked = {"message": "check-shelf-file", "text": "{"}  # the shelf asks in ways of its own
    assert in_page(page, "return ask(given);", asked)["complaints"]


@long_run()
@pytest.mark.offline_copy
def test_an_image_that_does_not_serve_is_let_go_and_made_anew(page):
    visit(page)
    _, plain = in_page(page, ANSWERS, NAMES[:1])
    wait_for_offline_copy(page)
    in_page(page, "await until(() => isImageKept(address));")
    in_page(page, SPOIL)
    visit(page)
    from_image, answers = in_page(page, ANSWERS, NAMES[:1])
    assert not from_image
    assert answers == plain
    in_page(page, "await until(() => isImageKept(address));")
    visit(page)
    assert in_page(page, "return isFromImage();")


def test_python_starts_on_the_list_of_calculators(page):
    page.goto("calculators/")
    in_page(page, "await until(() => isRunning());")


def test_a_finger_on_a_link_to_a_calculator_starts_python(page):
    page.goto("about/")
    assert not in_page(page, "return isRunning();")
    touch = """
        const link = document.createElement("a");
        link.href = new URL("calculators/units/", root).href;
        document.querySelector("main").append(link);
        link.dispatchEvent(new PointerEvent("pointerdown", { bubbles: true }));
        return isRunning();
    """
    assert in_page(page, touch)


def test_a_finger_on_a_link_has_its_calculator_imported_before_its_page_is_there(page):
    page.goto("calculators/")
    asked = """
        const { promise, resolve } = Promise.withResolvers();
        await until(() => isRunning());
        const heard = ({ data: { message } }) => message?.prepare && resolve(message.prepare);
        new BroadcastChannel(given).onmessage = heard;
        const link = document.querySelector("#main a[href*='dosing/']");
        link.dispatchEvent(new PointerEvent("pointerdown", { bubbles: true }));
        return promise;
    """
    assert in_page(page, asked, LENDING) == "dosing"


def test_what_a_blank_form_asks_was_asked_when_the_finger_went_down(page):
    page.goto("calculators/")
    asked = """
        const { promise, resolve } = Promise.withResolvers();
        await until(() => isRunning());
        const heard = [];
        new BroadcastChannel(given).onmessage = ({ data: { message } }) => {
          if (message?.question?.includes("dosing") && heard.push(message) === 2) resolve(heard);
        };
        const link = document.querySelector("#main a[href*='dosing/']");
        link.dispatchEvent(new PointerEvent("pointerdown", { bubbles: true }));
        link.click();
        return promise;
    """
    ahead, asked_then = in_page(page, asked, LENDING)
    assert ahead["prepare"] == "dosing"
    assert "prepare" not in asked_then
    assert ahead["question"] == asked_then["question"]


def test_at_a_tank_only_its_calculator_is_made_ready_since_the_tank_fills_the_form(page):
    page.goto("calculators/")
    asked = """
        const { promise, resolve } = Promise.withResolvers();
        await until(() => isRunning());
        const heard = ({ data: { message } }) => message?.prepare && resolve(message);
        new BroadcastChannel(given).onmessage = heard;
        const choice = document.querySelector("#stand-at select");
        choice.replaceChildren(new Option("Window tank", "window", true, true));
        const link = document.querySelector("#main a[href*='dosing/']");
        link.dispatchEvent(new PointerEvent("pointerdown", { bubbles: true }));
        return promise;
    """
    message = in_page(page, asked, LENDING)
    assert message["prepare"] == "dosing"
    assert message.get("question") is None


@long_run()
@pytest.mark.starts_python
def test_an_answer_made_ahead_is_the_one_that_is_asked_for(page):
    visit(page)
    ahead, plain, other = in_page(
        page,
        """
        const question = { calculator: "oxygen", given: {}, own: false, units: "metric" };
        prepare("oxygen", question);
        const ahead = await ask(question);
        const other = await ask({ ...question, units: "us" });
        prepare("light", { calculator: "light", given: {}, units: "metric" });
        return [ahead, await ask(question), other];
    """,
    )
    assert ahead == plain
    assert other["painted"] != ahead["painted"]


@long_run()
@pytest.mark.starts_python
def test_the_list_has_its_calculators_imported_while_nobody_asks(page):
    """All but those that need a table of their own, which may never be asked for."""
    with page.expect_worker() as started:
        page.goto("calculators/")
    ahead = {name for name in load_all() if name not in ("pick", "identify")}
    done = started.value.evaluate(
        """async (least) => {
        const marks = () => performance.getEntriesByType("mark").map(({ name }) => name);
        const ahead = () => marks().filter((name) => name.startsWith("ahead: "));
        while (ahead().length < least) await new Promise((done) => setTimeout(done, 50));
        return ahead(); }""",
        len(ahead),
    )
    assert set(done) == {f"ahead: {name}" for name in ahead}


@pytest.mark.starts_python
def test_from_the_list_the_answer_is_there_before_it_is_asked(page):
    with page.expect_worker() as started:
        page.goto("calculators/")
    ready = """async () => {
        const marks = () => performance.getEntriesByType("mark").map(({ name }) => name);
        while (!marks().includes("ahead: dosing")) await new Promise((done) => setTimeout(done, 50)); }"""
    started.value.evaluate(ready)
    page.locator("#main a[href*='dosing/']").first.tap()
    wait_for_answer(page)
    assert page.workers == [started.value]
    assert "answered" not in marks(page)
    page.locator("#in-volume_l").fill("77")  # and a keeper's own figure goes to Python
    expect(page.locator("#still")).to_be_visible()
    assert "answered" in marks(page)


@long_run()
@pytest.mark.starts_python
def test_once_a_calculator_is_asked_nothing_more_is_imported_ahead(page):
    visit(page)
    in_page(
        page,
        """
        const asked = (calculator) => ({ calculator, given: {}, units: "metric" });
        prepareAhead(given.map((calculator) => ({ calculator, question: asked(calculator) })));
        await ask({ ...asked("units"), units: "us" });
    """,
        NAMES,
    )
    ahead = [name for name in marks(page) if name.startswith("ahead: ")]
    assert len(ahead) < len(NAMES) / 2
    page.wait_for_timeout(1_000)
    assert [name for name in marks(page) if name.startswith("ahead: ")] == ahead


def test_a_calculators_scripts_are_there_before_the_tap_once_python_runs(page):
    page.goto("calculators/")
    page.wait_for_function(
        """() => performance.getEntriesByType("resource").some(({ name }) =>
           name.endsWith("/assets/calculator.js"))"""
    )


def test_a_swapped_page_names_its_modules_so_that_they_come_side_by_side(page):
    page.goto("calculators/units/")
    wait_for_answer(page)
    named = """
        const links = document.head.querySelectorAll("link[rel=modulepreload]");
        return [...links].map(({ href }) => href);
    """
    before = in_page(page, named)
    page.locator("header .shelf-door, .doors-below a[href*='shelf/']").first.tap()
    expect(page.locator("#board")).to_be_attached()
    after = in_page(page, named)
    new = [address for address in after if address not in before]
    assert any(address.endswith("/assets/shelf/board.js") for address in new)


@long_run()
def test_the_copy_of_the_book_waits_while_python_starts(chromium, address):
    context = chromium.new_context(base_url=address)
    page = context.new_page()
    page.goto("")
    held = """
        const kept = async () => {
          const name = (await caches.keys()).find((one) => one.startsWith("mulmbook-"));
          return name ? (await (await caches.open(name)).keys()).length : 0;
        };
        await until(async () => (await kept()) > given);
        const before = await kept();
        const { start } = await import(new URL("assets/runtime.js", root));
        await start();
        const meanwhile = (await kept()) - before;
        await until(async () => (await kept()) > before + 10 * given);
        return meanwhile;
    """
    at_once = (
        6  # files that are on their way when the copy is told to wait, and those just asked for
    )
    assert in_page(page, held, at_once) <= 3 * at_once
    context.close()


@pytest.mark.offline_copy
def test_of_a_kept_book_python_starts_without_waiting_for_the_pages_own_script(
    page, context, watch
):
    page.goto("plants/")
    wait_for_offline_copy(page)
    browser = context.new_cdp_session(page)
    browser.send("Network.enable")
    browser.send("Network.setBlockedURLs", {"urls": ["*/assets/page.js"]})
    with page.expect_worker():
        page.goto(CALCULATOR)
    assert all("page.js" in complaint for complaint in watch.complaints)
    watch.complaints.clear()


@pytest.mark.starts_python
def test_on_a_first_visit_python_waits_for_the_page(page, watch):
    page.route("**/assets/page.js", lambda route: route.abort())
    page.goto(CALCULATOR)
    assert page.workers == []
    assert all("page.js" in complaint for complaint in watch.complaints)
    watch.complaints.clear()


@long_run()
@pytest.mark.starts_python
def test_the_interpreter_is_fetched_once_and_before_the_library(page):
    visit(page)
    asked = page.workers[0].evaluate(FILES)
    assert [name for name, _ in asked].count("pyodide.asm.wasm") == 1
    times = dict(asked)
    assert times["pyodide.asm.wasm"] <= times["library"]


@long_run()
@pytest.mark.starts_python
def test_an_interpreter_that_does_not_come_is_said_and_another_try_starts(page, watch):
    page.context.route("**/pyodide.asm.wasm", lambda route: route.fulfill(status=503, body="busy"))
    page.goto(CALCULATOR)
    expect(page.locator("#loading-text")).to_contain_text("Python could not start")
    page.context.unroute_all()
    page.get_by_role("button", name="Try again").tap()
    wait_for_answer(page)
    # The browser and the runtime name what did not come.
    watch.complaints = [one for one in watch.complaints if not re.search("wasm|WebAssembly", one)]


@long_run()
@pytest.mark.starts_python
def test_a_store_that_never_answers_keeps_nobody_waiting(page):
    """As after a page that closed while it wrote the image: Python then starts without one."""

    def silence(route):
        whole = route.fetch()
        mute = "CacheStorage.prototype.open = () => new Promise(() => {});"
        route.fulfill(response=whole, body=mute + whole.text())

    page.route("**/calculator-worker.js*", silence)
    page.goto(CALCULATOR)
    wait_for_answer(page)
    page.unroute_all()
