"""Every file of the open data, by its path below the site."""

import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import partial
from io import SEEK_END, BytesIO
from typing import Any

from pydantic import BaseModel, TypeAdapter

from scripts.pages.open_data.csv_files import csv_file
from scripts.pages.open_data.data_tables import TABLES
from scripts.pages.open_data.package import (
    descriptor,
    json_text,
    records_resource,
    table_resource,
)
from scripts.records.animal import Animal
from scripts.records.kept_pieces import PiecesByRecord, each_made
from scripts.records.load import Library
from scripts.records.plant import Plant
from scripts.records.problem import Problem
from scripts.records.rule import Rule
from scripts.records.source import Source
from scripts.records.trade_name import TradeName
from scripts.setup.kept import octets_of
from scripts.setup.paths import ROOT

FOLDER = "data/"
# The whole records by name of the file: the library's field, and the schema of what the file holds.
WHOLE: dict[str, tuple[str, TypeAdapter[Any]]] = {
    "plants": ("plants", TypeAdapter(dict[str, Plant])),
    "animals": ("animals", TypeAdapter(dict[str, Animal])),
    "problems": ("problems", TypeAdapter(dict[str, Problem])),
    "names": ("names", TypeAdapter(dict[str, TradeName])),
    "laws": ("rules", TypeAdapter(dict[str, Rule])),
    "sources": ("sources", TypeAdapter(dict[str, Source])),
}
FILES_OF_TABLES = {name: f"{FOLDER}{name}.csv" for name in TABLES}
RESOURCES = (
    *FILES_OF_TABLES.values(),
    *(f"{FOLDER}{name}.json" for name in WHOLE),
)
PACKAGE = f"{FOLDER}datapackage.json"
LICENCES = {"licence-data.txt": "LICENSE-DATA", "licence-code.txt": "LICENSE"}


def open_data(library: Library) -> Iterator[tuple[str, str]]:
    """Path and text of tables, whole records, schemas, licences and the package that describes them.

    One at a time: all together, with what they are made from, they are the most memory of a build.
    """
    resources = []
    for name, make in open_data_makers(library).items():
        octets = octets_of(make())
        if name in RESOURCES:
            octets, about = octets.rsplit(b"\n", 1)
            resources.append(about)
        yield name, octets.decode()
    yield PACKAGE, package_text(resources)


def open_data_makers(
    library: Library, pieces_of: Callable[[str], PiecesByRecord] = each_made
) -> dict[str, Callable[[], str | bytes]]:
    """What makes each file but the package. ``pieces_of`` has the pieces of a file, by its path.

    Behind the text of those in ``RESOURCES`` stands a line with what the package says of it, as JSON.
    """
    tables = {
        file: partial(table_file, name, library, partial(pieces_of, file))
        for name, file in FILES_OF_TABLES.items()
    }
    whole = {
        (file := f"{FOLDER}{name}.json"): partial(
            records_file, name, library, partial(pieces_of, file)
        )
        for name in WHOLE
    }
    schemas = {
        f"{FOLDER}schema/{name}.schema.json": partial(schema_file, adapter)
        for name, (_, adapter) in WHOLE.items()
    }
    licences = {
        f"{FOLDER}{name}": partial((ROOT / licence).read_text, encoding="utf-8")
        for name, licence in LICENCES.items()
    }
    return {**tables, **whole, **schemas, **licences}


def table_file(name: str, library: Library, pieces: Callable[[], PiecesByRecord]) -> bytes:
    """A table as CSV, and behind it what the package says of it."""
    made, types = csv_file(TABLES[name], library, pieces())
    with made.getbuffer() as octets:
        resource = table_resource(name, octets, types)
    return described(made, resource)


def records_file(name: str, library: Library, pieces: Callable[[], PiecesByRecord]) -> bytes:
    """The whole records of one kind as JSON, and behind them what the package says of them."""
    made = BytesIO()
    for part in records_by_key(library, name, pieces()):
        made.write(part)
    with made.getbuffer() as octets:
        resource = records_resource(name, octets)
    return described(made, resource)


def described(made: BytesIO, resource: dict[str, Any]) -> bytes:
    """A file, and in one more line what the package says of it."""
    made.seek(0, SEEK_END)
    made.write(b"\n" + json.dumps(resource, ensure_ascii=False).encode())
    return made.getvalue()


def schema_file(adapter: TypeAdapter[Any]) -> str:
    """The JSON Schema of the whole records of one kind."""
    return json_text(adapter.json_schema())


def package_text(resources: Iterable[bytes]) -> str:
    """The package, from what stands before each of its files."""
    return json_text(descriptor([json.loads(about) for about in resources]))


def records_by_key(library: Library, name: str, pieces: PiecesByRecord) -> Iterator[bytes]:
    """The records of one kind by key, as they are written, in parts; what is not known is left out.

    Straight from the records: as plain values in between they would be the most memory of a build.
    """
    field, adapter = WHOLE[name]
    records: Mapping[str, BaseModel] = getattr(library, field)
    before = b"{\n"
    for key in sorted(records):
        yield before + pieces.of(field, key, partial(record_by_key, adapter, key, records))
        before = b",\n"
    pieces.keep()
    yield b"\n}"


def record_by_key(adapter: TypeAdapter[Any], key: str, records: Mapping[str, BaseModel]) -> bytes:
    """One record as it stands between the braces of its file."""
    one = {key: records[key]}
    written = adapter.dump_json(one, indent=1, exclude_none=True, exclude_defaults=True)
    return written.removeprefix(b"{\n").removesuffix(b"\n}")
