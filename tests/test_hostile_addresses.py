"""Addresses made by an enemy or a broken link: the worker's door answers each, with no uncaught error.

``scripts/bench.py hostile`` asks ten thousand and says which took long.
"""

import json
import re
from random import Random

import pytest

from calculators.bridge import answer
from calculators.core.limits import MAX_ROWS, MOST_LINK_ROWS
from calculators.core.listing import load_all
from calculators.core.read import read_inputs
from calculators.core.remarks import MOST_REMARKS
from calculators.core.result import BadInput
from calculators.core.run import run
from scripts.benches.hostile_addresses import STEPPING, hostile
from scripts.setup.paths import ROOT
from tests.effort import how_many

ANSWERED_AT_ONCE = [name for name in load_all() if name not in STEPPING]
HOW_MANY = how_many(2_000)


def asked(calculator, given, **more):
    """What the page gets for one message."""
    return json.loads(answer(json.dumps({"calculator": calculator, "given": given, **more})))


def test_random_addresses_are_answered_or_refused_in_words():
    dice, answered = Random(7), 0
    for number in range(HOW_MANY):
        message = hostile(dice, ANSWERED_AT_ONCE)
        try:
            reply = json.loads(answer(json.dumps(message)))
        except Exception as wrong:
            wrong.add_note(f"number {number}: {json.dumps(message)[:2000]}")
            raise
        answered += "answer" in reply
        assert "answer" in reply or reply["problems"] or reply["needed"]["paths"]
        for text in (reply["left_out"], *reply.get("problems", {}).values()):
            assert "Traceback" not in text
            assert len(text) < 2_000
    assert answered > HOW_MANY / 20, "hardly any address was possible: the draw tests little"


@pytest.mark.parametrize("name", STEPPING)
def test_what_reaches_a_calculator_that_steps_through_days_is_within_its_limits(name):
    spec, dice = load_all()[name], Random(name)
    reached = 0
    for _ in range(how_many(1_000)):
        given = hostile(dice, [name])["given"]
        try:
            values = read_inputs(spec.inputs, given, typed=True)
        except BadInput as bad:
            assert all(text for _, text in bad.problems)
            continue
        reached += 1
        for field in spec.inputs:
            value = values[field.key]
            if field.kind in ("number", "integer") and value is not None:
                assert field.low <= value <= field.high, field.key
            if field.kind == "list" and value is not None:
                assert len(value) <= MAX_ROWS
    assert reached
    assert all(
        field.low is not None and field.high is not None
        for field in spec.inputs
        if field.kind in ("number", "integer")
    )


def test_rows_inside_rows_are_counted_together():
    plants = [{"name": f"p{n}"} for n in range(100)]
    tanks = [{"name": f"t{n}", "plants": plants} for n in range(20)]
    said = asked("upkeep", {"tanks": tanks})["problems"]["tanks"]
    assert said == "holds 2,020 rows, with those inside; allowed are 1,000 in all"


def test_a_link_with_too_many_rows_says_so():
    rows = json.dumps([{"name": "x"}] * 2_000)
    said = asked("trend", {}, address={"readings": rows})["left_out"]
    assert "this link has 2,000 rows, and at most 300 are taken; none was." in said
    script = (ROOT / "docs" / "assets" / "calculator.js").read_text(encoding="utf-8")
    assert re.findall(r"MOST_ROWS = (\d+)", script) == [str(MOST_LINK_ROWS)]


def test_rows_that_are_no_rows_are_refused_in_either_unit():
    for row in (1, None, "x", [], [[]]):
        reply = asked("trend", {"readings": [row]}, given_in="us", units="metric")
        assert "must be an object" in reply["problems"]["readings[1]"]


def test_remarks_on_names_are_bounded():
    plants = [{"name": f"no such plant {n}"} for n in range(200)]
    reply = asked("upkeep", {"tanks": [{"name": "t", "plants": plants}]})
    assert len(reply["remarks"]) == MOST_REMARKS


def test_a_list_of_unknown_words_names_the_first_of_them():
    reply = asked("diagnose", {"findings": ",".join(f"zz{n}" for n in range(5_000))})
    assert len(json.dumps(reply.get("problems", reply.get("left_out", "")))) < 20_000


def test_of_many_choices_the_nearest_and_the_first_are_named():
    with pytest.raises(BadInput) as wrong:
        run("diagnose", {"plant": "lemna-minr"})
    [(_, problem)] = wrong.value.problems
    choices = next(field for field in load_all()["diagnose"].inputs if field.key == "plant").choices
    assert "did you mean lemna-minor?" in problem
    assert problem.endswith(f" and {len(choices) - 40} more")
    assert len(problem) < 1_500
