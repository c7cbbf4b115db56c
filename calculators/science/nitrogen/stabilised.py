"""Ordinary differential equations: a stabilised explicit method of order 2 (Runge, Kutta, Chebyshev).

Leaves and films empty the water within the hour while plants grow for weeks. An ordinary explicit
method has to follow the hour all the time; here each step takes as many stages as it needs to stay
stable, and its width follows the weeks. Sources: Sommeijer, Shampine and Verwer 1998; dense output is
the cubic through both ends. A state is never clipped: steps are halved where one would fall below nothing.
"""

import math
from collections.abc import Callable, Sequence
from functools import lru_cache
from typing import NamedTuple

from calculators.science.nitrogen.ode import (
    SMALLEST_STEP,
    RightSide,
    State,
    StepTooSmall,
    Tolerance,
)

DAMPING = 2 / 13  # Sommeijer and others
STABLE = 1.54  # stages squared, less one, for each unit of width times radius; the same
MOST_STAGES = 40
RADIUS_SAFETY = 1.2
NUDGE = 1e-7  # relative size of the nudge that feels for the radius
SAFETY, SHRINK, GROW = 0.8, 0.2, 4.0
LOOKS_EVERY = 8  # steps between two looks at the radius
LOOKS, FIRST_LOOKS = 2, 8


class StabilisedStep(NamedTuple):
    """One accepted step: from ``start`` over ``width``, with what is needed to look inside."""

    start: float
    width: float
    before: State
    after: State
    slope_before: State
    slope_after: State

    def at(self, time: float) -> State:
        """The states at a time inside the step: the cubic through both ends and their slopes."""
        part = (time - self.start) / self.width
        rest = 1 - part
        a, b = rest * rest * (1 + 2 * part), part * part * (3 - 2 * part)
        c, d = self.width * part * rest * rest, -self.width * part * part * rest
        return [
            a * y0 + b * y1 + c * f0 + d * f1
            for y0, y1, f0, f1 in zip(
                self.before, self.after, self.slope_before, self.slope_after, strict=True
            )
        ]


class Stage(NamedTuple):
    """Weights of one stage: start, last stage, the one before, and both slopes; and its time."""

    start: float
    last: float
    older: float
    slope: float
    first_slope: float
    time: float


@lru_cache(maxsize=64)
def stages(count: int) -> tuple[float, float, tuple[Stage, ...]]:
    """First weight, its time, and the other stages of a step with so many, 2 or more."""
    w0 = 1 + DAMPING / count**2
    t, dt, ddt = [1.0, w0], [0.0, 1.0], [0.0, 0.0]
    for j in range(2, count + 1):
        t.append(2 * w0 * t[-1] - t[-2])
        dt.append(2 * w0 * dt[-1] - dt[-2] + 2 * t[j - 1])
        ddt.append(2 * w0 * ddt[-1] - ddt[-2] + 4 * dt[j - 1])
    w1 = dt[count] / ddt[count]
    b = [0.0, 0.0, *(ddt[j] / dt[j] ** 2 for j in range(2, count + 1))]
    b[0] = b[1] = b[2]
    times = [0.0, 0.0, *(w1 * ddt[j] / dt[j] for j in range(2, count + 1))]
    times[1] = times[2] / dt[2]
    rest = []
    for j in range(2, count + 1):
        mu, nu = 2 * b[j] * w0 / b[j - 1], -b[j] / b[j - 2]
        slope = 2 * b[j] * w1 / b[j - 1]
        first = -(1 - b[j - 1] * t[j - 1]) * slope
        rest.append(Stage(1 - mu - nu, mu, nu, slope, first, times[j - 1]))
    return b[1] * w1, times[1], tuple(rest)


def try_step(f: RightSide, t: float, h: float, y: State, f0: State, count: int) -> State:
    """The state after one step of width ``h`` in so many stages."""
    first, _, rest = stages(count)
    c = first * h
    older, last = y, [a + c * p for a, p in zip(y, f0, strict=True)]
    for stage in rest:
        m, mu, nu, _, _, time = stage
        s, g = stage.slope * h, stage.first_slope * h
        slope = f(t + time * h, last)
        older, last = (
            last,
            [
                m * a + mu * p + nu * q + s * k + g * k0
                for a, p, q, k, k0 in zip(y, last, older, slope, f0, strict=True)
            ],
        )
    return last


