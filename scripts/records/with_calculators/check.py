"""Every check of the records that asks the calculators."""

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


def calculation_faults(reading: ReadRecords, *, settled: bool) -> list[RecordFault]:
    """What the calculators do not take, or answer otherwise than a record expects.

    ``settled``: the tables are those of these records. Otherwise what hangs on the tables is not judged.
    """
    trial = Trial(reading, settled=settled)
    return [
        *sources.cited(reading),
        *(sources.unused(reading) if settled else ()),
        *filled_calculators.filled(reading, trial),
        *demo_tanks.filled(reading, trial),
        *guide_calls.calls(reading, trial),
        *findings.too_usual(reading),
    ]
