"""Where the time of the first live answer goes, in the worker as a keeper's phone runs it; stock beside ours.

Each run has a profile of its own on disk, and a later visit is a browser started anew with it: the browser
keeps compiled code there. The marks are set by ``docs/assets/calculator-worker.js`` and ``python-start.js``.
"""

import statistics
import tempfile
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Playwright, sync_playwright

from scripts.benches.browser import ANSWERED, ARGUMENTS, MAKE_IMAGE, PATIENCE, PHONE
from scripts.benches.narrow_server import narrow_server
from scripts.benches.options import Options
from scripts.benches.processor_time import processor_seconds
from scripts.benches.stock_site import stock_site
from scripts.setup.chromium import ensure_chromium
from scripts.setup.paths import BUILD, SITE
from scripts.site.server import make_server

PAGE = "calculators/free-ammonia/"
SLOW_LINE = 1.5e6  # bits a second
READING = 2_000  # ms that somebody looks at a page before a tap
KEPT = 4_000  # ms after which the browser has put compiled code aside
TOTAL, PROCESSOR = "first live answer", "processor time of the whole browser"
# In the page: when an answer first stood there. Only a plain flag of the page is read.
WATCH = """
document.addEventListener("readystatechange", () => {
  new MutationObserver(() => {
    if (document.querySelector("#calculator[data-answered]")) window.answeredAt ??= performance.now();
  }).observe(document, { subtree: true, attributes: true, attributeFilter: ["data-answered"] });
}, { once: true });
"""
WATCH_TAP = """() => {
  const seen = (selector) => document.querySelector(selector) !== null;
  new MutationObserver(() => {
    if (seen("#calculator")) window.shownAt ??= performance.now();
    if (seen("#calculator[data-answered]")) window.answeredAt ??= performance.now();
  }).observe(document, { subtree: true, childList: true, attributes: true });
  addEventListener("pointerdown", () => { window.tappedAt = performance.now(); }, { capture: true });
}"""
TRACE = """() => ({
  origin: performance.timeOrigin,
  marks: performance.getEntriesByType("mark").map(({ name, startTime }) => [name, startTime]),
  files: performance.getEntriesByType("resource").map(({ name, startTime, responseEnd }) =>
    [name.split("/").at(-1).replace(/-[0-9a-f]{12}/, ""), startTime, responseEnd]),
})"""


def first_answer(options: Options) -> None:
    """Print the tables: each figure a median, with the number of runs said."""
    print(f"Medians of {options.runs}, ms from the start of loading the page.\n")
    with sync_playwright() as playwright:
        sites = {"ours": SITE}
        if options.has("stock"):
            sites["stock"] = stock_site(BUILD / "bench-stock-site")
        if options.has("first") or options.has("later"):
            visits(playwright, sites, options)
        if options.has("path"):
            path(playwright, options.runs)
        if options.has("slow-line"):
            slow_line(playwright)


def visits(playwright: Playwright, sites: dict[str, Path], options: Options) -> None:
    """First and later visits, ours and stock by turns, so that a busy machine disturbs both alike."""
    runs: dict[tuple[str, str], list[dict[str, float]]] = {}
    for _ in range(options.runs):
        for name, folder in sites.items():
            for visit, trace in both_visits(playwright, folder, image=name == "ours").items():
                runs.setdefault((visit, name), []).append(trace)
    for visit in ("first", "later"):
        if options.has(visit):
            table(visit, {name: runs[visit, name] for name in sites})


def table(visit: str, traces: dict[str, list[dict[str, float]]]) -> None:
    """One visit's rows, a column for each site."""
    print(f"| {visit} visit | {' | '.join(traces)} |\n|---|{'---|' * len(traces)}")
    rows = dict.fromkeys(name for runs in traces.values() for run in runs for name in run)
    for row in rows:
        cells = [[run[row] for run in runs if row in run] for runs in traces.values()]
        shown = [f"{statistics.median(cell):.0f}" if cell else "" for cell in cells]
        print(f"| {row} | {' | '.join(shown)} |", flush=True)
    print()


def both_visits(
    playwright: Playwright, folder: Path, *, image: bool
) -> dict[str, dict[str, float]]:
    """The traces of a browser's first visit, and of one after it was closed and started again."""
    with serving(folder) as base, own_profile() as profile:
        with browser(playwright, profile) as context:
            first = traced(context, base, profile)
            page = context.pages[-1]
            page.evaluate("async () => { await navigator.serviceWorker.ready; }")
            if image:
                page.evaluate(MAKE_IMAGE)
            page.goto(base + PAGE)  # from the copy, so that compiled code is kept beside it
            page.locator(ANSWERED).wait_for(state="attached", timeout=PATIENCE)
            page.wait_for_timeout(KEPT)
        with browser(playwright, profile) as context:
            return {"first": first, "later": traced(context, base, profile)}


