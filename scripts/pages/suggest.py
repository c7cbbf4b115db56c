"""Names that a form offers, with what each fills into its row. One file a list, fetched when wanted."""

import json
import math

from calculators.core.numbers import show_plain
from scripts.records.load import Library
from scripts.records.plant import Plant


def plants(library: Library) -> str:
    """Plants by accepted and trade name: ``{rows: [values by key], names: {name: row}}``.

    The doubling time is the middle of the record's range, by factors; a plant without one is left
    out, and so is a trade name that two plants share.
    """
    rows: list[dict[str, str]] = []
    names: dict[str, int] = {}
    shared: set[str] = set()
    for plant in library.plants.values():
        if plant.growth.doubling_days is None:
            continue
        for name in (plant.name, *plant.trade_names):
            if name in names:
                shared.add(name)
            names[name] = len(rows)
        rows.append(values(plant))
    kept = {name: row for name, row in sorted(names.items()) if name not in shared}
    return json.dumps({"rows": rows, "names": kept}, ensure_ascii=False, separators=(",", ":"))


def values(plant: Plant) -> dict[str, str]:
    """What a plant's name fills in, by the keys of the forecast's row, as text."""
    span = plant.growth.doubling_days
    assert span
    return {
        "doubling_days": show_plain(float(f"{math.sqrt(span.low * span.high):.2g}")),
        "floating": "true" if plant.habit == "floater" else "false",
    }
