"""What is known today of ammonia and nitrite, which harm fastest, and what is said where it is little."""

from collections.abc import Sequence
from typing import NamedTuple

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.core.wording import joined
from calculators.nitrogen_forecast.past_readings import PastReading
from calculators.science.fitting.fit_readings import AMMONIA, NITRITE, What
from calculators.science.water.unread import TOXIC_USE_DAYS

NAMES: dict[What, str] = {AMMONIA: "ammonia", NITRITE: "nitrite"}


class ToxicReading(NamedTuple):
    """The last reading of one of them, mg N/L; ``value`` is None where it was never read, day 0 is today."""

    what: What
    value: float | None
    day: float = 0.0

    @property
    def is_old(self) -> bool:
        """Whether it is older than such a reading is of use."""
        return self.day < -TOXIC_USE_DAYS

    @property
    def taken(self) -> float:
        """What the run starts from, mg N/L: none where nothing is known."""
        return 0.0 if self.value is None or self.is_old else self.value

    @property
    def age(self) -> str:
        """How long ago it was."""
        days = max(1, round(-self.day))
        return "a day ago" if days == 1 else f"{days} days ago"


def toxic_now(entered: float | None, what: What, read: Sequence[PastReading]) -> ToxicReading:
    """What is known today, mg N/L: what was ``entered``, else the last that was read, of a day the worst."""
    rows = [one for one in read if one.what == what]
    if entered is not None or not rows:
        return ToxicReading(what, entered)
    last = max(one.day for one in rows)
    return ToxicReading(what, max(one.value for one in rows if one.day == last), last)


def toxic_notes(known: Sequence[ToxicReading]) -> list[Note]:
    """A word where the run starts from no reading of what harms fastest, or from one of another day."""
    notes = [
        Note("caution", since(one), first=True)
        for one in known
        if one.value is not None and one.day < 0
    ]
    missing = [NAMES[one.what] for one in known if one.value is None]
    if missing:
        text = (
            f"No reading of {joined(missing)} was given: none is taken. Test before you rely on it."
        )
        notes.append(Note("caution", text))
    return notes


def since(one: ToxicReading) -> str:
    """What is taken of a reading of an earlier day."""
    name = NAMES[one.what].capitalize()
    read = f"{name} was last read {one.age}, {show(one.value or 0.0, 2)} mg N/L"
    if one.is_old:
        return f"{read}: too long ago to go by, so none is taken. Test before you rely on this."
    return f"{read}, and not today: the forecast starts from that. Test it again now."
