"""What the records mention, sources by their keys and other records by their slugs; found once a text."""

from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

from scripts.records.claim import SLUG
from scripts.records.load import ReadRecords
from scripts.records.reader import Draft
from scripts.records.written import every_mapping, source_keys

NAMED_RECORDS = {"plant": "plants", "problem": "problems"}  # by the key under which they are named


class Mentions(NamedTuple):
    """The keys of sources in a file, and the other records that it names: the kind of each, and its slug."""

    sources: list[str]
    records: list[tuple[str, str]]


def drafts_of_files(reading: ReadRecords) -> Iterator[tuple[Path, list[Draft]]]:
    """Each file with what stands in it: one record, or its entries."""
    files: dict[Path, list[Draft]] = defaultdict(list)
    for draft in reading.every_draft():
        files[draft.path].append(draft)
    yield from files.items()


def mentions(reading: ReadRecords, path: Path, drafts: list[Draft]) -> Mentions:
    """What is mentioned in a file."""
    found = reading.documents[path].fact(named("mentions", drafts), lambda: mentioned(drafts))
    return Mentions(*found)


def named(fact: str, drafts: list[Draft]) -> str:
    """The name of a fact of a file: as entries a text is read otherwise than as a record."""
    return f"{fact} of entries" if drafts[0].place else fact


def mentioned(drafts: list[Draft]) -> list[list[Any]]:
    """The fields of ``Mentions``, as JSON can hold them."""
    parts = [part for draft in drafts for part in every_mapping(draft.value)]
    records = {
        (kind, part[key])
        for part in parts
        for key, kind in NAMED_RECORDS.items()
        if isinstance(part.get(key), str) and SLUG.fullmatch(part[key])
    }
    return [sorted({key for part in parts for key in source_keys(part)}), sorted(records)]
