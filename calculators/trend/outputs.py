"""What a trend gives: the slope, how sure it is, and what follows if nothing changes."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import (
    ChangeRate,
    Concentration,
    Count,
    DailyChange,
    DaysAhead,
    NitrogenFlow,
    Percent,
    Ratio,
)
from calculators.core.quantity import AnswersTo, Choices, Digits, Help, Label
from calculators.core.result import Note, Series
from calculators.science.trends.trend_verdict import Verdict

SUPPLY = AnswersTo(("volume_l", "feed_g_week", "protein_percent"))
TAP = AnswersTo(("tap_value",))
# Colour kits tell a fifth of a reading at best, so two figures are plenty.
SlopeWeek = Annotated[ChangeRate, Digits(2)]
Level = Annotated[Concentration, Digits(2)]
Uptake = Annotated[NitrogenFlow, Digits(2)]


class Trend(NamedTuple):
    """The slope, how sure it is, and what follows if nothing changes."""

    slope_week: Annotated[SlopeWeek | None, Label("Change between water changes")]
    slope_low_week: Annotated[SlopeWeek | None, Label("At least")]
    slope_high_week: Annotated[SlopeWeek | None, Label("At most")]
    coverage_percent: Annotated[
        Percent | None,
        Label("How sure these two limits are"),
        Help(
            "How often such limits hold the true change. 95 or more takes five readings in a row."
        ),
    ]
    verdict: Annotated[
        Verdict,
        Label("Verdict"),
        Choices(("building up", "steady", "falling", "too few readings to tell")),
    ]
    pairs: Annotated[Count, Label("Pairs of readings used")]
    net_mg_l_day: Annotated[
        DailyChange | None,
        Digits(2),
        Label("Net build-up a day"),
        Help("What comes in less what is taken up; below zero, plants and soil take more."),
    ]
    level_mg_l: Annotated[
        Level | None, Label("Level at the last reading"), Help("On the line, less noisy.")
    ]
    next_reading_ratio: Annotated[
        Ratio | None,
        Digits(2),
        Label("Width of the limits with one reading more"),
        Help("Expected, against the width now: 0.8 is a fifth narrower. For limits at 95 % alone."),
    ]
    days_to_zero: Annotated[DaysAhead | None, Label("Until nothing is left, without changes")]
    days_to_limit: Annotated[
        DaysAhead | None, Label("Until your limit, without changes"), AnswersTo(("limit_mg_l",))
    ]
    hold_change_percent: Annotated[
        Percent | None,
        Digits(2),
        Label("Weekly change that would hold this level"),
        Help("Just before each change, with water that reads as your tap."),
        TAP,
    ]
    settles_at_mg_l: Annotated[
        Level | None,
        Label("Level that your changes lead to"),
        Help("Just before a change, if changes and trend go on as they are."),
        TAP,
    ]
    uptake_mg_n_day: Annotated[
        Uptake | None,
        Label("Uptake of plants that fits"),
        Help("For nitrate as NO₃. Give it to the nitrogen balance as the measured uptake."),
        SUPPLY,
    ]
    uptake_low_mg_n_day: Annotated[
        Uptake | None,
        Label("Uptake, at least"),
        Help("As sure as the limits of the trend."),
        SUPPLY,
    ]
    uptake_high_mg_n_day: Annotated[Uptake | None, Label("Uptake, at most"), SUPPLY]
    uptake_width_next_mg_n_day: Annotated[
        Uptake | None, Label("Distance of these limits with one reading more"), SUPPLY
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]
