"""What a log holds for the fit: the readings of the last weeks, and changes of water behind and ahead."""

from collections.abc import Iterator

from calculators.science.fitting.fit_readings import Reading
from calculators.science.nitrogen.forecast_tank import Event, Tank
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.log import Dated, Log

AHEAD_DAYS = 28
FIT_DAYS = 28  # of readings


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
