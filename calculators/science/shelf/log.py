"""The log of one tank: its entries in order, each once, none from after the day that is asked about."""

from collections.abc import Iterable
from datetime import date, datetime, timedelta
from typing import NamedTuple

from calculators.core.dates import read_moment
from calculators.science.shelf.entries import Entry

ZONES = timedelta(days=1)  # what is today in one zone may be tomorrow in another
SECONDS_PER_DAY = 86_400.0


class Dated(NamedTuple):
    """An entry with its moment, and its day by the keeper's own clock."""

    at: datetime
    day: date
    entry: Entry

    @property
    def days(self) -> float:
        """The moment in days since a fixed one."""
        return self.at.timestamp() / SECONDS_PER_DAY

    @property
    def value(self) -> float:
        """The value; 0 where it has none."""
        return self.entry.value or 0.0


class Log(NamedTuple):
    """What was logged of one tank up to a day."""

    today: date
    entries: tuple[Dated, ...]
    left_out: int = 0  # entries of a later day

    def of(self, *kinds: str) -> list[Dated]:
        """The entries of some kinds, oldest first."""
        return [one for one in self.entries if one.entry.kind in kinds]

    def readings(self, what: str) -> list[Dated]:
        """The readings of one thing, oldest first."""
        return [one for one in self.of("reading") if one.entry.what == what]

    def days_ago(self, day: date) -> int:
        """How many days ago a day is; none for what another zone calls tomorrow."""
        return max(0, (self.today - day).days)


def log_of(tank_id: str, entries: Iterable[Entry], today: date) -> Log:
    """The log of a tank. Entries without a tank are its own; one id counts once, however often it stands."""
    latest = today + ZONES
    dated = sorted(
        (Dated(read_moment(one.at), date.fromisoformat(one.at[:10]), one)
         for one in entries if one.tank in (None, tank_id)),
        key=lambda one: (one.at, one.entry.id or "", repr(one.entry)),
    )  # fmt: skip
    # One without an id, as a form may hold it, is its own.
    once = {one.entry.id or number: one for number, one in enumerate(dated)}
    kept = [one for one in once.values() if one.day <= latest]
    kept.sort(key=lambda one: (one.at, one.entry.id or ""))
    return Log(today, tuple(kept), len(once) - len(kept))
