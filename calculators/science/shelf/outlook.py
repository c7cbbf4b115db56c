"""A short forecast of a tank's nitrate, fitted to its readings: the one door to the nitrogen engine.

The growth of the plants is what nobody knows well, so the runs differ by it: each starts where the
readings of the last weeks start, and those that meet the readings are run on.
"""

from collections.abc import Sequence
from typing import Annotated, NamedTuple

from calculators.core.quantities import DaysAhead, LevelAhead
from calculators.core.quantity import Label
from calculators.science.nitrogen.daily_record import DayValues
from calculators.science.nitrogen.simulate import COARSE, Outcome, simulate
from calculators.science.nitrogen.tank import Event, Rates, Tank
from calculators.science.shelf.engine_tank import NITRATE, lacks, model_tank
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.latest import Latest
from calculators.science.shelf.log import Dated, Log
from calculators.science.shelf.tank import ShelfTank

AHEAD_DAYS = 28
FIT_DAYS = 28  # of readings
LEAST_READINGS, LEAST_SPAN_DAYS = 3, 10.0
PACES = (0.25, 0.5, 1.0, 1.6, 2.5)  # times what records or the log say of growth; judgement
BETWEEN = 1.25  # how far a pace may lie from the next of the list that fits as well
NEAR_STEPS = 0.5  # of the kit's step: runs that miss by so much more than the best fit as well


class Outlook(NamedTuple):
    """Nitrate in four weeks, as NO3, from low to high, and the day on which plants run short (or None)."""

    days_to_shortage: Annotated[DaysAhead | None, Label("Plants run short in")]
    nitrate_in_28_days_mg_l: Annotated[LevelAhead, Label("Nitrate in 28 days")]
    low: Annotated[LevelAhead, Label("At least")]
    high: Annotated[LevelAhead, Label("At most")]
    fitted: Annotated[bool, Label("Fitted to the readings")]


class NoOutlook(NamedTuple):
    """Why there is no forecast: what is missing, in words."""

    missing: list[str]


def outlook(tank: ShelfTank, log: Log, readings: dict[str, Latest]) -> Outlook | NoOutlook:
    """The forecast, or what it lacks: nothing is guessed that the tank does not say."""
    missing = lacks(tank, log, readings)
    if missing:
        return NoOutlook(missing)
    now = model_tank(tank, log, readings)
    paces, fitted = fitting_paces(now, log)
    ahead = [run(now, [], AHEAD_DAYS, pace) for pace in paces]
    ends = [outcome.last.nitrate for outcome in ahead]
    short = ahead[0].record.hunger.first_day
    unread = NEAR_STEPS * READINGS[NITRATE].step  # the first reading itself is no surer
    return Outlook(short, ends[0], max(0.0, min(ends) - unread), max(ends) + unread, fitted)


def fitting_paces(now: Tank, log: Log) -> tuple[list[float], bool]:
    """The paces of growth whose runs meet the readings, the best first; without readings all of them."""
    lately = [one for one in log.readings(NITRATE) if log.days_ago(one.day) <= FIT_DAYS]
    if len(lately) < LEAST_READINGS or lately[-1].days - lately[0].days < LEAST_SPAN_DAYS:
        return sorted(PACES, key=lambda pace: abs(pace - 1)), False
    misses = {pace: miss(now, lately, log, pace) for pace in PACES}
    best = min(PACES, key=lambda pace: (misses[pace], abs(pace - 1)))
    allowed = misses[best] + NEAR_STEPS * READINGS[NITRATE].step
    others = [pace for pace in PACES if pace != best and misses[pace] <= allowed]
    return [best, *(others or (best / BETWEEN, best * BETWEEN))], True


def miss(now: Tank, lately: list[Dated], log: Log, pace: float) -> float:
    """By how much a run from the first reading on misses the others, the mean in mg/L."""
    start, span = lately[0].days, lately[-1].days - lately[0].days
    changes = [
        Event(one.days - start, "change", one.value)
        for one in log.of("change")
        if 0 <= one.days - start <= span
    ]
    past = now._replace(nitrate_mg_l=lately[0].value, change_percent=0.0)
    lines = run(past, changes, span, pace).record.lines
    return sum(
        abs(one.value - nearest(lines, one.days - start)) for one in lately[1:]
    ) / (len(lately) - 1)  # fmt: skip


def nearest(lines: Sequence[DayValues], day: float) -> float:
    """Nitrate on the line nearest to a day."""
    found: float = min(lines, key=lambda line: abs(line.day - day)).nitrate
    return found


def run(tank: Tank, events: list[Event], days: float, pace: float) -> Outcome:
    """One run of the engine."""
    return simulate(tank, events, days, Rates(growth=pace), relative=COARSE)
