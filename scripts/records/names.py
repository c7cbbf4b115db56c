"""What a living thing is called: by science, by shops, and by mistake."""

from typing import Annotated

from pydantic import Field

from scripts.records.claim import Claim, Name, Statement
from scripts.records.record import Record


class NameCheck(Claim):
    """Which source takes the accepted name, and any doubt about it."""

    note: Annotated[str, Field(min_length=1, max_length=400)] | None = None


class UncertainName(Record):
    """A trade name that is used for more than one species."""

    name: Name
    note: Statement


class NamedSpecies(Record):
    """The names that every plant and animal has."""

    name: Name
    author: Name
    family: Name
    name_check: NameCheck
    trade_names: list[Name] = []
    old_names: list[Name] = []
    uncertain_names: list[UncertainName] = []
