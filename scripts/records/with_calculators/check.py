"""Every check of the records that asks the calculators."""

from collections.abc import Iterator

from scripts.records.calculator_facts import tables_now
from scripts.records.lines import RecordFault
from scripts.records.load import ReadRecords
from scripts.records.with_calculators import findings, sources
from scripts.records.written import listed
from scripts.setup.cores import on_all_cores
from scripts.setup.kept import is_kept, keep
from scripts.setup.surroundings import surroundings

SOUND = "sound"  # the kind of a mark that a check has found nothing in what it judged


def calculation_faults(reading: ReadRecords, *, settled: bool) -> list[RecordFault]:
    """What the calculators do not take, or answer otherwise than a record expects.

    ``settled``: the tables are those of these records. Otherwise what hangs on the tables is not judged.
    Where a check has found nothing, it is not made again of the same.
    """
    return [
        *sources.cited(reading),
        *(sources.unused(reading) if settled else ()),
        *findings.too_usual(reading),
        *faults_of_trials(reading, settled=settled),
    ]


def faults_of_trials(reading: ReadRecords, *, settled: bool) -> Iterator[RecordFault]:
    """The same of the checks that run calculators, which are imported where something is to be tried."""
    judged = dict(what_is_tried(reading))
    made_of = {
        name: f"{name}\0{surroundings()}\0{tables_now()}\0{what}" for name, what in judged.items()
    }
    lacking = [name for name in judged if not (settled and is_kept(SOUND, made_of[name]))]
    if not lacking:
        return
    from scripts.records.with_calculators.trials import trials

    checks = trials(reading, settled=settled)
    found = on_all_cores(lambda name: list(checks[name]()), lacking)
    for name, faults in zip(lacking, found, strict=True):
        if settled and not faults:
            keep(SOUND, made_of[name], "")
        yield from faults


def what_is_tried(reading: ReadRecords) -> Iterator[tuple[str, str]]:
    """By name of a check of ``trials`` what it judges, all of it: beside that it follows from the tables and
    our code alone. The longest first.
    """
    drafts = reading.drafts
    yield "demo tanks", repr([(key, draft.value) for key, draft in drafts["demo-tanks"].items()])
    calls = [(key, listed(draft.value, "calculators")) for key, draft in drafts["problems"].items()]
    yield "filled calculators", repr(calls)
    yield "guides", repr(reading.guides)
