"""How long a person with a phone waits: in Chromium, as it is and with the processor slowed four times.

The browser's protocol cannot slow a worker, so that for the slowed figures the same files are started on
the page's main thread, which it can. The stock runtime is measured beside ours, in the same run.
"""

import shutil
import statistics
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from scripts.benches.options import Options
from scripts.setup.chromium import ensure_chromium
from scripts.setup.node import browser_parts
from scripts.setup.paths import BUILD, SITE
from scripts.site.server import serving

READING = 2_000  # ms that somebody looks at a list before a tap
SLOWER = 4
ANSWERED = "#calculator[data-answered]"
PATIENCE = 120_000  # ms
PHONE = {"width": 390, "height": 844}
ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"]

# Each starts Python on the page and gives the laps of it, in ms; the last is the first answer.
LAPS = """
  const laps = {};
  let before = performance.now();
  const lap = (name) => { const now = performance.now(); laps[name] = now - before; before = now; };
"""
ASK = """
  const answer = python.runPython("from calculators.bridge import answer; answer");
  lap('import');
  const asked = JSON.stringify({ calculator: 'free-ammonia', given: {}, units: 'metric' });
  answer(asked);
  lap('first call');
  for (let turn = 0; turn < 20; turn++) answer(asked);
  return { laps, again: (performance.now() - before) / 20 };
"""
OURS = f"""
async (later) => {{ {LAPS}
  const start = await import('/assets/python-start.js');
  const {{ keptImage }} = await import('/assets/python-image.js');
  const {{ broughtImage }} = await import('/assets/brought-image.js');
  const code = start.compileEarly();
  const parts = await start.listOfParts();
  lap('scripts');
  const image = await (later ? keptImage(start.imageAddress(parts)) : broughtImage(parts, code, () => {{}}));
  if (!image) throw new Error('no image of memory came');
  const extra = later ? {{ whole: true, _loadSnapshot: image }} : {{ brought: image }};
  lap('image');
  const python = await start.startPython(parts, extra);
  lap('Python');
  {ASK}
}}
"""
STOCK = f"""
async () => {{ {LAPS}
  const root = new URL('/stock/', location.origin);
  const {{ loadPyodide }} = await import(new URL('pyodide.mjs', root).href);
  lap('scripts');
  const parts = await (await fetch('/runtime/parts.json')).json();
  const [python, wheel] = await Promise.all([
    loadPyodide({{ indexURL: root.href }}),
    fetch('/runtime/' + parts.calculators)
      .then((reply) => new Response(reply.body.pipeThrough(new DecompressionStream('gzip'))).arrayBuffer()),
  ]);
  python.FS.writeFile('/calculators.whl', new Uint8Array(wheel));
  python.runPython("import sys; sys.path.insert(0, '/calculators.whl')");
  lap('Python');
  {ASK}
}}
"""
MAKE_IMAGE = """
async () => {
  const root = new URL(document.body.dataset.root, location);
  const { workerAt } = await import(new URL('assets/trust.js', root).href);
  const maker = new Worker(workerAt(new URL('assets/image-worker.js', root)), { type: 'module' });
  const said = await new Promise((done) => { maker.onmessage = ({ data }) => done(data); });
  if (said.failed) throw new Error(said.failed);
}
"""


def browser(options: Options) -> None:
    """Print the tables; ``only`` may name ``worker`` or ``slowed``."""
    print(f"Medians of {options.runs}.\n")
    folder = BUILD / "bench-stock"
    shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(SITE, folder)
    shutil.copytree(browser_parts() / "pyodide", folder / "stock")
    path = ensure_chromium()
    with serving(folder) as base, sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=path, args=ARGUMENTS)
        if options.has("worker"):
            in_the_worker(chromium, base, options.runs)
        if options.has("slowed"):
            with_a_slow_processor(chromium, base, options.runs)
        chromium.close()
    shutil.rmtree(folder)


def in_the_worker(chromium: Browser, base: str, runs: int) -> None:
    """Print what a keeper waits for, with the processor as it is."""
    print("| in the worker, processor as it is | ms |\n|---|---|")
    show(
        "first live answer, first visit",
        [in_worker(chromium, base, warm=False) for _ in range(runs)],
    )
    show(
        "first live answer, later visit",
        [in_worker(chromium, base, warm=True) for _ in range(runs)],
    )
    show(
        "answer to a link tapped on the list of calculators",
        [by_the_list(chromium, base) for _ in range(runs)],
    )
    show("new answer after a key", [recompute(chromium, base) for _ in range(runs)])


