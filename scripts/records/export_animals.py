"""Writes calculators/data/animals.json from the animal records: ``python -m scripts.records.export_animals``.

The calculators ship without YAML and pydantic; this is the part of the records that they need.
"""

import json
from typing import Any

import yaml

from scripts.records.animal import Animal
from scripts.setup.paths import ROOT

RECORDS = ROOT / "species" / "animals"
TABLE = ROOT / "calculators" / "data" / "animals.json"


def entry(animal: Animal) -> dict[str, Any]:
    """The fields of one animal that calculators use, by the names they use."""
    feed, warmth = animal.feeding.feed_percent_day, animal.needs.temperature_c
    return {
        "name": animal.name,
        "common": animal.trade_names[0] if animal.trade_names else "",
        "group": animal.group,
        "a": animal.body.length_weight.a,
        "b": animal.body.length_weight.b,
        "feed_low": feed.low,
        "feed_high": feed.high,
        "temperature_low": warmth.low,
        "temperature_high": warmth.high,
        "longest_mm": animal.body.length_mm.high,
        "least": animal.group_of.least,
        "most": animal.group_of.most,
        "law": [one.place for one in animal.law],
    }


def table_text() -> str:
    """The table as text: one animal a line, so that a change shows as a line."""
    lines = []
    for path in sorted(RECORDS.glob("*.yml")):
        record = Animal.model_validate(yaml.safe_load(path.read_text(encoding="utf-8")))
        lines.append(f'"{path.stem}": {json.dumps(entry(record), ensure_ascii=False)}')
    return "{\n" + ",\n".join(lines) + "\n}\n"


def main() -> None:
    """Write the table and say how much is in it."""
    TABLE.parent.mkdir(exist_ok=True)
    text = table_text()
    TABLE.write_text(text, encoding="utf-8")
    print(f"{TABLE.relative_to(ROOT)}: {len(json.loads(text))} animals")


if __name__ == "__main__":
    main()
