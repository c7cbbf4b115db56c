"""Moves every day of a shelf file by the same number of days: the demo tanks stand as if of today."""

from datetime import date, datetime, timedelta
from typing import Any

from calculators.core.dates import is_day, is_moment, read_date, read_moment


def redated(file: dict[str, Any], today: str) -> dict[str, Any]:
    """The file as if it had been saved on ``today``. Raises ``ValueError`` for a day that is none."""
    by = read_date(today) - read_moment(file["saved"]).date()
    moved: dict[str, Any] = shifted(file, by)
    return moved


def shifted(value: Any, by: timedelta) -> Any:
    """A value with every text that is a day or a moment moved."""
    if isinstance(value, dict):
        return {key: shifted(part, by) for key, part in value.items()}
    if isinstance(value, list):
        return [shifted(part, by) for part in value]
    if isinstance(value, str) and is_day(value):
        return (date.fromisoformat(value) + by).isoformat()
    if isinstance(value, str) and is_moment(value):
        return (datetime.fromisoformat(value) + by).isoformat().replace("+00:00", "Z")
    return value
