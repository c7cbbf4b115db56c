"""The table of floating plants for the floaters calculator, which ships without the records.

``python -m scripts.tables.floating_plants`` writes it anew.
"""

import json
from types import SimpleNamespace
from typing import Any, Protocol

from scripts.records.claim import Range
from scripts.records.load import BadRecords, Reader
from scripts.records.plant import Plant
from scripts.setup.paths import ROOT

TABLE = ROOT / "calculators" / "data" / "floating-plants.json"


class HasPlants(Protocol):
    """What this table needs of a library of records."""

    @property
    def plants(self) -> dict[str, Plant]:
        """The plants by their keys."""


def table(library: HasPlants) -> dict[str, Any]:
    """The floating plants by key: names, and ranges as ``[low, high, how sure]`` or None."""
    return {
        key: {
            "name": plant.name,
            "common": plant.trade_names[0] if plant.trade_names else "",
            "doubling_days": span(plant.growth.doubling_days),
            "mat_dry_g_m2": span(plant.growth.mat_dry_g_m2),
        }
        for key, plant in sorted(library.plants.items())
        if plant.habit == "floater"
    }


def span(claim: Range | None) -> list[Any] | None:
    """A range with how sure it is; None where nobody knows."""
    return None if claim is None else [claim.low, claim.high, claim.sure]


def table_text(rows: dict[str, Any]) -> str:
    """The table as text: one plant a line, so that a change shows as a line."""
    lines = (
        f"{json.dumps(key)}: {json.dumps(row, ensure_ascii=False)}" for key, row in rows.items()
    )
    return "{\n" + ",\n".join(lines) + "\n}\n"


def main() -> None:
    """Write the table. Raises ``BadRecords`` where a plant's record does not hold."""
    reader = Reader(ROOT / "species")
    rows = table(SimpleNamespace(plants=reader.folder("plants", Plant)))
    if reader.findings:
        raise BadRecords(reader.findings)
    TABLE.write_text(table_text(rows), encoding="utf-8")
    print(f"{TABLE.relative_to(ROOT)}: {len(rows)} plants")


if __name__ == "__main__":
    main()
