"""A reading that drifts between water changes: the closed forms against a plain count of the days."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq, fsolve

from calculators.science.water.between_changes import (
    CourseOfReading,
    corners,
    first_day_at_or_below,
    settled,
    value_at,
)

courses = st.builds(
    CourseOfReading,
    start=st.floats(1.1, 20),
    a_day=st.floats(-0.5, 0.5),
    new_water=st.floats(0, 20),
    share=st.one_of(st.just(0.0), st.just(1.0), st.floats(0.05, 0.95)),
    every_days=st.integers(1, 30).map(float),
)


def counted(course, changes):
    """The readings before and after each change, one after the other."""
    level, found = course.start, []
    for _ in range(changes):
        before = level + course.a_day * course.every_days
        level = (1 - course.share) * before + course.share * course.new_water
        found.append((before, level))
    return found


@given(courses)
def test_values_are_those_of_the_count(course):
    for number, (_, after) in enumerate(counted(course, 20), start=1):
        assert value_at(course, number * course.every_days) == pytest.approx(after, abs=1e-9)


@given(courses)
def test_it_settles_where_one_more_change_does_nothing(course):
    ends = settled(course)
    if not course.is_renewed:
        assert (ends is None) == (course.a_day != 0)
        return
    step = course.a_day * course.every_days
    kept = 1 - course.share
    (fixed,) = fsolve(
        lambda level: kept * (level + step) + course.share * course.new_water - level, 5.0
    )
    assert ends.after == pytest.approx(fixed, abs=1e-6)
    assert ends.before == pytest.approx(fixed + step, abs=1e-6)


@given(courses, st.floats(0.5, 1))
def test_the_first_low_day_is_that_of_the_count(course, level):
    many = 400
    day = first_day_at_or_below(course, level)
    last, low = course.start, None
    for number, (before, after) in enumerate(counted(course, many)):
        begins = number * course.every_days
        if before <= level:
            low = begins + brentq(
                lambda t, last=last: last + course.a_day * t - level, 0, course.every_days
            )
        elif after <= level:
            low = begins + course.every_days
        if low is not None:
            break
        last = after
    ends = settled(course)
    assume(ends is None or min(abs(end - level) for end in ends) > 1e-6)
    # a count that comes within a hair of the level tells nothing
    assume(low is not None or abs(after - level) > 1e-6)
    if low is None:
        assert day is None or day > many * course.every_days
    else:
        assert day == pytest.approx(low, abs=1e-6)


@given(courses, st.floats(1, 200))
def test_the_curve_ends_where_the_value_does(course, days):
    points = list(corners(course, days))
    assert points[0] == (0.0, course.start)
    assert points[-1][0] == pytest.approx(days, rel=1e-8) or points[-1][0] == pytest.approx(
        days - days % course.every_days, abs=1e-6
    )
    assert points[-1][1] == pytest.approx(value_at(course, days), abs=1e-6)
    assert [day for day, _ in points] == sorted(day for day, _ in points)


@pytest.mark.parametrize(
    ("course", "day"),
    [
        (CourseOfReading(5, -3 / 7, 0, 0, 7), 28 / 3),  # no changes: 4 degrees at 3 a week
        (CourseOfReading(0.8, -1, 0, 0, 7), 0),
        (CourseOfReading(5, 0, 0, 0.5, 7), 21),  # 5, 2.5, 1.25, 0.625: the third change
        (CourseOfReading(5, 0, 1, 0.5, 7), None),  # comes near for ever
        (CourseOfReading(5, -0.1, 0, 1, 7), 7),  # a full change for water without any
        (
            CourseOfReading(5, -0.5, 4, 1, 7),
            13,
        ),  # before the second full change: 4 less 3 in six days
    ],
)
def test_by_hand(course, day):
    assert first_day_at_or_below(course, 1) == (None if day is None else pytest.approx(day))
