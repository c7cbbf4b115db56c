"""Which way readings go between water changes."""

from typing import Annotated, NamedTuple

from calculators.core.declare import calculator
from calculators.core.outlook import (
    days_until,
    holding_change_percent,
    narrowed_by,
    settles_at,
)
from calculators.core.quantities import (
    ChangeRate,
    Concentration,
    Count,
    DailyChange,
    Days,
    Interval,
    Percent,
    Ratio,
)
from calculators.core.quantity import Choices, Help, Label, Possible
from calculators.core.result import Note, Series
from calculators.core.stretches import Change, Reading, into_stretches
from calculators.core.theil_sen import Stretch, level_at, line, theil_sen
from calculators.core.trend_words import ANIMALS_FIRST, notes, too_few
from calculators.core.verdict import Verdict, judge

DAYS_PER_WEEK = 7
PICTURE = "Readings, and the line of the trend"

# Invented readings of the demo library's Reading Room tank, after its floaters were thinned.
EXAMPLE_READINGS = [
    Reading(0, 10), Reading(4, 12), Reading(7, 15), Reading(8, 12), Reading(11, 14),
    Reading(14, 16), Reading(15, 13), Reading(18, 15), Reading(21, 18),
]  # fmt: skip
EXAMPLE_CHANGES = [Change(7, 25), Change(14, 25)]


class Trend(NamedTuple):
    """The slope, how sure it is, and what follows if nothing changes."""

    slope_week: Annotated[ChangeRate | None, Label("Change between water changes")]
    slope_low_week: Annotated[
        ChangeRate | None, Label("At least"), Help("Lower limit, 95 % sure on both sides.")
    ]
    slope_high_week: Annotated[ChangeRate | None, Label("At most"), Help("Upper limit.")]
    verdict: Annotated[
        Verdict,
        Label("Verdict"),
        Choices(("building up", "steady", "falling", "too few readings to tell")),
    ]
    pairs: Annotated[Count, Label("Pairs of readings used")]
    net_mg_l_day: Annotated[
        DailyChange | None,
        Label("Net build-up a day"),
        Help("What comes in less what is taken up; below zero, plants and soil take more."),
    ]
    level_mg_l: Annotated[
        Concentration | None, Label("Level at the last reading"), Help("On the line, less noisy.")
    ]
    next_reading_ratio: Annotated[
        Ratio | None,
        Label("Width of the limits with one reading more"),
        Help("Against the width now: 0.8 is a fifth narrower. For a reading right on the line."),
    ]
    days_to_zero: Annotated[Days | None, Label("Until nothing is left, without changes")]
    days_to_limit: Annotated[Days | None, Label("Until your limit, without changes")]
    hold_change_percent: Annotated[
        Percent | None,
        Label("Weekly change that would hold this level"),
        Help("Just before each change, with water that reads as your tap."),
    ]
    settles_at_mg_l: Annotated[
        Concentration | None,
        Label("Level that your changes lead to"),
        Help("Just before a change, if changes and trend go on as they are."),
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]


@calculator("Trend", sources=("theil-1950", "sen-1968", "hirsch-slack-smith-1982"))
def trend(
    readings: Annotated[
        list[Reading],
        Label("Readings"),
        Help("Day (any day may be 0) and value, at most one a day; in any order."),
    ] = EXAMPLE_READINGS,
    changes: Annotated[
        list[Change],
        Label("Water changes"),
        Help("A reading on the day of a change counts as taken before it."),
    ] = EXAMPLE_CHANGES,
    tap_value: Annotated[Concentration, Label("Reading of the new water")] = 5.0,
    kit_step: Annotated[
        Concentration,
        Label("Smallest step the kit can tell"),
        Possible(0, 1_000),
        Help("The gap between colours near your reading; for a meter, its last digit."),
    ] = 2.0,
    limit_mg_l: Annotated[Concentration | None, Label("Limit you do not want to pass")] = 40.0,
    next_after_days: Annotated[Interval, Label("Next reading after")] = 7.0,
) -> Trend:
    """Find which way a reading goes between water changes, and how sure that is.

    Takes the slope of every pair of readings with no change between them; the middle one is the
    trend (Theil and Sen). A single wrong reading hardly moves it, and a water change never makes
    a slope. The limits are those of Sen, with the variance of Kendall's test summed over the
    stretches between changes. They need four readings in one stretch, or as many pairs over several.

    Building or falling: both limits lie on one side of zero, and the change over the longest
    stretch is at least the kit's step. Steady: that change is smaller than the kit's step or than the
    scatter of the readings. Otherwise there are too few readings to tell.

    Doses and changes of feeding between two readings count into the slope: leave those days out.
    """
    stretches = into_stretches(readings, changes)
    slope = theil_sen(stretches)
    if slope is None:
        return nothing_to_compare(stretches, changes)
    verdict = judge(slope, stretches, kit_step)
    last = next(stretch for stretch in reversed(stretches) if stretch)
    level = max(0.0, level_at(last, slope.middle, last[-1][0]))
    moving = slope.middle if verdict in ("building", "falling") else 0.0
    rise_week = DAYS_PER_WEEK * max(0.0, moving)
    return Trend(
        slope_week=DAYS_PER_WEEK * slope.middle,
        slope_low_week=None if slope.low is None else DAYS_PER_WEEK * slope.low,
        slope_high_week=None if slope.high is None else DAYS_PER_WEEK * slope.high,
        verdict=verdict,
        pairs=slope.pairs,
        net_mg_l_day=slope.middle,
        level_mg_l=level,
        next_reading_ratio=narrowed_by(stretches, slope, next_after_days, changes),
        days_to_zero=days_until(0.0, level, min(0.0, moving)),
        days_to_limit=None if limit_mg_l is None else days_until(limit_mg_l, level, moving),
        hold_change_percent=holding_change_percent(level, tap_value, rise_week),
        settles_at_mg_l=settles_at(moving, tap_value, changes) if moving else None,
        notes=tuple(notes(slope, verdict, stretches, readings, changes)),
        series=drawn(stretches, slope.middle),
    )


def nothing_to_compare(stretches: list[Stretch], changes: list[Change]) -> Trend:
    """No two readings lie between the same changes."""
    said = (ANIMALS_FIRST, too_few(stretches, changes))
    return Trend(
        *(None, None, None, "too-few-readings", 0, None, None, None, None, None, None, None),
        notes=said,
        series=drawn(stretches, None),
    )


def drawn(stretches: list[Stretch], slope: float | None) -> dict[str, Series]:
    """The readings, and the line through each stretch."""
    points = [point for stretch in stretches for point in stretch]
    if not points:
        return {}
    days = [day for day, _ in points]
    shown = {
        "readings": Series("Reading", "mg/L", "Day", "days", days, [y for _, y in points])._replace(
            picture=PICTURE, short="reading", dots=True
        )
    }
    if slope is not None:
        heights = [height for stretch in stretches for height in line(stretch, slope)]
        shown["line"] = Series(
            "Line of the trend", "mg/L", "Day", "days", days, heights, PICTURE, "trend"
        )
    return shown
