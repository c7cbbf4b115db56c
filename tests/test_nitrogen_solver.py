"""The solver against scipy's coefficients, closed forms, the orders it promises, and stiff problems."""

import math

import numpy as np
import pytest
from scipy.integrate import RK45, solve_ivp
from scipy.interpolate import CubicHermiteSpline

from calculators.science.nitrogen import damped_step, explicit_step
from calculators.science.nitrogen.model import (
    ALKALINITY,
    AMMONIUM,
    NITRATE,
    NITRITE,
    NITRITE_OXIDISERS,
    OXIDISERS,
)
from calculators.science.nitrogen.ode import UNDAMPED, Effort, StepTooSmall, solve
from calculators.science.nitrogen.right_side import right_side_and_sinks
from calculators.science.nitrogen.sinks import damping
from calculators.science.nitrogen.solver_parts import Damping, Tolerance
from calculators.science.nitrogen.start import build
from tests.nitrogen_tanks import LEAN, NEW


def run(f, start, end, state, relative=1e-6, absolute=1e-9, damped=UNDAMPED, effort=None, **more):
    steps = []
    tolerance = Tolerance(relative, [absolute] * len(state), **more)
    final, *_ = solve(
        lambda t, y: (f(t, y), (t, y)), damped, start, end, state, tolerance, steps.append,
        effort=effort,
    )  # fmt: skip
    return final, steps


def fully_damped(jacobian):
    """Damping with all of a Jacobian, by numpy."""

    def solver(moment, width):
        matrix = np.eye(len(moment[1])) - width * np.array(jacobian(*moment))
        return lambda right: list(np.linalg.solve(matrix, right))

    return Damping(lambda moment: float(np.abs(np.linalg.eigvals(jacobian(*moment))).max()), solver)


def test_has_the_coefficients_of_scipy():
    ours = [
        [explicit_step.A21],
        [explicit_step.A31, explicit_step.A32],
        [explicit_step.A41, explicit_step.A42, explicit_step.A43],
        [explicit_step.A51, explicit_step.A52, explicit_step.A53, explicit_step.A54],
        [
            explicit_step.A61,
            explicit_step.A62,
            explicit_step.A63,
            explicit_step.A64,
            explicit_step.A65,
        ],
    ]
    for row, theirs in zip(ours, RK45.A[1:], strict=True):
        assert row == pytest.approx(list(theirs[: len(row)]), rel=1e-15)
    assert pytest.approx(list(RK45.B)) == [
        explicit_step.A71,
        0,
        explicit_step.A73,
        explicit_step.A74,
        explicit_step.A75,
        explicit_step.A76,
    ]
    errors = [
        explicit_step.E1,
        0,
        explicit_step.E3,
        explicit_step.E4,
        explicit_step.E5,
        explicit_step.E6,
        explicit_step.E7,
    ]
    sign = math.copysign(1, errors[0] * RK45.E[0])
    assert [sign * one for one in errors] == pytest.approx(list(RK45.E), rel=1e-12)


def table():
    """Rang and Angermann's tables as matrices, and the weights of both solutions."""
    d = damped_step
    alpha, gamma = np.zeros((4, 4)), d.GAMMA * np.eye(4)
    alpha[1, 0], alpha[2, :2], alpha[3, 2] = d.A21, (d.A31, d.A32), d.A43
    gamma[1, 0], gamma[2, :2], gamma[3, :3] = d.G21, (d.G31, d.G32), (d.G41, d.G42, d.G43)
    return alpha, gamma, alpha[3] + gamma[3], np.array([d.B1, d.B2, d.B3, d.B4])


def test_the_damped_step_meets_the_order_conditions_of_a_w_method():
    """Order 3 with any matrix, Hairer and Wanner 1996, IV.7; its embedded solution is of order 2."""
    alpha, gamma, weights, embedded = table()
    one, sums = np.ones(4), alpha.sum(axis=1)
    conditions = [
        (weights @ one, 1), (weights @ sums, 1 / 2), (weights @ gamma @ one, 0),
        (weights @ sums**2, 1 / 3), (weights @ alpha @ sums, 1 / 6), (weights @ alpha @ gamma @ one, 0),
        (weights @ gamma @ sums, 0), (weights @ gamma @ gamma @ one, 0),
        (embedded @ one, 1), (embedded @ sums, 1 / 2), (embedded @ gamma @ one, 0),
    ]  # fmt: skip
    for found, promised in conditions:
        assert found == pytest.approx(promised, abs=1e-14)


