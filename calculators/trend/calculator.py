"""Which way readings go between water changes."""

from typing import Annotated

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER
from calculators.core.leads import Lead
from calculators.core.quantities import (
    Area,
    Concentration,
    FeedMass,
    Interval,
    Protein,
    Volume,
)
from calculators.core.quantity import Assumed, Help, Label, MayBeEmpty, Possible
from calculators.core.result import Series
from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.nitrogen import nitrogen_inputs
from calculators.science.nitrogen.balance import Flows, flows
from calculators.science.nitrogen.constants import DENITRIFICATION_MG_M2_DAY
from calculators.science.nitrogen.uptake_fit import AT_THE_END, UptakeFit, fit, fit_notes
from calculators.science.trends.stretches import Change, DatedReading, into_stretches
from calculators.science.trends.theil_sen import Slope, Stretch, level_at, line, theil_sen
from calculators.science.trends.trend_verdict import judge
from calculators.trend.next_reading import narrowed_by
from calculators.trend.outputs import Trend
from calculators.trend.trend_outlook import days_until, holding_change_percent, settles_at
from calculators.trend.words import (
    ANIMALS_FIRST,
    NO_SOIL,
    TOO_FEW_TO_TELL,
    highest_now,
    notes,
    percent_sure,
    too_few,
)

PICTURE = "Readings, and the line of the trend"

# Invented readings of the demo library's Reading Room tank, after its floaters were thinned.
EXAMPLE_READINGS = [
    DatedReading(0, 10), DatedReading(4, 12), DatedReading(7, 15), DatedReading(8, 12), DatedReading(11, 14),
    DatedReading(14, 16), DatedReading(15, 13), DatedReading(18, 15), DatedReading(21, 18),
]  # fmt: skip
EXAMPLE_CHANGES = [Change(7, 25), Change(14, 25)]


