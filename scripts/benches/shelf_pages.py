"""The pages of a season on the shelf: how long the board and each tap take in Chromium.

The aim is a board within 300 ms of the address being opened, and every tap within 100 ms.
"""

import statistics
import threading

from playwright.sync_api import Page, sync_playwright

from scripts.benches.browser import ARGUMENTS, PHONE
from scripts.benches.season import PUT, season_file
from scripts.setup.chromium import ensure_chromium
from scripts.setup.paths import SITE
from scripts.site.server import make_server

RUNS = 5
BOARD_MS, TAP_MS = 300, 100

MARK_BOARD = """
new MutationObserver(() => {
  const there = document.querySelector('#board[data-shown]');
  if (there) window.boardShown ??= performance.now();
}).observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ['data-shown'] });
"""
# From the click until what it leads to stands in the page and has been painted.
TAPPED = """async ([tapped, wanted]) => {
  const place = [...document.querySelectorAll(tapped)].at(-1);
  const start = performance.now();
  place.click();
  const there = () => document.querySelector(wanted);
  if (!there()) await new Promise((done) => new MutationObserver((_, watcher) => {
    if (there()) { watcher.disconnect(); done(); }
  }).observe(document.body, { subtree: true, childList: true, attributes: true }));
  await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  return performance.now() - start;
}"""
LOGGED = "body:not(:has(dialog)) #shelf-done"
VALUE = "dialog .taps-part:has(#log-value)"
TAPS = {
    "log, from a card": (".tank-card:last-child > button", "dialog .tap"),
    "what": ("dialog .taps-part:first-child .tap:first-child", VALUE),
    "value, until it is written and said": ("dialog .new-parts .taps .tap", LOGGED),
}


def shelf_pages() -> None:
    """Print the table."""
    server = make_server(SITE, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    base = f"http://127.0.0.1:{server.server_address[1]}/"
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=ensure_chromium(), args=ARGUMENTS)
        context = chromium.new_context(viewport=PHONE, base_url=base)  # type: ignore[arg-type]
        context.add_init_script(MARK_BOARD)
        page = context.new_page()
        page.goto("about/")
        page.evaluate(PUT, season_file())
        page.goto("shelf/")
        page.locator("#board[data-shown=anew]").wait_for(timeout=300_000)
        print("| ten tanks, 2,000 entries | ms | aim |\n|---|---|---|")
        show("board whole, from the address", [board(page) for _ in range(RUNS)], BOARD_MS)
        page.locator("#board[data-shown=anew]").wait_for(timeout=300_000)
        for name, values in tapped(page).items():
            show(name, values, TAP_MS)
        chromium.close()
    server.shutdown()


def show(name: str, values: list[float], aim: int) -> None:
    """The median and the slowest of some runs, against the aim."""
    middle, worst = statistics.median(values), max(values)
    print(f"| {name} | {middle:.0f}, at most {worst:.0f} | {aim} |", flush=True)


def board(page: Page) -> float:
    """A new load of the board, no Python running: until the kept cards stand there."""
    page.goto("about/")
    page.goto("shelf/")
    page.wait_for_function("() => window.boardShown")
    return float(page.evaluate("() => window.boardShown"))


def tapped(page: Page) -> dict[str, list[float]]:
    """Each tap of logging a reading, and its undoing, some times over."""
    found: dict[str, list[float]] = {name: [] for name in (*TAPS, "undo")}
    for _ in range(RUNS):
        for name, (place, wanted) in TAPS.items():
            page.wait_for_timeout(200)
            found[name].append(float(page.evaluate(TAPPED, [place, wanted])))
        undone = ["#shelf-done button", "#shelf-done:not(:has(button))"]
        found["undo"].append(float(page.evaluate(TAPPED, undone)))
        page.wait_for_timeout(3_000)  # Python makes the standing anew
    return found
