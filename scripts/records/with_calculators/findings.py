"""Answers to one question of the diagnosis cannot be there more often than always."""

from collections import defaultdict
from collections.abc import Iterator

from calculators.diagnose.likelihood import USUAL
from scripts.records.lines import RecordFault
from scripts.records.load import ReadRecords


def too_usual(reading: ReadRecords) -> Iterator[RecordFault]:
    """The shares of the answers to one question add up to at most 1."""
    by_input: dict[str, list[str]] = defaultdict(list)
    for key, sign in reading.library.findings.items():
        if sign.derived_from:
            by_input[sign.derived_from.input].append(key)
    for keys in by_input.values():
        total = sum(USUAL[reading.library.findings[key].usual] for key in keys)
        if total > 1:
            message = f"the answers to its question are there {total:.2f} of the time; at most 1"
            path = reading.folder / "findings.yml"
            yield reading.finding(path, (keys[0], "usual"), message)
