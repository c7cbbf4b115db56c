"""From values to places on a picture, with round numbers for the ticks."""

import math
from collections.abc import Sequence

TICKS = 5
NIGH = 1e-9  # of a step: rounding


class Scale:
    """A straight scale between two places of a picture.

    It ends at round numbers, or, where it is ``tight``, at ``low`` and ``high`` themselves.
    """

    def __init__(
        self, low: float, high: float, start: float, end: float, *, tight: bool = False
    ) -> None:
        step = round_step((high - low) / TICKS)
        first, last = math.floor(low / step), math.ceil(high / step - NIGH)
        if tight:
            first, last = math.ceil(low / step - NIGH), math.floor(high / step + NIGH)
        self.low, self.high = (low, high) if tight else (first * step, last * step)
        self.start, self.end = start, end
        self.ticks = [step * number for number in range(first, last + 1)]

    def at(self, value: float) -> float:
        """The place of a value."""
        return self.start + (value - self.low) / (self.high - self.low) * (self.end - self.start)


def scale(
    values: Sequence[float],
    start: float,
    end: float,
    *,
    from_zero: bool = False,
    tight: bool = False,
) -> Scale:
    """A scale that holds all the values; a flat one is given some height."""
    low, high = min(values), max(values)
    if from_zero and low > 0:
        low = 0.0
    if high <= low:
        high = low + (abs(low) or 1.0)
    return Scale(low, high, start, end, tight=tight)


def round_step(rough: float) -> float:
    """The next step of 1, 2 or 5 times a power of ten."""
    power: float = 10.0 ** math.floor(math.log10(rough))
    return next(step for step in (power, 2 * power, 5 * power, 10 * power) if step >= rough * 0.999)


def spread(places: Sequence[float], gap: float, low: float, high: float) -> list[float]:
    """Places for labels near the given ones, at least ``gap`` apart, between ``low`` and ``high``.

    Where there is not room for all, the last ones stand past ``low``. The result has as many places, in
    the same order.
    """
    order = sorted(range(len(places)), key=lambda number: places[number], reverse=True)
    spaced = [0.0] * len(places)
    limit = high
    for number in order:  # from the bottom of the picture up, where y is largest
        spaced[number] = min(limit, places[number])
        limit = spaced[number] - gap
    floor = low
    for number in reversed(order):  # and back down, where the top was too near
        spaced[number] = max(floor, spaced[number])
        floor = spaced[number] + gap
    return spaced
