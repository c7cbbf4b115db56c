"""The sources: species/sources.yml, one entry a key."""

from typing import Annotated, Literal

from pydantic import Field

from scripts.records.claim import Text
from scripts.records.record import Record

# A host by name, no user before it, and no character that could end the attribute it is written into.
LINK = r"""^https://[A-Za-z0-9-]+(\.[A-Za-z0-9-]+)+(:[0-9]+)?([/?#][^\s"'<>`\\]*)?$"""


class Source(Record):
    """A work that a claim rests on, and how much of it we have read.

    ``seen`` is honest about our reading: ``document`` (the passage itself), ``abstract``
    (its abstract or opening), ``second-hand`` (quoted by another), ``memory`` (not opened for this work).
    """

    title: Text
    by: Annotated[str, Field(min_length=1, max_length=240)]
    year: Annotated[int, Field(ge=1700, le=2100)] | None = None
    where: Annotated[str, Field(min_length=1, max_length=240)] | None = (
        None  # journal, publisher, legal gazette
    )
    link: Annotated[str, Field(pattern=LINK, max_length=400)] | None = None
    kind: Literal["paper", "book", "flora", "standard", "law", "dataset", "names"]
    seen: Literal["document", "abstract", "second-hand", "memory"]
    note: Text | None = None
