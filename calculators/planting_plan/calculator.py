"""How many stems for a bed, how long until it is full, and the trimming it then takes."""

from typing import Annotated, NamedTuple

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow
from calculators.core.leads import Lead, Rows, Value
from calculators.core.quantities import (
    Area,
    Count,
    DailyLight,
    Days,
    DoublingTime,
    Length,
    Minutes,
    MinutesAWeek,
    Percent,
    Seconds,
    Weeks,
)
from calculators.core.quantity import Assumed, Help, Label, Possible, Unpainted
from calculators.core.result import Note, Series
from calculators.planting_plan.words import more_stems, notes, until_full, verdict
from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.growth.bed import FULL_BED_G_M2
from calculators.science.growth.filling import (
    cover_by_week,
    days_between,
    days_to_full,
    stems_for,
    trims_within,
)
from calculators.science.light.lit_doubling import light_notes, lit_doubling

PLAN_WEEKS = 26  # half a year
SECONDS_A_MINUTE = 60
SHOWN_STARTS = (5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100)  # percent


class PlantingPlan(NamedTuple):
    """What to buy or cut, when the bed is full, and the work that follows."""

    bed_cm2: Annotated[Area, Label("Bed")]
    stems_full: Annotated[Count, Label("Stems that fill it")]
    stems_to_plant: Annotated[Count, Label("Stems to plant")]
    full: Annotated[str, Label("It is full"), Help("Right within a factor of two.")]
    weeks_to_fill: Annotated[Weeks, Label("Weeks until it is full"), Unpainted()]
    plant_minutes: Annotated[Minutes, Label("Planting")]
    trim_every_days: Annotated[Days, Label("Then trim every")]
    minutes_week: Annotated[
        MinutesAWeek, Label("Trimming, once it is full"), Help("A mean over the weeks.")
    ]
    trims_half_year: Annotated[Count, Label("Trims in the first half year")]
    minutes_half_year: Annotated[
        Minutes, Label("All the work of the first half year"), Help("Planting and trims.")
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]


SIZE_ROW = "The bed"


@calculator(
    "Planting plan",
    sources=("nielsen-sand-jensen-1991", "arithmetic"),
    leads_to=(
        Lead(
            "nitrogen-forecast",
            "Forecast the tank with these plants",
            {
                "plants": Rows(
                    {
                        "name": Value("The bed"),
                        "doubling_days": "doubling_days",
                        "floating": Value(False),
                    }
                )
            },
        ),
        Lead(
            "upkeep",
            "The minutes of all tanks together",
            {
                "tanks": Rows(
                    {
                        "name": Value("This tank"),
                        "plants": Rows(
                            {
                                "name": Value("The bed"),
                                "trim_every_days": "trim_every_days",
                                "minutes": "trim_minutes",
                            }
                        ),
                    }
                )
            },
        ),
    ),
)
def planting_plan(
    length_cm: Annotated[Length, Label("Length of the bed"), InRow(SIZE_ROW, "Length")] = 40.0,
    width_cm: Annotated[Length, Label("Width of the bed"), InRow(SIZE_ROW, "Width")] = 15.0,
    spacing_cm: Annotated[
        Length, Label("Spacing of a full bed"), Possible(0.5, 100), Help("From the plant's page.")
    ] = 4.0,
    start_percent: Annotated[
        Percent,
        Label("Part of a full bed to plant"),
        Possible(1, 100),
        Help("A tank that starts well planted grows less algae: 50 or more if you can."),
    ] = 30.0,
    doubling_days: Annotated[
        DoublingTime,
        Help(
            "How long half as much takes to become all of it, in your tank; see the plant's page."
        ),
    ] = 14.0,
    settle_days: Annotated[
        Days,
        Label("Days to settle"),
        Possible(0, 120),
        Help("No growth while roots form and old leaves go. Stems 7 to 14, rosettes 20 to 40."),
        Assumed(),
        FINER,
    ] = 10.0,
    cut_percent: Annotated[
        Percent,
        Label("Taken at each trim"),
        Possible(5, 95),
        Help("Of the stand; half is usual."),
        Assumed(),
        FINER,
    ] = 50.0,
    trim_minutes: Annotated[
        Minutes, Label("Minutes for one trim of the full bed"), Assumed(), FINER
    ] = 10.0,
    seconds_a_stem: Annotated[
        Seconds,
        Label("Seconds to plant a stem"),
        Possible(0, 600),
        Help("With tweezers 20 to 60."),
        Assumed(),
        FINER,
    ] = 40.0,
    dli_mol: Annotated[
        DailyLight | None,
        Label("Daily light at the surface"),
        Possible(0.1, 100),
        Help("From the light calculator. Empty: your doubling time stands."),
        FINER,
    ] = None,
) -> PlantingPlan:
    """Plan a bed: how many stems, how many weeks until it is full, how many minutes it then takes.

    Each stem gets a square of the spacing. After settling, the stand doubles in the time given
    until it is full; then it is trimmed, and grows back at the same pace. Crowding slows the last
    weeks, so time your own bed from half to full.

    Doubling times of fourteen water plants in a laboratory ran from 6 to 95 days; in a dim tank
    without added gas expect the slow half. Take the weeks as right within a factor of two.
    """
    lit = lit_doubling(doubling_days, FULL_BED_G_M2, dli_mol, own=True)
    doubling_days = lit.doubling_days
    full = stems_for(length_cm * width_cm, spacing_cm)
    planted = stems_for(length_cm * width_cm * start_percent / 100, spacing_cm)
    start = min(1.0, planted / full)
    fill_days = days_to_full(start, settle_days, doubling_days)
    more = days_to_full(min(1.0, 2 * planted / full), settle_days, doubling_days)
    after_cut = 1 - cut_percent / 100
    every = days_between(after_cut, 1.0, doubling_days)
    first_trim = max(fill_days, settle_days)  # a bed that is planted full is cut once it grows
    trims = trims_within(PLAN_WEEKS * DAYS_PER_WEEK, first_trim, every)
    planting = planted * seconds_a_stem / SECONDS_A_MINUTE
    at, covers = cover_by_week(start, settle_days, doubling_days, after_cut, PLAN_WEEKS)
    return PlantingPlan(
        bed_cm2=length_cm * width_cm,
        stems_full=full,
        stems_to_plant=planted,
        full=until_full(fill_days / DAYS_PER_WEEK),
        weeks_to_fill=fill_days / DAYS_PER_WEEK,
        plant_minutes=planting,
        trim_every_days=every,
        minutes_week=trim_minutes * DAYS_PER_WEEK / every,
        trims_half_year=trims,
        minutes_half_year=planting + trims * trim_minutes,
        notes=(
            verdict(planted, fill_days / DAYS_PER_WEEK, every),
            *more_stems(planted, full, fill_days - more),
            *light_notes(lit),
            *notes(start_percent, every, cut_percent),
        ),
        series={
            "cover": Series("Cover of the bed", "%", "Week", "weeks", at, covers),
            "weeks_by_start": by_start(settle_days, doubling_days),
        },
    )


def by_start(settle_days: float, doubling_days: float) -> Series:
    """Weeks until full against how much of the bed is planted."""
    weeks = [
        days_to_full(part / 100, settle_days, doubling_days) / DAYS_PER_WEEK
        for part in SHOWN_STARTS
    ]
    return Series("Weeks until full", "weeks", "Part planted", "%", SHOWN_STARTS, weeks)
