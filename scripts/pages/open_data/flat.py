"""A record as one flat row: what nests is named by its path, what comes in lists of sentences stays out."""

from collections.abc import Iterable
from typing import Any

from pydantic import BaseModel

from scripts.records.claim import Claim, Range

Cell = str | float | int | bool | None
Row = dict[str, Cell]
PLAIN = (str, int, float)  # asked first: of a model it takes long to tell what it is
BETWEEN = "; "  # the words of a list, in one cell
ABOUT_CLAIM = {"source", "sure"}
SAYS_IT_ALL = {"text", "value"}  # alone in a claim, such a field has the claim's own name


def flat(record: BaseModel, above: str = "") -> Row:
    """The cells of a record: a range gives ``_low``, ``_high`` and ``_grade``, a claim words and grade."""
    row: Row = {}
    for field in type(record).model_fields:
        row |= cells(f"{above}{field}", getattr(record, field))
    return row


def cells(name: str, value: Any) -> Row:
    """The cells of one field; none for a list of records, whose claims are in the table of claims."""
    if value is None:
        return {}
    if isinstance(value, PLAIN):
        return {name: value}
    if isinstance(value, Range):
        return {f"{name}_low": value.low, f"{name}_high": value.high, f"{name}_grade": value.grade}
    if isinstance(value, Claim):
        return claim_cells(name, value)
    if isinstance(value, BaseModel):
        return flat(value, f"{name}_")
    if isinstance(value, list):
        words = [str(one) for one in value if isinstance(one, str)]
        return {name: BETWEEN.join(words)} if len(words) == len(value) and words else {}
    return {name: value}


def claim_cells(name: str, claim: Claim) -> Row:
    """The plain values of a claim and what nests in it, and its grade."""
    there = {
        field: getattr(claim, field)
        for field in type(claim).model_fields
        if field not in ABOUT_CLAIM and getattr(claim, field) is not None
    }
    if len(there) == 1 and set(there) <= SAYS_IT_ALL:
        return {name: next(iter(there.values())), f"{name}_grade": claim.grade}
    row: Row = {}
    for field, value in there.items():
        row |= cells(f"{name}_{field}", value)
    return {**row, f"{name}_grade": claim.grade} if row else {}


def columns(rows: Iterable[Iterable[str]]) -> list[str]:
    """All columns of some rows, each by its names; one that a row brings new stands behind the one before it
    there.
    """
    ordered: list[str] = []
    known: set[str] = set()
    for row in rows:
        if known.issuperset(row):
            continue
        known.update(row)
        place = 0
        for name in row:
            if name in ordered:
                place = ordered.index(name) + 1
            else:
                ordered.insert(place, name)
                place += 1
    return ordered
