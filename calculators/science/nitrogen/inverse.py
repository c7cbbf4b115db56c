"""The keeper's questions turned round: what would bring nitrate to a target by the last day?"""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from calculators.science.conversions import CM2_PER_M2
from calculators.science.nitrogen.plant_constants import FLOATING_WET_G_M2
from calculators.science.nitrogen.simulate import COARSE, simulate
from calculators.science.nitrogen.tank import Event, Plant, Rates, Tank

MOST_FEED_G = 5_000.0
MOST_STEMS_G = 20_000.0
NEAR = 0.01  # of the target: nearer than any kit can tell
NEAR_MG_L = 0.05
MOST_TRIES = 30


class Answers(NamedTuple):
    """None where nothing of that kind would do it; 0 where nothing more is needed."""

    feed_g_week: float | None
    extra_stems_g: float | None
    extra_floater_cm2: float | None


def answers(
    tank: Tank,
    events: Sequence[Event],
    days: float,
    rates: Rates,
    target: float,
    stems: float,
    floaters: float,
) -> Answers:
    """Search feed, stems and cover, each by itself; ``stems`` and ``floaters`` double in so many days."""

    def final(changed: Tank) -> float:
        return simulate(changed, events, days, rates, relative=COARSE, daily=False).last.nitrate

    def with_feed(feed: float) -> float:
        return final(tank._replace(feed_g_week=feed)) - target

    def with_stems(wet_g: float) -> float:
        return target - final(planted(tank, Plant("more stems", wet_g, stems)))

    def with_cover(area: float) -> float:
        wet_g = area / CM2_PER_M2 * FLOATING_WET_G_M2
        return target - final(planted(tank, Plant("more cover", wet_g, floaters, True)))

    near = max(NEAR_MG_L, NEAR * target)
    return Answers(
        where_zero(with_feed, max(1.0, tank.feed_g_week), MOST_FEED_G, near, below_start=None),
        where_zero(with_stems, 50.0, MOST_STEMS_G, near, below_start=0.0),
        where_zero(with_cover, 100.0, tank.surface_m2 * CM2_PER_M2, near, below_start=0.0),
    )


def planted(tank: Tank, plant: Plant) -> Tank:
    """The tank with one plant more."""
    return tank._replace(plants=(*tank.plants, plant))


def where_zero(
    miss: Callable[[float], float],
    first: float,
    largest: float,
    near: float,
    *,
    below_start: float | None,
) -> float | None:
    """Where a rising function passes zero, from 0 to ``largest``; None if it does not.

    ``below_start`` is the answer if it is above zero already at 0. Regula falsi (Illinois form).
    """
    low, miss_low = 0.0, miss(0.0)
    if miss_low >= -near:
        return below_start if miss_low > near else 0.0
    high, miss_high = min(first, largest), miss(min(first, largest))
    while miss_high < 0:
        if high >= largest:
            return None
        low, miss_low = high, miss_high
        high = min(largest, 3 * high)
        miss_high = miss(high)
    if miss_high <= near:
        return high
    for _ in range(MOST_TRIES):
        middle = high - miss_high * (high - low) / (miss_high - miss_low)
        middle = min(max(middle, low + 0.05 * (high - low)), high - 0.05 * (high - low))
        found = miss(middle)
        if abs(found) <= near:
            return middle
        if found > 0:
            high, miss_high, miss_low = middle, found, miss_low / 2
        else:
            low, miss_low, miss_high = middle, found, miss_high / 2
    return (low + high) / 2