def with_a_slow_processor(chromium: Browser, base: str, runs: int) -> None:
    """Print what a slow phone's keeper waits for, stock beside ours."""
    print(f"\n| processor slowed {SLOWER} times | ms |\n|---|---|")
    for name in ("plants/limnophila-sessiliflora/", "calculators/free-ammonia/"):
        show(f"readable page, {name}", [readable(chromium, base + name) for _ in range(runs)])
    for name, start in (("ours", OURS), ("stock", STOCK)):
        for visit in ("first", "later"):
            show_laps(
                f"{visit} visit, {name}",
                [on_page(chromium, base, start, warm=visit == "later") for _ in range(runs)],
            )


@contextmanager
def python_running(calculator: str) -> Iterator[Page]:
    """The page of a calculator of the built site, with Python already running in its worker."""
    with serving(SITE) as base, sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=ensure_chromium(), args=ARGUMENTS)
        page = fresh(chromium).new_page()
        timed(page, f"{base}calculators/{calculator}/")
        yield page
        chromium.close()


def show(name: str, values: list[float]) -> None:
    """The median of some runs. The ``values`` are in milliseconds."""
    print(f"| {name} | {statistics.median(values):.0f} |", flush=True)


def show_laps(name: str, timings: list[dict[str, Any]]) -> None:
    """The medians of a start's laps, their sum, and an answer once Python runs."""
    show(f"first answer, {name}", [sum(timing["laps"].values()) for timing in timings])
    for lap in timings[0]["laps"]:
        show(f"of it: {lap}", [timing["laps"][lap] for timing in timings])
    show(f"new answer, {name}", [timing["again"] for timing in timings])


def fresh(chromium: Browser, *, worker: bool = True, python_here: bool = False) -> BrowserContext:
    """A browser that was never here.

    With ``python_here`` a page itself may start Python, which its policy leaves to workers.
    """
    return chromium.new_context(
        viewport=PHONE,  # type: ignore[arg-type]
        service_workers="allow" if worker else "block",
        bypass_csp=python_here,
    )


def timed(page: Page, address: str) -> float:
    """Open a calculator; ms from the start of loading to the first live answer."""
    page.goto(address)
    page.locator(ANSWERED).wait_for(state="attached", timeout=PATIENCE)
    return float(page.evaluate("() => performance.now()"))


def in_worker(chromium: Browser, base: str, *, warm: bool) -> float:
    """A first visit; ``warm``, a later one, with the offline copy and Python's image in place."""
    context = fresh(chromium)
    page = context.new_page()
    took = timed(page, f"{base}calculators/free-ammonia/")
    if warm:
        page.evaluate("async () => { await navigator.serviceWorker.ready; }")
        page.evaluate(MAKE_IMAGE)
        took = timed(context.new_page(), f"{base}calculators/free-ammonia/")
    context.close()
    return took


def by_the_list(chromium: Browser, base: str) -> float:
    """A keeper reads the list of calculators for two seconds, then taps one: ms from tap to answer."""
    context = fresh(chromium)
    page = context.new_page()
    page.goto(f"{base}calculators/")
    page.wait_for_timeout(READING)
    page.evaluate(
        """() => {
        const link = document.querySelector('main a[href*="dosing/"]');
        window.tapped = performance.now();
        link.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
        link.click(); }"""
    )
    page.locator(ANSWERED).wait_for(state="attached", timeout=PATIENCE)
    took = page.evaluate("() => performance.now() - window.tapped")
    context.close()
    return float(took)


def recompute(chromium: Browser, base: str) -> float:
    """From a change to the painted answer, the pause for typing left out. In milliseconds."""
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
    """First contentful paint of a first visit. In milliseconds."""
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


def on_page(chromium: Browser, base: str, start: str, *, warm: bool) -> dict[str, Any]:
    """Start Python on the main thread, slowed; ``warm`` does it in a browser that has done it before."""
    context = fresh(chromium, worker=False, python_here=True)
    page = context.new_page()
    page.goto(f"{base}about/")
    if warm:
        page.evaluate(start, arg=False)
        if start is OURS:
            page.evaluate(MAKE_IMAGE)
        page = context.new_page()
        page.goto(f"{base}about/")
    slowed(page)
    timing: dict[str, Any] = page.evaluate(start, arg=warm)
    context.close()
    return timing
