"""Writes calculators/data/names_plants.json from the records: ``python -m scripts.records.export_names``.

The names by which the book knows its plants, so that a form can say of a name that it is none of them.
"""

import json
from typing import Any

import yaml

from scripts.setup.paths import ROOT

RECORDS = ROOT / "species" / "plants"
TABLE = ROOT / "calculators" / "data" / "names_plants.json"


def names_in(record: dict[str, Any]) -> set[str]:
    """The accepted name of a plant, its older names and its trade names."""
    return {record["name"], *record.get("old_names", ()), *record.get("trade_names", ())}


def table_text() -> str:
    """The table as text: one name a line, so that a change shows as a line."""
    names: set[str] = set()
    for path in sorted(RECORDS.glob("*.yml")):
        names |= names_in(yaml.safe_load(path.read_text(encoding="utf-8")))
    lines = [json.dumps(name, ensure_ascii=False) for name in sorted(names)]
    return '{"names": [\n' + ",\n".join(lines) + "\n]}\n"


def main() -> None:
    """Write the table and say how much is in it."""
    text = table_text()
    TABLE.write_text(text, encoding="utf-8")
    print(f"{TABLE.relative_to(ROOT)}: {len(json.loads(text)['names'])} names")


if __name__ == "__main__":
    main()
