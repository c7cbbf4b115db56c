"""Which tables there are: the name of each file of calculators/data, and what makes its content."""

from collections.abc import Callable
from typing import Any

from scripts.records.load import Library
from scripts.tables import (
    animals,
    diagnosis,
    floating_plants,
    plant_names,
    plants,
    shelf_plants,
)

MAKERS: dict[str, Callable[[Library], dict[str, Any]]] = {
    "animals": animals.table,
    "diagnosis": diagnosis.table,
    "floating-plants": floating_plants.table,
    "names-plants": plant_names.table,
    "plants": plants.table,
    "shelf-plants": shelf_plants.table,
}
