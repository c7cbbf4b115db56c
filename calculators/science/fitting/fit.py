"""The forecast fitted to a keeper's readings: what they can tell of uptake, feed and filter.

Gauss and Newton's least squares with what is believed beforehand as further readings, so that a
parameter about which the readings are silent keeps its wide guess, and says so.
"""

import math
from collections.abc import Callable, Sequence
from typing import Literal, NamedTuple

from calculators.science.fitting.fit_linear import covariance, solve_linear, spread_of
from calculators.science.fitting.fit_readings import (
    AMMONIA,
    NITRATE,
    NITRITE,
    Reading,
    predicted,
    values_at,
)
from calculators.science.fitting.fitted_course import (
    SURE_80,
    FittedCourse,
    course_days,
    fitted_course,
)
from calculators.science.nitrogen.forecast_tank import Event, Rates, Tank
from calculators.science.nitrogen.ode import Effort
from calculators.science.nitrogen.simulate import COARSE, simulate

Name = Literal["uptake", "feed", "filter", "start"]
# Natural logarithms of how far each may lie from its guess, one standard deviation; judgement.
BELIEVED: dict[Name, float] = {"uptake": 0.5, "feed": 0.3, "filter": 0.7, "start": 0.1}
FURTHEST = 2.0  # standard deviations that a parameter is let go from its guess
NUDGE = 0.05
ROUNDS = 6
SETTLED = 0.01
MOST_MISFIT = 9.0  # over which no parameter within reason meets the readings; judgement
POOR_FIT = 3.0  # misfit over what the kits explain, from which the band is widened; judgement
TOXIC = (AMMONIA, NITRITE)
TOLD_BELOW = (
    0.7  # of the believed spread: narrower, and the readings have told something; judgement
)


class FitTooLong(ArithmeticError):
    """The effort was spent before the fit had settled."""


class Parameter(NamedTuple):
    """A parameter as a factor on its guess: middle, and the limits that hold it with 80 %.

    ``told`` is false where the readings say next to nothing of it.
    """

    name: Name
    factor: float
    low: float
    high: float
    told: bool


class FittedForecast(NamedTuple):
    """Parameters, the tank and rates as fitted, and the course from today: mg/L by day.

    ``low`` and ``high`` hold 80 % of the nitrate that a kit would read, its own error included.
    """

    parameters: tuple[Parameter, ...]
    tank: Tank
    rates: Rates
    days: list[float]
    nitrate: list[float]
    low: list[float]
    high: list[float]
    enough: bool
    misfit: float = 1.0  # over what the kits explain, as a factor of the variance
    courses: tuple[FittedCourse, ...] = ()  # from the first reading on, nitrate first


def fit_to_readings(
    tank_conditions: Tank,
    readings: Sequence[Reading],
    events: Sequence[Event] = (),
    days_ahead: float = 28.0,
    rates: Rates = Rates(),  # noqa: B008 - immutable
    effort: Effort | None = None,
) -> FittedForecast:
    """Fit uptake, feed and filter to readings of day 0 or before, and forecast from the fit.

    ``events`` may lie before day 0; the tank's plants are taken to weigh at the first reading what
    they are said to weigh. Raises ``ValueError`` for a reading that lies ahead, ``FitTooLong``
    where the effort is spent.
    """
    if any(reading.day > 0 for reading in readings):
        raise ValueError("readings: a reading may not lie ahead of today")
    if not readings:
        raise ValueError("readings: at least one is needed")
    names = parameters_for(readings)
    first = min(reading.day for reading in readings)
    begun, moved = shifted(tank_conditions, readings, events, first)
    days, drawn = course_days(first, days_ahead, events), courses_of(readings)

    def model(theta: Sequence[float]) -> list[float]:
        """All readings, then the courses one behind the other, with these parameters."""
        tank, changed = applied(begun, rates, names, theta)
        length = days_ahead - first + 1e-6
        ran = simulate(tank, moved, length, changed, relative=COARSE, effort=effort)
        if ran.day < length:
            raise FitTooLong("too many steps")
        lines = ran.record.lines
        told = [predicted(lines, reading, first) for reading in readings]
        since = [day - first for day in days]
        return told + [level for one in drawn for level in values_at(lines, since, one.what)]

    theta, course, slopes, narrow = settle(model, names, readings)
    tank, changed = applied(begun, rates, names, theta)
    misfit = badness(course, readings, len(names))
    wide = [math.sqrt(misfit * spread_of(row, narrow)) for row in slopes[len(readings) :]]
    made = [
        fitted_course(days, part(course[len(readings) :], n, days), part(wide, n, days), kit)
        for n, kit in enumerate(drawn)
    ]
    ahead = made[0].ahead().daily()
    return FittedForecast(
        tuple(
            named(name, theta[place], math.sqrt(narrow[place][place]))
            for place, name in enumerate(names)
        ),
        tank._replace(nitrate_mg_l=ahead.levels[0]),
        changed,
        ahead.days,
        ahead.levels,
        ahead.edge(-1),
        ahead.edge(1),
        any(
            math.sqrt(narrow[place][place]) < TOLD_BELOW * BELIEVED[name]
            for place, name in enumerate(names)
            if name != "start"
        ),
        misfit,
        tuple(made),
    )


