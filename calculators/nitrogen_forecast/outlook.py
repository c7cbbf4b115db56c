"""From when on ammonia and nitrite stay low, and the lines for it."""

from collections.abc import Sequence
from typing import Annotated

from calculators.science.animals.reading_lines import edge_of
from calculators.science.nitrogen.about import About
from calculators.science.nitrogen.daily_record import Line
from calculators.science.water.ammonia import unionised_share

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
