"""Readings of the weeks before: what they tell of uptake, feed and filter, and what the run starts from."""

from collections.abc import Sequence
from typing import Annotated, NamedTuple

from calculators.core.form_hints import Step
from calculators.core.numbers import show_number as show
from calculators.core.quantities import Days, Factor
from calculators.core.quantity import Choices, Help, Label, Possible, PossibleBy
from calculators.core.result import Note
from calculators.science.fitting.enough_readings import (
    LEAST_READINGS,
    LEAST_SPAN_DAYS,
    reaches_far,
)
from calculators.science.fitting.fit import (
    MOST_FIT_STEPS,
    MOST_MISFIT,
    FittedForecast,
    FitTooLong,
    Parameter,
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
from calculators.science.nitrogen.forecast_tank import Rates, Tank
from calculators.science.nitrogen.ode import Effort

TIMES = {
    "uptake": "the plants take {} what was entered",
    "feed": "the feed brings {} the nitrogen that was entered",
    "filter": "the filter is {} as mature as was entered",
}


class PastReading(NamedTuple):
    """One reading of today or of a day before."""

    day: Annotated[
        Days, Label("Day"), Possible(-365, 0), Step(1), Help("0 is today, -7 a week ago.")
    ]
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


class Start(NamedTuple):
    """What a forecast starts from: the tank today, the rates, whether they are fitted, and what to say."""

    tank: Tank
    rates: Rates
    fitted: bool = False
    notes: tuple[Note, ...] = ()


def start_from(tank: Tank, rates: Rates, read: Sequence[PastReading]) -> Start:
    """The tank and the rates by the readings; as they were entered where there are none.

    Changes of water are taken to have been as they are entered, counted from the first reading.
    """
    if not read:
        return Start(tank, rates)
    now = read_today(tank, read)
    rows = [Reading(one.day, one.what, one.value) for one in read]
    if not any(one.what == NITRATE and one.day == 0 for one in rows):
        rows.append(Reading(0.0, NITRATE, now.nitrate_mg_l))
    if not reaches_far(rows):
        return Start(now, rates, notes=(too_few(rows),))
    try:
        found = fit_to_readings(
            now, rows, days_ahead=0.0, rates=rates, effort=Effort(MOST_FIT_STEPS)
        )
    except FitTooLong:
        return Start(now, rates, notes=(TOO_LONG,))
    if found.misfit > MOST_MISFIT:
        return Start(now, rates, notes=(CONTRADICTS,))
    if not found.enough:
        return Start(now, rates, notes=(TELLS_NOTHING,))
    return Start(by_fit(now, found), found.rates, True, (told(found, len(rows)),))


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


def read_of_toxic(
    ammonia_mg_n_l: float | None, nitrite_mg_n_l: float | None, read: Sequence[PastReading]
) -> tuple[float | None, float | None]:
    """What is known of ammonia and nitrite today, from either place; None where nothing is. In mg N/L."""
    today = today_of(read)
    return (
        today.get(AMMONIA) if ammonia_mg_n_l is None else ammonia_mg_n_l,
        today.get(NITRITE) if nitrite_mg_n_l is None else nitrite_mg_n_l,
    )


def by_fit(now: Tank, found: FittedForecast) -> Tank:
    """The tank today by the fit: its nitrate, and the filter where it is younger than was entered."""
    filter_times = next(
        (one.factor for one in found.parameters if one.name == "filter" and one.told), 1.0
    )
    return now._replace(
        nitrate_mg_l=found.tank.nitrate_mg_l,
        filter_maturity_percent=now.filter_maturity_percent * min(1.0, filter_times),
    )


def told(found: FittedForecast, count: int) -> Note:
    """What the readings tell, each with the limits that hold it four times in five."""
    said = [
        TIMES[one.name].format(times(one))
        for one in found.parameters
        if one.told and one.name in TIMES
    ]
    return Note(
        "info",
        f"Fitted to {count} readings: {'; '.join(said)}. The forecast goes on from there; what they tell "
        "nothing of stays as it was entered.",
        first=True,
    )


def times(one: Parameter) -> str:
    """A factor with its limits in words."""
    return f"{show(one.factor, 2)} times ({show(one.low, 2)} to {show(one.high, 2)})"


def too_few(rows: Sequence[Reading]) -> Note:
    """That the readings are too few, or too near one another."""
    count = sum(one.what == NITRATE for one in rows)
    return Note(
        "info",
        f"Not fitted: of nitrate there {'is one reading' if count == 1 else f'are {count} readings'}, with "
        f"today's. It takes {LEAST_READINGS} over {LEAST_SPAN_DAYS:g} days at least. The forecast goes by "
        "what was entered.",
        first=True,
    )


TOO_LONG = Note(
    "info",
    "Not fitted: that would take too long for these readings. Leave the oldest out. The forecast goes by "
    "what was entered.",
    first=True,
)
CONTRADICTS = Note(
    "caution",
    "Not fitted: no uptake, feed or filter within reason gives these readings with the water changes that "
    "were entered. Look whether each reading, its day and the changes are right, and test again. The "
    "forecast goes by what was entered, and so is not to be relied on.",
    first=True,
)
TELLS_NOTHING = Note(
    "info",
    "Not fitted: within what the kits see, these readings agree with what was entered and tell no more. The "
    "forecast goes by what was entered.",
    first=True,
)
