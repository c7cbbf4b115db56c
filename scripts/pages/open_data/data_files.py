"""Every file of the open data, by its path below the site."""

from typing import Any

from pydantic import TypeAdapter

from scripts.pages.open_data.data_tables import TABLES
from scripts.pages.open_data.package import csv_text, descriptor, json_text
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


def open_data(library: Library) -> dict[str, str]:
    """``{path: text}`` of tables, whole records, schemas, licences and the package that describes them."""
    rows = {name: table.rows(library) for name, table in TABLES.items()}
    files = {f"{name}.csv": csv_text(rows[name]) for name in TABLES}
    files |= {f"{name}.json": records_by_key(library, name) for name in WHOLE}
    described = json_text(descriptor(files, rows))
    files |= {
        f"schema/{name}.schema.json": json_text(adapter.json_schema())
        for name, (_, adapter) in WHOLE.items()
    }
    files |= {name: (ROOT / kept).read_text(encoding="utf-8") for name, kept in LICENCES.items()}
    files["datapackage.json"] = described
    return {f"{FOLDER}{path}": text for path, text in files.items()}


def records_by_key(library: Library, name: str) -> str:
    """The records of one kind by key, as they are written; what is not known is left out."""
    field, adapter = WHOLE[name]
    records = dict(sorted(getattr(library, field).items()))
    return json_text(
        adapter.dump_python(records, mode="json", exclude_none=True, exclude_defaults=True)
    )
