"""Ordinary differential equations, in plain Python: explicit where nothing is fast, damped where it is.

Adaptive steps with a PI controller, dense output by Hermite's cubic, and positivity by shorter
steps: a state is never clipped, so that what the right-hand side conserves stays conserved. Where
the fastest rate would hold an explicit step down, a step that damps it takes over.
Source: Hairer, Nørsett and Wanner 1993, sections II.4 to II.6; Hairer and Wanner 1996, IV.2.
"""

import math
from collections.abc import Callable
from typing import Any, NamedTuple

from calculators.science.nitrogen import damped_step, explicit_step
from calculators.science.nitrogen.solver_parts import Damping, RightSide, State, Tolerance

SAFETY, SHRINK, SHRINK_AGAIN, GROW = 0.9, 0.1, 0.5, 5.0
EXPONENT, MEMORY = 0.17, 0.04  # Hairer and others' PI controller, for an error of the fifth order
DAMPED_EXPONENT, DAMPED_MEMORY = 0.28, 0.08  # the same for the third
STABLE = 3.3  # largest rate times width that the explicit pair follows without swinging
BACK = 1.0  # below it the explicit pair takes over again
STRICTER = 10.0  # explicit steps are taken closer where no rate is fast enough to damp their errors
FORGETS = 16.0  # a day: from here on it is
SMALLEST_STEP = 1e-10
SAME_DAY = 1e-9  # days by which a time may miss a whole day


class SolverStep(NamedTuple):
    """One accepted step: from ``start`` over ``width``, with what is needed to look inside."""

    start: float
    width: float
    before: State
    after: State
    slope_before: State
    slope_after: State

    def at(self, time: float) -> State:
        """The states at a time inside the step: Hermite's cubic."""
        part = (time - self.start) / self.width
        rest, width = 1 - part, self.width
        return [
            rest * a
            + part * b
            + part * rest * (rest * (width * p - b + a) - part * (width * q - b + a))
            for a, b, p, q in zip(
                self.before, self.after, self.slope_before, self.slope_after, strict=True
            )
        ]


class Effort:
    """How many steps may still be tried; several runs may share one.

    Where they are used up inside a day, ``to_whole_day`` more may be tried to reach its end.
    """

    def __init__(self, steps: float = math.inf, to_whole_day: float = 0.0) -> None:
        self.left = steps
        self._least = -to_whole_day

    def is_spent(self, time: float) -> bool:
        """Whether no step is left at a time in days."""
        return self.left <= 0 and (self.left <= self._least or self.last(time, math.inf) <= time)

    def last(self, time: float, end: float) -> float:
        """How far to go from a time, in days: to the ``end``, or only to the end of that day."""
        return end if self.left > 0 else min(end, float(math.ceil(time - SAME_DAY)))


class StepTooSmall(ArithmeticError):
    """The right-hand side cannot be followed with any step."""


def nothing_fast(_: Any) -> float:
    """No rate is fast. In 1/day, per unit of state."""
    return 0.0


UNDAMPED = Damping(nothing_fast, lambda _, width: list)


class Pace:
    """Which kind of step comes next, and how wide."""

    def __init__(self, width: float, largest: float) -> None:
        self.width, self.largest = min(width, largest), largest
        self.damped = False
        self._error_before = 1e-2

    def choose(self, fastest: float) -> None:
        """Damp where the fastest rate would hold an explicit step down.

        It is ``fastest``, per day.
        """
        self.damped = fastest * self.width > (BACK if self.damped else STABLE)

    def shorten(self, error: float, width: float) -> None:
        """After a step that missed; ``error`` is 1 where it fell below nothing, or is no number.

        The ``error`` is a ratio to the tolerance, the ``width`` of the step in days.
        """
        power = 2 * DAMPED_EXPONENT if self.damped else 0.2
        shrunk = SAFETY * error**-power if error > 1 else SHRINK_AGAIN
        self.width = width * max(SHRINK, min(SHRINK_AGAIN, shrunk))

    def go_on(self, error: float, width: float) -> None:
        """After a step that served; one cut short at the end says little.

        The ``error`` is a ratio to the tolerance, the ``width`` of the step in days.
        """
        power, memory = EXPONENT, MEMORY
        if self.damped:
            power, memory = DAMPED_EXPONENT, DAMPED_MEMORY
        factor = SAFETY * max(error, 1e-8) ** -power * self._error_before**memory
        if width >= 0.999 * self.width or factor < 1:
            self.width = min(self.largest, width * min(GROW, max(SHRINK, factor)))
        self._error_before = max(error, 1e-2)


class Here(NamedTuple):
    """Where the solver stands: time, state, and what the right-hand side says there."""

    time: float
    state: State
    slope: State
    moment: Any


def attempt(
    right_side: RightSide,
    damping: Damping,
    pace: Pace,
    here: Here,
    until: float,
    tolerance: Tolerance,
) -> tuple[float, Here | None]:
    """One step of the kind that the pace says: its error over the tolerance, and where it leads.

    None where it misses: too large an error, something below nothing, or figures out of all bounds. The
    step goes ``until`` this time, in days.
    """
    time, state, slope, moment = here
    fastest, width = damping.fastest(moment), until - time
    try:
        if pace.damped:
            damped = damping.solver(moment, damped_step.GAMMA * width)
            after, error = damped_step.try_step(
                right_side, damped, time, width, state, slope, tolerance
            )
        else:
            after, error, reached = explicit_step.try_step(
                right_side, time, width, state, slope, tolerance
            )
            error *= STRICTER if fastest < FORGETS else 1.0
        if not error <= 1:  # so that what is no number misses, too
            return error, None
        if tolerance.positive and min(after[: tolerance.positive]) < tolerance.floor:
            return 1.0, None
        return error, Here(until, after, *(right_side(until, after) if pace.damped else reached))
    except OverflowError:
        return math.inf, None


def solve(
    right_side: RightSide,
    damping: Damping,
    start: float,
    end: float,
    state: State,
    tolerance: Tolerance,
    each: Callable[[SolverStep], object],
    first_step: float = 0.02,
    effort: Effort | None = None,
) -> tuple[State, float, float]:
    """Follow ``state`` from ``start`` to ``end``; returns it, its time and the step to go on with.

    ``each`` is called with every accepted step. It stops before ``end`` where the effort is spent.
    Raises ``StepTooSmall``. Times and steps, from ``first_step`` on, are in days.
    """
    effort = effort or Effort()
    here = Here(start, state, *right_side(start, state))
    pace = Pace(first_step, tolerance.largest_step)
    # what is begun at the end of a day goes on to the end of the next, even where the first step misses
    begun = start if effort.left <= 0 else start + 2 * SAME_DAY
    while here.time < end and not effort.is_spent(max(begun, here.time)):
        time, last = here.time, effort.last(max(begun, here.time), end)
        effort.left -= 1
        pace.choose(damping.fastest(here.moment))
        until = last if time + 1.01 * pace.width >= last else time + pace.width
        error, there = attempt(right_side, damping, pace, here, until, tolerance)
        if there is None:
            pace.shorten(error, until - time)
            if pace.width < SMALLEST_STEP:
                raise StepTooSmall(f"no step is small enough at time {time}")
            continue
        each(SolverStep(time, until - time, here.state, there.state, here.slope, there.slope))
        pace.go_on(error, until - time)
        here = there
    return here.state, here.time, pace.width
