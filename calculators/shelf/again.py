"""What a keeper chose for a tank the last time: how a tank is dosed is asked once.

Choices and what a bottle's label prints are taken again. A reading never is: the level that a dose starts
from is the latest reading of the log, or is asked for anew.
"""

from collections.abc import Mapping
from typing import Any

from calculators.shelf.filler import Filler

AGAIN: dict[str, tuple[str, ...]] = {
    "dosing": (
        "schedule", "nutrient", "target_mg_l", "rise_mg_l", "source", "bottle_ml", "dose_ml",
        "label_n_form", "label_n_percent", "label_p2o5_percent", "label_k2o_percent",
        "label_mg_percent", "label_fe_percent", "density_g_ml", "label_n_g_l", "label_p2o5_g_l",
        "label_k2o_g_l", "label_mg_g_l", "label_fe_g_l",
    ),
}  # fmt: skip


def chosen_again(
    calculator: str, given: Mapping[str, Any], filler: Filler
) -> dict[str, tuple[Any, str]]:
    """Each input that takes what was chosen the last time, with its origin in words."""
    words = f"as last time for {filler.tank.name}"
    found: dict[str, tuple[Any, str]] = {
        key: (given[key], words)
        for key in AGAIN.get(calculator, ())
        if isinstance(given.get(key), str | int | float)
    }
    latest = filler.reading(f"{found['nutrient'][0]}_mg_l") if "nutrient" in found else None
    return {**found, "now_mg_l": latest} if latest else found
