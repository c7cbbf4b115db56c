"""Every calculator of every demo tank is run; what it refuses or answers otherwise is told."""

from collections.abc import Iterator
from typing import Any

from calculators.core.result import BadInput
from scripts.records.lines import RecordFault
from scripts.records.load import ReadRecords
from scripts.records.parse import Place
from scripts.records.with_calculators.trial import Trial
from scripts.records.written import inside


def filled(reading: ReadRecords, trial: Trial) -> Iterator[RecordFault]:
    """What is wrong with the calculators of the demo tanks."""
    for draft in reading.drafts["demo-tanks"].values():
        calls = inside(draft.value, "calculators")
        for name, call in calls.items() if isinstance(calls, dict) else ():
            for place, message in wrong(name, call, trial):
                place = (*draft.place, "calculators", name, *place)
                yield reading.finding(draft.path, place, message)


def wrong(name: str, call: Any, trial: Trial) -> Iterator[tuple[Place, str]]:
    """What is wrong with one calculator of a tank, by its place below it."""
    inputs, expected = inside(call, "inputs"), inside(call, "expect")
    if not isinstance(inputs, dict) or not trial.judges(inputs):
        return
    try:
        outputs = trial.outputs(name, inputs)
    except BadInput as bad:
        for key, message in bad.problems:
            yield ("inputs", *steps(key)) if key else (), message
        return
    for key, expected_value in expected.items() if isinstance(expected, dict) else ():
        if key not in outputs:
            yield ("expect", key), f"is no output; there are {', '.join(outputs)}"
        elif trial.settled and outputs[key] != expected_value:
            yield ("expect", key), f"comes out as {outputs[key]!r}, not {expected_value!r}"


def steps(key: str) -> Place:
    """A field's key, such as ``plants[2].wet_g``, as a place in the file."""
    list_key, bracket, rest = key.partition("[")
    if not bracket:
        return (key,)
    row, _, field = rest.partition("].")
    return (list_key, int(row.rstrip("]")) - 1, *([field] if field else []))
