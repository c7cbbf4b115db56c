"""The one table of readings that harm or kill, for every calculator, problem and page.

A line is where the band begins: at or beyond it the reading is harmful, or deadly. Lines hold for
the mixed fish, shrimp and snails of a warm planted tank and lie on the animals' side.
Ammonia and nitrite stand in ``toxic_lines.py``, since they need pH, warmth and chloride beside them.
"""

from typing import Literal, NamedTuple

Level = Literal["in-range", "harmful", "deadly"]
Side = Literal["", "low", "high"]


class ReadingLines(NamedTuple):
    """Where a reading begins to harm and to kill, on either side; None where that side does not.

    ``source`` is a key of the bibliography, or ``common-practice``.
    """

    deadly_low: float | None
    harmful_low: float | None
    harmful_high: float | None
    deadly_high: float | None
    source: str


class Standing(NamedTuple):
    """How one reading stands: the band, and the side on which it lies outside."""

    level: Level
    side: Side


LINES: dict[str, ReadingLines] = {
    "temperature_c": ReadingLines(12, 16, 30, 34, "common-practice"),
    "ph": ReadingLines(4.5, 5.0, 9.0, 9.5, "common-practice"),
    "nitrate_mg_l": ReadingLines(None, None, 44, 250, "common-practice"),
    "oxygen_mg_l": ReadingLines(2, 4, None, None, "common-practice"),
}
IN_RANGE = Standing("in-range", "")


def standing(reading: str, value: float) -> Standing:
    """How a reading stands by its lines; ``reading`` is a key of ``LINES``. Raises ``KeyError``."""
    lines = LINES[reading]
    if lines.deadly_low is not None and value <= lines.deadly_low:
        return Standing("deadly", "low")
    if lines.deadly_high is not None and value >= lines.deadly_high:
        return Standing("deadly", "high")
    if lines.harmful_low is not None and value <= lines.harmful_low:
        return Standing("harmful", "low")
    if lines.harmful_high is not None and value >= lines.harmful_high:
        return Standing("harmful", "high")
    return IN_RANGE
