"""Names that a form offers, with what each fills into its row. One file a list, fetched when wanted."""

import json
from collections import Counter

from calculators.core.numbers import show_plain
from scripts.records.load import Library
from scripts.records.plant import Plant


def plants(library: Library) -> str:
    """Plants by accepted and trade name: ``{rows: [values by key], names: {name: row}}``.

    The doubling time is the middle of the record's range, by factors; a plant without one is left
    out, and so is a trade name that two plants share.
    """
    shown = [plant for plant in library.plants.values() if plant.growth.doubling_days]
    called = Counter(name for plant in shown for name in {*plant.trade_names, plant.name})
    names: dict[str, int] = {}
    for number, plant in enumerate(shown):
        alone = [name for name in plant.trade_names if called[name] == 1]
        names |= dict.fromkeys([*alone, plant.name], number)
    table = {"rows": [values(plant) for plant in shown], "names": dict(sorted(names.items()))}
    return json.dumps(table, ensure_ascii=False, separators=(",", ":"))


def values(plant: Plant) -> dict[str, str]:
    """What a plant's name fills in, by the keys of the forecast's row, as text."""
    span = plant.growth.doubling_days
    assert span
    return {
        "doubling_days": show_plain(float(f"{span.middle_by_factors:.2g}")),
        "floating": "true" if plant.habit == "floater" else "false",
    }
