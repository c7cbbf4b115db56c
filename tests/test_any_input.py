"""Any input gives a finite result or a clean refusal, never a traceback.

Drawn from each calculator's own declaration, with a fixed seed. MULMBOOK_INPUTS says how many for each
calculator (10,000 for the longest run); else a sample, or 300 with --thorough.
"""

import base64
import json
import math
import os
import random
import re

import pytest

from calculators.bridge import answer
from calculators.core.dates import DAY, MOMENT
from calculators.core.declare import BESIDE_OUTPUTS
from calculators.core.listing import load_all
from calculators.core.paint.text_table import table
from calculators.core.result import BadInput
from calculators.core.run import run
from calculators.science.shelf.entries import READINGS, WHAT
from calculators.science.shelf.text_forms import ID, RECORD
from tests.effort import how_many

# Of fewer than these hardly one may be possible, and then nothing is tried.
FEWEST = 20
HOW_MANY = int(os.environ.get("MULMBOOK_INPUTS", max(FEWEST, how_many(300))))
JUNK_SHARE = 0.02  # of the fields; more would leave hardly any result to look at
SHARES_GIVEN = (0.2, 0.6, 0.95)  # the others take their default
ON_THE_PAGE = 5  # every fifth draw goes through the page's door as text, and the others as JSON
NONSENSE = (
    None, True, False, "", "7", "x" * 81, "\ud800", "nan", "-inf", [], {}, [{}], [1], [[]], -1, 0,
    1e-12, 1e-300, 1e308, -1e308, math.nan, math.inf, -math.inf, 10**400, {"day": 1}, [None] * 3,
)  # fmt: skip
TEXTS = ("Jar", "Bowl; no. 2, left\\right", "水草 " * 20, "2026-12-07", "2024-02-29", "1900-01-01")
# What fits a text that has a form of its own; else hardly a draw would get through.
OF_A_FORM = {
    DAY: ("2026-12-07", "2024-02-29", "1900-01-01", "2999-12-31"),
    MOMENT: (
        "2026-11-20T18:00:00Z",
        "2026-11-27T23:59:59+14:00",
        "2026-12-06T08:00",
        "1901-01-01T00:00Z",
    ),
    RECORD: ("rotala-rotundifolia", "salvinia-auriculata", "danio-rerio", "x-9"),
    ID: ("a", "b", "tank"),
    WHAT: (*READINGS, "rotala-rotundifolia", "kno3"),
}
WORDS_OF_A_LIMIT = re.compile(
    r"allowed|did you mean|known are|must be an object with|once is allowed"
)


def any_value(field, dice, depth=0):
    """A value that is mostly possible for a field, sometimes at its edge, sometimes nonsense."""
    luck = dice.random()
    if luck < JUNK_SHARE:
        return dice.choice(NONSENSE)
    if field.nullable and luck < 0.2:
        return None
    if field.kind in ("choice", "flag"):
        return dice.choice([True, False] if field.kind == "flag" else field.choices)
    if field.kind == "text":
        return dice.choice(OF_A_FORM.get(field.text_form, TEXTS))
    if field.kind == "octets":
        return any_octets(dice)
    if field.kind == "keys":
        return dice.sample(field.choices, dice.randint(0, min(len(field.choices), 12)))
    if field.kind == "object":
        return any_row(field.row, dice, depth)
    if field.kind == "list":
        return [any_row(field.row, dice, depth + 1) for _ in range(dice.randint(0, 4 - depth))]
    return any_number(field, dice, luck)


def any_octets(dice):
    """Octets as base64: a few, a picture of 16 by 16 in two colours, or noise of that size."""
    if dice.random() < 0.2:
        return base64.b64encode(dice.randbytes(dice.randint(0, 50))).decode()
    if dice.random() < 0.3:
        return base64.b64encode(dice.randbytes(3 * 16 * 16)).decode()
    colours = [dice.randbytes(3), dice.randbytes(3)]
    return base64.b64encode(b"".join(dice.choices(colours, k=16 * 16))).decode()


