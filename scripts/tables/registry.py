"""Which tables there are: the name of each file of calculators/data, and what makes its content."""

from collections.abc import Callable
from typing import Any

from scripts.records.load import Library
from scripts.tables import (
    animal_rows,
    diagnosis,
    floating_plants,
    identify_rows,
    plant_names,
    plant_rows,
    shelf_plants,
)

MAKERS: dict[str, Callable[[Library], dict[str, Any]]] = {
    "animals": animal_rows.table,
    "diagnosis": diagnosis.table,
    "floating-plants": floating_plants.table,
    "identify": identify_rows.table,
    "names-plants": plant_names.table,
    "plants": plant_rows.table,
    "shelf-plants": shelf_plants.table,
}
