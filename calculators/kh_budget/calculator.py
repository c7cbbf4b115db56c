"""How long carbonate hardness lasts."""

from typing import Annotated

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow
from calculators.core.leads import Lead
from calculators.core.quantities import (
    CarbonateHardness,
    Interval,
    NitrogenFlow,
    Percent,
    Volume,
)
from calculators.core.quantity import Assumed, Help, Label, Possible
from calculators.core.result import Line, Series
from calculators.kh_budget.hardness_budget import (
    LEAST_KH_DH,
    THIN_DH,
    Budget,
    budget,
    change_to_hold,
)
from calculators.kh_budget.outputs import KhBudget
from calculators.kh_budget.words import notes
from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.water.between_changes import CourseOfReading, corners

LEAST_DAYS, MOST_DAYS = 8 * DAYS_PER_WEEK, 52 * DAYS_PER_WEEK  # what the picture shows

CHANGE_ROW = "Water changes"
KH_ROW = "Carbonate hardness (KH)"


@calculator(
    "How long carbonate hardness lasts",
    sources=(
        "ciaaw-2021",
        "epa-1975-nitrogen-control",
        "paleoaqchem",
        "soetaert-herman-2009",
        "biesterfeld-2003",
        "arithmetic",
    ),
    leads_to=(
        Lead("remineralise", "Minerals that raise it", {"start_kh_dh": "tap_kh_dh"}),
        Lead(
            "ammonia-change",
            "If ammonia shows: how to change water",
            {"kh_dh": "kh_dh", "tap_kh_dh": "tap_kh_dh", "volume_l": "volume_l"},
        ),
    ),
)
def kh_budget(
    volume_l: Annotated[Volume, Help("Water in the tank, without soil and stones.")] = 120.0,
    kh_dh: Annotated[
        CarbonateHardness, Label("Carbonate hardness (KH) of the tank"), InRow(KH_ROW, "Tank")
    ] = 4.0,
    nitrified_mg_n_day: Annotated[
        NitrogenFlow,
        Label("Ammonia that turns into nitrate"),
        Help(
            "A gram of feed with 40 % protein gives about 37 mg. The nitrogen balance works it out."
        ),
    ] = 30.0,
    nitrate_taken_mg_n_day: Annotated[
        NitrogenFlow | None,
        Label("Nitrate taken by plants and soil"),
        Help("It gives hardness back. Empty is taken as none, the sterner answer."),
        FINER,
    ] = 10.0,
    tap_kh_dh: Annotated[
        CarbonateHardness,
        Label("Carbonate hardness of the new water"),
        InRow(KH_ROW, "New water"),
    ] = 6.0,
    change_percent: Annotated[
        Percent | None,
        Label("Changed each time"),
        Help("Leave it empty if you change none."),
        InRow(CHANGE_ROW, "Each time"),
    ] = 20.0,
    change_every_days: Annotated[
        Interval, Label("Changed every"), Possible(1, 365), Assumed(), InRow(CHANGE_ROW, "Every")
    ] = 7.0,
) -> KhBudget:
    """Find how many weeks carbonate hardness lasts, and where water changes hold it.

    Bacteria that turn ammonia into nitrate use up two equivalents of alkalinity for each mole:
    7.14 g, counted as calcium carbonate, for each gram of nitrogen. Building their own cells lowers
    that to about 7.07; filters have measured 6.3 to 7.4. Nitrate that plants take or the soil turns
    into gas gives one equivalent a mole back, half of it.

    The ammonia is counted as it stands in the water. Where fish and rot make it from protein, that
    gives one equivalent back as well; the figure for it stands beside the sterner one, which the
    weeks are worked out from. Acids of soil, wood and peat are not counted, nor lime that dissolves
    from stones and shells: a KH test each week knows better than any sum.

    Between changes hardness falls evenly, each change mixes in new water, and after many changes
    the same two readings repeat. Nothing is taken to slow down as hardness runs out.
    """
    course = CourseOfReading(
        kh_dh, 0.0, tap_kh_dh, (change_percent or 0.0) / 100, change_every_days
    )
    spent = budget(volume_l, nitrified_mg_n_day, nitrate_taken_mg_n_day or 0.0, course)
    holds = spent.holds
    return KhBudget(
        verdict=spent.verdict,
        used_dh_week=spent.used_dh_day * DAYS_PER_WEEK,
        used_least_dh_week=spent.used_least_dh_day * DAYS_PER_WEEK,
        weeks_to_1_dh=None if spent.low_day is None else spent.low_day / DAYS_PER_WEEK,
        settled_high_dh=max(holds) if holds else None,
        settled_low_dh=min(holds) if holds else None,
        change_to_hold_percent=change_to_hold(spent.course),
        notes=notes(spent, nitrate_taken_mg_n_day is not None),
        series={"kh": picture(spent)},
    )


def picture(spent: Budget) -> Series:
    """Carbonate hardness over the weeks to come, never below nothing."""
    course: CourseOfReading = spent.course
    shown = LEAST_DAYS if spent.low_day is None else 1.5 * spent.low_day
    points = list(corners(course, min(max(shown, LEAST_DAYS), MOST_DAYS)))
    lines = (Line("pH may fall", THIN_DH), Line("room to spare", LEAST_KH_DH))
    return Series(
        "Carbonate hardness", "°dH", "Weeks from now", "weeks",
        [day / DAYS_PER_WEEK for day, _ in points], [max(0.0, kh) for _, kh in points],
        picture="Carbonate hardness from now on", lines=lines, digits=2,
    )  # fmt: skip
