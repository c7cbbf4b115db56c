"""The drawings of plants: each is made once for its record, however many pages and builds show it."""

from collections.abc import Callable

from scripts.drawings import above, closeup, draw
from scripts.records.plant import Plant
from scripts.setup.kept import kept


def in_tank(slug: str, plant: Plant) -> str | None:
    """The plant from the side in a tank. None without traits."""
    return drawn_once("in-tank", draw.drawing, slug, plant)


def from_above(slug: str, plant: Plant) -> str | None:
    """The plant on the water. None for one that does not float, or has no traits."""
    return drawn_once("from-above", above.above, slug, plant)


def close_up(slug: str, plant: Plant) -> str | None:
    """The part that tells it from its look-alikes. None without traits."""
    return drawn_once("close-up", closeup.closeup, slug, plant)


def drawn_once(
    kind: str, draw_it: Callable[[str, Plant], str | None], slug: str, plant: Plant
) -> str | None:
    """The drawing as one ``<svg>``, which follows from the record alone; None where there is none."""
    ingredients = f"{slug}\0{plant.model_dump_json()}"
    return kept(kind, ingredients, lambda: draw_it(slug, plant) or "") or None