def part(values: Sequence[float], number: int, days: Sequence[float]) -> Sequence[float]:
    """One of several courses that stand one behind the other, each as long as ``days``.

    The ``values`` are in the unit of each thing's readings.
    """
    return values[number * len(days) : (number + 1) * len(days)]


def courses_of(readings: Sequence[Reading]) -> list[Reading]:
    """A reading of each thing whose course is worked out: nitrate always, what is toxic where it was read."""
    first: dict[str, Reading] = {
        "nitrate_mg_l": readings[0]._replace(what="nitrate_mg_l", step=None)
    }
    for one in sorted(readings):
        if one.what in (NITRATE, *TOXIC):
            first[one.what] = one
    return list(first.values())


def parameters_for(readings: Sequence[Reading]) -> list[Name]:
    """The filter is only asked about where ammonia or nitrite was read."""
    toxic = any(one.what in TOXIC for one in readings)
    return ["start", "uptake", "feed", *(["filter"] if toxic else [])]  # type: ignore[list-item]


def shifted(
    tank: Tank, readings: Sequence[Reading], events: Sequence[Event], first: float
) -> tuple[Tank, list[Event]]:
    """The tank at its first readings, and the events counted from then on."""
    at_first: dict[str, float] = dict.fromkeys(TOXIC, 0.0)
    # What is toxic comes and goes: a later reading tells nothing of then.
    begun = [one for one in sorted(readings) if one.what not in TOXIC or one.day < first + 1]
    for reading in reversed(begun):  # so that of each the first stays
        at_first[reading.what] = reading.value
    tank = Tank(**(tank._asdict() | at_first))  # readings bear the names of the tank's fields
    moved = []
    for event in sorted(events):
        if event.day < first and event.kind == "feed":
            tank = tank._replace(feed_g_week=event.value)
        elif event.day >= first:
            moved.append(event._replace(day=event.day - first))
    return tank, moved


def applied(
    tank: Tank, rates: Rates, names: Sequence[Name], theta: Sequence[float]
) -> tuple[Tank, Rates]:
    """The tank and rates with parameters put in, each the logarithm of a factor.

    They stand in ``theta``, as many as ``names``.
    """
    for name, value in zip(names, theta, strict=True):
        factor = math.exp(value)
        if name == "start":
            tank = tank._replace(nitrate_mg_l=tank.nitrate_mg_l * factor)
        elif name == "uptake":
            rates = rates._replace(growth=rates.growth * factor)
            tank = tank._replace(other_uptake_mg_n_day=tank.other_uptake_mg_n_day * factor)
        elif name == "feed":
            rates = rates._replace(feed=rates.feed * factor)
        else:
            tank = tank._replace(
                filter_maturity_percent=min(100.0, tank.filter_maturity_percent * factor)
            )
    return tank, rates


def settle(
    model: Callable[[Sequence[float]], list[float]],
    names: Sequence[Name],
    readings: Sequence[Reading],
) -> tuple[list[float], list[float], list[list[float]], list[list[float]]]:
    """The parameters that fit best: natural logarithms of factors, as many as ``names``.

    With them come the course that they give, a row of slopes by the parameters for each entry of it,
    and the covariance, a row and a column for each parameter.
    """
    theta, count = [0.0] * len(names), len(readings)
    weights = [1 / reading.error**2 for reading in readings]
    beliefs = [1 / BELIEVED[name] ** 2 for name in names]
    course, slopes = model(theta), [[0.0]]
    for turn in range(ROUNDS):
        columns = []
        for place in range(len(names)):
            nudged = [value + NUDGE * (n == place) for n, value in enumerate(theta)]
            columns.append([(b - a) / NUDGE for a, b in zip(course, model(nudged), strict=True)])
        slopes = [list(row) for row in zip(*columns, strict=True)]
        misses = [one.value - told for one, told in zip(readings, course[:count], strict=True)]
        step = solve_linear(slopes[:count], weights, misses, beliefs, theta)
        limits = [FURTHEST * BELIEVED[name] for name in names]
        new = [max(-m, min(m, a + d)) for a, d, m in zip(theta, step, limits, strict=True)]
        moved = max(abs(a - b) for a, b in zip(new, theta, strict=True))
        if turn == ROUNDS - 1 or moved < SETTLED:
            break
        theta, course = new, model(new)
    return theta, course, slopes, covariance(slopes[:count], weights, beliefs)


def badness(course: Sequence[float], readings: Sequence[Reading], count: int) -> float:
    """Misfit over what the kits' errors explain: a poor fit widens the band.

    As a factor of the variance; ``course`` begins with what is predicted for each reading.
    """
    free = len(readings) - count
    if free < 1:
        return 1.0
    misses = ((one.value - told) / one.error for one, told in zip(readings, course, strict=False))
    misfit = sum(miss * miss for miss in misses) / free
    return misfit if misfit > POOR_FIT else 1.0


def named(name: Name, theta: float, spread: float) -> Parameter:
    """A parameter with its limits.

    Both ``theta`` and its ``spread``, a standard deviation, are natural logarithms of a factor.
    """
    return Parameter(
        name,
        math.exp(theta),
        math.exp(theta - SURE_80 * spread),
        math.exp(theta + SURE_80 * spread),
        spread < TOLD_BELOW * BELIEVED[name],
    )
