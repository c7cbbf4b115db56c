"""Tries a calculator with what a record fills in."""

from collections.abc import Iterator
from typing import Any

from calculators.core.listing import load_all
from calculators.core.result import BadInput
from calculators.core.run import run
from scripts.records.load import ReadRecords


class Trial:
    """Runs calculators. Where the tables are not settled, calls that name a record are left out."""

    def __init__(self, reading: ReadRecords, *, settled: bool) -> None:
        self.settled = settled
        kinds = ("plants", "animals", "problems", "findings")
        self.keys = {key for kind in kinds for key in reading.drafts[kind]}

    def judges(self, inputs: dict[str, Any]) -> bool:
        """Whether these inputs can be judged now."""
        return self.settled or not any(word in self.keys for word in words(inputs))

    def outputs(self, name: str, inputs: dict[str, Any], *, typed: bool = False) -> dict[str, Any]:
        """What a calculator answers. Raises ``BadInput``; the field is empty if there is no such one."""
        if name not in load_all():
            message = f"there is no calculator {name}; there are {', '.join(load_all())}"
            raise BadInput(("", message))
        outputs: dict[str, Any] = run(name, inputs, typed=typed)["outputs"]
        return outputs


def words(value: Any) -> Iterator[str]:
    """Every word inside a value; a text may hold several, by commas."""
    if isinstance(value, str):
        yield from (word.strip() for word in value.split(","))
    elif isinstance(value, dict):
        for part in value.values():
            yield from words(part)
    elif isinstance(value, list | tuple):
        for part in value:
            yield from words(part)
