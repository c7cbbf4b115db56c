"""A short forecast of a tank's nitrate, fitted to its readings: the one door to the nitrogen engine.

Uptake by the plants, the feed's nitrogen and the filter are fitted to the readings of the last weeks,
and the forecast runs on from the fit. Where the readings cannot tell, the growth of the plants is what
nobody knows well: the runs differ by it, and the answer says that it is not fitted.
"""

from collections.abc import Iterator
from typing import Annotated, NamedTuple

from calculators.core.quantities import DaysAhead, Factor, LevelAhead
from calculators.core.quantity import Label
from calculators.science.nitrogen.forecast_tank import Event, Rates, Tank
from calculators.science.nitrogen.ode import Effort
from calculators.science.nitrogen.simulate import COARSE, Outcome, simulate
from calculators.science.shelf.engine_tank import NITRATE, lacks, model_tank
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.latest import Latest
from calculators.science.shelf.log import Dated, Log
from calculators.science.shelf.shelf_tank import ShelfTank
from calculators.standing.fit import FittedForecast, FitTooLong, fit_to_readings
from calculators.standing.fit_readings import FIELDS, Reading

AHEAD_DAYS = 28
FIT_DAYS = 28  # of readings
LEAST_READINGS, LEAST_SPAN_DAYS = 3, 10.0
MOST_STEPS = 6_000  # of the solver for one fit
PACES = (0.25, 0.5, 1.0, 1.6, 2.5)  # times what records or the log say of growth; judgement
NEAR_STEPS = 0.5  # of the kit's step: the first reading itself is no surer


class Outlook(NamedTuple):
    """Nitrate in four weeks, as NO3, from low to high, and the day on which plants run short (or None).

    ``uptake_times`` is None where the readings do not tell it.
    """

    days_to_shortage: Annotated[DaysAhead | None, Label("Plants run short in")]
    nitrate_in_28_days_mg_l: Annotated[LevelAhead, Label("Nitrate in 28 days")]
    low: Annotated[LevelAhead, Label("At least")]
    high: Annotated[LevelAhead, Label("At most")]
    fitted: Annotated[bool, Label("Fitted to the readings")]
    uptake_times: Annotated[
        Factor | None, Label("Uptake by the readings, times what the records say")
    ]


class NoOutlook(NamedTuple):
    """Why there is no forecast: what is missing, in words."""

    missing: list[str]


def outlook(tank: ShelfTank, log: Log, readings: dict[str, Latest]) -> Outlook | NoOutlook:
    """The forecast, or what it lacks: nothing is guessed that the tank does not say."""
    missing = lacks(tank, log, readings)
    if missing:
        return NoOutlook(missing)
    now = model_tank(tank, log, readings)
    fitted = fit(now, log)
    return by_records(now) if fitted is None else by_fit(now, fitted)


def by_fit(now: Tank, fitted: FittedForecast) -> Outlook:
    """The forecast from the fit: its limits hold four readings in five."""
    told = {one.name: one.factor for one in fitted.parameters if one.told}
    short = run(now, fitted.rates).record.hunger.first_day
    middle, low, high = fitted.nitrate[-1], fitted.low[-1], fitted.high[-1]
    return Outlook(short, middle, low, high, True, told.get("uptake"))


def by_records(now: Tank) -> Outlook:
    """The forecast by what records and log say of growth, from a quarter of it to two and a half times."""
    ahead = [run(now, Rates(growth=pace)) for pace in PACES]
    ends, middle = [outcome.last.nitrate for outcome in ahead], ahead[PACES.index(1.0)]
    unread = NEAR_STEPS * READINGS[NITRATE].step
    short = middle.record.hunger.first_day
    low, high = max(0.0, min(ends) - unread), max(ends) + unread
    return Outlook(short, middle.last.nitrate, low, high, False, None)


def fit(now: Tank, log: Log) -> FittedForecast | None:
    """The fit to the readings of the last weeks; None where they are too few or cannot tell."""
    nitrate = lately(log, NITRATE)
    if len(nitrate) < LEAST_READINGS or nitrate[-1].days - nitrate[0].days < LEAST_SPAN_DAYS:
        return None
    rows = [reading_of(one, what, log) for what in FIELDS for one in lately(log, what)]
    unchanged = now._replace(change_percent=0.0)  # what was changed, and what will be, are events
    changes = [*past_changes(log), *planned_changes(now, log)]
    try:
        found = fit_to_readings(unchanged, rows, changes, AHEAD_DAYS, effort=Effort(MOST_STEPS))
    except FitTooLong:
        return None
    return found if found.enough else None


def lately(log: Log, what: str) -> list[Dated]:
    """The readings of one thing that a fit is made to."""
    return [one for one in log.readings(what) if log.days_ago(one.day) <= FIT_DAYS]


def reading_of(one: Dated, what: str, log: Log) -> Reading:
    """A reading of the log as the fit takes it: today is day 0."""
    step = one.entry.step or READINGS[what].step
    return Reading(min(0.0, one.days - log.end), what, one.value, step)  # type: ignore[arg-type]


def past_changes(log: Log) -> Iterator[Event]:
    """The changes of water of the last weeks."""
    for one in log.of("change"):
        if log.days_ago(one.day) <= FIT_DAYS:
            yield Event(min(0.0, one.days - log.end), "change", one.value)


def planned_changes(now: Tank, log: Log) -> Iterator[Event]:
    """The changes that the tank's habit brings, counted from the last, and none that lies behind."""
    if not now.change_percent:
        return
    last = max((one.days - log.end for one in log.of("change")), default=0.0)
    day = last + now.change_every_days
    if day <= 0:
        day = now.change_every_days
    while day < AHEAD_DAYS:
        yield Event(day, "change", now.change_percent)
        day += now.change_every_days


def run(tank: Tank, rates: Rates) -> Outcome:
    """One run of the engine over the weeks ahead."""
    return simulate(tank, [], AHEAD_DAYS, rates, relative=COARSE)
