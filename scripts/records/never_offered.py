"""What a record says of a living thing that nobody shall take in."""

from typing import Annotated

from pydantic import Field

from scripts.records.claim import Statement


class NeverOffered(Statement):
    """Why no list, plan or calculator of the book ever offers it, and what to do with a find."""

    when_found: Annotated[list[Statement], Field(min_length=1)]  # in order, the first step first
