"""What the forecast gives: peaks, the end, and when the plants run short."""

from typing import Annotated, NamedTuple

from calculators.core.numbers import show_number
from calculators.core.quantities import (
    Area,
    Count,
    DayAhead,
    DaysAhead,
    FeedAhead,
    HardnessAhead,
    HardnessDrift,
    LevelAhead,
    NitrogenAhead,
    Percent,
    TimesGrown,
    WetMass,
)
from calculators.core.quantity import AnswersTo, Choices, Help, Label, OnlyWith, Unpainted, WhenNone
from calculators.core.result import Note, Series
from calculators.nitrogen_forecast.forecast_verdict import LEVELS, SHOWN, Verdict
from calculators.science.nitrogen.alkalinity import CACO3_MG_PER_N
from calculators.science.nitrogen.course import Direction
from calculators.science.nitrogen.plant_constants import CRITICAL_N_PERCENT

BAND = AnswersTo(("spread",), "none")
TARGET = AnswersTo(("target_nitrate_mg_l",))
SHORTAGE = OnlyWith("first_shortage_day")
NOT_YET = WhenNone("not in these days")
NO_WAY = WhenNone("none would do")


class NitrogenForecast(NamedTuple):
    """Peaks, the end, and when the plants run short."""

    peak_unionised_mg_n_l: Annotated[NitrogenAhead, Label("Peak of toxic ammonia, NH₃")]
    peak_unionised_day: Annotated[DayAhead, Label("Toxic ammonia peaks on day")]
    peak_nitrite_mg_n_l: Annotated[NitrogenAhead, Label("Peak of nitrite nitrogen")]
    peak_nitrite_day: Annotated[DayAhead, Label("Nitrite peaks on day")]
    final_nitrate_mg_l: Annotated[LevelAhead, Label("Nitrate at the end"), Help("As NO₃.")]
    first_shortage_day: Annotated[
        DayAhead | None,
        Label("Plants run short on day"),
        Help(
            f"The hungriest holds less than {show_number(CRITICAL_N_PERCENT)} % nitrogen in its dry "
            "mass: leaves brown."
        ),
        NOT_YET,
    ]
    recovery_day: Annotated[
        DayAhead | None,
        Label("Enough again from day"),
        Help("And so until the end."),
        SHORTAGE,
        NOT_YET,
    ]
    balance_error_percent: Annotated[
        Percent, Label("Nitrogen lost by the computation"), Help("Under 0.001: none.")
    ]
    healthy_growth_day: Annotated[
        DayAhead | None,
        Label("New growth healthy by day"),
        Help("A third of the stand is new."),
        SHORTAGE,
        NOT_YET,
    ]
    healthy_after_feeding_days: Annotated[
        DaysAhead | None,
        Label("From feeding more to healthy new growth"),
        Help("Give the new feed as events. Common practice, no source: about four weeks."),
        OnlyWith("healthy_growth_day"),
    ]
    calm_from_day: Annotated[
        DayAhead | None,
        Label("Ammonia and nitrite stay low from day"),
        Help("Trust tests, not the day."),
        NOT_YET,
    ]
    final_kh_dh: Annotated[
        HardnessAhead | None,
        Label("Carbonate hardness at the end"),
        AnswersTo(("kh_dh",)),
    ]
    kh_drift_dh: Annotated[HardnessDrift, Label("Drift of carbonate hardness by the end")]
    alkalinity_used_mg_l: Annotated[
        LevelAhead,
        Label("Alkalinity used by nitrification"),
        Help(
            f"As CaCO₃, {show_number(CACO3_MG_PER_N, 2)} g a gram of nitrogen; rot, plants and changes "
            "give some of it back."
        ),
    ]
    final_nitrate_low_mg_l: Annotated[
        LevelAhead | None, Label("Nitrate at the end, at least"), BAND
    ]
    final_nitrate_high_mg_l: Annotated[
        LevelAhead | None, Label("Nitrate at the end, at most"), BAND
    ]
    earliest_shortage_day: Annotated[
        DayAhead | None, Label("Plants run short at the earliest"), BAND, NOT_YET
    ]
    feed_for_target_g_week: Annotated[
        FeedAhead | None, Label("Feed that ends at your target"), TARGET, NO_WAY
    ]
    extra_stems_g: Annotated[WetMass | None, Label("Or: more stems, wet"), TARGET, NO_WAY]
    extra_floater_area_cm2: Annotated[Area | None, Label("Or: more floating cover"), TARGET, NO_WAY]
    verdict: Annotated[
        Verdict,
        Label("Verdict"),
        Choices(SHOWN, levels=LEVELS),
        Help("The worst of the run, animals first."),
    ]
    nitrate_course: Annotated[
        Direction, Label("Nitrate goes"), Choices(("up", "down", "up and down", "nowhere much"))
    ]
    peak_nitrate_mg_l: Annotated[LevelAhead, Label("Nitrate at most"), Help("As NO₃.")]
    times_grown: Annotated[TimesGrown, Label("Plants at the end, times the start")]
    shortages: Annotated[Count, Label("Times that plants run short")]
    fitted: Annotated[bool, Label("Fitted to the readings"), Unpainted()]
    notes: tuple[Note, ...]
    series: dict[str, Series]
