"""How long the nitrogen forecast takes in Chromium's worker, Python running: demo tanks, few and many plants.

The best of several turns, since other work on the machine only ever adds; the cases take turns, so that
it adds to all alike. Nothing of the page is painted.
"""

import json
from typing import Any

from playwright.sync_api import Page

from calculators.core.address import address
from calculators.core.read import read_inputs
from calculators.core.run import find
from scripts.benches.browser import python_running
from scripts.benches.forecast_time import CASES
from scripts.records.load import load

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
    with python_running(NAME) as page:
        print(f"| nitrogen forecast, 90 days, best of {TURNS} | ms |\n|---|---|")
        milliseconds = best(page)
    for name, took in milliseconds.items():
        print(f"| {name} | {took:.0f} |")
    print(
        f"\n12 plants take {milliseconds['12 plants'] / milliseconds['3 plants']:.2f} times as long as 3."
    )


def cases() -> dict[str, dict[str, Any]]:
    """What is asked, by name. Raises ``BadRecords`` where the records do not hold."""
    demo = {
        f"{tank.name}, {filled.inputs.get('spread', 'none')}".removesuffix(", none"): filled.inputs
        for tank in load().demo.values()
        if (filled := tank.calculators.get(NAME))
    }
    return {**CASES, **demo}


def best(page: Page) -> dict[str, float]:
    """The best of some turns of each case, ms."""
    asked = {name: as_text(given) for name, given in cases().items()}
    milliseconds = dict.fromkeys(asked, float("inf"))
    for _ in range(TURNS):
        for name, given in asked.items():
            milliseconds[name] = min(milliseconds[name], float(page.evaluate(ASK, [NAME, given])))
    return milliseconds


def as_text(given: dict[str, Any]) -> dict[str, Any]:
    """Inputs as the page's form gives them: all text, rows too. Raises ``BadInput``."""
    spec = find(NAME)
    typed: dict[str, Any] = dict(
        address(spec, read_inputs(spec.inputs, given, typed=False), "metric")
    )
    for field in spec.inputs:
        if field.kind == "list" and field.key in typed:
            typed[field.key] = list(map(row_text, json.loads(typed[field.key])))
    return typed


def row_text(row: dict[str, Any]) -> dict[str, str]:
    """One row, all text."""
    return {
        key: figure if isinstance(figure, str) else json.dumps(figure)
        for key, figure in row.items()
    }
