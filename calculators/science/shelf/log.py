"""The log of one tank: its entries in order, each once; those of a later day than asked about stand apart."""

from collections.abc import Iterable, Mapping
from datetime import UTC, date, datetime, time, timedelta
from typing import NamedTuple

from calculators.core.dates import read_moment
from calculators.science.shelf.entries import Entry

ZONES = timedelta(days=1)  # what is today in one zone may be tomorrow in another
SECONDS_PER_DAY = 86_400.0
LAST_MINUTE = time(23, 59)


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

    def is_after(self, moment: str | None) -> bool:
        """Whether it is later than a moment; also where nobody knows the moment."""
        return moment is None or self.at > read_moment(moment)


class Log(NamedTuple):
    """What was logged of one tank up to a day."""

    today: date
    entries: tuple[Dated, ...]
    later: tuple[Dated, ...] = ()  # entries of a later day: the clock is behind, or a date is wrong
    # What a cut leaves of each plant, g wet, where plants were put in or taken out since they were listed.
    left_g: Mapping[str, float] = {}
    is_by_clock: bool = True  # else its day is that of the newest entry

    @property
    def end(self) -> float:
        """The last moment that is asked about, in days as ``Dated.days``."""
        return days_on(self.today, LAST_MINUTE)

    def of(self, *kinds: str) -> list[Dated]:
        """The entries of some kinds, oldest first."""
        return [one for one in self.entries if one.entry.kind in kinds]

    def readings(self, what: str) -> list[Dated]:
        """The readings of one thing, oldest first."""
        return [one for one in self.of("reading") if one.entry.what == what]

    @property
    def newest(self) -> Dated | None:
        """The newest entry of a later day, a reading before anything else; None where there is none."""
        read = [one for one in self.later if one.entry.kind == "reading"]
        return next(reversed(read or self.later), None)

    def up_to_newest(self) -> "Log":
        """The log as on the day of its newest entry, with all of them."""
        entries = sorted((*self.entries, *self.later), key=in_order)
        day = max([self.today, *(one.day for one in self.later)])
        return Log(day, tuple(entries), (), self.left_g, is_by_clock=False)

    def days_ago(self, day: date) -> int:
        """How many days ago a day is; none for what another zone calls tomorrow."""
        return max(0, (self.today - day).days)


def days_of(moment: str) -> float:
    """A moment in days since a fixed one."""
    return read_moment(moment).timestamp() / SECONDS_PER_DAY


def days_on(day: date, at: time) -> float:
    """A time of a day (UTC) in days, counted as ``days_of`` counts."""
    return datetime.combine(day, at, UTC).timestamp() / SECONDS_PER_DAY


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
    in_turn = sorted(once.values(), key=in_order)
    return Log(
        today,
        tuple(one for one in in_turn if one.day <= latest),
        tuple(one for one in in_turn if one.day > latest),
    )


def in_order(one: Dated) -> tuple[datetime, str]:
    """By what the entries of a log are sorted."""
    return one.at, one.entry.id or ""
