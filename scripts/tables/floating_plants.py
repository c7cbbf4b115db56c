"""The table of floating plants for the floaters calculator, which ships without the records."""

from typing import Any

from scripts.records.claim import Range
from scripts.records.load import Library


def table(library: Library) -> dict[str, Any]:
    """The floating plants by key: names, and ranges as ``[low, high, how sure]`` or None."""
    return {
        key: {
            "name": plant.name,
            "common": plant.trade_names[0] if plant.trade_names else "",
            "doubling_days": span(plant.growth.doubling_days, library),
            "mat_dry_g_m2": span(plant.growth.mat_dry_g_m2, library),
            "layer_dry_g_m2": span(plant.growth.layer_dry_g_m2, library),
            "other_names": [*plant.trade_names[1:], *plant.old_names],
        }
        for key, plant in sorted(library.offered().items())
        if plant.habit == "floater"
    }


def span(claim: Range | None, library: Library) -> list[Any] | None:
    """A range with how sure it is, in words; None where nobody knows."""
    if claim is None:
        return None
    return [claim.low, claim.high, library.vocabulary["sure"][claim.grade]["label"]]
