"""Sources that calculators and published figures cite, and those that nothing cites."""

from collections.abc import Iterator

from scripts.records.calculator_facts import calculator_facts
from scripts.records.guide import marks
from scripts.records.lines import RecordFault
from scripts.records.load import ReadRecords
from scripts.records.mentions import drafts_of_files, mentions
from scripts.setup.file_hash import files_below, hash_of_files
from scripts.setup.kept import kept
from scripts.setup.paths import PUBLISHED
from scripts.setup.surroundings import packages

FILE = "sources.yml"


def cited(reading: ReadRecords) -> Iterator[RecordFault]:
    """Every source that a calculator cites must stand in sources.yml."""
    known = reading.keys("sources")
    for calculator in calculator_facts() if known else ():
        for key in sorted(set(calculator.sources) - (known or set())):
            message = f"{key} is missing; the calculator {calculator.name} cites it"
            yield reading.finding(reading.folder / FILE, (), message)


def unused(reading: ReadRecords) -> Iterator[RecordFault]:
    """Every source must be used. Judged only where all records hold."""
    used = {key for calculator in calculator_facts() for key in calculator.sources}
    figures = f"{packages()}\0{hash_of_files(files_below(PUBLISHED))}"
    used |= set(kept("sources-of-figures", figures, sources_of_figures).split())
    for guide in reading.guides.values():
        used |= {key for mark in marks(guide) for key in mark.source_keys()}
    for path, drafts in drafts_of_files(reading):
        used.update(mentions(reading, path, drafts).sources)
    for key in sorted((reading.keys("sources") or set()) - used):
        yield reading.finding(reading.folder / FILE, (key,), "is used nowhere; remove it")


def sources_of_figures() -> str:
    """The keys that published figures and experiments cite, in one line."""
    from scripts.records.experiments import experiments  # which runs calculators
    from scripts.records.published import cases

    names = [calculator.name for calculator in calculator_facts()]
    keys = {case.source for name in names for case in cases(name)}
    keys |= {one.source for name in names for one in experiments(name)}
    return " ".join(sorted(keys))
