"""Pages of prose in docs/: their front matter, and what every page must say of itself."""

from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

from scripts.records.lines import Document, RecordFault, findings_of, read_text, shown_path
from scripts.records.parse import NotARecord
from scripts.records.raw_html import page_faults
from scripts.setup.paths import DOCS

FENCE = "---\n"
OF_THEIR_OWN = (
    "theme",
    "guides",
)  # folders that are no pages of prose, or have a model of their own
NEEDED = ("title", "description")


class Prose(NamedTuple):
    """What search and the head of a page say of it."""

    title: str
    description: str


def read_prose(folder: Path = DOCS) -> tuple[dict[str, Prose], list[RecordFault]]:
    """The pages that hold, by path below the folder; and what is wrong with the others."""
    pages: dict[str, Prose] = {}
    findings: list[RecordFault] = []
    for path in sorted(folder.glob("**/*.md")):
        name = path.relative_to(folder)
        if name.parts[0] in OF_THEIR_OWN:
            continue
        document = front_matter(path)
        if isinstance(document, RecordFault):
            findings.append(document)
            continue
        wrong = [
            *findings_of(document[0], shown_path(path)),
            *lacks(document[0], path),
            *raw(*document, path),
        ]
        findings += wrong
        if not wrong:
            pages[name.as_posix()] = Prose(*(document[0].value[key] for key in NEEDED))
    return pages, findings


def raw(document: Document, body: str, path: Path) -> Iterator[RecordFault]:
    """Tags, attributes and links that may not stand in a page."""
    above = document.text.count("\n") + 3  # the two fences, and counting from one
    for number, message in raw_faults(body):
        yield RecordFault(shown_path(path), above + number, "", message)


@lru_cache(maxsize=100)
def raw_faults(body: str) -> tuple[tuple[int, str], ...]:
    """What a page's text holds and may not, found once: a build reads every page twice."""
    return tuple(page_faults(body))


def lacks(document: Document, path: Path) -> Iterator[RecordFault]:
    """What a page does not say of itself."""
    for key in NEEDED:
        text = document.value.get(key)
        if not isinstance(text, str) or not text:
            message = "is missing; the front matter must have it, as a text"
            yield RecordFault(shown_path(path), document.line((key,)), key, message)


def front_matter(path: Path) -> tuple[Document, str] | RecordFault:
    """The front matter of a page of prose, which is a mapping, and the text below it; or what is wrong."""
    shown, text = shown_path(path), read_text(path)
    if isinstance(text, RecordFault):
        return text
    parts = text.split(FENCE, 2)
    if len(parts) < 3 or parts[0]:
        return RecordFault(shown, 1, "", "needs front matter between two lines of ---")
    try:
        document = Document(parts[1], above=1)
    except NotARecord as bad:
        return RecordFault(shown, bad.line + 1, "", f"its front matter {bad}")
    if not isinstance(document.value, dict):
        return RecordFault(shown, 1, "", "needs front matter between two lines of ---")
    return document, parts[2]
