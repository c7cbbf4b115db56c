"""Which heater: the next size above what is lost, and two smaller ones that do the same."""

import math
from typing import NamedTuple

SIZES_W = (25, 50, 75, 100, 150, 200, 250, 300)  # sold everywhere: common practice, no source
SPARE = 1.25  # a quarter above the loss on the costly side: common practice, no source


class Heaters(NamedTuple):
    """The power in all as one heater (or as few as there are), and as a pair or more of smaller ones."""

    power_w: float
    number: int
    each_w: float


def heaters_for(loss_w: float) -> Heaters:
    """What holds a loss with a quarter to spare; nothing for no loss."""
    if loss_w <= 0:
        return Heaters(0.0, 0, 0.0)
    needed = SPARE * loss_w
    largest = SIZES_W[-1]
    count = max(2, math.ceil(needed / largest))
    each = next_size(needed / count)
    single = next_size(needed) if needed <= largest else count * each
    return Heaters(single, count, each)


def next_size(power_w: float) -> float:
    """The smallest size sold that is no weaker, or the largest there is. In watts."""
    return float(next((size for size in SIZES_W if size >= power_w), SIZES_W[-1]))
