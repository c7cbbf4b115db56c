"""Checks of the guides' marks that need no calculator: sources exist, problems have records."""

from collections.abc import Iterator
from pathlib import Path

from scripts.records.claim import COMMON_PRACTICE
from scripts.records.guide import FOLDER, MARK, GuideDraft, ProseMark, marks
from scripts.records.lines import RecordFault, shown_path
from scripts.records.load import ReadRecords


def mark_faults(reading: ReadRecords) -> Iterator[RecordFault]:
    """What is wrong with the guides, at file and line."""
    for slug, guide in reading.guides.items():
        path = shown_path(FOLDER / f"{slug}.md")
        for problem in guide.problems:
            if not (reading.folder / "problems" / f"{problem}.yml").exists():
                message = f"{problem} has no record in species/problems/"
                yield RecordFault(path, 1, "problems", message)
        for mark in marks(guide):
            for message in wrong_sources(mark, reading.keys("sources")):
                yield RecordFault(path, mark.line, mark.kind, message)
        yield from unread(path, guide)


def unread(path: Path, guide: GuideDraft) -> Iterator[RecordFault]:
    """A brace that opens a word and a colon, but no mark that we know, is a slip of the pen."""
    for number, line in enumerate(MARK.sub("", guide.body).split("\n")):
        if "{" in line and ":" in line.split("{", 1)[1]:
            yield RecordFault(path, guide.body_line + number, "", "has a mark that nobody knows")


def wrong_sources(mark: ProseMark, known: frozenset[str] | None) -> Iterator[str]:
    """What is wrong with a mark that says how sure a claim is. ``known`` is None if nobody can tell."""
    if mark.kind in ("figure", "open"):
        return
    keys = mark.source_keys()
    for key in keys:
        if known and key != COMMON_PRACTICE and key not in known:
            yield f"{key} is no key of sources.yml; add the source there, or write {COMMON_PRACTICE}"
    if not keys:
        yield "names no source"
    elif mark.kind == "well-documented" and set(keys) == {COMMON_PRACTICE}:
        yield "well-documented needs a named source; allowed here: reported, uncertain"
