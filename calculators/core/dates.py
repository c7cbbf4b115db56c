"""Days and moments as texts: read, and what an input of that kind takes."""

from datetime import UTC, date, datetime

from calculators.core.quantity import TextForm

FIRST_YEAR, LAST_YEAR = 1900, 2999  # a day outside is a slip of the finger


def read_date(text: str) -> date:
    """Read ``2026-12-07``. Raises ``ValueError`` for anything that is no such day."""
    day = date.fromisoformat(text)
    if text != day.isoformat() or not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise ValueError(text)
    return day


def read_moment(text: str) -> datetime:
    """Read a date and time of RFC 3339 as a moment in UTC; one without a zone is taken as UTC.

    Raises ``ValueError`` for anything else, and for a year outside 1900 to 2999.
    """
    if len(text) < len("2026-12-07T18:30") or text[10] not in "T ":
        raise ValueError(text)
    moment = datetime.fromisoformat(text)
    if not FIRST_YEAR < moment.year < LAST_YEAR:  # so that no zone moves it out of the years read
        raise ValueError(text)
    return moment.replace(tzinfo=UTC) if moment.tzinfo is None else moment.astimezone(UTC)


def is_day(text: str) -> bool:
    """Whether a text is a day that can be read."""
    try:
        read_date(text)
    except ValueError:
        return False
    return True


def is_moment(text: str) -> bool:
    """Whether a text is a date and time that can be read."""
    try:
        read_moment(text)
    except ValueError:
        return False
    return True


YEARS = f"{FIRST_YEAR} to {LAST_YEAR}"
DAY = TextForm(f"a day as 2026-12-07, in the years {YEARS}", 10, is_day)
MOMENT = TextForm(f"a date and time as 2026-12-07T18:30:00Z, in the years {YEARS}", 40, is_moment)
