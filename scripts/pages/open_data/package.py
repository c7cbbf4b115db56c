"""The description of the open data by the Data Package standard, version 2.0."""

import csv
import hashlib
import json
import tomllib
from collections.abc import Iterator, Mapping
from functools import partial
from io import BytesIO, StringIO
from typing import Any, NamedTuple

from pydantic import BaseModel

from scripts.pages.open_data.data_tables import TABLES, CellsOfRows, LongTable, OpenTable
from scripts.records.kept_pieces import PiecesByRecord
from scripts.records.load import Library
from scripts.setup.file_hash import Octets
from scripts.setup.paths import ROOT

PROFILE = "https://datapackage.org/profiles/2.0/datapackage.json"
Types = dict[str, set[str]]  # by column, in their order: Python's names of those of its values
DATA_LICENCE = {
    "name": "CC-BY-4.0",
    "path": "https://creativecommons.org/licenses/by/4.0/",
    "title": "Creative Commons Attribution 4.0 International",
}
NOTHING = "NoneType"
SHOWN_OTHERWISE = (bool, float)  # than a CSV writer shows them


class CsvPart(NamedTuple):
    """Some rows of a table in UTF-8, and the names of the types of their cells, each way that there is."""

    octets: bytes
    types: list[tuple[str, ...]]


def version() -> str:
    """The version of the book's calculators and data."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    return str(project["version"])


def descriptor(resources: list[dict[str, Any]]) -> dict[str, Any]:
    """The package: what holds for all its files, and each as a resource."""
    return {
        "$schema": PROFILE,
        "name": "mulmbook",
        "title": "Mulmbook: plants, animals and problems of low-technology planted aquariums",
        "description": "Every figure and sentence of the book with its sources and how sure it is. A claim "
        "whose only source is common-practice is what keepers say. A missing value means that nobody we "
        "found knows.",
        "version": version(),
        "licenses": [DATA_LICENCE],
        "contributors": [{"title": "The makers of Mulmbook", "roles": ["author"]}],
        "keywords": [
            "aquarium",
            "aquatic plants",
            "nitrogen",
            "invasive species law",
            "freshwater animals",
        ],
        "resources": resources,
    }


def table_resource(name: str, octets: Octets, types: Types) -> dict[str, Any]:
    """A table's file, with the types of its columns."""
    table = TABLES[name]
    return {
        "name": name,
        **file_resource(f"{name}.csv", octets, "text/csv"),
        "type": "table",
        "description": table.about,
        "schema": schema(table, types),
    }


def records_resource(name: str, octets: Octets) -> dict[str, Any]:
    """The file of whole records of one kind."""
    return {
        "name": f"{name}-json",
        **file_resource(f"{name}.json", octets, "application/json"),
        "description": f"The whole records by key; schema/{name}.schema.json says what they hold.",
    }


def file_resource(path: str, octets: Octets, media_type: str) -> dict[str, Any]:
    """One file: where it is, how it is written, how long it is, and its hash."""
    return {
        "path": path,
        "format": path.rsplit(".", 1)[1],
        "mediatype": media_type,
        "encoding": "utf-8",
        "bytes": len(octets),
        "hash": f"sha256:{hashlib.sha256(octets).hexdigest()}",
    }


def schema(table: OpenTable | LongTable, types: Types) -> dict[str, Any]:
    """The columns of a table with their types, by the Table Schema of the standard."""
    fields = [{"name": name, "type": kind(of)} for name, of in types.items()]
    made: dict[str, Any] = {"fields": fields, "missingValues": [""]}
    return made | ({"primaryKey": [table.primary_key]} if table.primary_key else {})


def kind(types: set[str]) -> str:
    """The type of a column: the narrowest that holds all its values, of which these are Python's types."""
    there = types - {NOTHING}
    for name, narrow in (("boolean", {"bool"}), ("integer", {"int"}), ("number", {"int", "float"})):
        if there and there <= narrow:
            return name
    return "string"


def csv_file(
    table: OpenTable | LongTable, library: Library, pieces: PiecesByRecord
) -> tuple[BytesIO, Types]:
    """A table as CSV by RFC 4180, and the types in its columns. An empty cell: nobody knows the value."""
    if isinstance(table, OpenTable):
        names, rows = table.columns_and_rows(library, pieces)
        parts = iter([csv_part(rows)])
    else:
        names, parts = table.columns, parts_by_record(table, library, pieces)
    made = BytesIO()
    made.write(csv_part([names]).octets)
    of_rows: set[tuple[str, ...]] = set()
    for octets, types in parts:
        made.write(octets)
        of_rows.update(types)
    return made, {name: {of[place] for of in of_rows} for place, name in enumerate(names)}


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


def json_text(value: Any) -> str:
    """JSON as people can read it."""
    return json.dumps(value, ensure_ascii=False, indent=1, allow_nan=False)
