"""Random addresses of calculators' pages, as an enemy, a broken link or a tracker makes them.

``hostile(dice)`` gives the message that the page would send to Python for one; a test asks for a few
hundred, ``scripts/bench.py hostile`` for ten thousand and says which took long.
"""

import json
import time
from random import Random
from typing import Any

from calculators.bridge import answer
from calculators.core.fields import InputField, Kind
from calculators.core.listing import load_all

HOW_MANY = 10_000
LONGEST_S = 1.0
SHOWN = 12  # of the slowest
MOST_ROWS = 300  # as the page lets through; see docs/assets/calculator.js
STEPPING = ("nitrogen-forecast",)  # steps through days, and bounds its steps itself
KEYS = (
    "__proto__", "constructor", "toString", "fbclid", "utm_source", "__class__", "a.b.c", "", "0",
    "given", "calculator", "from-example", "from-book", "ammonia_mg_l\u0000", "x" * 10_000,
)  # fmt: skip
TEXTS = (
    "", " ", "0", "-0", "-1", "1e308", "1e309", "1e-320", "1e-5", "NaN", "Infinity", "-Infinity", "٣",
    "1,000", "1.2.3", "0x10", "08", "1e", "true", "null", "undefined", "[]", "{}", "[object Object]",
    "<script>x</script>", "javascript:x", "';--", "${x}", "{{7*7}}", "%00", "\u0000", "\u202e12", "\u200b",
    "\ud800", "🐟" * 40, "a" * 100_000, "9" * 5_000, "1" + "0" * 400, "2026-02-30", "9999-12-31",
    "0001-01-01", "12 mg/l", "5 gal", "80 °F", "\n\n", "a,b,c", "," * 2_000,
)  # fmt: skip
VALUES: tuple[Any, ...] = (
    None, True, 0, -1, 1e308, 10**400, "", "x", [], {}, [[]], {"toString": 1}, {"__proto__": {}},
    {"constructor": {"prototype": 1}}, [None] * 50,
)  # fmt: skip
DEEP = 200
RANDOM_ROWS = (0, 1, 2, 5, 40, MOST_ROWS)


def hostile(dice: Random, names: list[str] | None = None) -> dict[str, Any]:
    """One message: a calculator, and for its inputs and for others what an address may hold."""
    spec = load_all()[dice.choice(names or list(load_all()))]
    share = dice.choice((0.1, 0.5, 1.0))
    open_fields = [field for field in spec.inputs if not field.private]
    given = {field.key: value_for(field, dice) for field in open_fields if dice.random() < share}
    address = {dice.choice(KEYS): dice.choice(TEXTS) for _ in range(dice.choice((0, 0, 1, 4)))}
    units = dice.choice(("metric", "us"))
    return {
        "calculator": spec.name,
        "given": given | (address if dice.random() < 0.2 else {}),
        "own": dice.random() < 0.7,
        "address": address,
        "given_in": dice.choice(("metric", "us")),
        "units": units,
    }


def value_for(field: InputField, dice: Random) -> Any:
    """What an address gives for one input: mostly text that fits, so that formulas are reached too."""
    if field.kind == Kind.LIST and dice.random() < 0.8:
        return [row_for(field, dice) for _ in range(dice.choice(RANDOM_ROWS))]
    if field.kind == Kind.OBJECT and dice.random() < 0.8:
        return row_for(field, dice)
    luck = dice.random()
    if luck < 0.1:
        return dice.choice(TEXTS)
    if luck < 0.13:
        return dice.choice((*VALUES, nested(dice.randint(1, DEEP))))
    return fitting(field, dice)


def row_for(field: InputField, dice: Random) -> Any:
    """One row or object; now and then no row at all, or one with keys that nobody knows."""
    if dice.random() < 0.02:
        return dice.choice(VALUES)
    row = {part.key: value_for(part, dice) for part in field.row if dice.random() < 0.9}
    return row | ({dice.choice(KEYS): dice.choice(TEXTS)} if dice.random() < 0.02 else {})


def nested(levels: int) -> Any:
    """Lists in lists."""
    value: Any = "x"
    for _ in range(levels):
        value = [value]
    return value


def fitting(field: InputField, dice: Random) -> str:
    """A text within the field's limits, at its ends as often as between."""
    if field.choices:
        return dice.choice(field.choices)
    low = -1e6 if field.low is None else field.low
    high = 1e6 if field.high is None else field.high
    return repr(
        dice.choice((low, high, dice.uniform(low, high), low + (high - low) * dice.random() ** 4))
    )


def seconds_of(message: dict[str, Any]) -> float:
    """The processor's time for one message. Raises whatever Python did not answer cleanly."""
    text = json.dumps(message)
    start = time.process_time()
    json.loads(answer(text))
    return time.process_time() - start


def hostile_addresses() -> None:
    """Ask ten thousand, and print the slowest."""
    dice = Random(1)
    took = []
    for number in range(HOW_MANY):
        message = hostile(dice)
        took.append((seconds_of(message), number, message["calculator"]))
    took.sort(reverse=True)
    late = [one for one in took if one[0] > LONGEST_S]
    print(f"{HOW_MANY:,} addresses, no uncaught error; over {LONGEST_S:g} s: {len(late)}")
    print("\n| slowest, s | number | calculator |\n|---|---|---|")
    for seconds, number, name in took[:SHOWN]:
        print(f"| {seconds:.2f} | {number} | {name} |")
