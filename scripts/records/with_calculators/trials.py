"""The checks that run calculators with what records fill in."""

from collections.abc import Callable, Iterable
from functools import partial

from calculators.core.listing import load_all
from scripts.records.lines import RecordFault
from scripts.records.load import ReadRecords
from scripts.records.with_calculators import demo_tanks, filled_calculators, guide_calls
from scripts.records.with_calculators.trial import Trial


def trials(
    reading: ReadRecords, *, settled: bool
) -> dict[str, Callable[[], Iterable[RecordFault]]]:
    """By name what makes each check. All calculators are there then, once for all processes.

    ``settled``: the tables are those of these records.
    """
    load_all()
    trial = Trial(reading, settled=settled)
    return {
        "demo tanks": partial(demo_tanks.filled, reading, trial),
        "filled calculators": partial(filled_calculators.filled, reading, trial),
        "guides": partial(guide_calls.calls, reading, trial),
    }
