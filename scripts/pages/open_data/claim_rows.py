"""Every claim of the records as one row: what it is of, what it says, how sure it is, and its sources."""

from collections.abc import Iterator
from typing import Any

from pydantic import BaseModel

from scripts.pages.open_data.flat import ABOUT_CLAIM, BETWEEN, Row
from scripts.records.claim import Claim, Range
from scripts.records.load import Library

KINDS = ("plants", "animals", "problems", "names", "findings")


def claim_rows(library: Library) -> list[Row]:
    """All claims, in the order of kinds, keys and fields."""
    return [
        row
        for kind in KINDS
        for key, record in sorted(getattr(library, kind).items())
        for row in claims_of(kind, key, record)
    ]


def claims_of(kind: str, key: str, record: BaseModel) -> Iterator[Row]:
    """The claims of one record."""
    for path, claim in within(record):
        yield {
            "kind": kind,
            "record": key,
            "field": path,
            "low": claim.low if isinstance(claim, Range) else None,
            "high": claim.high if isinstance(claim, Range) else None,
            "words": "" if isinstance(claim, Range) else claim_text(claim),
            "note": getattr(claim, "note", None),
            "grade": claim.grade,
            "sources": BETWEEN.join(claim.sources),
        }


def within(value: Any, path: str = "") -> Iterator[tuple[str, Claim]]:
    """Each claim below a value, with its path as dotted fields and places in lists, from 0."""
    if isinstance(value, Claim):
        yield path, value
    if isinstance(value, BaseModel):
        for field in type(value).model_fields:
            yield from within(getattr(value, field), f"{path}.{field}".lstrip("."))
    elif isinstance(value, list):
        for number, part in enumerate(value):
            yield from within(part, f"{path}.{number}")


def claim_text(claim: Claim) -> str:
    """The plain words and numbers of a claim that is no range."""
    names = (name for name in type(claim).model_fields if name not in (*ABOUT_CLAIM, "note"))
    values = (getattr(claim, name) for name in names)
    return BETWEEN.join(str(one) for one in values if isinstance(one, str | int | float))
