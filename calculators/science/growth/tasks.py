"""The tasks that come round in a tank, and the figures by which they are told."""

from collections.abc import Sequence
from typing import Annotated

from calculators.core.quantities import Days, Minutes, MinutesAWeek
from calculators.core.quantity import Digits
from calculators.core.result import Series

CHANGE = "change water"
THIN = "thin the floaters"
# Nobody tends a tank to the second.
WholeDays = Annotated[Days, Digits(1)]
WholeMinutes = Annotated[Minutes, Digits(1)]
WeekMinutes = Annotated[MinutesAWeek, Digits(1)]


def minutes_series(days: Sequence[int], minutes: list[float]) -> dict[str, Series]:
    """The minutes of each day as a picture."""
    made = Series("Minutes a day", "min", "Day", "days", list(days), minutes, digits=1)
    return {"minutes_by_day": made}
