"""The pH at which a function is nil: beside a general-purpose library, and at the ends."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from calculators.science.water.rising_root import CLOSE_PH, rising_root
from tests.effort import examples

ROOT = st.floats(0.01, 13.99)


@examples(300)
@given(ROOT, st.floats(-8, 0), st.floats(-6, 2))
def test_it_finds_what_scipy_finds_on_curves_as_steep_as_those_of_water(root, flat, steep):
    def excess(ph):
        """Hydroxide less hydrogen ion beside a buffer that rises slowly: flat, then steep at the ends."""
        rise = 10**flat * (ph - root) + 10**steep * (10 ** (ph - 14) - 10 ** (root - 14))
        return rise - (10**-ph - 10**-root)

    known = brentq(excess, 0, 14, xtol=1e-12)
    assert rising_root(excess) == pytest.approx(known, abs=2 * CLOSE_PH)


@pytest.mark.parametrize(("level", "end"), [(1, 0.0), (-1, 14.0)])
def test_a_function_of_one_sign_gives_the_end_next_to_nil(level, end):
    assert rising_root(lambda ph: level * (1 + math.exp(-level * ph))) == end


@pytest.mark.parametrize("end", [0.0, 14.0])
def test_a_root_at_an_end_is_found(end):
    assert rising_root(lambda ph: ph - end) == end


def test_it_asks_for_far_fewer_than_halving_would():
    asked = []
    rising_root(lambda ph: asked.append(ph) or 10 ** (ph - 14) - 10**-ph + 1e-3 * (ph - 7.3))
    assert len(asked) <= 16  # halving to the same closeness: 23


@pytest.mark.parametrize("guess", [7.28, 7.3, 7.35, -3.0, 20.0])
def test_a_guess_saves_questions_and_changes_no_answer(guess):
    asked = []

    def excess(ph):
        asked.append(ph)
        return 10 ** (ph - 14) - 10**-ph + 1e-3 * (ph - 7.3)

    assert rising_root(excess, guess) == pytest.approx(rising_root(excess), abs=2 * CLOSE_PH)
    assert all(0 <= ph <= 14 for ph in asked)
    near = abs(guess - 7.3) < 0.1
    asked.clear()
    rising_root(excess, guess)
    assert len(asked) <= (6 if near else 16)


@pytest.mark.parametrize("root", [2.0, 5.98, 6.02, 9.0])
def test_a_root_that_a_step_meets_is_found(root):
    """As from a guess of 6, of which the first step up or down ends on it."""
    assert rising_root(lambda ph: 0.0 if ph == root else ph - root, 6.0) == pytest.approx(
        root, abs=2 * CLOSE_PH
    )
