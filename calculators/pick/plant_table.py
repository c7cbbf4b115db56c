"""The plants, law lists and grazers of the records; read when a pick is asked for, and then kept."""

from functools import cache
from typing import Any, Literal, NamedTuple

from calculators.core.data import read_table

SURE = ("well-documented", "reported", "uncertain")
GUESS = SURE.index("uncertain")
Look = Literal["upright", "sprawling", "carpet", "floating"]


class Range(NamedTuple):
    """A figure from ``low`` to ``high``; ``sure`` is its place in ``SURE``."""

    low: float
    high: float
    sure: int

    @property
    def middle(self) -> float:
        """Half-way between the ends."""
        return (self.low + self.high) / 2


class Listed(NamedTuple):
    """A law list that names a plant: the list's key, the name it uses, and how we know.

    ``doubtful``: it names an old name that is used for this plant by mistake or in trade alone.
    """

    rule: str
    name: str
    basis: str  # read-in-text, second-hand or memory
    doubtful: bool = False


class Plant(NamedTuple):
    """One plant; None is what nobody we found knows. Units are in the keys."""

    name: str
    common: str
    habit: str
    look: str
    role: str  # fast, steady or slow
    uptake: str  # leaves, roots, both or hanging-roots
    dli_mol: Range | None
    temperature_c: Range | None
    ph: Range | None
    gh_dh: Range | None
    height_cm: Range | None
    spread_cm: Range | None
    doubling_days: Range | None
    trim_every_days: Range | None
    trim_minutes: Range | None
    tissue_n_percent: Range | None
    dry_matter_percent: Range | None
    eaters: tuple[str, ...] | None
    nibblers: tuple[str, ...]
    law: tuple[Listed, ...]


COLUMNS = Plant._fields
RANGES = COLUMNS[COLUMNS.index("dli_mol") : COLUMNS.index("eaters")]


class Rule(NamedTuple):
    """A law list. ``complete``: whether every plant of it that can live in fresh water is known here.

    ``bars``: whether it leaves a plant out. A list that forbids release alone does not; one of single
    states, of which some forbid more than others, does.
    """

    place: str
    title: str
    instrument: str
    short_effect: str
    complete: bool
    bars: bool


class Book(NamedTuple):
    """All that the picker knows, by key. ``appetites``: the kinds of grazer that an animal is."""

    plants: dict[str, Plant]
    rules: dict[str, Rule]
    grazers: dict[str, str]
    appetites: dict[str, tuple[str, ...]]


@cache
def book() -> Book:
    """The records, read once. Raises ``FileNotFoundError`` where the table did not come along."""
    table = read_table("plants")
    return Book(
        plants={key: read_plant(table["columns"], row) for key, row in table["plants"].items()},
        rules={key: Rule(**fields) for key, fields in table["rules"].items()},
        grazers=table["grazers"],
        appetites={key: tuple(kinds) for key, kinds in table["animals"].items()},
    )


def read_plant(columns: list[str], row: list[Any]) -> Plant:
    """One plant from its row."""
    fields = dict(zip(columns, row, strict=True))
    for key in RANGES:
        fields[key] = fields[key] and Range(*fields[key])
    for key in ("eaters", "nibblers"):
        fields[key] = None if fields[key] is None else tuple(fields[key])
    return Plant(**{**fields, "law": tuple(Listed(*one) for one in fields["law"])})
