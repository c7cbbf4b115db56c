"""The keeper's questions turned round: what would bring nitrate to a target by the last day?"""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from calculators.science.conversions import CM2_PER_M2
from calculators.science.nitrogen.forecast_tank import Event, Rates, StandingPlant, Tank
from calculators.science.nitrogen.ode import Effort
from calculators.science.nitrogen.plant_constants import FLOATING_WET_G_M2
from calculators.science.nitrogen.simulate import COARSE, simulate

MOST_FEED_G = 5_000.0
MOST_STEMS_G = 20_000.0
NEAR = 0.01  # of the target: nearer than any kit can tell
NEAR_MG_L = 0.05
MOST_TRIES = 30
MOST_STEPS = 1_800  # of the solver in all searches together, so that no answer takes long


class Answers(NamedTuple):
    """None where nothing of that kind would do it; 0 where nothing more is needed.

    ``unfinished``: the search was given up before it knew, and what it did not reach is None.
    """

    feed_g_week: float | None
    extra_stems_g: float | None
    extra_floater_cm2: float | None
    unfinished: bool = False


class TooLong(ArithmeticError):
    """The search is given up: the solver was asked for too many steps."""


def answers(
    tank: Tank,
    events: Sequence[Event],
    days: float,
    rates: Rates,
    target: float,
    stems: float,
    floaters: float,
) -> Answers:
    """Search feed, stems and cover, each by itself; ``stems`` and ``floaters`` double in so many days.

    The ``target`` is in mg/L as NO3.
    """

    effort = Effort(MOST_STEPS)

    def final(changed: Tank) -> float:
        ran = simulate(changed, events, days, rates, relative=COARSE, daily=False, effort=effort)
        if ran.day < days:
            raise TooLong("too many steps")
        return ran.last.nitrate

    def with_feed(feed: float) -> float:
        return final(tank._replace(feed_g_week=feed)) - target

    def with_stems(wet_g: float) -> float:
        return target - final(planted(tank, StandingPlant("more stems", wet_g, stems)))

    def with_cover(area: float) -> float:
        wet_g = area / CM2_PER_M2 * FLOATING_WET_G_M2
        return target - final(planted(tank, StandingPlant("more cover", wet_g, floaters, True)))

    near = max(NEAR_MG_L, NEAR * target)
    searches = (
        (with_feed, max(1.0, tank.feed_g_week), MOST_FEED_G, None),
        (with_stems, 50.0, MOST_STEMS_G, 0.0),
        (with_cover, 100.0, tank.surface_m2 * CM2_PER_M2, 0.0),
    )
    found: list[float | None] = []
    for miss, first, largest, below_start in searches:
        try:
            found.append(where_zero(miss, first, largest, near, below_start=below_start))
        except TooLong:
            found.append(None)
    feed, more_stems, more_cover = found
    return Answers(feed, more_stems, more_cover, unfinished=effort.left <= 0)


def planted(tank: Tank, plant: StandingPlant) -> Tank:
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

    Regula falsi (Illinois form), which tries ``first`` to begin with. These and the result, and
    ``below_start``, the answer if it is above zero already at 0, are in the unit of what the function
    takes; ``near`` is how close to zero is enough, in the unit of what it gives.
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
        missed_by = miss(middle)
        if abs(missed_by) <= near:
            return middle
        if missed_by > 0:
            high, miss_high, miss_low = middle, missed_by, miss_low / 2
        else:
            low, miss_low, miss_high = middle, missed_by, miss_high / 2
    return (low + high) / 2
