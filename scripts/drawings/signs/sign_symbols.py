"""Every drawing of a sign, by the key of the finding that it shows."""

from functools import cache

from scripts.drawings.signs.animal_signs import breath, small_ones
from scripts.drawings.signs.leaf_signs import new_leaves, old_leaves
from scripts.drawings.signs.plant_signs import plants, roots, stems
from scripts.drawings.signs.reading_signs import events, readings
from scripts.drawings.signs.water_signs import coats, surface, water
from scripts.drawings.thumbnail import SIDE
from scripts.drawings.trait_leaves import symbol

MAKERS = (
    old_leaves,
    new_leaves,
    plants,
    stems,
    roots,
    surface,
    water,
    coats,
    breath,
    small_ones,
    readings,
    events,
)


@cache
def sign_drawings() -> dict[str, str]:
    """``{finding: what stands in its picture}``."""
    return {key: body for make in MAKERS for key, body in make().items()}


def sign_symbols() -> str:
    """All of them as ``<symbol>`` elements, each id a finding's key."""
    return "".join(symbol(key, body, SIDE) for key, body in sign_drawings().items())