@calculator(
    "Trend",
    sources=("theil-1950", "sen-1968", "hirsch-slack-smith-1982", "timmons-ebeling"),
    leads_to=(
        Lead(
            "nitrogen-balance",
            "What goes in and out beside it",
            {
                "volume_l": "volume_l",
                "feed_g_week": "feed_g_week",
                "protein_percent": "protein_percent",
                "soil_area_cm2": "soil_area_cm2",
                "denitrification_mg_n_m2_day": "denitrification_mg_n_m2_day",
                "tap_nitrate_mg_l": "tap_value",
                "slope_week": "slope_week",
                "slope_low_week": "slope_low_week",
                "slope_high_week": "slope_high_week",
                "next_reading_ratio": "next_reading_ratio",
            },
            needs=("uptake_mg_n_day",),  # worked out of nitrate alone
        ),
    ),
)
def trend(
    readings: Annotated[
        list[DatedReading],
        Label("Readings"),
        Help(
            "Day (any day may be 0) and value, in any order. All as nitrate, NO₃, or all as nitrate "
            "nitrogen: the two differ 4.4-fold."
        ),
    ] = EXAMPLE_READINGS,
    changes: Annotated[
        list[Change],
        Label("Water changes"),
        Help("A reading on the day of a change counts as taken before it."),
        MayBeEmpty(),
    ] = EXAMPLE_CHANGES,
    tap_value: Annotated[Concentration | None, Label("Reading of the new water")] = 5.0,
    kit_step: Annotated[
        Concentration,
        Label("Smallest step the kit can tell"),
        Possible(0, 1_000),
        Help("The gap between colours near your reading; for a meter, its last digit."),
        Assumed(),
        FINER,
    ] = 2.0,
    limit_mg_l: Annotated[Concentration | None, Label("Limit you do not want to pass")] = 40.0,
    next_after_days: Annotated[Interval, Label("Next reading after"), Assumed(), FINER] = 7.0,
    volume_l: Annotated[
        Volume | None,
        Label("Water volume"),
        Help("With the feed it gives the plants' uptake; empty for readings that are not nitrate."),
        FINER,
    ] = 120.0,
    feed_g_week: Annotated[FeedMass | None, Label("Feed a week"), Possible(0, 5_000), FINER] = 5.0,
    protein_percent: Annotated[Protein | None, Help("From the label of the feed."), FINER] = 45.0,
    soil_area_cm2: Annotated[
        Area | None, Label("Soil area"), Help("Length times width of the bed; 0 for none."), FINER
    ] = 2_800.0,
    denitrification_mg_n_m2_day: Annotated[
        nitrogen_inputs.Denitrification, Assumed(), FINER
    ] = DENITRIFICATION_MG_M2_DAY,
) -> Trend:
    """Find which way a reading goes between water changes, and how sure that is.

    Takes the slope of every pair of readings with no change between them; the middle one is the
    trend (Theil and Sen). A single wrong reading hardly moves it, and a water change never makes
    a slope. The limits leave out as many of the steepest and flattest pairs as the exact distribution of
    Kendall's score allows at 95 %. Five readings between two changes bear such limits, or two readings
    in each of six stretches. With fewer the widest limits are shown, with how sure they are: 91.7 % for four
    readings, 87.5 % for four pairs. Below 85 % none are shown.

    Building or falling: both limits lie on one side of zero, and the change over the longest
    stretch is at least the kit's step. Steady: that change is smaller than the kit's step or than the
    scatter of the readings. Otherwise there are too few readings to tell.

    With the tank's volume and feed the slope becomes the plants' uptake: what the feed brings as
    ammonia, less what the soil loses, less what nitrate gains. Its limits are those of the slope.

    Doses and changes of feeding between two readings count into the slope: leave those days out.

    All equations and constants: How the nitrogen model works.
    """
    stretches = into_stretches(readings, changes)
    slope = theil_sen(stretches)
    if slope is None:
        return nothing_to_compare(stretches, changes, readings)
    verdict = judge(slope, stretches, kit_step)
    last = next(stretch for stretch in reversed(stretches) if stretch)
    level = max(0.0, level_at(last, slope.middle, last[-1][0]))
    moving = slope.middle if verdict in ("building", "falling") else 0.0
    ratio = narrowed_by(stretches, slope, next_after_days, changes)
    soil = (soil_area_cm2 or 0.0, denitrification_mg_n_m2_day)
    week_flows = supply(feed_g_week, protein_percent, soil)
    uptake = fitted(week_flows, slope, ratio, volume_l)
    rise_week = DAYS_PER_WEEK * max(0.0, moving)
    return Trend(
        slope_week=DAYS_PER_WEEK * slope.middle,
        slope_low_week=None if slope.low is None else DAYS_PER_WEEK * slope.low,
        slope_high_week=None if slope.high is None else DAYS_PER_WEEK * slope.high,
        coverage_percent=None if slope.coverage is None else 100 * slope.coverage,
        verdict=verdict,
        pairs=slope.pairs,
        net_mg_l_day=slope.middle,
        level_mg_l=level,
        next_reading_ratio=ratio,
        days_to_zero=days_until(0.0, level, min(0.0, moving)),
        days_to_limit=None if limit_mg_l is None else days_until(limit_mg_l, level, moving),
        hold_change_percent=None
        if tap_value is None
        else holding_change_percent(level, tap_value, rise_week),
        settles_at_mg_l=settles_at(moving, tap_value, changes)
        if moving and tap_value is not None
        else None,
        uptake_mg_n_day=uptake.middle,
        uptake_low_mg_n_day=uptake.low,
        uptake_high_mg_n_day=uptake.high,
        uptake_width_next_mg_n_day=uptake.width_next,
        notes=(
            *notes(slope, verdict, stretches, readings, changes),
            *(fit_notes(uptake, week_flows, percent_sure(slope)) if week_flows else ()),
            *((NO_SOIL,) if uptake.middle is not None and soil_area_cm2 is None else ()),
            *((AT_THE_END,) if uptake.middle is not None and level < kit_step else ()),
        ),
        series=drawn(stretches, slope.middle),
    )


def supply(
    feed_g_week: float | None, protein_percent: float | None, soil: tuple[float, float]
) -> Flows | None:
    """What comes in and what the soil loses; None where no feed is given, or not its protein.

    The ``soil`` is a pair: its area in cm², and what it loses, mg N a m² and day.
    """
    if feed_g_week is None or protein_percent is None:
        return None
    return flows(feed_g_week, protein_percent, 0.0, (0.0, 1.0), 0.0, soil)


def fitted(
    week_flows: Flows | None, slope: Slope, ratio: float | None, volume_l: float | None
) -> UptakeFit:
    """The uptake that explains a slope a day; none where feed or volume is not given."""
    if week_flows is None or volume_l is None:
        return UptakeFit()
    limits = (None if limit is None else DAYS_PER_WEEK * limit for limit in slope[:3])
    middle, low, high = limits
    return fit(week_flows, (middle, low, high), ratio, volume_l)


def nothing_to_compare(
    stretches: list[Stretch], changes: list[Change], readings: list[DatedReading]
) -> Trend:
    """No two readings lie between the same changes."""
    notes = (*highest_now(readings), TOO_FEW_TO_TELL, ANIMALS_FIRST, too_few(stretches, changes))
    return Trend(
        *(None, None, None, None, "too-few-readings", 0),
        *(None,) * 11,
        notes=notes,
        series=drawn(stretches, None),
    )


def drawn(stretches: list[Stretch], slope: float | None) -> dict[str, Series]:
    """The readings, and the line through each stretch. The ``slope`` is in mg/L a day."""
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
            "Line of the trend",
            "mg/L",
            "Day",
            "days",
            days,
            heights,
            PICTURE,
            "trend",
            digits=2,
            subject="The line of the trend",
        )
    return shown
