"""The tables of the open data as CSV by RFC 4180."""

import csv
from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from io import BytesIO, StringIO
from typing import Any, NamedTuple

from pydantic import BaseModel

from scripts.pages.open_data.data_tables import (
    CellsOfRows,
    LongTable,
    OpenTable,
    RecordTable,
    Table,
    cells_in_order,
)
from scripts.pages.open_data.flat import columns
from scripts.records.kept_pieces import PiecesByRecord
from scripts.records.load import Library
from scripts.setup.one_kept_file import hash_of

SHOWN_OTHERWISE = (bool, float)  # than a CSV writer shows them
Types = dict[str, set[str]]  # by column, in their order: Python's names of those of its values


class CsvPart(NamedTuple):
    """Some rows of a table in UTF-8, and the names of the types of their cells, each way that there is."""

    octets: bytes
    types: list[tuple[str, ...]]


def csv_file(table: Table, library: Library, pieces: PiecesByRecord) -> tuple[BytesIO, Types]:
    """A table as CSV by RFC 4180, and the types in its columns. An empty cell: nobody knows the value."""
    names: Sequence[str]
    if isinstance(table, OpenTable):
        names, rows = table.columns_and_rows(library)
        parts = iter([csv_part(rows)])
    elif isinstance(table, RecordTable):
        names, parts = columns_and_parts(table, library, pieces)
    else:
        names, parts = table.columns, parts_by_record(table, library, pieces)
    made = BytesIO()
    made.write(csv_part([names]).octets)
    of_rows: set[tuple[str, ...]] = set()
    for octets, types in parts:
        made.write(octets)
        of_rows.update(types)
    return made, {name: {of[place] for of in of_rows} for place, name in enumerate(names)}


def columns_and_parts(
    table: RecordTable, library: Library, pieces: PiecesByRecord
) -> tuple[list[str], Iterator[CsvPart]]:
    """The columns of a table, and the row of each record: most are as they were, as long as no record brings
    a new column.
    """

    def part(key: str) -> tuple[Any, ...]:
        """The row of one record, as a ``CsvPart`` in plain values."""
        return tuple(csv_part([cells_in_order(names, table.row(library, key))]))

    def parts() -> Iterator[CsvPart]:
        """The rows, one at a time."""
        columns_of_all = hash_of(*names)
        for key in keys:
            made = partial(part, key)
            yield CsvPart(*pieces.of(table.field, key, made, beside=columns_of_all))
        pieces.keep()

    keys = sorted(getattr(library, table.field))
    names = columns(
        pieces.of(table.field, key, partial(names_in_row, table, library, key)) for key in keys
    )
    return names, parts()


def names_in_row(table: RecordTable, library: Library, key: str) -> tuple[str, ...]:
    """The names of the columns of which one record has cells."""
    return tuple(table.row(library, key))


def parts_by_record(
    table: LongTable, library: Library, pieces: PiecesByRecord
) -> Iterator[CsvPart]:
    """The rows of each record, one record at a time: all together they would be the most memory of a
    build.
    """
    for kind_of_record in table.kinds:
        records: Mapping[str, BaseModel] = getattr(library, kind_of_record)
        for key in sorted(records):
            made = partial(part_of_record, table, kind_of_record, key, records)
            yield CsvPart(*pieces.of(kind_of_record, key, made))
    pieces.keep()


def part_of_record(
    table: LongTable, kind_of_record: str, key: str, records: Mapping[str, BaseModel]
) -> tuple[Any, ...]:
    """The rows of one record, as a ``CsvPart`` in plain values."""
    return tuple(csv_part(table.rows_of(kind_of_record, key, records[key])))


def csv_part(rows: CellsOfRows) -> CsvPart:
    """Some rows of a table."""
    made = StringIO(newline="")
    writer = csv.writer(made, lineterminator="\r\n")
    of_rows = set()
    for cells in rows:
        of_rows.add(tuple([type(cell).__name__ for cell in cells]))
        # Tens of thousands of cells, most of them empty.
        writer.writerow(
            [shown(cell) if isinstance(cell, SHOWN_OTHERWISE) else cell for cell in cells]
        )
    return CsvPart(made.getvalue().encode(), list(of_rows))


def shown(value: bool | float) -> str:
    """Truth as the standard writes it, a number without needless places."""
    if isinstance(value, bool):
        return "true" if value else "false"
    return f"{value:.12g}"
