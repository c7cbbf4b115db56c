"""What does not go together in one entry of a log: what it lacks, and a value outside its own limits."""

from collections.abc import Mapping
from typing import Any

from calculators.core.numbers import show_number
from calculators.science.shelf.entries import KINDS, READINGS, measured_of


def entry_faults(entry: Mapping[str, Any]) -> list[tuple[str, str]]:
    """Each fault of an entry that was read, as (part, what is wrong and what is allowed)."""
    kind, what, value = entry["kind"], entry.get("what"), entry.get("value")
    faults = [
        (part, f"is missing; an entry of kind {kind} is allowed only with it")
        for part in KINDS[kind].must
        if entry.get(part) is None
    ]
    if kind == "reading" and what is not None and what not in READINGS:
        faults.append(("what", f"{what!r:.40} is no reading; allowed are {', '.join(READINGS)}"))
    measured = measured_of(kind, what)
    if value is not None and measured and not measured.low <= value <= measured.high:
        low, high = show_number(measured.low, 6), show_number(measured.high, 6)
        allowed = f"allowed is {low} to {high} {measured.unit}".rstrip()
        faults.append(("value", f"{show_number(value, 6)} is out of range; {allowed}"))
    return faults
