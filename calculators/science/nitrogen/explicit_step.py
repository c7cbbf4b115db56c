"""One step of Dormand and Prince's explicit pair of order 5(4), for stretches where nothing is fast.

Sources: Dormand and Prince 1980; Hairer, Nørsett and Wanner 1993, sections II.4 and II.5.
"""

from typing import Any

from calculators.science.nitrogen.solver_parts import RightSide, State, Tolerance, error_norm

# Dormand and Prince's coefficients (1980).
A21 = 1 / 5
A31, A32 = 3 / 40, 9 / 40
A41, A42, A43 = 44 / 45, -56 / 15, 32 / 9
A51, A52, A53, A54 = 19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729
A61, A62, A63, A64, A65 = 9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656
A71, A73, A74, A75, A76 = 35 / 384, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84
C2, C3, C4, C5 = 1 / 5, 3 / 10, 4 / 5, 8 / 9
E1, E3, E4, E5, E6, E7 = 71 / 57600, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40


def try_step(
    f: RightSide, t: float, h: float, y: State, k1: State, tolerance: Tolerance
) -> tuple[State, float, tuple[State, Any]]:
    """One step of width ``h``: the new state, its error against the tolerance, and what f says of it.

    Both ``h`` and the time ``t`` are in days here; the error is a ratio.
    """
    c = h * A21
    k2 = f(t + C2 * h, [a + c * p for a, p in zip(y, k1, strict=True)])[0]
    c1, c2 = h * A31, h * A32
    k3 = f(t + C3 * h, [a + c1 * p + c2 * q for a, p, q in zip(y, k1, k2, strict=True)])[0]
    c1, c2, c3 = h * A41, h * A42, h * A43
    k4 = f(
        t + C4 * h,
        [a + c1 * p + c2 * q + c3 * r for a, p, q, r in zip(y, k1, k2, k3, strict=True)],
    )[0]
    c1, c2, c3, c4 = h * A51, h * A52, h * A53, h * A54
    k5 = f(
        t + C5 * h,
        [
            a + c1 * p + c2 * q + c3 * r + c4 * s
            for a, p, q, r, s in zip(y, k1, k2, k3, k4, strict=True)
        ],
    )[0]
    c1, c2, c3, c4, c5 = h * A61, h * A62, h * A63, h * A64, h * A65
    k6 = f(
        t + h,
        [
            a + c1 * p + c2 * q + c3 * r + c4 * s + c5 * u
            for a, p, q, r, s, u in zip(y, k1, k2, k3, k4, k5, strict=True)
        ],
    )[0]
    c1, c3, c4, c5, c6 = h * A71, h * A73, h * A74, h * A75, h * A76
    new = [
        a + c1 * p + c3 * r + c4 * s + c5 * u + c6 * v
        for a, p, r, s, u, v in zip(y, k1, k3, k4, k5, k6, strict=True)
    ]
    after = f(t + h, new)
    k7 = after[0]
    off = [
        h * (E1 * p + E3 * r + E4 * s + E5 * u + E6 * v + E7 * w)
        for p, r, s, u, v, w in zip(k1, k3, k4, k5, k6, k7, strict=True)
    ]
    return new, error_norm(y, new, off, tolerance), after
