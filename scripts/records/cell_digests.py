"""Hashes of what can be read of the records, so that a build sees whether any of it has changed."""

import hashlib
import json
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from functools import cached_property, partial
from pathlib import Path
from typing import Any

from scripts.records.followed import FOLLOWED
from scripts.records.load import Library, ReadRecords
from scripts.records.noted_reads import LIST, THERE, WHOLE, Noted
from scripts.records.record import Record

MOST_CELLS = 8  # of a field: what read more of them counts as having read it of every record
NOT_THERE = "none"
NOTHING: dict[str, str] = {}  # of a record that is not there
Cells = dict[str, dict[str, dict[str, str]]]
Reads = dict[str, dict[str, list[str]]]  # by kind and field the records' keys; none is every record


class CellDigests:
    """The hashes of ``cells``, or of those of a library, each worked out when it is asked for."""

    def __init__(self, library: Library, cells: Cells | None = None) -> None:
        self.library, self.given = library, cells

    def of_reads(self, reads: Reads) -> str:
        """A hash of all that was read: of the same cells with the same values it is the same.

        Asked some thirty fields for each file of the site, so nothing is called for one of them.
        """
        parts = []
        for kind, fields in reads.items():
            cells, whole = self.cells[kind], self.whole_fields[kind]
            for field, keys in fields.items():
                if keys:
                    parts += [cells.get(key, NOTHING).get(field, NOT_THERE) for key in keys]
                else:
                    parts.append(whole.get(field) or self.field_of_all(kind, field))
                parts.append("")  # where the next field begins
        return digest("\0".join(parts))

    def field_of_all(self, kind: str, field: str) -> str:
        """A hash of a field of every record of a kind, worked out once."""
        cells = self.cells[kind].items()
        found = digest(" ".join(f"{key} {one.get(field, NOT_THERE)}" for key, one in cells))
        self.whole_fields[kind][field] = found
        return found

    @cached_property
    def whole_fields(self) -> dict[str, dict[str, str]]:
        """By kind and field the hashes that ``field_of_all`` has worked out."""
        return defaultdict(dict)

    @cached_property
    def cells(self) -> Cells:
        """By kind, key and field."""
        if self.given is not None:
            return self.given
        records = {kind: getattr(self.library, kind) for kind in FOLLOWED}
        return {
            kind: dict(zip(of_kind, digests_of(of_kind, of_kind), strict=True))
            for kind, of_kind in records.items()
        }


def cells_of_texts(reading: ReadRecords) -> Cells:
    """The cells of records in which nothing is wrong, found once for a text."""
    return {kind: dict(cells_of_files(reading, kind)) for kind in FOLLOWED}


def cells_of_files(reading: ReadRecords, kind: str) -> Iterator[tuple[str, dict[str, str]]]:
    """The cells of each record of a kind, by its key."""
    records: Mapping[str, Record] = getattr(reading.library, kind)
    files: dict[Path, list[str]] = defaultdict(list)
    for key in records:
        files[reading.drafts[kind][key].path].append(key)
    for path, keys in files.items():
        find = partial(digests_of, records, keys)
        found = reading.documents[path].fact(f"cells of {kind}", find)
        yield from zip(keys, found, strict=True)


def digests_of(records: Mapping[str, Record], keys: Iterable[str]) -> list[dict[str, str]]:
    """The cells of some records, by their keys."""
    return [record_digests(records[key].model_dump()) for key in keys]


def record_digests(values: Mapping[str, Any]) -> dict[str, str]:
    """The hash of each field of a record, of all together, and a word for its being there."""
    written = {field: repr(value) for field, value in values.items()}
    whole = digest("\0".join(f"{field}={text}" for field, text in written.items()))
    return {field: digest(text) for field, text in written.items()} | {WHOLE: whole, THERE: "there"}


def digest(text: str) -> str:
    """A short hash of a text."""
    return hashlib.blake2b(text.encode(), digest_size=16).hexdigest()


def gathered(noted: Noted) -> Reads:
    """What was noted, by kind and field, in an order that does not depend on when it was read."""
    keys: dict[str, dict[str, set[str]]] = defaultdict(lambda: defaultdict(set))
    for (kind, key), read in noted.items():
        for field in read:
            keys[kind][field].add(key)
    return {
        kind: {
            field: [] if LIST in found or len(found) > MOST_CELLS else sorted(found)
            for field, found in sorted(fields.items())
        }
        for kind, fields in sorted(keys.items())
    }


def reads_text(reads: Reads) -> str:
    """What was read, in one line."""
    return json.dumps(reads, ensure_ascii=False, separators=(",", ":"))
