"""The level that doses and changes settle at, against the recurrence worked by brute force."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.dosing.settling import (
    LEVEL_SHOWN_DAYS,
    DosingSchedule,
    course,
    highest,
    settled_level,
)


def by_hand(rise, use, tap, share, doses, stretches, start):
    """Level before and after a change once it repeats: facts worked one stretch after another."""
    before = after = start
    for _ in range(stretches):
        before = after + doses * rise - use
        after = before * (1 - share) + tap * share
    return before, after


@given(
    rise=st.floats(0, 50), tap=st.floats(0, 50), share=st.floats(0.05, 1), days=st.integers(1, 28)
)
def test_daily_doses_settle_where_the_recurrence_ends(rise, tap, share, days):
    settled = settled_level(rise, 0, tap, DosingSchedule(1, days, share))
    before, after = by_hand(rise, 0, tap, share, days, 1000, 0)
    assert settled.before == pytest.approx(before, rel=1e-9, abs=1e-9)
    assert settled.after == pytest.approx(after, rel=1e-9, abs=1e-9)


def test_four_changes_of_a_quarter_bring_40_to_16_0742():
    # 40 mg/L, new water 5 mg/L, nothing dosed or used; 5 + 35 x 0.75^4 worked by hand
    days, levels = course(40, 0, 0, 5, DosingSchedule(7, 7, 0.25))
    after = [level for day, level in zip(days, levels, strict=True) if day == 28][-1]
    assert after == pytest.approx(16.0742, abs=5e-5)


def test_the_curve_reaches_the_settled_level():
    rhythm = DosingSchedule(7, 7, 0.5)
    settled = settled_level(10, 2 / 7, 4, rhythm)
    days, levels = course(settled.after, 10, 2 / 7, 4, rhythm)
    assert days[-1] == LEVEL_SHOWN_DAYS
    changes = [level for day, level in zip(days, levels, strict=True) if day == 49]
    assert changes[0] == pytest.approx(settled.before)
    assert changes[1] == pytest.approx(settled.after)
    assert changes[2] == pytest.approx(settled.after + 10)
    assert highest(settled.after, 10, 2 / 7, 4, rhythm) == pytest.approx(settled.after + 10)


@pytest.mark.parametrize(
    ("use", "rhythm"),
    [
        (0, DosingSchedule(None, 7, 0.5)),  # a single dose
        (0, DosingSchedule(1, 7, 0.0)),  # no changes
        (5, DosingSchedule(1, 7, 0.3)),  # plants take all
    ],
)
def test_it_does_not_settle(use, rhythm):
    assert settled_level(1, use, 0, rhythm) is None


@given(
    now=st.floats(0, 100),
    rise=st.floats(0, 50),
    use=st.floats(0, 20),
    every=st.sampled_from([None, 1.0, 7.0, 3.7]),
    change=st.floats(1, 365),
    share=st.floats(0, 1),
)
def test_the_curve_runs_eight_weeks_forward_and_never_below_nothing(
    now, rise, use, every, change, share
):
    days, levels = course(now, rise, use, 0, DosingSchedule(every, change, share))
    assert days == sorted(days)
    assert days[0] == 0
    assert days[-1] == LEVEL_SHOWN_DAYS
    assert min(levels) >= 0
    assert levels[:2] == [now, now + rise]


@pytest.mark.parametrize("change", [28 - 4e-10, 56 - 5e-10, 14 - 1e-10, 7 + 1e-10])
@pytest.mark.parametrize("every", [None, 7.0, 8 - 1e-11])
def test_an_event_a_rounding_before_the_end_falls_on_the_end(every, change):
    days, levels = course(10, 4, 0.1, 2, DosingSchedule(every, change, 0.5))
    assert days[-1] == LEVEL_SHOWN_DAYS
    assert days == sorted(days)
    exact = DosingSchedule(every and round(every), round(change), 0.5)
    assert levels[-1] == pytest.approx(course(10, 4, 0.1, 2, exact)[1][-1], abs=1e-6)
