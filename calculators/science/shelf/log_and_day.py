"""What the standing of a tank and the round of all tanks both ask: the log, and the day."""

from datetime import date
from typing import Annotated

from calculators.core.dates import DAY, read_date
from calculators.core.quantity import FromFile, Help, IsDate, Label, MayBeEmpty, Private
from calculators.science.shelf.entries import MOST_ENTRIES, Entry

LogAsked = Annotated[
    list[Entry],
    Label("Log"),
    Help("What was read and done. It stays on this device."),
    FromFile(MOST_ENTRIES),
    MayBeEmpty(),
    Private(),
]
DayAsked = Annotated[
    str | None, Label("Day"), IsDate(), DAY, Help("Empty: today, by this device's clock.")
]


def day_asked(today: str | None, example_day: str | None = None) -> date:
    """The day that is asked about: as given, else the worked example's own, else the device's."""
    text = today or example_day
    return read_date(text) if text else date.today()
