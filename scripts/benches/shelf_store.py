"""How long the shelf takes with a season on it: ten tanks, 26 weeks, 2,000 entries, in Chromium."""

import statistics
from typing import Any

from playwright.sync_api import Page, sync_playwright

from scripts.benches.browser import ARGUMENTS, SLOWER
from scripts.benches.season import PUT, season_file
from scripts.setup.chromium import ensure_chromium
from scripts.setup.paths import SITE
from scripts.site.server import serving

RUNS = 5
MEASURE = """
async () => {
  const spent = {};
  const timed = async (name, call) => {
    const start = performance.now();
    const came = await call();
    spent[name] = performance.now() - start;
    return came;
  };
  const { openShelf } = await import('/assets/shelf/store.js');
  const shelf = await timed('open the shelf', openShelf);
  await timed('all tanks and entries', async () => [await shelf.tanks(), await shelf.entries()]);
  await timed('last values of one tank', () => shelf.lastValues('tank-3', 'reading', 'nitrate_mg_l'));
  const reading = { tank: 'tank-3', kind: 'reading', what: 'nitrate_mg_l', value: 5 };
  await timed('log a reading', () => shelf.log(reading));
  await timed('undo it', () => shelf.undo());
  const tank = { ...(await shelf.tank('tank-3')), ph: 4 + 6 * Math.random() };
  await timed('save a tank', () => shelf.saveTank(tank));
  const file = await timed('make the file', async () => shelf.toFile());
  await timed('compare the file', async () => shelf.compare(file));
  return spent;
}
"""


def shelf_store() -> None:
    """Print the tables: the processor as it is, and slowed."""
    with serving(SITE) as base, sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=ensure_chromium(), args=ARGUMENTS)
        page = chromium.new_context().new_page()
        page.goto(f"{base}about/")
        page.evaluate(PUT, season_file())
        for rate, words in (
            (1, "processor as it is"),
            (SLOWER, f"processor slowed {SLOWER} times"),
        ):
            show(words, [measured(page, rate) for _ in range(RUNS)])
        chromium.close()


def measured(page: Page, rate: int) -> dict[str, Any]:
    """Milliseconds of each act on a page that was just loaded.

    The processor is slowed by the factor ``rate``.
    """
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": rate})
    page.reload()
    spent: dict[str, Any] = page.evaluate(MEASURE)
    session.detach()
    return spent


def show(words: str, runs: list[dict[str, Any]]) -> None:
    """One table: the median of the runs."""
    print(f"\n| {words} | ms |\n|---|---|")
    for name in runs[0]:
        print(f"| {name} | {statistics.median(run[name] for run in runs):.1f} |")
