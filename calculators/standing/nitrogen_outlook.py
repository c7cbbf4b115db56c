"""A short forecast of a tank's nitrate, fitted to its readings: the one door to the nitrogen engine.

Uptake by the plants, the feed's nitrogen and the filter are fitted to the readings of the last weeks,
and the forecast runs on from the fit. Where the readings cannot tell, the growth of the plants is what
nobody knows well: the runs differ by it, and the answer says that it is not fitted.
"""

from typing import Annotated, NamedTuple

from calculators.core.quantities import DaysAhead, Factor, LevelAhead
from calculators.core.quantity import Label
from calculators.science.fitting.enough_readings import reaches_far
from calculators.science.fitting.fit import (
    MOST_MISFIT,
    FittedForecast,
    FitTooLong,
    fit_to_readings,
)
from calculators.science.fitting.fit_readings import FIELDS, Reading
from calculators.science.fitting.fitted_course import FittedCourse
from calculators.science.nitrogen.forecast_tank import Event, Rates, Tank
from calculators.science.nitrogen.ode import Effort
from calculators.science.nitrogen.simulate import COARSE, Outcome, simulate
from calculators.science.shelf.engine_tank import NITRATE, lacks, model_tank
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.latest import Latest
from calculators.science.shelf.log import Log
from calculators.science.shelf.shelf_tank import ShelfTank
from calculators.standing.fit_inputs import (
    AHEAD_DAYS,
    lately,
    past_changes,
    planned_changes,
    reading_of,
)
from calculators.standing.telling_reading import (
    TellingReading,
    kit_of,
    telling_reading,
)

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


class FittedWeeks(NamedTuple):
    """What is drawn of a fit: its courses, the readings it was made to, changes, and who starves first.

    ``hungry`` holds keys of plants, ``hungry_day`` is None where none runs short within the weeks.
    """

    courses: tuple[FittedCourse, ...]
    readings: list[Reading]
    changes: list[Event]
    hungry: tuple[str, ...]
    hungry_day: float | None


class WeeksAhead(NamedTuple):
    """The forecast or what it lacks, and what stands beside it: the fit, or the reading that would tell.

    ``contradicts`` says that no uptake, feed or filter within reason meets the readings.
    """

    outlook: Outlook | NoOutlook
    weeks: FittedWeeks | None = None
    telling: TellingReading | None = None
    contradicts: bool = False


def look_ahead(tank: ShelfTank, log: Log, readings: dict[str, Latest]) -> WeeksAhead:
    """The forecast, or what it lacks: nothing is guessed that the tank does not say."""
    missing = lacks(tank, log, readings)
    if missing:
        return WeeksAhead(NoOutlook(missing))
    now = model_tank(tank, log, readings)
    rows = [reading_of(one, what, log) for what in FIELDS for one in lately(log, what)]
    changes = [*past_changes(log), *planned_changes(now, log)]
    try:
        fitted = fit(now, rows, changes)
    except FitTooLong:
        return WeeksAhead(by_records(now, by_pace(now)))
    if fitted is not None and fitted.misfit <= MOST_MISFIT:
        return by_fit(now, fitted, rows, changes)
    ahead = by_pace(now)
    if fitted is not None:
        return WeeksAhead(by_records(now, ahead), contradicts=True)
    courses = [[(one.day, one.nitrate) for one in ran.record.lines] for ran in ahead]
    return WeeksAhead(by_records(now, ahead), None, telling_reading(rows, courses, kit_of(rows)))


def by_fit(
    now: Tank, fitted: FittedForecast, rows: list[Reading], changes: list[Event]
) -> WeeksAhead:
    """The forecast from the fit: its limits hold four readings in five."""
    told = {one.name: one.factor for one in fitted.parameters if one.told}
    hunger = run(now, fitted.rates).record.hunger
    middle, low, high = fitted.nitrate[-1], fitted.low[-1], fitted.high[-1]
    found = Outlook(hunger.first_day, middle, low, high, True, told.get("uptake"))
    return WeeksAhead(
        found, FittedWeeks(fitted.courses, rows, changes, hunger.names, hunger.first_day)
    )


def by_pace(now: Tank) -> list[Outcome]:
    """A run for each pace of growth, the slowest first."""
    return [run(now, Rates(growth=pace)) for pace in PACES]


def by_records(now: Tank, ahead: list[Outcome]) -> Outlook:
    """The forecast by what records and log say of growth, from a quarter of it to two and a half times."""
    ends, middle = [outcome.last.nitrate for outcome in ahead], ahead[PACES.index(1.0)]
    unread = NEAR_STEPS * READINGS[NITRATE].step
    short = middle.record.hunger.first_day
    low, high = max(0.0, min(ends) - unread), max(ends) + unread
    return Outlook(short, middle.last.nitrate, low, high, False, None)


def fit(now: Tank, rows: list[Reading], changes: list[Event]) -> FittedForecast | None:
    """The fit to the readings of the last weeks; None where they are too few or cannot tell.

    Raises ``FitTooLong``.
    """
    if not reaches_far(rows):
        return None
    unchanged = now._replace(change_percent=0.0)  # what was changed, and what will be, are events
    found = fit_to_readings(unchanged, rows, changes, AHEAD_DAYS, effort=Effort(MOST_STEPS))
    return found if found.enough else None


def run(tank: Tank, rates: Rates) -> Outcome:
    """One run of the engine over the weeks ahead."""
    return simulate(tank, [], AHEAD_DAYS, rates, relative=COARSE)
