"""Every check of the records that asks the calculators."""

from collections.abc import Callable, Iterable

from calculators.core.listing import load_all
from scripts.records.lines import RecordFault
from scripts.records.load import ReadRecords
from scripts.records.with_calculators import (
    demo_tanks,
    filled_calculators,
    findings,
    guide_calls,
    sources,
)
from scripts.records.with_calculators.trial import Trial
from scripts.setup.cores import on_all_cores


def calculation_faults(reading: ReadRecords, *, settled: bool) -> list[RecordFault]:
    """What the calculators do not take, or answer otherwise than a record expects.

    ``settled``: the tables are those of these records. Otherwise what hangs on the tables is not judged.
    """
    trial = Trial(reading, settled=settled)
    checks: dict[str, Callable[[], Iterable[RecordFault]]] = {
        "demo tanks": lambda: demo_tanks.filled(reading, trial),  # the longest, half of it all
        "sources cited": lambda: sources.cited(reading),
        "sources unused": lambda: sources.unused(reading) if settled else (),
        "filled calculators": lambda: filled_calculators.filled(reading, trial),
        "guides": lambda: guide_calls.calls(reading, trial),
        "findings": lambda: findings.too_usual(reading),
    }
    load_all()  # once, before processes share the work
    found = on_all_cores(lambda name: list(checks[name]()), list(checks))
    return [fault for faults in found for fault in faults]
