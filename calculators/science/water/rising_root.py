"""The pH at which a function of it is nil: Chandrupatla's method, by halves where a curve misleads."""

from collections.abc import Callable

LOWEST_PH, HIGHEST_PH = 0.0, 14.0
CLOSE_PH = 3e-6  # far below what pH means
FIRST_STEP_PH = 0.02  # from a guess to where the function is on the other side of nil
STRAIGHT_PH = 0.2  # so short a piece of the curve is nearly straight
LONGER = 5  # times the step before, until it is


def rising_root(excess: Callable[[float], float], guess: float = 7.0) -> float:
    """The pH between 0 and 14 at which a function that rises with pH is nil; the end next to it else.

    From ``guess`` (pH), which may be far off, longer and longer steps go to the other side of nil. In
    that span a parabola through the last three points is followed where it can be trusted, else it is
    halved (T. R. Chandrupatla, Advances in Engineering Software 28, 1997, 145 to 149; from memory). It
    asks for the function some six times from a good guess, where halving alone asks 22 times.
    """
    near = min(HIGHEST_PH, max(LOWEST_PH, guess))
    near_excess = excess(near)
    if near_excess == 0:
        return near
    way, end = (1, HIGHEST_PH) if near_excess < 0 else (-1, LOWEST_PH)
    far, far_excess, step = near, near_excess, FIRST_STEP_PH
    while (far_excess < 0) == (near_excess < 0):
        if far == end:
            return end
        near, near_excess = far, far_excess
        far = min(HIGHEST_PH, max(LOWEST_PH, near + way * step))
        far_excess, step = excess(far), step * LONGER
        if far_excess == 0:
            return far
    step = near_excess / (near_excess - far_excess)  # of the span, as if the curve were straight
    step = min(0.95, max(0.05, step)) if abs(far - near) < STRAIGHT_PH else 0.5
    while True:
        tried = near + step * (far - near)
        tried_excess = excess(tried)
        if (tried_excess > 0) == (near_excess > 0):
            before, before_excess = near, near_excess
        else:
            before, before_excess = far, far_excess
            far, far_excess = near, near_excess
        near, near_excess = tried, tried_excess
        best = near if abs(near_excess) < abs(far_excess) else far
        least = CLOSE_PH / abs(far - near)
        if least > 0.5 or near_excess == 0 or far_excess == 0:
            return best
        step = trusted_step(near, far, before, near_excess, far_excess, before_excess)
        step = min(1 - least, max(least, step))


def trusted_step(
    near: float, far: float, before: float,
    near_excess: float, far_excess: float, before_excess: float,
) -> float:  # fmt: skip
    """The share of the span to go from ``near`` (pH): by a parabola of pH over excess, or a half.

    The parabola is trusted where pH over excess is monotone between the three points. ``near``, ``far``
    and ``before`` are pH; ``near_excess``, ``far_excess`` and ``before_excess`` are the function's
    there, in its own unit.
    """
    span = (near - far) / (before - far)
    rise = (near_excess - far_excess) / (before_excess - far_excess)
    if not (rise * rise < span and (1 - rise) ** 2 < 1 - span):
        return 0.5
    return near_excess / (far_excess - near_excess) * before_excess / (far_excess - before_excess) + (
        (before - near) / (far - near)
        * near_excess / (before_excess - near_excess)
        * far_excess / (before_excess - far_excess)
    )  # fmt: skip
