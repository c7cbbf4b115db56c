"""The latest reading of each thing, and for how long it may be gone by."""

from datetime import date
from typing import NamedTuple

from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.log import Dated, Log
from calculators.science.water.unread import TOXIC_USE_DAYS

READ_WITHIN_DAYS = 60  # the contract's: nothing read in so long is not known
# For how long one reading may be gone by, in days: what turns within hours goes out of date first.
# Common practice, no source.
USE_DAYS = {
    "ammonia_mg_n_l": TOXIC_USE_DAYS, "nitrite_mg_n_l": TOXIC_USE_DAYS, "temperature_c": 7,
    "oxygen_mg_l": 3, "ph": 14,
    "nitrate_mg_l": 14, "kh_dh": 30, "gh_dh": 60, "phosphate_mg_l": 30, "copper_ug_l": 30,
    "cover_percent": 14,
}  # fmt: skip
assert set(USE_DAYS) == set(READINGS)


# What is done to the water: a reading after it is of other water than one before.
WATER_DONE = ("change", "top-up", "dose")


class Latest(NamedTuple):
    """The latest readings of one thing: several where one day has more, and nothing was done in between."""

    what: str
    values: tuple[float, ...]
    day: date
    age_days: int
    is_by_clock: bool = (
        True  # else its age is counted from the newest entry of the log, not from today
    )

    @property
    def value(self) -> float:
        """The highest of them. In the unit of the reading."""
        return max(self.values)

    @property
    def of_when(self) -> str:
        """How long ago it was, or its date where the clock that would tell is in doubt."""
        return ago(self.age_days) if self.is_by_clock else dated(self.day)

    @property
    def when(self) -> str:
        """The same after the figure, as ``read yesterday``."""
        return f"{'read' if self.is_by_clock else 'dated'} {self.of_when}"

    @property
    def is_old(self) -> bool:
        """Whether it is older than such a reading is of use."""
        return self.age_days > USE_DAYS[self.what]


def latest_readings(log: Log) -> dict[str, Latest]:
    """The latest reading of each thing that was ever read."""
    by_what: dict[str, list[Dated]] = {}
    for one in log.of("reading"):
        if one.entry.what in READINGS and one.entry.value is not None:
            by_what.setdefault(one.entry.what, []).append(one)
    return {what: latest_of(what, found, log) for what, found in by_what.items()}


def latest_of(what: str, found: list[Dated], log: Log) -> Latest:
    """The latest of one thing's readings.

    What was read earlier on the same day counts as well: without a change of water or a dose in the log
    between the two, neither is known to be the truer one.
    """
    last = found[-1]
    of_day = [one for one in found if one.day == last.day]
    done = [one.at for one in log.of(*WATER_DONE) if one.at < last.at] if of_day[1:] else []
    values = tuple(one.value for one in of_day if not done or one.at >= done[-1])
    return Latest(what, values, last.day, log.days_ago(last.day), log.is_by_clock)


def readings_ahead(log: Log) -> dict[str, Latest]:
    """The latest reading of each thing that is dated later than the day that is asked about."""
    whole = latest_readings(log.up_to_newest())
    later = {one.entry.what for one in log.later if one.entry.kind == "reading"}
    return {what: one for what, one in whole.items() if what in later}


def dated(day: date) -> str:
    """A day in words, with its year."""
    return f"{day.day} {day:%B %Y}"


def ago(days: int) -> str:
    """How long ago, in words."""
    return "today" if days == 0 else "yesterday" if days == 1 else f"{days} days ago"