def traced(context: BrowserContext, base: str, profile: str) -> dict[str, float]:
    """Open the calculator: each step's ms, its end on the page's clock, and the sum."""
    page = context.new_page()
    page.add_init_script(WATCH)
    before = processor_seconds(profile)
    page.goto(base + PAGE)
    page.locator(ANSWERED).wait_for(state="attached", timeout=PATIENCE)
    used = 1_000 * (processor_seconds(profile) - before)
    shown = page.evaluate("() => ({ origin: performance.timeOrigin, at: window.answeredAt })")
    trace = page.workers[0].evaluate(TRACE)
    return {**steps(trace, shown), TOTAL: shown["at"], PROCESSOR: used}


def steps(trace: dict[str, Any], shown: dict[str, float]) -> dict[str, float]:
    """Rows of a trace: what follows one after another, then when each file came."""
    ahead = trace["origin"] - shown["origin"]
    rows, before = {"page, until the worker is asked for": ahead}, 0.0
    firsts = dict(reversed(trace["marks"]))  # a mark that is set again counts once
    for name, at in sorted(firsts.items(), key=lambda mark: mark[1]):
        rows[f"until: {name}"], before = at - before, at
    rows["until: painted"] = shown["at"] - ahead - before
    for name, start, end in trace["files"]:
        rows.setdefault(f"file asked for at: {name}", ahead + start)
        rows.setdefault(f"file there at: {name}", ahead + end)
    return rows


def path(playwright: Playwright, runs: int) -> None:
    """Home, the list of calculators, dosing: ms from the tap, and from the page's being there."""
    taken = [by_the_path(playwright) for _ in range(runs)]
    print("| home, calculators, dosing: the answer | ms |\n|---|---|")
    for place, name in enumerate(("after the tap", "after the page shows")):
        values = [run[place] for run in taken]
        print(f"| {name} | {statistics.median(values):.0f} (at most {max(values):.0f}) |")
    print(flush=True)


def by_the_path(playwright: Playwright) -> tuple[float, float]:
    """One keeper's way, each page looked at before the next tap."""
    with serving(SITE) as base, own_profile() as profile, browser(playwright, profile) as context:
        return walked(context.new_page(), base)


def walked(page: Page, base: str) -> tuple[float, float]:
    """ms from the tap on a calculator to its answer, and from its page's being there."""
    page.goto(base)
    page.wait_for_timeout(READING)
    page.locator(".doors-below a[href*='calculators/']").tap()
    page.locator("#main a[href*='dosing/']").first.wait_for()
    page.wait_for_timeout(READING)
    page.evaluate(WATCH_TAP)
    page.locator("#main a[href*='dosing/']").first.tap()
    page.locator(ANSWERED).wait_for(state="attached", timeout=PATIENCE)
    tapped, shown, answered = page.evaluate("() => [tappedAt, shownAt, answeredAt]")
    return answered - tapped, answered - shown


def slow_line(playwright: Playwright) -> None:
    """A first visit over a slow line with a compressing host: seconds, and what had gone over it by then."""
    server, line = narrow_server(SITE, SLOW_LINE)
    with started(server) as base, own_profile() as profile, browser(playwright, profile) as context:
        trace = traced(context, base, profile)
        print("| 1.5 Mbit/s, gzipped by the host, first visit, one run | |\n|---|---|")
        print(f"| first live answer, s | {trace[TOTAL] / 1_000:.1f} |")
        print(f"| bytes over the line by then | {line.sent:,} |")
        print(f"| seconds that the line alone takes for them | {8 * line.sent / SLOW_LINE:.1f} |")


@contextmanager
def browser(playwright: Playwright, profile: str) -> Iterator[BrowserContext]:
    """A browser on a phone's screen, with a profile on disk."""
    context = playwright.chromium.launch_persistent_context(
        profile, executable_path=ensure_chromium(), args=ARGUMENTS, viewport=PHONE, has_touch=True  # type: ignore[arg-type]
    )  # fmt: skip
    yield context
    context.close()


def own_profile() -> tempfile.TemporaryDirectory[str]:
    """A folder for a profile; a browser that has just ended may still write into it."""
    return tempfile.TemporaryDirectory(prefix="profile-", ignore_cleanup_errors=True)


@contextmanager
def serving(folder: Path) -> Iterator[str]:
    """The address of a folder that is served."""
    with started(make_server(folder, 0)) as base:
        yield base


@contextmanager
def started(server: Any) -> Iterator[str]:
    """The address of a server while it runs."""
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_address[1]}/"
    server.shutdown()
    server.server_close()
