"""The shelf's files: the browser's table of fields, the schema of the file, the demo tanks as one."""

import json
from collections.abc import Mapping
from datetime import UTC, date, datetime, time, timedelta
from typing import Any, get_args

from calculators.core.listing import load_all
from calculators.dosing.dose_options import NUTRIENT_WORDS, SOURCE_WORDS, Nutrient, Source
from calculators.shelf.fields_table import shelf_table
from calculators.shelf.file_schema import shelf_schema
from calculators.shelf.shelf_file import FORMAT, VERSION, check_shelf_file
from scripts.records.demo import DemoTank
from scripts.records.load import Library

DEMO_DAY = date(2026, 11, 28)  # the day on which the demo tanks stand as their records say
DEMO_HOUR = time(18, 0, tzinfo=UTC)
LABELLED = "label"  # a bottle is dosed by what it raises


def fields_json(library: Library) -> str:
    """The table of fields, kinds of entry and fills."""
    titles = {name: spec.title for name, spec in load_all().items()}
    return compact(shelf_table(doses(), titles))


def doses() -> dict[str, tuple[str, str]]:
    """What may be dosed: salts by weight, nutrients by how far they rise."""
    salts = zip(get_args(Source), SOURCE_WORDS.words, strict=True)
    nutrients = zip(get_args(Nutrient), NUTRIENT_WORDS.words, strict=True)
    return {
        **{key: (label, "g") for key, label in salts if key != LABELLED},
        **{key: (label, "mg/L") for key, label in nutrients},
    }


def schema_json(library: Library) -> str:
    """The schema of the file."""
    return json.dumps(shelf_schema(), ensure_ascii=False, indent=1)


def demo_json(library: Library) -> str:
    """The demo tanks as a shelf file. Raises ``ValueError`` where its own check refuses it."""
    made = demo_file(library.demo)
    if wrong := check_shelf_file(made):
        raise ValueError(f"species/demo-tanks.yml: {wrong[0].field}: {wrong[0].why}")
    return compact(made)


def demo_file(demo: Mapping[str, DemoTank]) -> dict[str, Any]:
    """The demo tanks and their log, oldest entry first."""
    entries = [entry for key, tank in demo.items() for entry in log_of(key, tank)]
    return {
        "format": FORMAT,
        "version": VERSION,
        "saved": moment(0),
        "tanks": [
            {"id": key, "name": tank.name, "demo": True, **tank.shelf.tank}
            for key, tank in demo.items()
        ],
        "entries": sorted(entries, key=lambda entry: (entry["at"], entry["id"])),
    }


def log_of(key: str, tank: DemoTank) -> list[dict[str, Any]]:
    """The log of one tank."""
    made = []
    for named, values in tank.shelf.log.items():
        kind, _, what = named.partition(" ")
        for days_ago, value in values.items():
            entry: dict[str, Any] = {"id": f"{key}-{kind}-{what or 'all'}-{days_ago}", "tank": key}
            entry |= {"at": moment(int(days_ago), kind), "kind": kind, "what": what or None}
            made.append({**entry, "value": value})
    return made


def moment(days_ago: int, kind: str = "reading") -> str:
    """A moment of the log; water is read before it is changed."""
    later = timedelta(hours=0 if kind == "reading" else 1)
    at = datetime.combine(DEMO_DAY, DEMO_HOUR) - timedelta(days=days_ago) + later
    return at.strftime("%Y-%m-%dT%H:%M:%SZ")


def compact(value: Any) -> str:
    """JSON without blanks."""
    return json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
