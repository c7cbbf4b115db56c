"""The level that repeated doses, water changes and plants settle at, and the way there.

Order within a stretch: dose, use by plants, then the change that ends it.
"""

from typing import NamedTuple

from calculators.science.water.repeated_change import after_change, settled_before

LEVEL_SHOWN_DAYS = 56.0  # eight weeks
MOMENT = 1e-9  # days; two events closer than this are one


class DosingSchedule(NamedTuple):
    """How often a dose is given and water changed.

    ``dose_every`` in days, None for a single dose; ``change_every`` in days; ``share`` of the water
    changed each time, 0 to 1.
    """

    dose_every: float | None
    change_every: float
    share: float

    @property
    def doses_a_stretch(self) -> float:
        """Doses between two changes, on average."""
        return self.change_every / self.dose_every if self.dose_every else 0.0


class SettledLevel(NamedTuple):
    """Level in mg/L just before and just after a change, once it repeats."""

    before: float
    after: float


def settled_level(
    rise: float, use_a_day: float, tap: float, rhythm: DosingSchedule
) -> SettledLevel | None:
    """Where the level settles, in mg/L; None where it never does.

    It never does with a single dose, without changes, and where plants take more than comes in. The
    ``rise`` of a dose and the level of ``tap`` water are in mg/L, the use in mg/L a day.
    """
    if rhythm.dose_every is None or rhythm.share == 0:
        return None
    gain = rise * rhythm.doses_a_stretch - use_a_day * rhythm.change_every
    before = settled_before(tap, gain, rhythm.share)
    return SettledLevel(before, after_change(before, tap, rhythm.share)) if before >= 0 else None


def course(
    now: float, rise: float, use_a_day: float, tap: float, rhythm: DosingSchedule
) -> tuple[list[float], list[float]]:
    """Days and levels over eight weeks from the first dose; plants stop at nothing left.

    Returns two lists as long as each other, days and mg/L, with a day twice where the level jumps. The
    levels ``now`` and of ``tap`` water and the ``rise`` of a dose are in mg/L, the use in mg/L a day.
    """
    never = 2 * LEVEL_SHOWN_DAYS
    next_dose = rhythm.dose_every or never
    next_change = rhythm.change_every if rhythm.share else never
    points = [(0.0, now), (0.0, now + rise)]
    while points[-1][0] < LEVEL_SHOWN_DAYS - MOMENT:
        day, level = points[-1]
        until = min(day + 1, next_dose, next_change, LEVEL_SHOWN_DAYS)
        if until > LEVEL_SHOWN_DAYS - MOMENT:  # an event a rounding before the end falls on the end
            until = LEVEL_SHOWN_DAYS
        level = max(0.0, level - use_a_day * (until - day))
        points.append((until, level))
        if until >= next_change - MOMENT:
            level = after_change(level, tap, rhythm.share)
            points.append((until, level))
            next_change += rhythm.change_every
        if until >= next_dose - MOMENT:
            points.append((until, level + rise))
            next_dose += rhythm.dose_every or never
    return [day for day, _ in points], [level for _, level in points]


def highest(now: float, rise: float, use_a_day: float, tap: float, rhythm: DosingSchedule) -> float:
    """The highest level on the way or once settled, in mg/L.

    So are the level ``now``, the ``rise`` of a dose and ``tap`` water; the use is in mg/L a day.
    """
    settled = settled_level(rise, use_a_day, tap, rhythm)
    return max(*course(now, rise, use_a_day, tap, rhythm)[1], *(settled or ()))
