"""How long a person with a phone waits: in Chromium, as it is and with the processor slowed four times.

The browser's protocol cannot slow a worker, so that for the slowed figures the same files are started on
the page's main thread, which it can. The stock runtime is measured beside ours, in the same run.
"""

import shutil
import statistics
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from scripts.setup.chromium import ensure_chromium
from scripts.setup.node import browser_parts
from scripts.setup.paths import BUILD, SITE
from scripts.site.server import make_server

RUNS = 3
SLOWER = 4
PHONE = {"width": 390, "height": 844}
ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"]

START_ON_PAGE = """
async ([folder, library]) => {
  const start = performance.now();
  const root = new URL(folder, location.origin + '/');
  const { loadPyodide } = await import(new URL('pyodide.mjs', root).href);
  const parts = await (await fetch('/runtime/parts.json')).json();
  const options = library
    ? { stdLibURL: new URL(parts.library, root).href, lockFileContents: JSON.stringify(parts.lock) }
    : {};
  const [python, wheel] = await Promise.all([
    loadPyodide({ indexURL: root.href, ...options }),
    fetch(new URL('/runtime/' + parts.calculators, location.origin)).then((reply) => reply.arrayBuffer()),
  ]);
  python.FS.writeFile('/calculators.whl', new Uint8Array(wheel));
  python.runPython("import sys; sys.path.insert(0, '/calculators.whl')");
  const answer = python.runPython("from calculators.bridge import answer; answer");
  const asked = JSON.stringify({ calculator: 'free-ammonia', given: {}, units: 'metric' });
  answer(asked);
  const first = performance.now() - start;
  const again = performance.now();
  for (let turn = 0; turn < 20; turn++) answer(asked);
  return { first, again: (performance.now() - again) / 20 };
}
"""


def browser() -> None:
    """Print the tables."""
    folder = BUILD / "bench-stock"
    shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(SITE, folder)
    shutil.copytree(browser_parts() / "pyodide", folder / "stock")
    server = make_server(folder, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    base = f"http://127.0.0.1:{server.server_address[1]}/"
    path = ensure_chromium()
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=path, args=ARGUMENTS)
        print("| in the worker, processor as it is | ms |\n|---|---|")
        show(
            "first live answer, first visit",
            [in_worker(chromium, base, warm=False) for _ in range(RUNS)],
        )
        show(
            "first live answer, later visit",
            [in_worker(chromium, base, warm=True) for _ in range(RUNS)],
        )
        show("new answer after a key", [recompute(chromium, base) for _ in range(RUNS)])
        print(f"\n| processor slowed {SLOWER} times | ms |\n|---|---|")
        for name in ("plants/limnophila-sessiliflora/", "calculators/free-ammonia/"):
            show(f"readable page, {name}", [readable(chromium, base + name) for _ in range(RUNS)])
        for name, where in (("ours", ("runtime/", True)), ("stock", ("stock/", False))):
            cold = [on_page(chromium, base, where, warm=False) for _ in range(RUNS)]
            warm = [on_page(chromium, base, where, warm=True) for _ in range(RUNS)]
            show(f"first answer, first visit, {name}", [timing["first"] for timing in cold])
            show(f"first answer, later visit, {name}", [timing["first"] for timing in warm])
            show(f"new answer, {name}", [timing["again"] for timing in warm])
        chromium.close()
    server.shutdown()
    shutil.rmtree(folder)


@contextmanager
def python_running(calculator: str) -> Iterator[Page]:
    """The page of a calculator of the built site, with Python already running in its worker."""
    server = make_server(SITE, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=ensure_chromium(), args=ARGUMENTS)
        page = fresh(chromium).new_page()
        timed(page, f"http://127.0.0.1:{server.server_address[1]}/calculators/{calculator}/")
        yield page
        chromium.close()
    server.shutdown()


def show(name: str, values: list[float]) -> None:
    """The median of some runs."""
    print(f"| {name} | {statistics.median(values):.0f} |", flush=True)


def fresh(chromium: Browser, *, worker: bool = True) -> BrowserContext:
    """A browser that was never here."""
    return chromium.new_context(viewport=PHONE, service_workers="allow" if worker else "block")  # type: ignore[arg-type]


def timed(page: Page, address: str) -> float:
    """Open a calculator; ms from the start of loading to the first live answer."""
    page.goto(address)
    page.locator("#result-title", has_text="Result").wait_for(timeout=120_000)
    return float(page.evaluate("() => performance.now()"))


def in_worker(chromium: Browser, base: str, *, warm: bool) -> float:
    """A first visit; ``warm``, a later one, with the offline copy in place and no Python running."""
    context = fresh(chromium)
    page = context.new_page()
    took = timed(page, f"{base}calculators/free-ammonia/")
    if warm:
        page.evaluate("async () => { await navigator.serviceWorker.ready; }")
        took = timed(context.new_page(), f"{base}calculators/free-ammonia/")
    context.close()
    return took


def recompute(chromium: Browser, base: str) -> float:
    """From a change to the painted answer, the pause for typing left out."""
    context = fresh(chromium)
    page = context.new_page()
    timed(page, f"{base}calculators/free-ammonia/")
    took = page.evaluate(
        """async () => {
        const { ask } = await import(new URL('assets/runtime.js', new URL('../../', location.href)).href);
        const start = performance.now();
        const asked = { calculator: 'free-ammonia', given: { ph: '8' }, units: 'metric' };
        for (let turn = 0; turn < 20; turn++) await ask(asked);
        return (performance.now() - start) / 20; }"""
    )
    context.close()
    return float(took)


def slowed(page: Page) -> None:
    """Slow the page's processor."""
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})


def readable(chromium: Browser, address: str) -> float:
    """First contentful paint of a first visit."""
    context = fresh(chromium, worker=False)
    page = context.new_page()
    slowed(page)
    page.goto(address)
    took = page.evaluate(
        """() => new Promise((done) => new PerformanceObserver((list) => {
        const paint = list.getEntriesByName('first-contentful-paint')[0];
        if (paint) done(paint.startTime); }).observe({ type: 'paint', buffered: true }))"""
    )
    context.close()
    return float(took)


def on_page(chromium: Browser, base: str, where: tuple[str, bool], *, warm: bool) -> dict[str, Any]:
    """Start Python on the main thread, slowed; ``warm`` does it in a browser that has done it before."""
    context = fresh(chromium, worker=False)
    measure: Callable[[Page], Any] = lambda page: page.evaluate(START_ON_PAGE, list(where))  # noqa: E731
    for turn in range(2 if warm else 1):
        page = context.new_page()
        page.goto(f"{base}about/")
        if turn == int(warm):
            slowed(page)
        timings: dict[str, Any] = measure(page)
    context.close()
    return timings
