"""Whether the films of bacteria in a tank keep up with its ammonia, and how long it stands without them."""

from typing import NamedTuple

from calculators.science.animals.toxic_lines import least_deadly_ammonia_mg_n_l
from calculators.science.conversions import CM2_PER_M2
from calculators.science.nitrogen.forecast_tank import common_surface_cm2
from calculators.science.water.ammonia import (
    ACT_NH3_MG_N_L,
    chronic_limit_mg_n_l,
    unionised_share,
)

HOURS_PER_DAY = 24
# Nitrifying film fed with ammonia, 27 °C: mg N a m² and day = 1859 (S − 0.07) / (S + 1.93), S in
# mg N/L (nitrification-biofilm; its units are from memory).
FILM_MOST = 1859.0
FILM_LEAST_MG_N_L = 0.07
FILM_HALF_MG_N_L = 1.93
# Glass, leaves, the cap's upper grains and a small sponge, times the water's surface; judgement.
LEAST_FILM = 3.0
MOST_FILM = 10.0


class FilterLoad(NamedTuple):
    """A load of ammonia against films that carry it: total ammonia nitrogen in mg N/L, and hours.

    ``ammonia_low`` and ``ammonia_high`` are where it settles with much and with little film, None
    where the film cannot do it; the hours are from none to a line with no filter at all.
    """

    load_mg_n_l_day: float
    ammonia_low: float | None
    ammonia_high: float | None
    hours_to_harm: float | None
    hours_to_death: float | None
    harmful_from: float

    @property
    def films_fail(self) -> bool:
        """Whether even much film leaves harmful ammonia."""
        return self.ammonia_low is None or self.ammonia_low >= self.harmful_from

    @property
    def films_may_fail(self) -> bool:
        """Whether little film leaves harmful ammonia."""
        return self.ammonia_high is None or self.ammonia_high >= self.harmful_from

    def harms_within(self, hours: float) -> bool:
        """Whether a stopped filter brings ammonia to the line to act within so many hours."""
        return self.hours_to_harm is not None and self.hours_to_harm <= hours

    def kills_within(self, hours: float) -> bool:
        """Whether a stopped filter brings ammonia to where it can kill within so many hours."""
        return self.hours_to_death is not None and self.hours_to_death <= hours


def filter_load(
    ammonia_mg_day: float, volume_l: float, ph: float, temperature_c: float
) -> FilterLoad:
    """A load in mg N a day; plants' own uptake of ammonium is left out, on the animals' side."""
    load = ammonia_mg_day / volume_l
    surface_m2 = common_surface_cm2(volume_l) / CM2_PER_M2
    harmful = act_from(ph, temperature_c)
    deadly = least_deadly_ammonia_mg_n_l(ph, temperature_c)
    return FilterLoad(
        load,
        settles_at(ammonia_mg_day / (MOST_FILM * surface_m2)),
        settles_at(ammonia_mg_day / (LEAST_FILM * surface_m2)),
        HOURS_PER_DAY * harmful / load if load > 0 else None,
        HOURS_PER_DAY * deadly / load if load > 0 else None,
        harmful,
    )


def act_from(ph: float, temperature_c: float) -> float:
    """The total ammonia nitrogen from which to act, mg N/L: chronic criterion or our line for NH3."""
    working = ACT_NH3_MG_N_L / unionised_share(ph, temperature_c)
    return min(chronic_limit_mg_n_l(ph, temperature_c), working)


def settles_at(rate_mg_m2_day: float) -> float | None:
    """The ammonia at which a film turns over so much, mg N/L; None above what it can do."""
    if rate_mg_m2_day >= FILM_MOST:
        return None
    if rate_mg_m2_day <= 0:
        return 0.0
    needed = FILM_MOST * FILM_LEAST_MG_N_L + FILM_HALF_MG_N_L * rate_mg_m2_day
    return needed / (FILM_MOST - rate_mg_m2_day)
