"""What both kinds of step share: the shapes of the right-hand side, tolerances, the error's norm."""

import math
from collections.abc import Callable, Sequence
from typing import Any, NamedTuple

State = list[float]
# Slopes at a time and state, and what ``Damping`` makes of that moment.
RightSide = Callable[[float, State], tuple[State, Any]]
# Solves (1 − width · W) x = right side for x; W holds the fast part of the Jacobian, no more.
Solver = Callable[[State], State]


class Damping(NamedTuple):
    """The fast part of the right-hand side, at a moment that it gave.

    ``fastest``: about the largest rate in it, a day. ``solver``: by the moment and a width.
    """

    fastest: Callable[[Any], float]
    solver: Callable[[Any, float], Solver]


class Tolerance(NamedTuple):
    """How close to stay. ``absolute`` covers the leading states; those after it follow freely.

    The first ``positive`` states may not fall below ``floor``.
    """

    relative: float
    absolute: Sequence[float]
    positive: int = 0
    floor: float = 0.0
    largest_step: float = 7.0


def error_norm(y: State, new: State, off: State, tolerance: Tolerance) -> float:
    """The estimated error as a ratio to the tolerance, root of the mean square; 1 is just good enough."""
    relative, absolute = tolerance.relative, tolerance.absolute
    total = 0.0
    for a, b, w, error in zip(y, new, absolute, off, strict=False):
        size = abs(a) if abs(a) > abs(b) else abs(b)
        part = error / (w + relative * size)
        total += part * part
    return math.sqrt(total / len(absolute))
