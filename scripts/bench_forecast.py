"""How long the nitrogen forecast takes in Chromium's worker, Python running: demo tanks, few and many plants.

The best of several turns, since other work on the machine only ever adds; the cases take turns, so that
it adds to all alike. Nothing of the page is painted.
"""

import json
import threading
from typing import Any

from playwright.sync_api import Page, sync_playwright

from calculators.bridge import address
from calculators.core.run import find, run
from scripts.bench_browser import ARGUMENTS, fresh, timed
from scripts.bench_nitrogen import CASES
from scripts.records.load import load
from scripts.server import make_server
from scripts.setup.chromium import ensure_chromium
from scripts.setup.paths import SITE

NAME = "nitrogen-forecast"
TURNS = 15

ASK = """
async ([calculator, given]) => {
  const { ask } = await import(new URL('assets/runtime.js', new URL('../../', location.href)).href);
  const start = performance.now();
  const reply = await ask({ calculator, given, units: 'metric' });
  if (!reply.answer) throw new Error(JSON.stringify(reply.problems));
  return performance.now() - start;
}
"""


def forecast() -> None:
    """Print the table."""
    server = make_server(SITE, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    base = f"http://127.0.0.1:{server.server_address[1]}/"
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=ensure_chromium(), args=ARGUMENTS)
        page = fresh(chromium).new_page()
        timed(page, f"{base}calculators/{NAME}/")
        print(f"| nitrogen forecast, 90 days, best of {TURNS} | ms |\n|---|---|")
        found = best(page)
        chromium.close()
    server.shutdown()
    for name, took in found.items():
        print(f"| {name} | {took:.0f} |")
    print(f"\n12 plants take {found['12 plants'] / found['3 plants']:.2f} times as long as 3.")


def cases() -> dict[str, dict[str, Any]]:
    """What is asked, by name."""
    demo = {
        f"{tank.name}, {filled.inputs.get('spread', 'none')}".removesuffix(", none"): filled.inputs
        for tank in load().demo.values()
        if (filled := tank.calculators.get(NAME))
    }
    return {**CASES, **demo}


def best(page: Page) -> dict[str, float]:
    """The best of some turns of each case, ms."""
    asked = {name: as_text(given) for name, given in cases().items()}
    found = dict.fromkeys(asked, float("inf"))
    for _ in range(TURNS):
        for name, given in asked.items():
            found[name] = min(found[name], float(page.evaluate(ASK, [NAME, given])))
    return found


def as_text(given: dict[str, Any]) -> dict[str, Any]:
    """Inputs as the page's form gives them: all text, rows too."""
    spec = find(NAME)
    typed: dict[str, Any] = dict(address(spec, run(NAME, given)["inputs"], "metric"))
    for field in spec.inputs:
        if field.kind == "list" and field.key in typed:
            typed[field.key] = list(map(row_text, json.loads(typed[field.key])))
    return typed


def row_text(row: dict[str, Any]) -> dict[str, str]:
    """One row, all text."""
    return {key: one if isinstance(one, str) else json.dumps(one) for key, one in row.items()}
