"""The table of plants' names, so that a form can say of a name that it is none of the book's."""

from typing import Any

from scripts.records.load import Library


def table(library: Library) -> dict[str, Any]:
    """Under ``names`` the accepted, older and trade names of all plants, sorted."""
    names = {
        name
        for plant in library.plants.values()
        for name in (plant.name, *plant.old_names, *plant.trade_names)
    }
    return {"names": sorted(names)}
