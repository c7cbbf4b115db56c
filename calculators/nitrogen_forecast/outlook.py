"""From when on ammonia and nitrite stay low, and the lines for it."""

import math
from collections.abc import Sequence
from typing import Annotated

from calculators.science.animals.reading_lines import edge_of
from calculators.science.animals.toxic_lines import least_urgent_ammonia_mg_n_l
from calculators.science.nitrogen.about import About
from calculators.science.nitrogen.daily_record import DayValues

NITRITE_WATCH_MG_N_L: Annotated[
    float, About("mg N/L", "nitrite from which to watch", "reported",
                 "short-term guideline at under 2 mg/L chloride", "bc-nitrite")
] = edge_of("nitrite_mg_n_l", "harmful_high")  # fmt: skip
NITRITE_ACT_MG_N_L: Annotated[
    float, About("mg N/L", "nitrite from which to act", "reported",
                 "the same at 10 mg/L chloride and more", "bc-nitrite")
] = edge_of("nitrite_mg_n_l", "deadly_high")  # fmt: skip
NH3_WATCH_MG_N_L: Annotated[
    float, About("mg N/L", "toxic ammonia, NH₃, from which to watch", "uncertain",
                 "judgement, as in the free-ammonia calculator")
] = edge_of("nh3_mg_n_l", "harmful_high")  # fmt: skip

PACE_DAYS: Annotated[
    float, About("days", "over which the pace of a rise is taken", "uncertain", "judgement")
] = 3.0  # fmt: skip
LOOK_AHEAD_DAYS: Annotated[
    float, About("days", "within which a rise must not reach a line, for a new filter to be called calm",
                 "uncertain", "judgement")
] = 30.0  # fmt: skip


def calm_from(lines: Sequence[DayValues], ph: float, temperature_c: float) -> float | None:
    """The day from which ammonia and nitrite stay below the working lines; None if they do not."""
    most_ammonia = least_urgent_ammonia_mg_n_l(ph, temperature_c)
    calm: float | None = None
    for line in lines:
        if line.ammonia >= most_ammonia or line.nitrite >= NITRITE_WATCH_MG_N_L:
            calm = None
        elif calm is None:
            calm = line.day
    return calm


def is_rising(lines: Sequence[DayValues], ph: float, temperature_c: float) -> bool:
    """Whether ammonia or nitrite is low on the last day only because the run ends so early.

    At the pace of the last days either would pass its line within the days looked ahead; what has
    just begun to show has no pace yet, and counts as rising.
    """
    last = lines[-1]
    before = next((line for line in reversed(lines) if line.day <= last.day - PACE_DAYS), lines[0])
    ahead = LOOK_AHEAD_DAYS / max(last.day - before.day, 1.0)
    for then, now, edge in (
        (before.ammonia, last.ammonia, least_urgent_ammonia_mg_n_l(ph, temperature_c)),
        (before.nitrite, last.nitrite, NITRITE_WATCH_MG_N_L),
    ):
        if now > then and (then <= 0 or now * math.pow(min(now / then, 1e3), ahead) >= edge):
            return True
    return False
