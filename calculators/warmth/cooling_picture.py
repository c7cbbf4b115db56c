"""The water's way down in a power cut, at the fastest and at the slowest, beside the lines that harm."""

from calculators.core.quantities import FAHRENHEIT
from calculators.core.result import Line, Series
from calculators.science.animals.line_words import CAN_KILL, HARMS
from calculators.science.animals.reading_lines import Edge, edge_of
from calculators.warmth.cooling import Loss, way_down

HOURS = 24
TITLE = "Water without a heater"


def fall_picture(
    water_c: float, room_c: float, stored: tuple[float, float], fast: Loss, slow: Loss
) -> dict[str, Series]:
    """Two curves over a day; ``stored`` is the heat per degree at the fastest and at the slowest, J/K."""
    hours = [float(hour) for hour in range(HOURS + 1)]
    edges: tuple[tuple[str, Edge], ...] = ((HARMS, "harmful_low"), (CAN_KILL, "deadly_low"))
    lines = tuple(Line(words, edge_of("temperature_c", edge), always=True) for words, edge in edges)

    def curve(label: str, short: str, heat_j_k: float, loss: Loss) -> Series:
        falling = way_down(water_c, room_c, heat_j_k, loss, hours)
        return Series(
            label, "°C", "Hours without power", "h", hours, falling, picture=TITLE, short=short,
            lines=lines, us=FAHRENHEIT, subject=f"The water at its {short}",
        )  # fmt: skip

    return {
        "fastest": curve("At the fastest", "fastest", stored[0], fast),
        "slowest": curve("At the slowest", "slowest", stored[1], slow),
    }
