"""Readings of the weeks before: what they tell of uptake, feed and filter, and what the run starts from."""

from collections.abc import Sequence
from typing import Annotated, NamedTuple

from calculators.core.form_hints import Step
from calculators.core.quantities import Days, Factor, Percent
from calculators.core.quantity import Choices, Help, Label, Possible, PossibleBy
from calculators.core.result import Note
from calculators.nitrogen_forecast.fit_words import (
    CONTRADICTS,
    TELLS_NOTHING,
    TOO_LONG,
    dated_changes,
    told,
    too_few,
    undated_changes,
)
from calculators.science.fitting.enough_readings import MOST_DAYS_BACK, reaches_far
from calculators.science.fitting.fit import (
    MOST_MISFIT,
    FittedForecast,
    FitTooLong,
    fit_to_readings,
)
from calculators.science.fitting.fit_readings import (
    AMMONIA,
    HARDNESS,
    NITRATE,
    NITRITE,
    Reading,
    What,
)
from calculators.science.nitrogen.forecast_tank import Event, Rates, Tank
from calculators.science.nitrogen.ode import Effort

FIT_STEPS = (
    3_000  # of the solver: the forecast follows in the same answer, within two seconds in a browser
)
PastDay = Annotated[
    Days, Label("Day"), Possible(-MOST_DAYS_BACK, 0), Step(1), Help("0 is today, -7 a week ago.")
]


class PastReading(NamedTuple):
    """One reading of today or of a day before."""

    day: PastDay
    what: Annotated[
        What,
        Label("What"),
        Choices(
            (
                "nitrate, mg/L as NO₃",
                "ammonia in total, mg N/L",
                "nitrite, mg N/L",
                "carbonate hardness (KH), °dH",
            )
        ),
    ]
    value: Annotated[
        Factor,
        Label("Reading"),
        Possible(0, 1_000),
        PossibleBy("what", {NITRATE: (0, 1_000), AMMONIA: (0, 100), NITRITE: (0, 100), HARDNESS: (0, 50)}),
    ]  # fmt: skip


class PastChange(NamedTuple):
    """One change of water of today or of a day before."""

    day: PastDay
    percent: Annotated[Percent, Label("Changed")]


class Start(NamedTuple):
    """What a forecast starts from: the tank today, the rates, whether they are fitted, and what to say."""

    tank: Tank
    rates: Rates
    fitted: bool = False
    notes: tuple[Note, ...] = ()


def start_from(
    tank: Tank,
    rates: Rates,
    read: Sequence[PastReading],
    changed: Sequence[PastChange] | None = None,
) -> Start:
    """The tank and the rates by the readings; as they were entered where there are none.

    Changes of water of the weeks before are those that were ``changed`` on a day. Where none was dated,
    they are taken to have been as they are entered, counted from the first reading, and that is said.
    """
    if not read:
        return Start(tank, rates)
    found = by_readings(tank, rates, read, changed)
    if not found.notes:
        return found
    taken = how_changed(tank, read, changed)
    first, *rest = found.notes
    return found._replace(notes=(first._replace(text=f"{first.text} {taken}"), *rest))


def by_readings(
    tank: Tank,
    rates: Rates,
    read: Sequence[PastReading],
    changed: Sequence[PastChange] | None,
) -> Start:
    """The same without what is said of the changes."""
    now = read_today(tank, read)
    rows = [Reading(one.day, one.what, one.value) for one in read]
    if not any(one.what == NITRATE and one.day == 0 for one in rows):
        rows.append(Reading(0.0, NITRATE, now.nitrate_mg_l))
    if not reaches_far(rows):
        return Start(now, rates, notes=(too_few(rows),))
    try:
        found = fit_to_readings(
            now if changed is None else now._replace(change_percent=0.0),
            rows,
            [Event(one.day, "change", one.percent) for one in changed or ()],
            days_ahead=0.0,
            rates=rates,
            effort=Effort(FIT_STEPS),
        )
    except FitTooLong:
        return Start(now, rates, notes=(TOO_LONG,))
    if found.misfit > MOST_MISFIT:
        return Start(now, rates, notes=(CONTRADICTS,))
    if not found.enough:
        return Start(now, rates, notes=(TELLS_NOTHING,))
    return Start(by_fit(now, found), found.rates, True, (told(found, len(rows)),))


def how_changed(
    tank: Tank, read: Sequence[PastReading], changed: Sequence[PastChange] | None
) -> str:
    """How water is taken to have been changed in the weeks before."""
    first = min(one.day for one in read)
    if changed is not None:
        return dated_changes(sum(one.day >= first for one in changed))
    return undated_changes(tank.change_percent, tank.change_every_days)


def read_today(tank: Tank, read: Sequence[PastReading]) -> Tank:
    """The tank with what was read of it today; of two figures for one thing that harms, the worse."""
    today = today_of(read)
    return tank._replace(
        nitrate_mg_l=today.get(NITRATE, tank.nitrate_mg_l),
        ammonia_mg_n_l=max(today.get(AMMONIA, 0.0), tank.ammonia_mg_n_l),
        nitrite_mg_n_l=max(today.get(NITRITE, 0.0), tank.nitrite_mg_n_l),
        kh_dh=today.get(HARDNESS) if tank.kh_dh is None else tank.kh_dh,
    )


def today_of(read: Sequence[PastReading]) -> dict[str, float]:
    """What was read today, each in its own unit; of two readings of one thing the worse, of KH the lower."""
    today: dict[str, float] = {}
    for one in read:
        if one.day == 0:
            worse = min if one.what == HARDNESS else max
            today[one.what] = worse(one.value, today.get(one.what, one.value))
    return today


def by_fit(now: Tank, found: FittedForecast) -> Tank:
    """The tank today by the fit: its nitrate, and the filter where it is younger than was entered."""
    filter_times = next(
        (one.factor for one in found.parameters if one.name == "filter" and one.told), 1.0
    )
    return now._replace(
        nitrate_mg_l=found.tank.nitrate_mg_l,
        filter_maturity_percent=now.filter_maturity_percent * min(1.0, filter_times),
    )
