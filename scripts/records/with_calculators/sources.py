"""Sources that calculators and published figures cite, and those that nothing cites."""

from collections.abc import Iterator

from calculators.core.listing import load_all
from scripts.records.guide import marks
from scripts.records.lines import RecordFault
from scripts.records.load import ReadRecords
from scripts.records.published import cases
from scripts.records.written import mappings, source_keys

FILE = "sources.yml"


def cited(reading: ReadRecords) -> Iterator[RecordFault]:
    """Every source that a calculator cites must stand in sources.yml."""
    known = reading.keys("sources")
    for spec in load_all().values() if known else ():
        for key in sorted(set(spec.sources) - (known or set())):
            message = f"{key} is missing; the calculator {spec.name} cites it"
            yield reading.finding(reading.folder / FILE, (), message)


def unused(reading: ReadRecords) -> Iterator[RecordFault]:
    """Every source must be used. Judged only where all records hold."""
    used = {key for spec in load_all().values() for key in spec.sources}
    used |= {case.source for name in load_all() for case in cases(name)}
    for guide in reading.guides.values():
        used |= {key for mark in marks(guide) for key in mark.source_keys()}
    for draft in reading.every_draft():
        used |= {key for _, part in mappings(draft.value) for key in source_keys(part)}
    for key in sorted((reading.keys("sources") or set()) - used):
        yield reading.finding(reading.folder / FILE, (key,), "is used nowhere; remove it")
