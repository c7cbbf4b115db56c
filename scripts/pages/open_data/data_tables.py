"""The tables of the open data, by name: one row a record, an entry of a law list, a candidate or a claim."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial
from typing import NamedTuple

from pydantic import BaseModel

from scripts.pages.open_data.claim_rows import COLUMNS, KINDS, claims_of
from scripts.pages.open_data.flat import BETWEEN, Cell, Row, columns, flat
from scripts.records.kept_pieces import PiecesByRecord
from scripts.records.load import Library

CellsOfRows = Iterable[Sequence[Cell]]


class OpenTable(NamedTuple):
    """One table: what it holds, its rows, and the column that names a row, if one does."""

    about: str
    rows: Callable[[Library, PiecesByRecord], Iterable[Row]]
    primary_key: str | None = "key"

    def columns_and_rows(
        self, library: Library, pieces: PiecesByRecord
    ) -> tuple[Sequence[str], CellsOfRows]:
        """The names of the columns, and the cells of each row in their order."""
        rows = list(self.rows(library, pieces))
        pieces.keep()
        names = columns(rows)
        return names, ([row.get(name) for name in names] for row in rows)


class LongTable(NamedTuple):
    """A table of so many rows that they come by record; its columns are known before them.

    ``rows_of`` gets the kind, the key and the record, and gives the cells of each row.
    """

    about: str
    columns: Sequence[str]
    kinds: Sequence[str]
    rows_of: Callable[[str, str, BaseModel], CellsOfRows]
    primary_key: str | None = None


def records(field: str) -> Callable[[Library, PiecesByRecord], list[Row]]:
    """What makes one row a record of a field of the library."""

    def rows(library: Library, pieces: PiecesByRecord) -> list[Row]:
        found: Mapping[str, BaseModel] = getattr(library, field)
        return [pieces.of(field, key, partial(row, key, found)) for key in sorted(found)]

    def row(key: str, found: Mapping[str, BaseModel]) -> Row:
        return {"key": key, "page": f"{field}/{key}/", **flat(found[key])}

    return rows


def law_rows(library: Library, _pieces: PiecesByRecord) -> list[Row]:
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


def name_rows(library: Library, _pieces: PiecesByRecord) -> list[Row]:
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


def source_rows(library: Library, _pieces: PiecesByRecord) -> list[Row]:
    """One row a source."""
    return [{"key": key, **flat(source)} for key, source in sorted(library.sources.items())]


TABLES: dict[str, OpenTable | LongTable] = {
    "plants": OpenTable(
        "One row a plant: names, needs, size, growth, nitrogen, traits.", records("plants")
    ),
    "animals": OpenTable(
        "One row an animal: body, food, needs, what harms it.", records("animals")
    ),
    "problems": OpenTable("One row a problem, its first action with it.", records("problems")),
    "names": OpenTable("One row a plant that an ambiguous trade name may mean.", name_rows, None),
    "laws": OpenTable("One row an entry of a law list.", law_rows, None),
    "sources": OpenTable("One row a source, and how much of it was read.", source_rows),
    "claims": LongTable(
        "One row a claim: what it says, how sure it is, its sources.", COLUMNS, KINDS, claims_of
    ),
}
