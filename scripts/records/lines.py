"""Findings at a file, a line and a key; a file's value with the lines of its places."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import cache, cached_property, lru_cache
from pathlib import Path
from typing import Any, NamedTuple, Self

from scripts.records.parse import Fault, NotARecord, Parsed, Place, parse
from scripts.setup.paths import ROOT

MOST_SHOWN = 50  # of one file


class RecordFault(NamedTuple):
    """Something wrong in a file, at a line, at a key."""

    path: Path
    line: int
    key: str
    message: str

    def __str__(self) -> str:
        key = f" {self.key}:" if self.key else ""
        return f"{self.path.as_posix()}:{self.line}:{key} {self.message}"


class Document:
    """A parsed text: its value at once, its lines when a complaint asks for them.

    ``above`` is how many lines of the file stand before the text. Raises ``NotARecord``.
    """

    def __init__(self, text: str, above: int = 0) -> None:
        self.text, self.above = text, above
        self.facts: dict[str, Any] = {}
        parsed = parse(text)
        self.value: Any = parsed.value
        self.faults: list[Fault] = [] if parsed.sound else self.parsed.faults

    @classmethod
    def known(cls, text: str, value: Any, facts: dict[str, Any]) -> Self:
        """A text with nothing wrong in it, whose value and ``facts`` are known from an earlier pass."""
        made = cls.__new__(cls)
        made.text, made.above, made.value, made.faults = text, 0, value, []
        made.facts = facts
        return made

    def fact(self, name: str, find: Callable[[], Any]) -> Any:
        """What follows from this text and our code alone, as JSON can hold it; found once for a text."""
        if name not in self.facts:
            self.facts[name] = find()
        return self.facts[name]

    @cached_property
    def parsed(self) -> Parsed:
        """The second, slower pass. Raises ``NotARecord``."""
        return parse(self.text, with_lines=True)

    def has(self, place: Place) -> bool:
        """Whether the text has a place."""
        return place in self.parsed.lines

    def line(self, place: Sequence[str | int]) -> int:
        """The line of a place, or of the nearest place around it that the text has."""
        known, lines = tuple(place), self.parsed.lines
        while known and known not in lines:
            known = known[:-1]
        return lines.get(known, 1) + self.above


def fault_at(
    documents: Mapping[Path, Document], path: Path, place: Place, message: str
) -> RecordFault:
    """A finding at a place in a file, at the line where the file has it."""
    document = documents.get(path)
    line = document.line(place) if document else 1
    return RecordFault(shown_path(path), line, shown_key(place), message)


def shown_key(place: Place) -> str:
    """A place as text, with nothing in it that a terminal would not show."""
    key = ".".join(map(str, place))
    return "".join(letter if letter.isprintable() else f"\\u{ord(letter):04x}" for letter in key)


@cache
def shown_path(path: Path) -> Path:
    """A file's path as the person knows it, from the project's folder."""
    return path.relative_to(ROOT) if path.is_relative_to(ROOT) else path


@lru_cache(maxsize=1_000)
def document_of(text: str) -> Document:
    """A text parsed once, however often its file is read: most files are the same the next time."""
    return Document(text)


def read(
    path: Path, parsed: Callable[[str], Document] = document_of
) -> tuple[Document | None, list[RecordFault]]:
    """Parse one file. Returns no document where nothing of it can be used."""
    text = read_text(path)
    if isinstance(text, RecordFault):
        return None, [text]
    try:
        document = parsed(text)
    except NotARecord as wrong:
        return None, [RecordFault(shown_path(path), wrong.line, "", str(wrong))]
    return document, findings_of(document, shown_path(path)) if document.faults else []


def findings_of(document: Document, shown: Path) -> list[RecordFault]:
    """What is wrong with a text before its keys are known."""
    return [
        RecordFault(shown, fault.line + document.above, shown_key(fault.place), fault.message)
        for fault in document.faults
    ]


def read_text(path: Path) -> str | RecordFault:
    """A file's text, or why it cannot be read."""
    try:
        return path.read_bytes().decode("utf-8")
    except UnicodeDecodeError as wrong:
        return RecordFault(shown_path(path), 1, "", f"is not UTF-8 text (byte {wrong.start})")
    except OSError as wrong:
        return RecordFault(shown_path(path), 1, "", why_unread(path, wrong))


def why_unread(path: Path, wrong: OSError) -> str:
    """Why a file could not be read, from what stands in its place and what the system says."""
    if path.is_symlink() and not path.exists():
        return "is a link that leads nowhere; remove it, or mend the link"
    if path.is_dir():
        return "is a folder; a file was expected here"
    if isinstance(wrong, FileNotFoundError):
        return "is missing; nothing can be checked without it"
    return f"cannot be read: {wrong.strerror}"


def shown_first(findings: Iterable[RecordFault]) -> list[RecordFault]:
    """The findings in order, of each file no more than ``MOST_SHOWN`` and a count of the rest."""
    by_file: dict[Path, list[RecordFault]] = defaultdict(list)
    for finding in sorted(set(findings)):
        by_file[finding.path].append(finding)
    shown = []
    for path, of_file in by_file.items():
        shown += of_file[:MOST_SHOWN]
        if len(of_file) > MOST_SHOWN:
            message = f"and {len(of_file) - MOST_SHOWN:,} more in this file"
            shown.append(RecordFault(path, of_file[MOST_SHOWN].line, "", message))
    return shown
