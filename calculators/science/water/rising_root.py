"""The pH at which a function of it is nil: Chandrupatla's method, by halves where a curve misleads."""

from collections.abc import Callable

LOWEST_PH, HIGHEST_PH = 0.0, 14.0
CLOSE_PH = 3e-6  # far below what pH means


def rising_root(excess: Callable[[float], float]) -> float:
    """The pH between 0 and 14 at which a function that rises with pH is nil; the end next to it else.

    A parabola through the last three points is followed where it can be trusted, else the span is
    halved (T. R. Chandrupatla, Advances in Engineering Software 28, 1997, 145 to 149; from memory). It
    asks for the function some ten times where halving alone asks 22 times.
    """
    near, far = LOWEST_PH, HIGHEST_PH
    near_excess, far_excess = excess(near), excess(far)
    if near_excess >= 0 or far_excess <= 0:
        return near if near_excess >= 0 else far
    step = 0.5  # of the span, from the nearer point
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
