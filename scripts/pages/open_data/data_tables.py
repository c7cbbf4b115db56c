"""The tables of the open data, by name: one row a record, an entry of a law list, a candidate or a claim."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import NamedTuple

from pydantic import BaseModel

from scripts.pages.open_data.claim_rows import COLUMNS, KINDS, claims_of
from scripts.pages.open_data.flat import BETWEEN, Cell, Row, columns, flat
from scripts.records.load import Library

CellsOfRows = Iterable[Sequence[Cell]]


class OpenTable(NamedTuple):
    """One table: what it holds, its rows, and the column that names a row, if one does."""

    about: str
    rows: Callable[[Library], Iterable[Row]]
    primary_key: str | None = "key"

    def columns_and_rows(self, library: Library) -> tuple[Sequence[str], CellsOfRows]:
        """The names of the columns, and the cells of each row in their order."""
        rows = list(self.rows(library))
        names = columns(rows)
        return names, (cells_in_order(names, row) for row in rows)


class RecordTable(NamedTuple):
    """A table of one row a record of a field of the library, which come one at a time."""

    about: str
    field: str
    primary_key: str | None = "key"

    def row(self, library: Library, key: str) -> Row:
        """The row of one record."""
        found: Mapping[str, BaseModel] = getattr(library, self.field)
        return {"key": key, "page": f"{self.field}/{key}/", **flat(found[key])}


class LongTable(NamedTuple):
    """A table of so many rows that they come by record; its columns are known before them.

    ``rows_of`` gets the kind, the key and the record, and gives the cells of each row.
    """

    about: str
    columns: Sequence[str]
    kinds: Sequence[str]
    rows_of: Callable[[str, str, BaseModel], CellsOfRows]
    primary_key: str | None = None


def cells_in_order(names: Iterable[str], row: Row) -> list[Cell]:
    """The cells of a row, one for each column."""
    return [row.get(name) for name in names]


def law_rows(library: Library) -> list[Row]:
    """One row an entry of a law list, with what holds for its whole list."""
    return [
        {
            "list": key,
            "page": f"rules/{key}/",
            "place": rule.place,
            "title": rule.title,
            "holds_in": rule.holds_in,
            "forbids": BETWEEN.join(rule.forbids),
            "text_as_of": rule.text_as_of,
            "read_on": str(entry.read_on or rule.read_on),
            "name": entry.name,
            "also": BETWEEN.join(entry.also),
            "common": BETWEEN.join(common.name for common in entry.common),
            "basis": entry.basis,
            "source": entry.source or rule.source,
            "states": BETWEEN.join((*entry.states, *entry.states_second_hand)),
            "note": entry.note,
        }
        for key, rule in sorted(library.rules.items())
        for entry in rule.entries
    ]


def name_rows(library: Library) -> list[Row]:
    """One row a plant that may be meant by an ambiguous trade name."""
    return [
        {
            "key": key,
            "page": f"names/{key}/",
            "trade_name": record.name,
            "plant": candidate.plant,
            "scientific_name": candidate.name or library.plants[candidate.plant or ""].name,
            "how_often": candidate.how_often,
            "text": candidate.text,
            "grade": candidate.grade,
            "sources": BETWEEN.join(candidate.sources),
        }
        for key, record in sorted(library.names.items())
        for candidate in record.may_be
    ]


def source_rows(library: Library) -> list[Row]:
    """One row a source."""
    return [{"key": key, **flat(source)} for key, source in sorted(library.sources.items())]


Table = OpenTable | RecordTable | LongTable
TABLES: dict[str, Table] = {
    "plants": RecordTable(
        "One row a plant: names, needs, size, growth, nitrogen, traits.", "plants"
    ),
    "animals": RecordTable("One row an animal: body, food, needs, what harms it.", "animals"),
    "problems": RecordTable("One row a problem, its first action with it.", "problems"),
    "names": OpenTable("One row a plant that an ambiguous trade name may mean.", name_rows, None),
    "laws": OpenTable("One row an entry of a law list.", law_rows, None),
    "sources": OpenTable("One row a source, and how much of it was read.", source_rows),
    "claims": LongTable(
        "One row a claim: what it says, how sure it is, its sources.", COLUMNS, KINDS, claims_of
    ),
}
