"""Lists of rows: read, refused by name, and given to a formula as their own type."""

from typing import Annotated, NamedTuple

import pytest

from calculators.core.declare import read_spec
from calculators.core.quantities import Count, Days
from calculators.core.quantity import Keys, Label
from calculators.core.read import read_inputs
from calculators.core.refusals import field_at
from calculators.core.result import BadInput
from calculators.core.run import as_rows


class Task(NamedTuple):
    kind: Annotated[str, Label("Kind"), Keys(("trim", "feed"), ("Trim plants", "Feed"))]
    day: Days
    count_: Count = 1


class Answer(NamedTuple):
    days: Days


DEFAULT = [Task("trim", 3.0)]


def plan(tasks: Annotated[list[Task], Label("Tasks")] = DEFAULT) -> Answer:
    """Plan tasks."""
    return Answer(sum(task.day for task in tasks))


SPEC = read_spec(plan, "Plan", ())


def read(rows):
    return read_inputs(SPEC.inputs, {"tasks": rows}, typed=False)["tasks"]


def test_defaults_are_plain_data_for_json():
    assert SPEC.inputs[0].default == [{"kind": "trim", "day": 3.0, "count": 1}]


def test_a_formula_gets_rows_as_its_own_type():
    rows = as_rows(SPEC.inputs[0], read([{"kind": "feed", "day": 2}]))
    assert rows == [Task("feed", 2.0, 1)]
    assert isinstance(rows[0], Task)


def test_keys_become_choices_with_words():
    kind = field_at(SPEC, "tasks[1].kind")
    assert (kind.kind, kind.choices, kind.words) == (
        "choice",
        ("trim", "feed"),
        ("Trim plants", "Feed"),
    )


def test_every_bad_part_of_every_row_is_named():
    with pytest.raises(BadInput) as bad:
        read([{"kind": "trin"}, {"kind": "feed", "day": -1, "colour": 2}])
    messages = dict(bad.value.problems)
    assert list(messages) == ["tasks[1].kind", "tasks[1].day", "tasks[2].colour", "tasks[2].day"]
    assert "did you mean trim?" in messages["tasks[1].kind"]
    assert messages["tasks[1].day"].startswith("is missing")
