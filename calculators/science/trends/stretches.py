"""Readings cut into stretches by the water changes between them."""

from bisect import bisect_left
from collections.abc import Sequence
from typing import Annotated, NamedTuple

from calculators.core.quantities import Concentration, Days, Percent
from calculators.core.quantity import Label
from calculators.core.result import Refusal, Refused
from calculators.science.trends.theil_sen import Stretch

DAY_PLACES = 2  # readings within about a quarter of an hour are taken at one time


class DatedReading(NamedTuple):
    """One reading of a test."""

    day: Annotated[Days, Label("Day")]
    value: Annotated[Concentration, Label("Reading")]


class Change(NamedTuple):
    """One water change; a change of 0 % is none."""

    day: Annotated[Days, Label("Day")]
    percent: Annotated[Percent, Label("Share changed")]


def into_stretches(readings: Sequence[DatedReading], changes: Sequence[Change]) -> list[Stretch]:
    """Sort the readings and cut them at each change; one on the day of a change is before it.

    Raises ``Refused``, naming each row whose day another reading has already.
    """
    refuse_equal_days(readings)
    days = change_days(changes)
    cut: dict[int, list[tuple[float, float]]] = {}
    for reading in sorted(readings):
        cut.setdefault(bisect_left(days, reading.day), []).append((reading.day, reading.value))
    return list(cut.values())


def change_days(changes: Sequence[Change]) -> list[float]:
    """The days on which water was changed, in order."""
    return sorted({change.day for change in changes if change.percent > 0})


def refuse_equal_days(readings: Sequence[DatedReading]) -> None:
    """Refuse a second reading at one time: no slope runs between the two.

    Raises ``Refused`` with every such row.
    """
    first: dict[float, int] = {}
    wrong = []
    for row, reading in enumerate(readings, start=1):
        time = round(reading.day, DAY_PLACES)
        if time in first:
            why = f"reading {first[time]} has this day already; write 4.5 for noon of day 4"
            wrong.append(Refusal(f"readings[{row}].day", why, 0, 36_500))
        first.setdefault(time, row)
    if wrong:
        raise Refused(*wrong)
