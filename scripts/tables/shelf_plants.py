"""The table of plants for the shelf: what a tank's upkeep needs of each record, in few bytes."""

from typing import Any

from scripts.records.claim import Range
from scripts.records.load import Library
from scripts.records.plant import Plant

COLUMNS = ("name", "common", "floating", "doubling_days", "trim_every_days", "trim_minutes")


def table(library: Library) -> dict[str, Any]:
    """Every plant by key, its figures in the order of ``COLUMNS``."""
    return {
        "columns": list(COLUMNS),
        "plants": {key: row(plant) for key, plant in sorted(library.plants.items())},
    }


def row(plant: Plant) -> list[Any]:
    """One plant; a range as its middle by factors, None where nobody knows."""
    growth = plant.growth
    return [
        plant.name,
        plant.trade_names[0] if plant.trade_names else "",
        plant.habit == "floater",
        middle(growth.doubling_days),
        middle(growth.trim_every_days),
        middle(growth.trim_minutes),
    ]


def middle(claim: Range | None) -> float | None:
    """The middle of a range by factors, to two figures; half-way where it begins at nothing."""
    if claim is None:
        return None
    if claim.low <= 0:
        return claim.middle
    return float(f"{claim.middle_by_factors:.2g}")
