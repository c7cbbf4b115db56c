"""Which way a run goes: nitrate and the stand of plants from the first day to the last."""

from collections.abc import Sequence
from typing import Literal, NamedTuple

from calculators.science.nitrogen.daily_record import Line

Direction = Literal["rising", "falling", "up-and-down", "level"]
# Less than either of these no kit tells from one test to the next: common practice, no source.
LEAST_MOVE_MG_L = 2.0
LEAST_MOVE_SHARE = 0.2
GROWN = 1.5  # times the first mass: more is no level stand; judgement
SHRUNK = 1 / GROWN


class Course(NamedTuple):
    """Nitrate in mg/L as NO3 and the wet mass of all plants in g, over a run."""

    start: float
    end: float
    lowest: float
    highest: float
    highest_day: float
    mass_start: float
    mass_end: float

    @property
    def direction(self) -> Direction:
        """Where nitrate goes, by what a kit can tell."""
        move = max(LEAST_MOVE_MG_L, LEAST_MOVE_SHARE * max(self.start, self.end))
        if self.end - self.start >= move:
            return "rising"
        if self.start - self.end >= move:
            return "falling"
        above = self.highest - max(self.start, self.end)
        below = min(self.start, self.end) - self.lowest
        return "up-and-down" if max(above, below) >= move else "level"

    @property
    def times_grown(self) -> float:
        """How many times its first mass the stand has at the end; 1 without plants."""
        return self.mass_end / self.mass_start if self.mass_start > 0 else 1.0

    @property
    def stand_holds(self) -> bool:
        """Whether the stand ends about as it began."""
        return SHRUNK <= self.times_grown <= GROWN


def course_of(lines: Sequence[Line]) -> Course:
    """The course that the lines of a run show."""
    highest = max(lines, key=lambda line: line.nitrate)
    return Course(
        start=lines[0].nitrate,
        end=lines[-1].nitrate,
        lowest=min(line.nitrate for line in lines),
        highest=highest.nitrate,
        highest_day=highest.day,
        mass_start=lines[0].plant_mass,
        mass_end=lines[-1].plant_mass,
    )
