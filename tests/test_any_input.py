"""Any input gives a finite result or a clean refusal, never a traceback.

A fixed seed; MULMBOOK_INPUTS says how many for each calculator (10,000 for the full run).
"""

import json
import math
import os
import random

import pytest

from calculators.core.listing import load_all
from calculators.core.result import BadInput
from calculators.core.run import run

HOW_MANY = int(os.environ.get("MULMBOOK_INPUTS", "300"))
NONSENSE = (
    None, True, "", "7", "x" * 81, "\ud800", [], {}, [{}], [1], -1, 0, 1e-12, 1e308, -1e308,
    math.nan, math.inf, 10**400,
)  # fmt: skip


def any_value(field, dice, depth=0):
    """A value that is mostly possible for a field, sometimes at its edge, sometimes nonsense."""
    luck = dice.random()
    if luck < 0.02:
        return dice.choice(NONSENSE)
    if field.nullable and luck < 0.2:
        return None
    if field.kind == "choice":
        return dice.choice(field.choices)
    if field.kind == "text":
        return dice.choice(
            ["Jar", "Bowl; no. 2, left\\right", "水草 " * 20, "2026-12-07", "2024-02-29"]
        )
    if field.kind == "list":
        return [any_row(field.row, dice, depth + 1) for _ in range(dice.randint(0, 4 - depth))]
    if field.low is None or field.high is None:
        return dice.uniform(-1e6, 1e6)
    if field.kind == "integer":
        return dice.randint(int(field.low), int(field.high))
    if luck < 0.3:
        return dice.choice([field.low, field.high])
    if luck < 0.6 and field.low >= 0:  # small values are likelier than a flat draw makes them
        return field.low + (field.high - field.low) * 10 ** dice.uniform(-6, 0)
    return dice.uniform(field.low, field.high)


def any_row(fields, dice, depth=0):
    """Some of the inputs, each with some value."""
    return {field.key: any_value(field, dice, depth) for field in fields if dice.random() < 0.85}


def outcome(name, given):
    """The answer, or the list of problems."""
    try:
        return run(name, given)
    except BadInput as bad:
        return list(bad.problems)


@pytest.mark.parametrize("name", load_all())
def test_any_input_gives_a_result_or_a_clean_refusal(name):
    spec, dice = load_all()[name], random.Random(name)
    results = 0
    for _ in range(HOW_MANY):
        given = any_row(spec.inputs, dice)
        found = outcome(name, given)
        if isinstance(found, list):
            assert found, given
            assert all(key and message for key, message in found), given
            continue
        json.dumps(found, allow_nan=False).encode()
        assert found["outputs"].keys() == {field.key for field in spec.outputs}
        results += 1
    assert results > HOW_MANY / 100, "hardly any input was possible: the draw tests little"
