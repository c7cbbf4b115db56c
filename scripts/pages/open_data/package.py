"""The description of the open data by the Data Package standard, version 2.0."""

import hashlib
import json
import tomllib
from typing import Any

from scripts.pages.open_data.csv_files import Types
from scripts.pages.open_data.data_tables import TABLES, Table
from scripts.setup.file_hash import Octets
from scripts.setup.paths import ROOT

PROFILE = "https://datapackage.org/profiles/2.0/datapackage.json"
DATA_LICENCE = {
    "name": "CC-BY-4.0",
    "path": "https://creativecommons.org/licenses/by/4.0/",
    "title": "Creative Commons Attribution 4.0 International",
}
NOTHING = "NoneType"


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


def schema(table: Table, types: Types) -> dict[str, Any]:
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


def json_text(value: Any) -> str:
    """JSON as people can read it."""
    return json.dumps(value, ensure_ascii=False, indent=1, allow_nan=False)
