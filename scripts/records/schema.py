"""A JSON Schema for each kind of record, for completion in an editor."""

import json
from pathlib import Path

from pydantic import TypeAdapter

from scripts.records.animal import Animal
from scripts.records.demo import DemoTank
from scripts.records.finding import Finding
from scripts.records.place import Jurisdiction
from scripts.records.plant import Plant
from scripts.records.problem import Problem
from scripts.records.rule import Rule
from scripts.records.source import Source
from scripts.records.trade_name import TradeName
from scripts.setup.kept import kept
from scripts.setup.paths import SCHEMAS
from scripts.setup.surroundings import packages

KINDS: dict[str, TypeAdapter[object]] = {
    "plant": TypeAdapter(Plant),
    "animal": TypeAdapter(Animal),
    "problem": TypeAdapter(Problem),
    "rule": TypeAdapter(Rule),
    "demo-tanks": TypeAdapter(dict[str, DemoTank]),
    "trade-name": TypeAdapter(TradeName),
    "places": TypeAdapter(dict[str, Jurisdiction]),
    "findings": TypeAdapter(dict[str, Finding]),
    "sources": TypeAdapter(dict[str, Source]),
}


def write_schemas(folder: Path = SCHEMAS) -> None:
    """Write build/schema/<kind>.schema.json."""
    folder.mkdir(parents=True, exist_ok=True)
    for kind, text in json.loads(kept("schemas", packages(), schema_texts)).items():
        (folder / f"{kind}.schema.json").write_text(text, encoding="utf-8")


def schema_texts() -> str:
    """The text of each schema by its kind, as JSON."""
    return json.dumps({kind: schema_text(adapter) for kind, adapter in KINDS.items()})


def schema_text(adapter: TypeAdapter[object]) -> str:
    """A schema as people can read it."""
    return json.dumps(adapter.json_schema(), ensure_ascii=False, indent=1)