def test_the_damped_step_is_l_stable():
    """The stability function with the exact matrix: at most 1 on the imaginary axis, 0 far out."""
    alpha, gamma, weights, _ = table()

    def stability(z):
        return 1 + z * weights @ np.linalg.solve(np.eye(4) - z * (alpha + gamma), np.ones(4))

    assert max(abs(stability(1j * y)) for y in np.geomspace(0.01, 1e6, 400)) <= 1 + 1e-12
    assert abs(stability(-1e9)) < 1e-8


def test_dense_output_is_the_cubic_of_scipy():
    """One step looked at inside: the two interpolants are the same polynomial."""

    def f(t, y):
        return [y[1], -y[0] + 0.3 * math.sin(t)]

    _, steps = run(f, 0.0, 0.4, [1.0, 0.5], relative=1e-3, absolute=1e-3, largest_step=10)
    step = steps[-1]
    ends = [step.start, step.start + step.width]
    theirs = CubicHermiteSpline(
        ends, [step.before, step.after], [step.slope_before, step.slope_after]
    )
    for part in (0.1, 0.37, 0.5, 0.82, 1.0):
        time = step.start + part * step.width
        assert step.at(time) == pytest.approx(list(theirs(time)), rel=1e-12)


ROBERTSON = (0.04, 1e4, 3e7)


def robertson(_, y):
    a, b, c = ROBERTSON
    first, second, third = a * y[0], b * y[1] * y[2], c * y[1] ** 2
    return [second - first, first - second - third, third]


def robertson_jacobian(_, y):
    a, b, c = ROBERTSON
    return np.array(
        [[-a, b * y[2], b * y[1]], [a, -b * y[2] - 2 * c * y[1], -b * y[1]], [0, 2 * c * y[1], 0]]
    )


def test_follows_a_stiff_problem_as_scipys_implicit_solver_does():
    """Robertson's reaction: rates from 0.04 to ten thousand; an explicit solver alone takes 50,000 steps."""
    final, steps = run(
        robertson, 0, 40, [1.0, 0.0, 0.0], absolute=1e-10, damped=fully_damped(robertson_jacobian)
    )
    theirs = solve_ivp(
        robertson, (0, 40), [1.0, 0.0, 0.0], method="Radau", rtol=1e-10, atol=1e-14
    ).y[:, -1]
    assert final == pytest.approx(list(theirs), rel=1e-5)
    assert sum(final) == pytest.approx(1, abs=1e-12)
    assert len(steps) < 400


@pytest.mark.parametrize("tank", [LEAN, NEW], ids=["lean", "new"])
def test_what_damps_the_tank_is_the_jacobian_of_its_sinks(tank):
    """Every column of ammonium, nitrite, nitrate and alkalinity against differences of the right-hand side.

    But for what hardness does to the nitrifiers' growth, which is slow and left out.
    """
    model, state = build(tank._replace(kh_dh=1.5, tap_kh_dh=1.5))
    state[:4] = [14.0, 9.0, 150.0, 40.0]
    f = right_side_and_sinks(model)
    slopes, sinks = f(0.0, state)
    solver = damping(model).solver(sinks, 0.05)
    assert damping(model).fastest(sinks) > 0
    for place in (AMMONIUM, NITRITE, NITRATE, ALKALINITY):
        nudge = 1e-5 * max(1.0, abs(state[place]))
        above = list(state)
        above[place] += nudge
        column = [(b - a) / nudge for a, b in zip(slopes, f(0.0, above)[0], strict=True)]
        unit = [float(n == place) for n in range(len(state))]
        back = solver([u - 0.05 * c for u, c in zip(unit, column, strict=True)])
        if place == ALKALINITY:
            back[OXIDISERS] = back[NITRITE_OXIDISERS] = 0.0
        assert back == pytest.approx(unit, abs=2e-5), place


