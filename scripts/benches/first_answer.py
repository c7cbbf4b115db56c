"""Where the time of the first live answer goes, in the worker as a keeper's phone runs it; stock beside ours.

Each run has a profile of its own on disk, and a later visit is a browser started anew with it: the browser
keeps compiled code there. The marks are set by ``docs/assets/calculator-worker.js`` and ``python-start.js``.
"""

import statistics
from pathlib import Path

from playwright.sync_api import Playwright, sync_playwright

from scripts.benches.answer_trace import PAGE, traced
from scripts.benches.answer_ways import path, slow_line
from scripts.benches.browser import ANSWERED, MAKE_IMAGE, PATIENCE
from scripts.benches.options import Options
from scripts.benches.own_browser import browser, own_profile
from scripts.benches.stock_site import stock_site
from scripts.setup.paths import BUILD, SITE
from scripts.site.server import serving

KEPT = 4_000  # ms after which the browser has put compiled code aside


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
            for visit, trace in both_visits(playwright, folder, image=name != "stock").items():
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
    """The traces of a browser's first visit, and of one after it was closed and started again.

    By visit (``first``, ``later``), milliseconds by step.
    """
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
