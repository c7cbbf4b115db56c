"""The flows of the weekly budget, and what follows from them."""

from typing import Literal, NamedTuple

from calculators.science.conversions import CM2_PER_M2, DAYS_PER_WEEK
from calculators.science.nitrogen.constants import (
    AT_MOST_PER_PROTEIN,
    EXCRETED_PER_PROTEIN,
    EXCRETED_SHARE,
    NITRATE_PER_N,
    NITROGEN_OF_PROTEIN,
)
from calculators.science.nitrogen.feed_fate import feed_nitrogen_mg_day
from calculators.science.nitrogen.steady import Cycle, floating_uptake, nitrate_of, trimmed_uptake
from calculators.science.water.repeated_change import after_change

Verdict = Literal["building", "steady", "running-short"]
STEADY_MG_L_WEEK = 1.0  # less than that a kit cannot tell in a month; judgement
SHORT_WITHIN_DAYS = 365.0
SHOWN_DAYS = 84.0  # of the picture


class Flows(NamedTuple):
    """Nitrogen, mg a day. ``rotting_at_most`` comes besides, later, if all solids stay and rot."""

    fed: float
    excreted: float
    rotting_at_most: float
    plants: float
    denitrified: float

    @property
    def net(self) -> float:
        """What stays in the water between changes."""
        return self.excreted - self.plants - self.denitrified


def flows(
    feed_g_week: float,
    protein_percent: float,
    plant_uptake: float | None,
    floaters: tuple[float, float],
    trimmings_g_week: float,
    soil: tuple[float, float],
) -> Flows:
    """The flows; ``floaters`` are (cm², doubling days), ``soil`` (cm², mg N a m² and day).

    A measured uptake stands for all plants; without one, floaters and trimmings are summed. That is
    ``plant_uptake``, mg N a day.
    """
    fed = feed_nitrogen_mg_day(feed_g_week, protein_percent)
    grown = floating_uptake(*floaters) + trimmed_uptake(trimmings_g_week)
    return Flows(
        fed=fed,
        excreted=EXCRETED_SHARE * fed,
        rotting_at_most=fed * (AT_MOST_PER_PROTEIN - EXCRETED_PER_PROTEIN) / NITROGEN_OF_PROTEIN,
        plants=grown if plant_uptake is None else plant_uptake,
        denitrified=soil[0] / CM2_PER_M2 * soil[1],
    )


def cycle_of(week_flows: Flows, volume_l: float, share: float, every: float, tap: float) -> Cycle:
    """The nitrate's rise and its water changes.

    One comes ``every`` so many days, with ``tap`` water of so many mg/L as NO3.
    """
    return Cycle(nitrate_of(week_flows.net, volume_l), share, every, tap)


def exchanged(nitrate_mg_l: float, volume_l: float, cycle: Cycle) -> float:
    """Nitrogen that changes carry at a reading, mg a day, on average."""
    return cycle.share * nitrate_mg_l / NITRATE_PER_N * volume_l / cycle.every


def judge(cycle: Cycle, days_to_shortage: float | None) -> Verdict:
    """Whether plants run short within a year, nitrate builds between changes, or neither."""
    if days_to_shortage is not None and days_to_shortage <= SHORT_WITHIN_DAYS:
        return "running-short"
    return "building" if DAYS_PER_WEEK * cycle.rise_day > STEADY_MG_L_WEEK else "steady"


def saw(now: float, cycle: Cycle, days: float) -> tuple[list[float], list[float]]:
    """Nitrate day by day with its changes, never below zero: days and mg/L.

    It starts at ``now``, mg/L as NO3; the two lists are as long as each other, with a day twice where
    water is changed.
    """
    times, levels, day = [0.0], [now], 0.0
    while day < days:
        until = min(day + cycle.every, days)
        level = levels[-1]
        empty = day - level / cycle.rise_day if cycle.rise_day < 0 else until
        if day < empty < until:
            times.append(empty)
            levels.append(0.0)
        times.append(until)
        levels.append(max(0.0, level + cycle.rise_day * (until - day)))
        if until < days and cycle.share > 0:
            times.append(until)
            levels.append(after_change(levels[-1], cycle.tap, cycle.share))
        day = until
    return times, levels
