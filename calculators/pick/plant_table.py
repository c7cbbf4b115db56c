"""The plants, law lists and grazers of the records; read when a pick is asked for, and then kept."""

from functools import cache
from typing import Any, Literal, NamedTuple

from calculators.core.data import read_table
from calculators.science.law.listed import LawList, Listed, read_law_list, read_listed

SURE = ("well-documented", "reported", "uncertain")
GUESS = SURE.index("uncertain")
StandingForm = Literal["upright", "sprawling", "carpet", "floating"]


class RecordRange(NamedTuple):
    """A figure from ``low`` to ``high``; ``sure`` is its place in ``SURE``."""

    low: float
    high: float
    sure: int

    @property
    def middle(self) -> float:
        """Half-way between the ends. It is in the unit of the range."""
        return (self.low + self.high) / 2


class PlantEntry(NamedTuple):
    """One plant; None is what nobody we found knows. Units are in the keys."""

    name: str
    common: str
    habit: str
    look: str
    role: str  # fast, steady or slow
    uptake: str  # leaves, roots, both or hanging-roots
    dli_mol: RecordRange | None
    temperature_c: RecordRange | None
    ph: RecordRange | None
    gh_dh: RecordRange | None
    height_cm: RecordRange | None
    spread_cm: RecordRange | None
    doubling_days: RecordRange | None
    trim_every_days: RecordRange | None
    trim_minutes: RecordRange | None
    tissue_n_percent: RecordRange | None
    dry_matter_percent: RecordRange | None
    eaters: tuple[str, ...] | None
    nibblers: tuple[str, ...]
    law: tuple[Listed, ...]


COLUMNS = PlantEntry._fields
RANGES = COLUMNS[COLUMNS.index("dli_mol") : COLUMNS.index("eaters")]


class Book(NamedTuple):
    """All that the picker knows, by key. ``appetites``: the kinds of grazer that an animal is."""

    plants: dict[str, PlantEntry]
    rules: dict[str, LawList]
    grazers: dict[str, str]
    appetites: dict[str, tuple[str, ...]]


@cache
def book() -> Book:
    """The records, read once. Raises ``FileNotFoundError`` where the table did not come along."""
    table = read_table("plants")
    return Book(
        plants={key: read_plant(table["columns"], row) for key, row in table["plants"].items()},
        rules={key: read_law_list(fields) for key, fields in table["rules"].items()},
        grazers=table["grazers"],
        appetites={key: tuple(kinds) for key, kinds in table["animals"].items()},
    )


def read_plant(columns: list[str], row: list[Any]) -> PlantEntry:
    """One plant from its row."""
    fields = dict(zip(columns, row, strict=True))
    for key in RANGES:
        fields[key] = fields[key] and RecordRange(*fields[key])
    for key in ("eaters", "nibblers"):
        fields[key] = None if fields[key] is None else tuple(fields[key])
    return PlantEntry(**{**fields, "law": tuple(read_listed(entry) for entry in fields["law"])})
