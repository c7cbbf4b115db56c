"""Every check of the records that asks the calculators."""

from collections.abc import Callable, Iterable, Iterator

from calculators.core.listing import load_all
from scripts.records.calculator_facts import tables_now
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
from scripts.records.written import listed
from scripts.setup.cores import on_all_cores
from scripts.setup.kept import is_kept, keep
from scripts.setup.surroundings import surroundings

QUICK = ("sources cited", "sources unused", "findings")  # sooner done than shared
SOUND = "sound"  # the kind of a mark that a check has found nothing in what it judged


def calculation_faults(reading: ReadRecords, *, settled: bool) -> list[RecordFault]:
    """What the calculators do not take, or answer otherwise than a record expects.

    ``settled``: the tables are those of these records. Otherwise what hangs on the tables is not judged.
    Where a check has found nothing, it is not made again of the same.
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
    found_in = dict(what_is_judged(reading)) if settled else {}
    made_of = {
        name: f"{name}\0{surroundings()}\0{tables_now()}\0{judged}"
        for name, judged in found_in.items()
    }
    lacking = [name for name in checks if name not in made_of or not is_kept(SOUND, made_of[name])]
    long = [name for name in lacking if name not in QUICK]
    if long:
        load_all()  # once, before processes share the work
    found = dict(zip(long, on_all_cores(lambda name: list(checks[name]()), long), strict=True))
    found |= {name: list(checks[name]()) for name in lacking if name in QUICK}
    for name, faults in found.items():
        if name in made_of and not faults:
            keep(SOUND, made_of[name], "")
    return [fault for name in checks for fault in found.get(name, ())]


def what_is_judged(reading: ReadRecords) -> Iterator[tuple[str, str]]:
    """By check what it judges, all of it, for those that follow from it, the tables and our code alone."""
    drafts = reading.drafts
    yield "demo tanks", repr([(key, draft.value) for key, draft in drafts["demo-tanks"].items()])
    calls = [(key, listed(draft.value, "calculators")) for key, draft in drafts["problems"].items()]
    yield "filled calculators", repr(calls)
    yield "guides", repr(reading.guides)
