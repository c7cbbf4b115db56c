"""From files to typed records, with every error of every file in one run."""

from pathlib import Path
from typing import Any, NamedTuple, TypeVar

from pydantic import BaseModel, ValidationError

from scripts.records.animal import Animal
from scripts.records.demo import FILE as DEMO_FILE
from scripts.records.demo import DemoTank
from scripts.records.finding import Finding as Sign
from scripts.records.guide import Guide, read_guides
from scripts.records.lines import Document, Finding, Place, finding_at, read, shown_path
from scripts.records.messages import word
from scripts.records.place import Place as Jurisdiction
from scripts.records.plant import Plant
from scripts.records.problem import Problem
from scripts.records.rule import Rule
from scripts.records.source import Source
from scripts.records.trade_name import TradeName
from scripts.setup.paths import ROOT

Model = TypeVar("Model", bound=BaseModel)


class Library(NamedTuple):
    """All records by slug; ``documents`` keeps the lines of each file for later checks."""

    plants: dict[str, Plant]
    animals: dict[str, Animal]
    problems: dict[str, Problem]
    rules: dict[str, Rule]
    names: dict[str, TradeName]
    places: dict[str, Jurisdiction]
    guides: dict[str, Guide]
    sources: dict[str, Source]
    findings: dict[str, Sign]
    demo: dict[str, DemoTank]
    vocabulary: dict[str, dict[str, dict[str, str]]]
    documents: dict[Path, Document]


class BadRecords(Exception):
    """Records that do not hold; ``findings`` has all of them."""

    def __init__(self, findings: list[Finding]) -> None:
        self.findings = sorted(findings)
        count = len(findings)
        super().__init__(
            "\n".join(map(str, self.findings))
            + f"\n{count} error{'s' * (count != 1)} in the records"
        )


def load(folder: Path = ROOT / "species") -> Library:
    """Read, validate and cross-check all records. Raises ``BadRecords`` with every finding."""
    from scripts.records.check import check

    reader = Reader(folder)
    guides, wrong_guides = read_guides()
    library = Library(
        plants=reader.folder("plants", Plant),
        animals=reader.folder("animals", Animal),
        problems=reader.folder("problems", Problem),
        rules=reader.folder("rules", Rule),
        names=reader.folder("names", TradeName),
        places=reader.entries("places.yml", Jurisdiction),
        guides=guides,
        sources=reader.entries("sources.yml", Source),
        findings=reader.entries("findings.yml", Sign),
        demo=reader.entries(DEMO_FILE, DemoTank),
        vocabulary=reader.vocabulary(),
        documents=reader.documents,
    )
    findings = reader.findings + wrong_guides + list(check(library, folder, reader.broken))
    if findings:
        raise BadRecords(findings)
    return library


class Reader:
    """Reads a folder of records and gathers what is wrong with them."""

    def __init__(self, folder: Path) -> None:
        self.root = folder
        self.findings: list[Finding] = []
        self.documents: dict[Path, Document] = {}
        self.broken: set[Path] = set()  # files with errors: what refers to them is not judged

    def folder(self, name: str, model: type[Model]) -> dict[str, Model]:
        """The records of one folder by slug, which is the file's name."""
        records: dict[str, Model] = {}
        for path in sorted((self.root / name).glob("*")):
            if path.suffix != ".yml":
                self.note(path, (), "only files that end in .yml belong here")
            elif path.stem != slug_of(path.stem):
                self.note(
                    path, (), f"must be named in lower case with hyphens: {slug_of(path.stem)}.yml"
                )
            elif (document := self.document(path)) is not None:
                record = self.validate(path, document, model, (), document.value)
                if record is not None:
                    records[path.stem] = record
        return records

    def entries(self, name: str, model: type[Model]) -> dict[str, Model]:
        """The entries of one file by key."""
        path = self.root / name
        document = self.document(path)
        if document is None or not isinstance(document.value, dict):
            return {}
        found = {
            str(key): self.validate(path, document, model, (str(key),), value)
            for key, value in document.value.items()
        }
        return {key: entry for key, entry in found.items() if entry is not None}

    def vocabulary(self) -> dict[str, dict[str, dict[str, str]]]:
        """The words that records may use, as plain data."""
        document = self.document(self.root / "vocabulary.yml")
        return document.value if document else {}

    def document(self, path: Path) -> Document | None:
        """Parse a file once, with its findings."""
        document, findings = read(path, shown_path(path))
        self.findings += findings
        if findings:
            self.broken.add(path)
        if document is not None:
            self.documents[path] = document
        return document

    def validate(
        self, path: Path, document: Document, model: type[Model], place: Place, value: Any
    ) -> Model | None:
        """Hold a value to its model; each error becomes a finding at its own line."""
        try:
            return model.model_validate(value)
        except ValidationError as wrong:
            self.broken.add(path)
            seen = set()
            for error in wrong.errors():
                where = (*place, *in_file(error["loc"], document, place))
                finding = self.finding(path, where, word(error, model))
                if (where, error["type"]) not in seen:  # a union complains once for each branch
                    self.findings.append(finding)
                seen.add((where, error["type"]))
            return None

    def note(self, path: Path, place: Place, message: str) -> None:
        """Add a finding."""
        self.broken.add(path)
        self.findings.append(self.finding(path, place, message))

    def finding(self, path: Path, place: Place, message: str) -> Finding:
        """A finding at a place in a file."""
        return finding_at(self.documents, path, place, message)


def in_file(place: Place, document: Document, above: Place) -> Place:
    """Drop from an error's place the names of union branches, which stand in no file."""
    kept: list[str | int] = []
    last = len(place) - 1
    for number, step in enumerate(place):
        branch = isinstance(step, str) and (
            "[" in step or step in ("str", "float", "int", "constrained-str")
        )
        stands = (*above, *kept, step) in document.lines
        if stands or isinstance(step, int) or (number == last and not branch):
            kept.append(step)
    return tuple(kept)


def slug_of(name: str) -> str:
    """The nearest allowed file name."""
    words = "".join(
        letter if letter.isascii() and letter.isalnum() else " " for letter in name.lower()
    )
    return "-".join(words.split())
