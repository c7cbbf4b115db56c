"""Every claim of the records as one row: what it is of, what it says, how sure it is, and its sources."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from pydantic import BaseModel

from scripts.pages.open_data.flat import ABOUT_CLAIM, BETWEEN, Cell
from scripts.records.claim import Claim, Range
from scripts.records.record import PLAIN

KINDS = ("plants", "animals", "problems", "names", "findings")
NOT_ITS_WORDS = {*ABOUT_CLAIM, "note"}
COLUMNS = ("kind", "record", "field", "low", "high", "words", "note", "grade", "sources")


def claims_of(kind: str, key: str, record: BaseModel) -> Iterator[Sequence[Cell]]:
    """The cells by ``COLUMNS`` of the claims of one record."""
    for path, claim in within(record):
        says = (
            (claim.low, claim.high, "")
            if isinstance(claim, Range)
            else (None, None, claim_text(claim))
        )
        about = (vars(claim).get("note"), claim.grade, BETWEEN.join(claim.sources))
        yield kind, key, path, *says, *about


def within(value: Any, path: str = "") -> list[tuple[str, Claim]]:
    """Each claim below a value, with its path as dotted fields and places in lists, from 0."""
    inside: Iterable[tuple[str | int, Any]]
    found = []
    if isinstance(value, list):
        inside = enumerate(value)
    else:
        inside = vars(value).items()  # the fields in their order
        if isinstance(value, Claim):
            found.append((path, value))
    for step, part in inside:
        if type(part) not in PLAIN:  # a model is slow to be told from what it is not
            found += within(part, f"{path}.{step}" if path else str(step))
    return found


def claim_text(claim: Claim) -> str:
    """The plain words and numbers of a claim that is no range."""
    return BETWEEN.join(
        str(value)
        for name, value in vars(claim).items()
        if name not in NOT_ITS_WORDS and isinstance(value, (str, int, float))
    )
