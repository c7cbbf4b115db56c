"""The tasks that come round in a tank, and the figures by which they are told."""

from typing import Annotated

from calculators.core.quantities import Days, Minutes, MinutesAWeek
from calculators.core.quantity import Digits

CHANGE = "change water"
THIN = "thin the floaters"
# Nobody tends a tank to the second.
WholeDays = Annotated[Days, Digits(1)]
WholeMinutes = Annotated[Minutes, Digits(1)]
WeekMinutes = Annotated[MinutesAWeek, Digits(1)]
