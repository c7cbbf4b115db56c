"""The simple weekly budget: constant flows, repeated water changes, closed forms."""

import math
from typing import NamedTuple

from calculators.science.conversions import CM2_PER_M2, DAYS_PER_WEEK
from calculators.science.nitrogen.constants import EXCRETED_SHARE, NITRATE_PER_N
from calculators.science.nitrogen.feed_fate import feed_nitrogen_mg_day
from calculators.science.nitrogen.plant_constants import (
    DRY_SHARE_ROOTED,
    FLOATING_LAYER_G_M2,
    HEALTHY_N_FLOATING,
    HEALTHY_N_ROOTED,
)
from calculators.science.water.repeated_change import after_change, settled_before

LEAST_SHARE = 1e-9  # of the water; a smaller change is none
LONGEST_DAYS = 3_650.0  # beyond ten years a run of constant flows says nothing


class Cycle(NamedTuple):
    """A level that rises by ``rise_day`` (mg/L a day; below zero: falls), and its water changes.

    ``share`` is what a change replaces (0 to 1), ``every`` the days between, ``tap`` its reading.
    """

    rise_day: float
    share: float
    every: float
    tap: float


def floating_uptake(area_cm2: float, doubling_days: float) -> float:
    """Nitrogen that a floating cover takes to stay one layer while its growth is thinned, mg N a day.

    Equation: uptake = 60 g dry a m² · area · 3.0 % N · ln 2 / doubling
    """
    dry_g = FLOATING_LAYER_G_M2 * area_cm2 / CM2_PER_M2
    return dry_g * HEALTHY_N_FLOATING * math.log(2) / doubling_days


def trimmed_uptake(wet_g_week: float) -> float:
    """Nitrogen that leaves with trimmings, mg N a day.

    Equation: uptake = wet g a week · 8 % dry · 2.5 % N / 7
    The middle of published tissue values; a hungry plant holds as little as half of that.
    """
    return wet_g_week * DRY_SHARE_ROOTED * HEALTHY_N_ROOTED / DAYS_PER_WEEK


def feed_for(nitrogen_mg_day: float, protein_percent: float) -> float:
    """Feed whose prompt ammonia is so much nitrogen, g a week.

    Equation: feed = 7 · nitrogen / (1000 · protein/100 · 0.092)
    nitrogen in mg a day. What rots later is left out, so that this is the most feed it can take.
    """
    return nitrogen_mg_day / (EXCRETED_SHARE * feed_nitrogen_mg_day(1.0, protein_percent))


def settled_high(cycle: Cycle) -> float | None:
    """The level just before a change once it repeats; none if it never settles above zero.

    Equation: high = tap + rise · every / share
    rise in mg/L a day, every in days, share from 0 to 1. The fixed point of
    high → (1 − share) · high + share · tap + rise · every.
    """
    if cycle.share < LEAST_SHARE:
        return None
    high = settled_before(cycle.tap, cycle.rise_day * cycle.every, cycle.share)
    return high if high > 0 else None


def settled_low(cycle: Cycle, high: float | None) -> float | None:
    """The level just after a change once it repeats.

    Equation: low = high − share · (high − tap)
    """
    return None if high is None else after_change(high, cycle.tap, cycle.share)


def days_to_nothing(now: float, cycle: Cycle) -> float | None:
    """Days until the level reaches zero, the first change after a whole interval; None if never.

    Just before its changes the level runs towards the fixed point by the share that a change leaves, so
    the interval in which it first crosses zero has a closed form. The level ``now`` is in mg/L as NO3.
    """
    if cycle.rise_day >= 0:
        return None
    if cycle.share < LEAST_SHARE:
        return within_reason(now / -cycle.rise_day)
    step = cycle.rise_day * cycle.every
    first, aim = now + step, settled_before(cycle.tap, step, cycle.share)
    if first <= 0:
        return now / -cycle.rise_day
    if aim >= 0:
        return None
    # log1p, since a small change moves the level by a small share of a far fixed point
    full = (
        0.0 if cycle.share >= 1 else math.log1p(-first / (first - aim)) / math.log1p(-cycle.share)
    )
    changes = max(1, math.ceil(full - 1e-12))
    before = aim + (first - aim) * (1 - cycle.share) ** (changes - 1)
    after = after_change(before, cycle.tap, cycle.share)
    return within_reason(changes * cycle.every + after / -cycle.rise_day)


def within_reason(days: float) -> float | None:
    """Days, or None where they are too many to mean anything."""
    return days if days <= LONGEST_DAYS else None


def nitrate_of(nitrogen_mg_day: float, volume_l: float) -> float:
    """How fast a flow of nitrogen raises a tank's nitrate, mg/L a day as NO3."""
    return nitrogen_mg_day / volume_l * NITRATE_PER_N


def extra_to_hold(cycle: Cycle, target: float, volume_l: float) -> float:
    """Nitrogen that would have to go besides, to settle at the target before a change, mg N a day.

    Equation: more = (rise − share · (target − tap) / every) · volume / 4.427
    rise in mg/L a day as NO3. Below zero: so much more may come in. Divided by the uptake of a
    square centimetre of cover or a gram of stems it is the cover or the stems that would do.
    """
    carried_off = cycle.share * (target - cycle.tap) / cycle.every  # by changes, mg/L a day
    return (cycle.rise_day - carried_off) * volume_l / NITRATE_PER_N


def standing_stems(nitrogen_mg_day: float, doubling_days: float) -> float:
    """Well-fed stems, trimmed as they grow, that take so much nitrogen, wet g.

    Equation: wet = nitrogen / (8 % dry · 2.5 % N · ln 2 / doubling)
    """
    per_gram = DRY_SHARE_ROOTED * HEALTHY_N_ROOTED * math.log(2) / doubling_days
    return nitrogen_mg_day / per_gram


def fitted_uptake(supply_mg_day: float, slope_week: float, volume_l: float) -> float:
    """Uptake that explains a measured change of nitrate between water changes, mg N a day.

    Equation: uptake = excreted − gas − slope/7 · volume / 4.427
    The mass balance of the water turned round; slope in mg/L a week as NO3, from the trend of your
    readings. What its limits are for the slope they are for the uptake, turned round.
    """
    return supply_mg_day - slope_week / DAYS_PER_WEEK * volume_l / NITRATE_PER_N
