"""The floating plants of the records, and what stands in for a figure that the keeper leaves empty."""

import math
from typing import NamedTuple

from calculators.core.data import read_table
from calculators.science.growth.floating_layers import layer_dry_g_m2

# Judgement: one closed layer of small floaters, drained, where the record has no figure.
USUAL_WET_G_M2 = 1_000.0


class Span(NamedTuple):
    """A figure of a record, from low to high, and how sure it is."""

    low: float
    high: float
    sure: str


class FloatingPlant(NamedTuple):
    """One floating plant; None is what nobody we found knows."""

    name: str
    common: str
    doubling_days: Span | None
    mat_dry_g_m2: Span | None
    layer_dry_g_m2: Span | None = None


def read_plant(row: dict[str, object]) -> FloatingPlant:
    """One plant from its row of the table."""
    own = {key: value for key, value in row.items() if key in FloatingPlant._fields}
    spans = {key: Span(*value) if isinstance(value, list) else value for key, value in own.items()}
    return FloatingPlant(**spans)  # type: ignore[arg-type]


PLANTS: dict[str, FloatingPlant] = {
    key: read_plant(row) for key, row in read_table("floating-plants").items()
}


def shown_name(key: str) -> str:
    """The name of a plant as a form shows it."""
    plant = PLANTS[key]
    return f"{plant.common} ({plant.name})" if plant.common else plant.name


def usual_doubling(plant: FloatingPlant) -> float | None:
    """The middle of the record's doubling times, as growth has it: the root of low times high."""
    days = plant.doubling_days
    return math.sqrt(days.low * days.high) if days else None


def usual_wet_g_m2(key: str | None, dry_matter_percent: float) -> float:
    """Wet mass of a closed cover: the record's closed layer, else the middle of its mats, over what is dry.

    To two figures, since a record spans a factor of three and more.
    """
    plant = PLANTS[key] if key else None
    if key and plant and plant.layer_dry_g_m2:
        dry = layer_dry_g_m2(key)
    elif plant and plant.mat_dry_g_m2:
        dry = (plant.mat_dry_g_m2.low + plant.mat_dry_g_m2.high) / 2
    else:
        return USUAL_WET_G_M2
    wet = 100 * dry / dry_matter_percent
    place = 10.0 ** (math.floor(math.log10(wet)) - 1)
    return round(wet / place) * place
