"""How water cools without a heater: hours to fall by so much, and the way down.

The heat stored meets the loss: C · dT/dt = −loss(T). Time is the integral of C / loss over the fall.
"""

import math
from collections.abc import Callable, Sequence
from itertools import accumulate, pairwise

Loss = Callable[[float], float]  # W at a water temperature in °C
JOULE_PER_WH = 3600
STEPS = 4  # of the integral; more change it by less than 0.1 % (see the tests)
NEVER_WITHIN_C = 0.1  # nearer to the room than this, the last part takes days
HALVINGS = 8  # of the span in which a steady temperature is sought; then a straight line
NEARLY_THERE = 0.02  # of the difference to the room: where the picture of the fall ends


def hours_between(
    warm_c: float, cool_c: float, room_c: float, heat_j_k: float, loss: Loss
) -> float:
    """Hours from one temperature down to another above the room's; ``heat_j_k`` is stored per degree.

    By Simpson's rule over the logarithm of the difference to the room, in which the loss changes
    smoothly.
    """
    first, last = math.log(cool_c - room_c), math.log(warm_c - room_c)

    def slowness(place: float) -> float:
        above = math.exp(place)
        return above / loss(room_c + above)

    step = (last - first) / (2 * STEPS)
    weights = [1, *([4, 2] * STEPS)[:-1], 1]
    total = sum(weight * slowness(first + number * step) for number, weight in enumerate(weights))
    return heat_j_k * total * step / 3 / JOULE_PER_WH


def hours_to_fall(
    water_c: float, fall_c: float, room_c: float, heat_j_k: float, loss: Loss
) -> float | None:
    """Hours until water has fallen by so much; None where the room does not let it fall so far."""
    cool = water_c - fall_c
    if cool < room_c + NEVER_WITHIN_C:
        return None
    return hours_between(water_c, cool, room_c, heat_j_k, loss)


def way_down(
    water_c: float, room_c: float, heat_j_k: float, loss: Loss, hours: Sequence[float]
) -> list[float]:
    """The water's temperature at each of the hours, near the room's once it has come near it."""
    rows = 14
    share = NEARLY_THERE ** (1 / rows)
    above = [(water_c - room_c) * share**row for row in range(rows + 1)]
    slowness = [above_room * heat_j_k / loss(room_c + above_room) for above_room in above]
    # the trapezium in the logarithm: a picture needs no more
    pieces = [
        math.log(1 / share) * (earlier + later) / 2 / JOULE_PER_WH
        for earlier, later in pairwise(slowness)
    ]
    clock = [0.0, *accumulate(pieces)]
    return [room_c + between(hour, clock, above) for hour in hours]


def between(at: float, xs: Sequence[float], ys: Sequence[float]) -> float:
    """A value between the points of a falling curve, straight in its logarithm; the last one beyond.

    The points are as many ``xs`` as ``ys``, each of its own unit; ``at`` is in that of ``xs``.
    """
    for (left, upper), (right, lower) in pairwise(zip(xs, ys, strict=True)):
        if at <= right:
            passed = (at - left) / (right - left)
            return upper * math.pow(lower / upper, passed)
    return ys[-1]


def settles_at(power_w: float, room_c: float, hottest_c: float, loss: Loss) -> float | None:
    """Where water settles with a heater that never switches off; None where hotter than ``hottest_c``.

    In °C.
    """
    low, high = room_c, hottest_c
    if loss(high) < power_w:
        return None
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if loss(middle) < power_w else (low, middle)
    weaker, stronger = loss(low), loss(high)
    if stronger <= weaker or power_w <= weaker:
        return low
    return low + (high - low) * (power_w - weaker) / (stronger - weaker)
