"""Ordinary differential equations: Dormand and Prince's pair of order 5(4), in plain Python.

Adaptive steps with a PI controller, dense output of order 4, and positivity by shorter steps: a
state is never clipped, so that what the right-hand side conserves stays conserved. Sources:
Dormand and Prince 1980; Hairer, Nørsett and Wanner 1993, sections II.4 to II.6.
"""

import math
from collections.abc import Callable, Sequence
from typing import NamedTuple

State = list[float]
RightSide = Callable[[float, State], State]

# Dormand and Prince's coefficients (1980).
A21 = 1 / 5
A31, A32 = 3 / 40, 9 / 40
A41, A42, A43 = 44 / 45, -56 / 15, 32 / 9
A51, A52, A53, A54 = 19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729
A61, A62, A63, A64, A65 = 9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656
A71, A73, A74, A75, A76 = 35 / 384, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84
C2, C3, C4, C5 = 1 / 5, 3 / 10, 4 / 5, 8 / 9
E1, E3, E4, E5, E6, E7 = 71 / 57600, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40
# Dense output, Hairer and others 1993, after Shampine.
D1, D3 = -12715105075 / 11282082432, 87487479700 / 32700410799
D4, D5 = -10690763975 / 1880347072, 701980252875 / 199316789632
D6, D7 = -1453857185 / 822651844, 69997945 / 29380423

SAFETY, SHRINK, GROW = 0.9, 0.2, 5.0
EXPONENT, MEMORY = 0.17, 0.04  # Hairer and others' PI controller
SMALLEST_STEP = 1e-10


class SolverStep(NamedTuple):
    """One accepted step: from ``start`` over ``width``, with what is needed to look inside."""

    start: float
    width: float
    before: State
    after: State
    slopes: tuple[State, ...]  # k1, k3, k4, k5, k6, k7

    def at(self, time: float) -> State:
        """The states at a time inside the step, to the fourth order."""
        part = (time - self.start) / self.width
        rest, width = 1 - part, self.width
        states = []
        for y0, y1, k1, k3, k4, k5, k6, k7 in zip(
            self.before, self.after, *self.slopes, strict=True
        ):
            rise = y1 - y0
            bend = width * k1 - rise
            twist = rise - width * k7 - bend
            last = width * (D1 * k1 + D3 * k3 + D4 * k4 + D5 * k5 + D6 * k6 + D7 * k7)
            states.append(y0 + part * (rise + rest * (bend + part * (twist + rest * last))))
        return states


class Tolerance(NamedTuple):
    """How close to stay. ``absolute`` covers the leading states; those after it follow freely.

    The first ``positive`` states may not fall below ``floor``.
    """

    relative: float
    absolute: Sequence[float]
    positive: int = 0
    floor: float = 0.0
    largest_step: float = 5.0


class StepTooSmall(ArithmeticError):
    """The right-hand side cannot be followed with any step."""


def solve(
    right_side: RightSide,
    start: float,
    end: float,
    state: State,
    tolerance: Tolerance,
    each: Callable[[SolverStep], object],
    first_step: float = 0.02,
) -> tuple[State, float]:
    """Follow ``state`` from ``start`` to ``end``; returns it and the step to go on with.

    ``each`` is called with every accepted step. Raises ``StepTooSmall``.
    """
    time, slope = start, right_side(start, state)
    next_width = min(first_step, tolerance.largest_step)
    error_before = 1e-4
    while time < end:
        width = end - time if time + 1.01 * next_width >= end else next_width
        after, slopes, error = try_step(right_side, time, width, state, slope, tolerance)
        if error > 1 or (tolerance.positive and min(after[: tolerance.positive]) < tolerance.floor):
            next_width = width * (max(SHRINK, SAFETY * error**-EXPONENT) if error > 1 else 0.5)
            if next_width < SMALLEST_STEP:
                raise StepTooSmall(f"no step is small enough at time {time}")
            continue
        each(SolverStep(time, width, state, after, slopes))
        factor = SAFETY * max(error, 1e-10) ** -EXPONENT * error_before**MEMORY
        if width >= 0.999 * next_width or factor < 1:  # a step cut short at the end says little
            next_width = min(tolerance.largest_step, width * min(GROW, max(SHRINK, factor)))
        error_before = max(error, 1e-4)
        time = end if width == end - time else time + width
        state, slope = after, slopes[-1]
    return state, next_width


def try_step(
    f: RightSide, t: float, h: float, y: State, k1: State, tolerance: Tolerance
) -> tuple[State, tuple[State, ...], float]:
    """One step of width ``h``: the new state, the slopes, the error against the tolerance."""
    c = h * A21
    k2 = f(t + C2 * h, [a + c * p for a, p in zip(y, k1, strict=True)])
    c1, c2 = h * A31, h * A32
    k3 = f(t + C3 * h, [a + c1 * p + c2 * q for a, p, q in zip(y, k1, k2, strict=True)])
    c1, c2, c3 = h * A41, h * A42, h * A43
    k4 = f(
        t + C4 * h,
        [a + c1 * p + c2 * q + c3 * r for a, p, q, r in zip(y, k1, k2, k3, strict=True)],
    )
    c1, c2, c3, c4 = h * A51, h * A52, h * A53, h * A54
    k5 = f(
        t + C5 * h,
        [
            a + c1 * p + c2 * q + c3 * r + c4 * s
            for a, p, q, r, s in zip(y, k1, k2, k3, k4, strict=True)
        ],
    )
    c1, c2, c3, c4, c5 = h * A61, h * A62, h * A63, h * A64, h * A65
    k6 = f(
        t + h,
        [
            a + c1 * p + c2 * q + c3 * r + c4 * s + c5 * u
            for a, p, q, r, s, u in zip(y, k1, k2, k3, k4, k5, strict=True)
        ],
    )
    c1, c3, c4, c5, c6 = h * A71, h * A73, h * A74, h * A75, h * A76
    new = [
        a + c1 * p + c3 * r + c4 * s + c5 * u + c6 * v
        for a, p, r, s, u, v in zip(y, k1, k3, k4, k5, k6, strict=True)
    ]
    k7 = f(t + h, new)
    slopes = (k1, k3, k4, k5, k6, k7)
    return new, slopes, error_of(h, y, new, slopes, tolerance)


def error_of(
    h: float, y: State, new: State, slopes: tuple[State, ...], tolerance: Tolerance
) -> float:
    """The estimated error over the tolerance, root of the mean square; 1 is just good enough."""
    relative, absolute = tolerance.relative, tolerance.absolute
    total = 0.0
    for a, b, w, k1, k3, k4, k5, k6, k7 in zip(y, new, absolute, *slopes, strict=False):
        size = abs(a) if abs(a) > abs(b) else abs(b)
        off = E1 * k1 + E3 * k3 + E4 * k4 + E5 * k5 + E6 * k6 + E7 * k7
        off *= h / (w + relative * size)
        total += off * off
    return math.sqrt(total / len(absolute))
