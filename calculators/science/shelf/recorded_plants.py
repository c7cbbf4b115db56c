"""The plants of the records as the shelf needs them: how fast they grow, when they are trimmed."""

from functools import cache
from typing import NamedTuple

from calculators.core.data import read_table


class PlantFacts(NamedTuple):
    """What a record says of a plant; None is what nobody we found knows."""

    name: str
    common: str
    floating: bool
    doubling_days: float | None
    trim_every_days: float | None
    trim_minutes: float | None


@cache
def plants() -> dict[str, PlantFacts]:
    """All plants of the book by key."""
    return {key: PlantFacts(*row) for key, row in read_table("shelf-plants")["plants"].items()}


def plant_name(key: str) -> str:
    """The name of a plant; of one that is not in this book, its key."""
    known = plants().get(key)
    return known.name if known else key
