"""Every file of the open data, by its path below the site."""

from collections.abc import Iterator
from typing import Any

from pydantic import TypeAdapter

from scripts.pages.open_data.data_tables import TABLES
from scripts.pages.open_data.package import (
    csv_text,
    descriptor,
    json_text,
    records_resource,
    table_resource,
)
from scripts.records.animal import Animal
from scripts.records.load import Library
from scripts.records.plant import Plant
from scripts.records.problem import Problem
from scripts.records.rule import Rule
from scripts.records.source import Source
from scripts.records.trade_name import TradeName
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
LICENCES = {"licence-data.txt": "LICENSE-DATA", "licence-code.txt": "LICENSE"}


def open_data(library: Library) -> Iterator[tuple[str, str]]:
    """Path and text of tables, whole records, schemas, licences and the package that describes them.

    One at a time: all together, with what they are made from, they are the most memory of a build.
    """
    resources = []
    for name, table in TABLES.items():
        rows = table.rows(library)
        text = csv_text(rows)
        resources.append(table_resource(name, text, rows))
        yield f"{FOLDER}{name}.csv", text
    for name in WHOLE:
        text = records_by_key(library, name)
        resources.append(records_resource(name, text))
        yield f"{FOLDER}{name}.json", text
    for name, (_, adapter) in WHOLE.items():
        yield f"{FOLDER}schema/{name}.schema.json", json_text(adapter.json_schema())
    for name, licence in LICENCES.items():
        yield f"{FOLDER}{name}", (ROOT / licence).read_text(encoding="utf-8")
    yield f"{FOLDER}datapackage.json", json_text(descriptor(resources))


def records_by_key(library: Library, name: str) -> str:
    """The records of one kind by key, as they are written; what is not known is left out."""
    field, adapter = WHOLE[name]
    records = dict(sorted(getattr(library, field).items()))
    return json_text(
        adapter.dump_python(records, mode="json", exclude_none=True, exclude_defaults=True)
    )
