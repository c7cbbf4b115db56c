"""The pages of a season on the shelf: how long the board and each tap take in Chromium.

The aim is a board within 300 ms of the address being opened, and every tap within 100 ms. The offline copy
is left out: its first installing would be measured with the pages. A board that was left while Python worked
on it would begin that work again, so that each opening waits until the one before is done.
"""

import statistics

from playwright.sync_api import Page, sync_playwright

from scripts.benches.browser import ARGUMENTS, PHONE
from scripts.benches.season import PUT, season_file
from scripts.setup.chromium import ensure_chromium
from scripts.setup.paths import SITE
from scripts.site.server import serving

PAGE_RUNS = 5
BOARD_MS, TAP_MS = 300, 100
SLOWED = (1, 4)  # times

MARK_BOARD = """
delete Navigator.prototype.serviceWorker;
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
UNDONE = ("#shelf-done button", "#shelf-done:not(:has(button))")
TAPS = {
    "log, from a card": (".tank-card:last-child > button", "dialog .tap"),
    "what": ("dialog .taps-part:first-child .tap:first-child", VALUE),
    "value, until it is written and said": ("dialog .stepper .main", LOGGED),
    "undo": UNDONE,
}
TICKED = "#round-tanks input:checked"
ROUND_TAPS = {
    "round: ticked off": ("#round-tanks input:not(:checked)", TICKED),
    "round: log": ("#round-tanks > li:first-child > .tap", "dialog .tap"),
    "round: the sheet closed": ("dialog .sheet-close", "body:not(:has(dialog))"),
    "round: ticked on": (TICKED, f"body:not(:has({TICKED}))"),
    "round: a tank later in the walk": (
        "#round-tanks > li:first-child .step:last-child",
        "#round-tanks > li:nth-child(2)",
    ),
}
TANK = "shelf/tank/#tank-3"
TANK_TAPS = {
    "tank: log": ("#tank-log", "dialog .tap"),
    "tank: what": TAPS["what"],
    "tank: value, until it is written and said": TAPS["value, until it is written and said"],
    "tank: undo": UNDONE,
    "tank: an entry to be changed": ("#tank-entries li:first-child button", "dialog #log-back"),
    "tank: the sheet closed": ("dialog .sheet-close", "body:not(:has(dialog))"),
    "tank: US units": (
        "#shelf-units [data-units=us]",
        "html[data-units=us] #shelf-units [data-units=us][aria-pressed=true]",
    ),
    "tank: metric units": (
        "#shelf-units [data-units=metric]",
        "html[data-units=metric] #shelf-units [data-units=metric][aria-pressed=true]",
    ),
}
ALL_SHOWN = {"tank: all entries": ("#tank-more", "#tank-more[hidden]")}
CHOSEN = """async (tank) => {
  const choice = document.querySelector('#stand-at select');
  const link = document.querySelector('#stand-at a');
  const start = performance.now();
  choice.value = tank;
  choice.dispatchEvent(new Event('change'));
  const there = () => link.href.endsWith(`#${tank}`);
  if (!there()) await new Promise((done) => new MutationObserver((_, watcher) => {
    if (there()) { watcher.disconnect(); done(); }
  }).observe(link, { attributes: true }));
  await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  return performance.now() - start;
}"""


def shelf_pages() -> None:
    """Print the table."""
    with serving(SITE) as base, sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=ensure_chromium(), args=ARGUMENTS)
        context = chromium.new_context(viewport=PHONE, base_url=base)  # type: ignore[arg-type]
        context.add_init_script(MARK_BOARD)
        page = context.new_page()
        page.goto("about/")
        page.evaluate(PUT, season_file())
        page.goto("shelf/")
        page.locator("#board[data-shown=anew]").wait_for(timeout=300_000)
        print("| ten tanks, 2,000 entries | ms | aim |\n|---|---|---|")
        session = context.new_cdp_session(page)
        for times in SLOWED:
            session.send("Emulation.setCPUThrottlingRate", {"rate": times})
            measured(page, "" if times == 1 else f", slowed {times} times")
        chromium.close()


def measured(page: Page, how: str) -> None:
    """The rows of the table on a phone of some speed."""
    show(f"board whole, from the address{how}", [board(page) for _ in range(PAGE_RUNS)], BOARD_MS)
    page.locator("#board[data-shown=anew]").wait_for(timeout=300_000)
    for name, values in {**tapped(page, TAPS), "the switch": switched(page)}.items():
        show(f"{name}{how}", values, TAP_MS)
    page.goto("shelf/round/")
    page.locator(ROUND_TAPS["round: ticked off"][0]).first.wait_for(timeout=300_000)
    for name, values in tapped(page, ROUND_TAPS).items():
        show(f"{name}{how}", values, TAP_MS)
    page.goto(TANK)
    page.locator("#answer figure").first.wait_for(state="attached", timeout=300_000)
    for name, values in {**tapped(page, TANK_TAPS), **tapped(page, ALL_SHOWN, 1)}.items():
        show(f"{name}{how}", values, TAP_MS)


def show(name: str, values: list[float], aim: int) -> None:
    """The median and the slowest of some runs, against the aim.

    The ``values`` and the ``aim`` are in milliseconds.
    """
    middle, worst = statistics.median(values), max(values)
    print(f"| {name} | {middle:.0f}, at most {worst:.0f} | {aim} |", flush=True)


def board(page: Page) -> float:
    """A new load of the board, no Python running: until the kept cards stand there.

    In milliseconds.
    """
    page.goto("about/")
    page.goto("shelf/")
    page.wait_for_function("() => window.boardShown")
    shown = float(page.evaluate("() => window.boardShown"))
    page.locator("#board[data-shown=anew]").wait_for(timeout=300_000)
    return shown


def tapped(
    page: Page, taps: dict[str, tuple[str, str]], times: int = PAGE_RUNS
) -> dict[str, list[float]]:
    """Each of some taps, one after another, some times over."""
    found: dict[str, list[float]] = {name: [] for name in taps}
    for _ in range(times):
        for name, (place, wanted) in taps.items():
            page.wait_for_timeout(200)
            found[name].append(float(page.evaluate(TAPPED, [place, wanted])))
        page.wait_for_timeout(3_000)  # Python makes the standing anew
    return found


def switched(page: Page) -> list[float]:
    """The switch in the head set to another tank, until its link leads there.

    In milliseconds, one for each run in order.
    """
    return [float(page.evaluate(CHOSEN, f"tank-{number}")) for number in range(PAGE_RUNS)]