def with_its_size(row, dice):
    """A picture mostly comes with its size, and with corners that can hold some of it."""
    if isinstance(row.get("pixels"), str) and dice.random() < 0.9:
        row |= {"width_px": 16, "height_px": 16}
        if dice.random() < 0.8:
            ends = [(dice.uniform(0, 8), dice.uniform(92, 100)) for _ in range(4)]
            places = zip((0, 1, 1, 0), (0, 0, 1, 1), ends, strict=True)
            row["corners"] = [{"x_percent": two[x], "y_percent": two[y]} for x, y, two in places]
    return row


def any_number(field, dice, luck):
    """A number that is possible for a field, often at its edge or small."""
    if field.low is None or field.high is None:
        return dice.uniform(-1e6, 1e6)
    if field.kind == "integer":
        return dice.choice([int(field.low), int(field.high), dice.randint(field.low, field.high)])
    if luck < 0.3:
        return dice.choice([field.low, field.high])
    if luck < 0.6 and field.low >= 0:  # small values are likelier than a flat draw makes them
        return field.low + (field.high - field.low) * 10 ** dice.uniform(-6, 0)
    return dice.uniform(field.low, field.high)


def any_row(fields, dice, depth=0):
    """A few of the inputs or most, each with some value; now and then one that is not known."""
    share = dice.choice(SHARES_GIVEN)
    row = {field.key: any_value(field, dice, depth) for field in fields if dice.random() < share}
    return row | ({"no_such_input": 1} if dice.random() < JUNK_SHARE / 4 else {})


def outcome(spec, given, number):
    """The answer and the problems, one of them None, by one of the two doors."""
    if number % ON_THE_PAGE == 0:
        asked = {"calculator": spec.name, "given": as_typed(given), "units": "us"}
        reply = json.loads(answer(json.dumps(asked)))
        return reply.get("answer"), reply.get("problems")
    try:
        found = run(spec.name, given)
    except BadInput as bad:
        return None, dict(bad.problems)
    assert table(spec, found)
    return found, None


def as_typed(value):
    """A draw as the page's form would hold it."""
    if isinstance(value, dict):
        return {key: as_typed(part) for key, part in value.items()}
    if isinstance(value, list):
        if value and all(isinstance(part, str) for part in value):
            return ",".join(value)
        return [as_typed(part) for part in value]
    if isinstance(value, bool):
        return str(value).lower()
    return "" if value is None else str(value)


def check_refusal(spec, problems):
    """Every refusal names a field, or one inside it, and says what is allowed."""
    known = {field.key for field in spec.inputs}
    assert problems
    for path, message in problems.items():
        unknown = message.startswith("unknown input")
        assert unknown or re.split(r"[.\[]", path)[0] in known, (path, message)
        assert WORDS_OF_A_LIMIT.search(message), (path, message)
        assert "\n" not in message, (path, message)
        assert "None" not in message.partition(";")[2], (path, message)


def check_answer(spec, found):
    """Every declared output is there, and all of it is plain finite data."""
    json.dumps(found, allow_nan=False).encode()
    assert found["outputs"].keys() == {field.key for field in spec.outputs}
    assert not set(BESIDE_OUTPUTS) & found["outputs"].keys()
    assert all(
        note["text"] and not re.search(r"\bNone\b(?! of)", note["text"]) for note in found["notes"]
    )
    assert not any("nan" in note["text"].split() for note in found["notes"])
    for one in found.get("series", {}).values():
        assert len(one["x"]) == len(one["y"])


@pytest.mark.parametrize("name", load_all())
def test_any_input_gives_a_result_or_a_clean_refusal(name):
    spec, dice = load_all()[name], random.Random(name)
    results = 0
    for number in range(HOW_MANY):
        given = with_its_size(any_row(spec.inputs, dice), dice)
        try:
            found, problems = outcome(spec, given, number)
            if found is None:
                check_refusal(spec, problems)
                continue
            check_answer(spec, found)
        except Exception as wrong:
            wrong.add_note(f"number {number}: {given!r}"[:3000])
            raise
        results += 1
    assert results > HOW_MANY / 100, "hardly any input was possible: the draw tests little"
