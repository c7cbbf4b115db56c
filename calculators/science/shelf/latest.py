"""The latest reading of each thing, and for how long it may be gone by."""

from datetime import date
from typing import NamedTuple

from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.log import Dated, Log

READ_WITHIN_DAYS = 60  # the contract's: nothing read in so long is not known
# For how long one reading may be gone by, in days: what turns within hours goes out of date first.
# Common practice, no source.
USE_DAYS = {
    "ammonia_mg_n_l": 7, "nitrite_mg_n_l": 7, "temperature_c": 7, "oxygen_mg_l": 3, "ph": 14,
    "nitrate_mg_l": 14, "kh_dh": 30, "gh_dh": 60, "phosphate_mg_l": 30, "copper_ug_l": 30,
    "cover_percent": 14,
}  # fmt: skip
assert set(USE_DAYS) == set(READINGS)


class Latest(NamedTuple):
    """The latest readings of one thing: several where they were entered for one moment."""

    what: str
    values: tuple[float, ...]
    day: date
    age_days: int

    @property
    def value(self) -> float:
        """The highest of them. In the unit of the reading."""
        return max(self.values)

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
    """The latest of one thing's readings."""
    last = found[-1]
    values = tuple(one.value for one in found if one.at == last.at)
    return Latest(what, values, last.day, log.days_ago(last.day))


def ago(days: int) -> str:
    """How long ago, in words."""
    return "today" if days == 0 else "yesterday" if days == 1 else f"{days} days ago"
