"""From files to typed records. Loading judges each file by itself; ``check`` judges them together."""

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

from scripts.records.animal import Animal
from scripts.records.demo import DEMO_FILE, DemoTank
from scripts.records.finding import Finding
from scripts.records.guide import Guide, GuideDraft, read_guides
from scripts.records.lines import Document, RecordFault, document_of, fault_at, shown_first
from scripts.records.parse import Place
from scripts.records.place import Jurisdiction
from scripts.records.plant import Plant
from scripts.records.problem import Problem
from scripts.records.reader import Draft, Reader
from scripts.records.rule import Rule
from scripts.records.source import Source
from scripts.records.trade_name import TradeName
from scripts.setup.paths import SPECIES


class Library(NamedTuple):
    """All records by slug."""

    plants: Mapping[str, Plant]
    animals: Mapping[str, Animal]
    problems: Mapping[str, Problem]
    rules: Mapping[str, Rule]
    names: Mapping[str, TradeName]
    places: Mapping[str, Jurisdiction]
    guides: dict[str, Guide]
    sources: Mapping[str, Source]
    findings: Mapping[str, Finding]
    demo: Mapping[str, DemoTank]
    vocabulary: dict[str, dict[str, dict[str, str]]]

    def offered(self) -> dict[str, Plant]:
        """The plants that may be suggested; all that suggests plants asks here."""
        return {slug: plant for slug, plant in self.plants.items() if plant.offered}


class BadRecords(Exception):
    """Records that do not hold; ``findings`` has them in order, of each file the first 50 and a count."""

    def __init__(self, findings: list[RecordFault]) -> None:
        self.findings = shown_first(findings)
        count = len(set(findings))
        super().__init__(
            "\n".join(map(str, self.findings))
            + f"\n{count:,} error{'s' * (count != 1)} in the records"
        )


class ReadRecords(NamedTuple):
    """What a folder of records holds, right or wrong: for checks that tell all mistakes in one run.

    ``library`` has the records that hold, ``drafts`` all of them as written by kind and key.
    """

    folder: Path
    library: Library
    drafts: dict[str, dict[str, Draft]]
    guides: dict[str, GuideDraft]
    documents: dict[Path, Document]
    faults: list[RecordFault]

    def every_draft(self) -> Iterator[Draft]:
        """Every record and entry as it was written."""
        for drafts in self.drafts.values():
            yield from drafts.values()

    def keys(self, kind: str) -> frozenset[str] | None:
        """The keys of a file of entries; None where nothing of it could be read."""
        return frozenset(self.drafts[kind]) or None

    def finding(self, path: Path, place: Place, message: str) -> RecordFault:
        """A finding at a place in a file."""
        return fault_at(self.documents, path, place, message)


def read_records(
    folder: Path = SPECIES, parsed: Callable[[str], Document] = document_of
) -> ReadRecords:
    """Read all records, with what is wrong with each by itself. ``parsed`` makes a document of a text."""
    reader = Reader(folder, parsed)
    guides, guide_drafts, wrong_guides = read_guides()
    library = Library(
        plants=reader.folder("plants", Plant),
        animals=reader.folder("animals", Animal),
        problems=reader.folder("problems", Problem),
        rules=reader.folder("rules", Rule),
        names=reader.folder("names", TradeName),
        places=reader.entries("places.yml", Jurisdiction),
        guides=guides,
        sources=reader.entries("sources.yml", Source),
        findings=reader.entries("findings.yml", Finding),
        demo=reader.entries(DEMO_FILE, DemoTank),
        vocabulary=reader.vocabulary(),
    )
    return ReadRecords(
        folder=folder,
        library=library,
        drafts=reader.drafts,
        guides=guide_drafts,
        documents=reader.documents,
        faults=reader.findings + wrong_guides,
    )


def load(folder: Path = SPECIES) -> Library:
    """Read and validate all records; not whether they fit together. Raises ``BadRecords``."""
    reading = read_records(folder)
    if reading.faults:
        raise BadRecords(reading.faults)
    return reading.library
