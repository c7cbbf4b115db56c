"""The solver against scipy's coefficients, closed forms and the orders it promises."""

import math

import numpy as np
import pytest
from scipy.integrate import RK45

from calculators.science.nitrogen import ode
from calculators.science.nitrogen.ode import StepTooSmall, Tolerance, solve


def run(f, start, end, state, relative=1e-6, absolute=1e-9, **more):
    steps = []
    tolerance = Tolerance(relative, [absolute] * len(state), **more)
    final, _ = solve(f, start, end, state, tolerance, steps.append)
    return final, steps


def test_has_the_coefficients_of_scipy():
    ours = [
        [ode.A21],
        [ode.A31, ode.A32],
        [ode.A41, ode.A42, ode.A43],
        [ode.A51, ode.A52, ode.A53, ode.A54],
        [ode.A61, ode.A62, ode.A63, ode.A64, ode.A65],
    ]
    for row, theirs in zip(ours, RK45.A[1:], strict=True):
        assert row == pytest.approx(list(theirs[: len(row)]), rel=1e-15)
    assert pytest.approx(list(RK45.B)) == [ode.A71, 0, ode.A73, ode.A74, ode.A75, ode.A76]
    errors = [ode.E1, 0, ode.E3, ode.E4, ode.E5, ode.E6, ode.E7]
    sign = math.copysign(1, errors[0] * RK45.E[0])
    assert [sign * one for one in errors] == pytest.approx(list(RK45.E), rel=1e-12)


def test_dense_output_is_that_of_scipy():
    """One step of the same width, looked at inside: the two interpolants are the same polynomial."""

    def f(t, y):
        return [y[1], -y[0] + 0.3 * math.sin(t)]

    _, steps = run(f, 0.0, 0.4, [1.0, 0.5], relative=1e-3, absolute=1e-3, largest_step=10)
    step = steps[-1]
    theirs = RK45(
        lambda t, y: np.array(f(t, y)), step.start, step.before, step.start + step.width,
        first_step=step.width, rtol=1, atol=1,
    )  # fmt: skip
    theirs.step()
    look = theirs.dense_output()
    for part in (0.1, 0.37, 0.5, 0.82, 1.0):
        time = step.start + part * step.width
        assert step.at(time) == pytest.approx(list(look(time)), rel=1e-12)


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
            state, _, _ = ode.try_step(f, time, width, state, slope, Tolerance(1, [1.0]))
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