def error_of(h: float, y: State, new: State, f0: State, f1: State, tolerance: Tolerance) -> float:
    """The estimated error over the tolerance, root of the mean square; 1 is just good enough."""
    relative, total = tolerance.relative, 0.0
    for a, b, w, p, q in zip(y, new, tolerance.absolute, f0, f1, strict=False):
        size = abs(a) if abs(a) > abs(b) else abs(b)
        off = (0.8 * (a - b) + 0.4 * h * (p + q)) / (w + relative * size)
        total += off * off
    return math.sqrt(total / len(tolerance.absolute))


class Radius:
    """Feels for the fastest rate of the right-hand side by nudging the state along its direction."""

    def __init__(self) -> None:
        self.value = 0.0
        self._direction: State = []

    def look(self, f: RightSide, time: float, y: State, slope: State) -> None:
        """Nudge some times, each along what the last nudge turned into."""
        direction = self._direction or slope
        for _ in range(LOOKS if self._direction else FIRST_LOOKS):
            size = math.sqrt(sum(a * a for a in direction)) or 1.0
            step = NUDGE * (math.sqrt(sum(a * a for a in y)) + 1.0) / size
            moved = f(time, [a + step * d for a, d in zip(y, direction, strict=True)])
            direction = [(a - b) / (step * size) for a, b in zip(moved, slope, strict=True)]
            found = math.sqrt(sum(a * a for a in direction))
            if abs(found - self.value) < 0.05 * self.value:
                break
            self.value = found
        self._direction = direction if any(direction) else []


def solve(
    right_side: RightSide,
    start: float,
    end: float,
    state: State,
    tolerance: Tolerance,
    each: Callable[[StabilisedStep], object],
    first_step: float = 0.02,
    radius: Radius | None = None,
) -> tuple[State, float]:
    """Follow ``state`` from ``start`` to ``end``; returns it and the step to go on with.

    ``each`` is called with every accepted step. A ``radius`` that is handed on from solve to
    solve saves looks. Raises ``StepTooSmall``.
    """
    time, slope, count = start, right_side(start, state), 0
    radius = radius or Radius()
    next_width = min(first_step, tolerance.largest_step)
    while time < end:
        if count % LOOKS_EVERY == 0:
            radius.look(right_side, time, state, slope)
        fastest = RADIUS_SAFETY * radius.value
        if fastest > 0:
            next_width = min(next_width, (MOST_STAGES**2 - 1) / STABLE / fastest)
        width = end - time if time + 1.01 * next_width >= end else next_width
        needed = max(2, 1 + int(math.sqrt(1 + STABLE * width * fastest)))
        after = try_step(right_side, time, width, state, slope, needed)
        finish = time + width
        if not below_floor(after, tolerance):
            slope_after = right_side(finish, after)
            error = error_of(width, state, after, slope, slope_after, tolerance)
        else:
            error = 8.0
        if error > 1:
            next_width = width * max(SHRINK, SAFETY * error ** (-1 / 3))
            count = 0
            if next_width < SMALLEST_STEP:
                raise StepTooSmall(f"no step is small enough at time {time}")
            continue
        each(StabilisedStep(time, width, state, after, slope, slope_after))
        grown = width * min(GROW, max(SHRINK, SAFETY * max(error, 1e-6) ** (-1 / 3)))
        if (
            width >= 0.999 * next_width or grown < next_width
        ):  # one cut short at the end says little
            next_width = min(tolerance.largest_step, grown)
        time = end if width == end - time else finish
        state, slope = after, slope_after
        count += 1
    return state, next_width


def below_floor(after: Sequence[float], tolerance: Tolerance) -> bool:
    """Whether a state that may not fall below the floor does."""
    return bool(tolerance.positive) and min(after[: tolerance.positive]) < tolerance.floor
