"""The dry mass of one closed layer of a floating plant, by its kind where a record has it."""

import math
from functools import cache

from calculators.core.data import read_table
from calculators.science.nitrogen.plant_constants import FLOATING_LAYER_G_M2


def layer_dry_g_m2(name: str) -> float:
    """The dry mass at which a floater's cover is closed, g/m²; what floaters hold in common if not known.

    The ``name`` is any that the book has for the plant, or its key.
    """
    return layers_by_name().get(name.strip().casefold(), FLOATING_LAYER_G_M2)


@cache
def layers_by_name() -> dict[str, float]:
    """The closed layers that records have, g dry a m², by every name: the root of low times high."""
    layers = {}
    for key, row in read_table("floating-plants").items():
        if row["layer_dry_g_m2"] is not None:
            low, high, _ = row["layer_dry_g_m2"]
            for name in (key, row["name"], row["common"], *row["other_names"]):
                layers[name.casefold()] = math.sqrt(low * high)
    return layers
