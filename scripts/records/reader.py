"""Reads a folder of records and gathers what is wrong with each file by itself."""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from pydantic import ValidationError

from scripts.records.claim import LONGEST_SLUG, SLUG
from scripts.records.error_sentences import MOST_WORDED, word
from scripts.records.lines import Document, RecordFault, document_of, fault_at, read
from scripts.records.parse import Place
from scripts.records.vocabulary import word_faults
from scripts.records.when_asked import Model, WhenAsked, put_together


class Draft(NamedTuple):
    """A record or entry as it was written, right or wrong, and where it stands."""

    path: Path
    place: Place  # of the entry in its file; empty for a file that is one record
    value: Any


class Reader:
    """Reads records; what it could read, however wrong, stays in ``drafts`` by kind and key.

    ``parsed`` makes a document of a text.
    """

    def __init__(self, root: Path, parsed: Callable[[str], Document] = document_of) -> None:
        self.root, self.parsed = root, parsed
        self.findings: list[RecordFault] = []
        self.documents: dict[Path, Document] = {}
        self.drafts: dict[str, dict[str, Draft]] = {}

    def folder(self, name: str, model: type[Model]) -> Mapping[str, Model]:
        """The records of one folder by slug, which is the file's name."""
        folder, records = self.root / name, WhenAsked(model)
        self.drafts[name] = {}
        if not folder.is_dir():
            self.note(folder, (), "is missing; it is the folder of these records")
        for path in sorted(folder.glob("*"), key=lambda path: path.name):
            if message := wrong_name(path):
                self.note(path, (), message)
            elif (document := self.document(path)) is not None:
                draft = Draft(path, (), document.value)
                self.drafts[name][path.stem] = draft
                self.hold(records, {path.stem: draft}, document)
        return records

    def entries(self, file: str, model: type[Model]) -> Mapping[str, Model]:
        """The entries of one file by key."""
        path, records = self.root / file, WhenAsked(model)
        mapping = self.mapping(path)
        drafts = {key: Draft(path, (key,), value) for key, value in mapping.items()}
        self.drafts[path.stem] = drafts
        for key in mapping:
            if message := wrong_slug(key):
                self.note(path, (key,), message)
        if drafts:
            self.hold(records, drafts, self.documents[path])
        return records

    def hold(
        self, records: WhenAsked[Model], drafts: Mapping[str, Draft], document: Document
    ) -> None:
        """Add to ``records`` those of a text's drafts that hold; each error becomes a finding at its line.

        A text of which all hold is judged once, as long as it stays the same.
        """
        fact = f"holds as {records.model.__name__}"
        if document.facts.get(fact):
            for key, draft in drafts.items():
                records.put_written(key, draft.value)
            return
        held = [self.validate(key, draft, records) for key, draft in drafts.items()]
        document.fact(fact, lambda: all(held))

    def vocabulary(self, file: str = "vocabulary.yml") -> dict[str, dict[str, dict[str, str]]]:
        """The words that records may use, as plain data."""
        path = self.root / file
        mapping = self.mapping(path)
        for place, message in word_faults(mapping) if mapping else ():
            self.note(path, place, message)
        return mapping

    def mapping(self, path: Path) -> dict[str, Any]:
        """What a file holds by key. One finding, and nothing, where it holds something else."""
        document = self.document(path)
        if document is None:
            return {}
        if isinstance(document.value, dict) and document.value:
            return document.value
        content = "is empty" if not document.value else f"holds a {type(document.value).__name__}"
        self.note(
            path, (), f"{content}; it must hold entries by key, each a key with what is inside"
        )
        return {}

    def document(self, path: Path) -> Document | None:
        """Parse a file once, with its findings."""
        document, findings = read(path, self.parsed)
        self.findings += findings
        if document is not None:
            self.documents[path] = document
        return document

    def validate(self, key: str, draft: Draft, records: WhenAsked[Model]) -> bool:
        """Hold a draft to its model, and add the record; whether it holds."""
        try:
            records.put(key, put_together(records.model, draft.value))
        except ValidationError as wrong:
            path, place = draft.path, draft.place
            for number, error in enumerate(wrong.errors(include_url=False)):
                where = (*place, *in_file(error["loc"], self.documents[path], place))
                # Good words take time, and nobody is shown so many.
                worded = number < MOST_WORDED
                self.note(path, where, word(error, records.model) if worded else error["msg"])
            return False
        return True

    def note(self, path: Path, place: Place, message: str) -> None:
        """Add a finding."""
        self.findings.append(fault_at(self.documents, path, place, message))


def in_file(place: Place, document: Document, above: Place) -> Place:
    """Drop from an error's place the names of union branches, which stand in no file."""
    steps: list[str | int] = []
    last = len(place) - 1
    for number, step in enumerate(place):
        branch = isinstance(step, str) and (
            "[" in step or step in ("str", "float", "int", "constrained-str")
        )
        stands = document.has((*above, *steps, step))
        if stands or isinstance(step, int) or (number == last and not branch):
            steps.append(step)
    return tuple(steps)


def wrong_name(path: Path) -> str | None:
    """What is wrong with a record file's name."""
    if path.suffix != ".yml":
        return "only files that end in .yml belong here"
    if path.stem != slug_of(path.stem):
        return f"must be named in lower case with hyphens: {slug_of(path.stem)}.yml"
    if len(path.stem) > LONGEST_SLUG:
        return f"must have a name of at most {LONGEST_SLUG} letters; it has {len(path.stem)}"
    return None


def wrong_slug(key: str) -> str | None:
    """What is wrong with an entry's key."""
    if not SLUG.fullmatch(key):
        return f"a key must be lower-case words joined by hyphens, such as {slug_of(key) or 'word'}"
    if len(key) > LONGEST_SLUG:
        return f"a key must have at most {LONGEST_SLUG} letters; it has {len(key)}"
    return None


def slug_of(name: str) -> str:
    """The nearest allowed file name."""
    words = "".join(
        letter if letter.isascii() and letter.isalnum() else " " for letter in name.lower()
    )
    return "-".join(words.split())
