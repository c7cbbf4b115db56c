"""What a run means: the verdict, and from when on the water is fit for animals."""

from collections.abc import Sequence
from itertools import pairwise
from typing import Annotated, Literal

from calculators.nitrogen.about import About
from calculators.nitrogen.constants import DAYS_PER_WEEK
from calculators.nitrogen.record import Line
from calculators.nitrogen.simulate import Outcome
from calculators.science.animals.reading_lines import edge_of
from calculators.water.ammonia import unionised_share

Verdict = Literal["building", "steady", "running-short"]
STEADY_MG_L_WEEK = 1.0  # as in the weekly budget
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
LAST_SHARE = 0.5  # of the run, which the rise is read from


def rise_week(lines: Sequence[Line]) -> float:
    """Rise of nitrate between water changes over the second half, mg/L a week."""
    start = lines[-1].day * (1 - LAST_SHARE)
    rise = time = 0.0
    for before, after in pairwise(lines):
        if after.day > before.day and before.day >= start:
            rise += after.nitrate - before.nitrate
            time += after.day - before.day
    return DAYS_PER_WEEK * rise / time if time else 0.0


def judge(outcome: Outcome) -> Verdict:
    """Whether the plants end up short, nitrate builds between changes, or neither."""
    hunger = outcome.record.hunger
    if hunger.first_day is not None and hunger.recovery_day is None:
        return "running-short"
    return "building" if rise_week(outcome.record.lines) > STEADY_MG_L_WEEK else "steady"


def calm_from(lines: Sequence[Line], ph: float, temperature_c: float) -> float | None:
    """The day from which ammonia and nitrite stay below the working lines; None if they do not."""
    share = unionised_share(ph, temperature_c)
    calm: float | None = None
    for line in lines:
        if line.ammonia * share >= NH3_WATCH_MG_N_L or line.nitrite >= NITRITE_WATCH_MG_N_L:
            calm = None
        elif calm is None:
            calm = line.day
    return calm
