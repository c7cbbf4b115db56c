"""How long each calculator takes to answer in the browser, once Python runs: its example, and another input.

Measured in the page's own worker, from the question to the painted answer in plain data. The forecast, which
steps through days, has no limit; every other one is held against 50 ms. The best of several rounds of medians
is shown, since other work on the machine only ever adds.
"""

import base64
import json
import random
from typing import Any

from playwright.sync_api import Page

from calculators.core.listing import load_all
from calculators.surface_cover.drawn_surface import colour_at
from scripts.benches.browser import python_running
from scripts.records.published import cases

LIMIT_MS = 50
WITHOUT_LIMIT = ("nitrogen-forecast",)
ROUNDS, TURNS = 4, 9
PHOTO = (160, 120)  # points, as the page makes of a phone's picture
ASK = """
async ([calculator, given, turns]) => {
  const { ask } = await import(new URL('assets/runtime.js', new URL('../../', location.href)).href);
  const took = [];
  for (let turn = 0; turn < turns; turn++) {
    const start = performance.now();
    await ask({ calculator, given, units: 'metric' });
    took.push(performance.now() - start);
  }
  return took.sort((one, other) => one - other)[turns >> 1];
}
"""


def every_calculator() -> None:
    """Print the table."""
    with python_running("free-ammonia") as page:
        print("| once warm, in the worker | example, ms | other input, ms | |\n|---|---|---|---|")
        for name in load_all():
            example, other = (best(page, name, given) for given in ({}, varied(name)))
            slow = max(example, other) > LIMIT_MS and name not in WITHOUT_LIMIT
            remark = f"over {LIMIT_MS}" if slow else ""
            print(f"| {name} | {example:.1f} | {other:.1f} | {remark} |", flush=True)


def best(page: Page, name: str, given: dict[str, Any]) -> float:
    """The lowest median of some rounds, in ms."""
    return min(float(page.evaluate(ASK, [name, given, TURNS])) for _ in range(ROUNDS))


def varied(name: str) -> dict[str, Any]:
    """An input unlike the example: a photo, or the last published case that gives one, as typed text."""
    if name == "surface-cover":
        return photo()
    given = next((case.given for case in reversed(cases(name)) if case.given), {})
    return {key: typed(value) for key, value in given.items()}


def typed(value: Any) -> Any:
    """A value as it stands in the form."""
    if isinstance(value, list):
        return [typed(part) for part in value]
    if isinstance(value, dict):
        return {key: typed(part) for key, part in value.items()}
    return value if isinstance(value, str) else json.dumps(value)


def photo() -> dict[str, Any]:
    """Leaves on water with the noise of a camera, as large as the page hands over."""
    dice, (wide, high) = random.Random(1), PHOTO
    octets = bytes(
        min(255, max(0, round(dice.gauss(channel, 5))))
        for row in range(high)
        for column in range(wide)
        for channel in colour_at((column / wide * 1.2 - 0.1, row / high * 1.2 - 0.1))
    )
    corners = ((8, 8), (90, 10), (93, 92), (7, 91))
    return {
        "pixels": base64.b64encode(octets).decode(),
        "width_px": str(wide),
        "height_px": str(high),
        "corners": [{"x_percent": str(x), "y_percent": str(y)} for x, y in corners],
        "taps": [
            {"what": "plant", "x_percent": "40", "y_percent": "40"},
            {"what": "water", "x_percent": "45", "y_percent": "52"},
        ],
    }
