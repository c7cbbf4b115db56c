"""One step of a Rosenbrock-W method of order 3(2), for stretches where something is fast.

Its four stages damp what is fast, as far as the right-hand side says what that is, and stay of
order 3 whatever it leaves out. So a step is as long as the course allows, not as the fastest rate
does. Sources: Rang and Angermann 2005 (the coefficients of ROS34PW2); Hairer and Wanner 1996, IV.7.
"""

from calculators.science.nitrogen.solver_parts import (
    RightSide,
    Solver,
    State,
    Tolerance,
    error_norm,
)

# Rang and Angermann's coefficients, by which the stages reach ahead (A) and lean on W (G).
GAMMA = 4.3586652150845900e-01
A21, A31, A32, A43 = 2 * GAMMA, 8.4457060015369423e-01, -1.1299064236484185e-01, 1.0
G21, G31, G32 = -2 * GAMMA, -9.0338057013044082e-01, 5.4180672388095326e-02
G41, G42, G43 = 2.4212380706095346e-01, -1.2232505839045147e00, 5.4526025533510214e-01
# Weights of the embedded solution of order 2.
B1, B2, B3, B4 = 3.7810903145819369e-01, -9.6042292212423178e-02, 0.5, 2.1793326075422950e-01

# The same in the variables U = sum of G · k, which need no product with W (Hairer and Wanner).
C21 = G21 / GAMMA**2
C31 = (G31 - G32 * G21 / GAMMA) / GAMMA**2
C32 = G32 / GAMMA**2
C42 = (G42 - G43 * G32 / GAMMA) / GAMMA**2
C43 = G43 / GAMMA**2
C41 = (G41 - G42 * G21 / GAMMA - G43 * (G31 - G32 * G21 / GAMMA) / GAMMA) / GAMMA**2
U21 = A21 / GAMMA
U31, U32 = A31 / GAMMA - A32 * C21, A32 / GAMMA
U41, U42, U43 = -A43 * C31, -A43 * C32, A43 / GAMMA
T2, T3 = A21, A31 + A32  # when a stage looks, as a share of the step
# What the two solutions differ by; the new state is the fourth stage and its U.
E4 = 1 - B4 / GAMMA
E3 = U43 - B3 / GAMMA + B4 * C43
E2 = U42 - B2 / GAMMA + B3 * C32 + B4 * C42
E1 = U41 - B1 / GAMMA + B2 * C21 + B3 * C31 + B4 * C41


def try_step(
    f: RightSide, damped: Solver, t: float, h: float, y: State, slope: State, tolerance: Tolerance
) -> tuple[State, float]:
    """One step of width ``h``: the new state and the error against the tolerance.

    Both ``h`` and the time ``t`` are in days here; the error is a ratio.
    """
    g = GAMMA * h
    u1 = damped([g * p for p in slope])
    found = f(t + T2 * h, [a + U21 * p for a, p in zip(y, u1, strict=True)])[0]
    c1 = GAMMA * C21
    u2 = damped([g * s + c1 * p for s, p in zip(found, u1, strict=True)])
    found = f(
        t + T3 * h, [a + U31 * p + U32 * q for a, p, q in zip(y, u1, u2, strict=True)]
    )[0]  # fmt: skip
    c1, c2 = GAMMA * C31, GAMMA * C32
    u3 = damped([g * s + c1 * p + c2 * q for s, p, q in zip(found, u1, u2, strict=True)])
    last = [a + U41 * p + U42 * q + U43 * r for a, p, q, r in zip(y, u1, u2, u3, strict=True)]
    found = f(t + h, last)[0]
    c1, c2, c3 = GAMMA * C41, GAMMA * C42, GAMMA * C43
    u4 = damped(
        [g * s + c1 * p + c2 * q + c3 * r for s, p, q, r in zip(found, u1, u2, u3, strict=True)]
    )
    new = [a + p for a, p in zip(last, u4, strict=True)]
    off = [E1 * p + E2 * q + E3 * r + E4 * s for p, q, r, s in zip(u1, u2, u3, u4, strict=True)]
    return new, error_norm(y, new, off, tolerance)
