"""Checks of the ambiguous trade names that need more than one record."""

from collections.abc import Iterator
from typing import Any

from scripts.records.lines import RecordFault
from scripts.records.load import ReadRecords
from scripts.records.reader import Draft
from scripts.records.written import inside, listed, texts


def trade_names(reading: ReadRecords) -> Iterator[RecordFault]:
    """A candidate stands once and, where it has a record, by its record; a name has one page."""
    accepted = {
        str(inside(draft.value, "name")).lower(): slug
        for slug, draft in reading.drafts["plants"].items()
    }
    pages: dict[str, str] = {}
    for slug, draft in reading.drafts["names"].items():
        yield from candidates(reading, draft, accepted)
        names = [
            inside(draft.value, "name"),
            *(name for _, name in texts(draft.value, "other_names")),
        ]
        for name in names:
            if not isinstance(name, str):
                continue
            other = pages.setdefault(name.lower(), slug)
            if other != slug:
                message = f"{name} has a page already: {other}.yml"
                yield reading.finding(draft.path, ("name",), message)


def candidates(
    reading: ReadRecords, draft: Draft, accepted: dict[str, str]
) -> Iterator[RecordFault]:
    """What is wrong with the candidates of one trade name. ``accepted``: plants' slugs by name."""
    seen: set[str] = set()
    rows = listed(draft.value, "may_be")
    for number, candidate in enumerate(rows):
        key, named = named_by(candidate)
        if named is None:
            continue
        if named in seen:
            yield reading.finding(draft.path, ("may_be", number, key), f"{named} stands twice")
        seen.add(named)
        if named in accepted:
            message = f"has a record: write plant: {accepted[named]}"
            yield reading.finding(draft.path, ("may_be", number, key), message)
    if rows and not any(inside(candidate, "plant") for candidate in rows):
        yield reading.finding(draft.path, ("may_be",), "names no plant that has a record")


def named_by(candidate: Any) -> tuple[str, str | None]:
    """The key by which a candidate is named, and the name; None where it has none, or both."""
    plant, name = inside(candidate, "plant"), inside(candidate, "name")
    if isinstance(plant, str) and name is None:
        return "plant", plant
    return "name", name.lower() if isinstance(name, str) and plant is None else None
