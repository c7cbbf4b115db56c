"""What a surface closed by floating plants does to the animals below it, for all that count it."""

from calculators.core.result import Note
from calculators.science.light.lamps import CLOSED_COVER_PERCENT

CLOSED = Note(
    "caution",
    "A closed mat shuts out light and slows the air's way into the water. Watch the animals at dawn, "
    "when oxygen is lowest: if they gasp at the surface, take half of it out at once and add air.",
)


def closed_surface(cover_percent: float) -> list[Note]:
    """The warning where floaters cover so much of the surface, %, that air hardly gets in."""
    return [CLOSED] if cover_percent > CLOSED_COVER_PERCENT else []
