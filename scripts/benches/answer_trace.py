"""The steps of one start of Python, from the marks that its worker sets."""

from typing import Any

from playwright.sync_api import BrowserContext

from scripts.benches.browser import ANSWERED, PATIENCE
from scripts.benches.processor_time import processor_seconds

PAGE = "calculators/free-ammonia/"
TOTAL, PROCESSOR = "first live answer", "processor time of the whole browser"
# In the page: when an answer first stood there. Only a plain flag of the page is read.
WATCH = """
document.addEventListener("readystatechange", () => {
  new MutationObserver(() => {
    if (document.querySelector("#calculator[data-answered]")) window.answeredAt ??= performance.now();
  }).observe(document, { subtree: true, attributes: true, attributeFilter: ["data-answered"] });
}, { once: true });
"""
TRACE = """() => ({
  origin: performance.timeOrigin,
  marks: performance.getEntriesByType("mark").map(({ name, startTime }) => [name, startTime]),
  files: performance.getEntriesByType("resource").map(({ name, startTime, responseEnd }) =>
    [name.split("/").at(-1).replace(/-[0-9a-f]{12}/, ""), startTime, responseEnd]),
})"""


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