def test_the_effort_bounds_the_steps_and_the_day_that_is_reached_is_said():
    steps = []
    state, time, _ = solve(
        lambda t, y: ([-y[0]], None), UNDAMPED, 0.0, 1_000.0, [1.0], Tolerance(1e-9, [1e-12]),
        steps.append, effort=Effort(20),
    )  # fmt: skip
    assert len(steps) <= 20
    assert 0 < time < 1_000
    assert state[0] == pytest.approx(math.exp(-time), rel=1e-6)


def test_an_effort_that_ends_inside_a_day_may_go_on_to_its_end():
    def reached(effort):
        steps = []
        _, time, _ = solve(
            lambda t, y: ([-y[0]], None), UNDAMPED, 0.0, 1_000.0, [1.0], Tolerance(1e-9, [1e-12]),
            steps.append, effort=effort,
        )  # fmt: skip
        return time, len(steps)

    inside, _ = reached(Effort(20))
    assert inside != math.floor(inside)
    whole, steps = reached(Effort(20, to_whole_day=100))
    assert whole == math.ceil(inside)
    assert 20 < steps <= 120
    assert reached(Effort(20, to_whole_day=1))[0] < whole  # no more than it may


def test_follows_decay_to_its_closed_form():
    final, _ = run(lambda t, y: [-0.7 * y[0]], 0, 10, [3.0])
    assert final[0] == pytest.approx(3 * math.exp(-7), rel=1e-4)


@pytest.mark.parametrize(
    ("start", "rate", "limit", "day", "expected"),
    [
        (9, 0.3, 180, 7, 54.108),
        (9, 0.3, 180, 14, 140.087),
        (9, 0.3, 180, 30, 179.579),
        (18, 0.1, 100, 7, 30.654),
        (18, 0.1, 100, 14, 47.095),
        (18, 0.1, 100, 30, 81.512),
    ],
)
def test_follows_logistic_growth_to_its_closed_form(start, rate, limit, day, expected):
    final, _ = run(lambda t, y: [rate * y[0] * (1 - y[0] / limit)], 0, day, [float(start)])
    assert final[0] == pytest.approx(expected, abs=0.001)


def test_error_falls_with_the_fifth_power_of_the_step():
    def error(width):
        f = lambda t, y: [y[0] * math.cos(t)]  # noqa: E731
        state, time = [1.0], 0.0
        while time < 4 - 1e-9:
            slope = f(time, state)
            state, *_ = explicit_step.try_step(
                lambda t, y: (f(t, y), None), time, width, state, slope, Tolerance(1, [1.0])
            )
            time += width
        return abs(state[0] - math.exp(math.sin(4)))

    assert math.log2(error(0.1) / error(0.05)) == pytest.approx(5, abs=0.5)


def test_dense_output_is_as_good_inside_the_steps():
    _, steps = run(lambda t, y: [-y[0]], 0, 5, [1.0], relative=1e-5)
    for step in steps:
        for part in (0.25, 0.5, 0.9):
            time = step.start + part * step.width
            assert step.at(time)[0] == pytest.approx(math.exp(-time), rel=2e-4)


def test_keeps_positive_what_is_positive():
    """A sink that empties its pool within hours, with far too lax a tolerance."""
    f = lambda t, y: [-50 * y[0] / (0.01 + abs(y[0])), 0.0]  # noqa: E731
    _, steps = run(f, 0, 1, [10.0, 1.0], relative=0.5, absolute=5, positive=1, floor=-1e-9)
    assert min(step.after[0] for step in steps) >= -1e-9


def test_keeps_what_the_right_side_keeps():
    """No clipping: the sum of two pools that feed each other stays to the last digits."""
    f = lambda t, y: [-3 * y[0] + y[1] ** 2, 3 * y[0] - y[1] ** 2]  # noqa: E731
    final, steps = run(f, 0, 30, [4.0, 1.0], relative=1e-3)
    assert sum(final) == pytest.approx(5, abs=1e-12)
    middle = steps[len(steps) // 2]
    assert sum(middle.at(middle.start + middle.width / 3)) == pytest.approx(5, abs=1e-12)


def test_gives_up_aloud_where_no_step_is_small_enough():
    with pytest.raises(StepTooSmall):
        run(lambda t, y: [y[0] ** 2], 0, 2, [1.0])  # runs to infinity at t = 1
