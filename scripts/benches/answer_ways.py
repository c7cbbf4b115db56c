"""The first live answer on the ways that keepers take: over the list of calculators, and over a slow line."""

import statistics

from playwright.sync_api import Page, Playwright

from scripts.benches.answer_trace import TOTAL, traced
from scripts.benches.browser import ANSWERED, PATIENCE, READING
from scripts.benches.narrow_server import narrow_server
from scripts.benches.own_browser import browser, own_profile
from scripts.setup.paths import SITE
from scripts.site.server import serving, started

SLOW_LINE = 1.5e6  # bits a second
WATCH_TAP = """() => {
  const seen = (selector) => document.querySelector(selector) !== null;
  new MutationObserver(() => {
    if (seen("#calculator")) window.shownAt ??= performance.now();
    if (seen("#calculator[data-answered]")) window.answeredAt ??= performance.now();
  }).observe(document, { subtree: true, childList: true, attributes: true });
  addEventListener("pointerdown", () => { window.tappedAt = performance.now(); }, { capture: true });
}"""


def path(playwright: Playwright, runs: int) -> None:
    """Home, the list of calculators, dosing: ms from the tap and from the page; ``runs`` counts visits."""
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
