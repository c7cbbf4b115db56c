"""A calculator that a problem fills in must take those inputs."""

from collections.abc import Iterator
from typing import Any

from calculators.core.result import BadInput
from scripts.records.lines import RecordFault
from scripts.records.load import ReadRecords
from scripts.records.parse import Place
from scripts.records.with_calculators.trial import Trial
from scripts.records.written import inside, listed


def filled(reading: ReadRecords, trial: Trial) -> Iterator[RecordFault]:
    """What is wrong with the calculators of every problem."""
    for draft in reading.drafts["problems"].values():
        for number, call in enumerate(listed(draft.value, "calculators")):
            for place, message in wrong(call, trial):
                yield reading.finding(draft.path, ("calculators", number, *place), message)


def wrong(call: Any, trial: Trial) -> Iterator[tuple[Place, str]]:
    """What is wrong with one filled calculator, by its place below it."""
    # Brings the table of problems along, for nothing where every call has been found sound.
    from calculators.diagnose.outputs import Readings

    name, inputs = inside(call, "calculator"), inside(call, "inputs") or {}
    if not isinstance(name, str) or not isinstance(inputs, dict):
        return  # the model has said so
    if trial.judges(inputs):
        try:
            trial.outputs(name, inputs)
        except BadInput as bad:
            for key, message in bad.problems:
                yield ("inputs", key) if key else ("calculator",), message
    readings = inside(call, "readings")
    for key, word in readings.items() if isinstance(readings, dict) else ():
        if key not in inputs or word not in Readings._fields:
            message = "must name an input filled in above, and a reading of diagnose"
            yield ("readings", key), message
