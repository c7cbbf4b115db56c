"""What the weekly budget gives: the flows, where nitrate settles, and what would change it."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import (
    Area,
    ChangeRate,
    Concentration,
    DaysAhead,
    FeedAhead,
    HardnessDrift,
    HoursAhead,
    NitrogenAhead,
    NitrogenFlow,
    NitrogenLoad,
    OxygenAhead,
    WeeksAhead,
    WetMass,
)
from calculators.core.quantity import AnswersTo, Choices, Help, Label, WhenNone
from calculators.core.result import Note, Series
from calculators.science.animals.feeding import AMMONIA_N_PER_PROTEIN
from calculators.science.nitrogen.balance import Verdict

NOWHERE = WhenNone("no level: see the notes")
READINGS = AnswersTo(("slope_week",))


class NitrogenBalance(NamedTuple):
    """The week's flows, where nitrate settles, and what would change it."""

    feed_n_mg_day: Annotated[NitrogenFlow, Label("Nitrogen in the feed")]
    ammonia_n_mg_day: Annotated[
        NitrogenFlow,
        Label("Excreted as ammonia"),
        Help(f"{AMMONIA_N_PER_PROTEIN} g for each gram of protein fed."),
    ]
    plants_n_mg_day: Annotated[
        NitrogenFlow, Label("Taken by plants"), Help("What they would take while there is any.")
    ]
    denitrified_n_mg_day: Annotated[NitrogenFlow, Label("Lost as gas from the soil, about")]
    denitrified_low_n_mg_day: Annotated[NitrogenFlow, Label("Lost as gas, at least")]
    denitrified_high_n_mg_day: Annotated[
        NitrogenFlow,
        Label("Lost as gas, at most"),
        Help("A fifth to six times the rate entered: 1 to 30 around 5."),
    ]
    changed_out_n_mg_day: Annotated[
        NitrogenFlow, Label("Carried out by changes"), Help("At today's reading.")
    ]
    tap_n_mg_day: Annotated[NitrogenFlow, Label("Brought in by the new water")]
    nitrate_change_mg_l_week: Annotated[
        ChangeRate, Label("Nitrate changes between water changes"), Help("As NO₃, before a change.")
    ]
    nitrate_change_at_least_mg_l_week: Annotated[
        ChangeRate, Label("The same if the soil loses the most")
    ]
    nitrate_change_at_most_mg_l_week: Annotated[
        ChangeRate,
        Label("The same if all solids stay and rot"),
        Help("0.144 g for each gram of protein, over weeks; shrimp farms reckon so."),
    ]
    settled_nitrate_high_mg_l: Annotated[
        Concentration | None, Label("Settles at, before a change"), NOWHERE
    ]
    settled_nitrate_low_mg_l: Annotated[
        Concentration | None, Label("Settles at, after a change"), NOWHERE
    ]
    days_to_shortage: Annotated[
        DaysAhead | None,
        Label("Until the water holds no nitrate"),
        Help("Leaves live on their store longer."),
        WhenNone("not in ten years"),
    ]
    feed_to_balance_g_week: Annotated[
        FeedAhead, Label("Feed that plants and soil would just use up"), Help("Changes left out.")
    ]
    feed_for_target_g_week: Annotated[
        FeedAhead | None, Label("Feed that holds your target"), Help("Just before each change.")
    ]
    extra_stems_g: Annotated[WetMass, Label("Or: more stems, wet"), Help("Trimmed as they grow.")]
    extra_floater_area_cm2: Annotated[Area, Label("Or: more floating cover"), Help("Kept thinned.")]
    fitted_uptake_mg_n_day: Annotated[
        NitrogenFlow | None,
        Label("Uptake that fits your readings"),
        Help("Needs the slope of your trend. Give it back as the measured uptake."),
        READINGS,
    ]
    fitted_uptake_low_mg_n_day: Annotated[NitrogenFlow | None, Label("At least"), READINGS]
    fitted_uptake_high_mg_n_day: Annotated[NitrogenFlow | None, Label("At most"), READINGS]
    fitted_width_next_mg_n_day: Annotated[
        NitrogenFlow | None, Label("Width of that with one reading more"), READINGS
    ]
    load_mg_n_l_day: Annotated[NitrogenLoad, Label("Ammonia nitrogen in this water")]
    hours_to_harmful_ammonia: Annotated[
        HoursAhead | None,
        Label("Ammonia harms without a filter after"),
        Help("From none, at the pH and warmth given."),
        WhenNone("no feed, no ammonia"),
    ]
    filter_ammonia_low_mg_n_l: Annotated[
        NitrogenAhead | None,
        Label("Ammonia with a ripe filter, at least"),
        Help("A film of bacteria on 10 times the water's surface."),
        WhenNone("more than it can do"),
    ]
    filter_ammonia_high_mg_n_l: Annotated[
        NitrogenAhead | None,
        Label("Ammonia with a ripe filter, at most"),
        Help("A film on 3 times the water's surface."),
        WhenNone("more than it can do"),
    ]
    oxygen_low_mg_l: Annotated[
        OxygenAhead,
        Label("Oxygen by night, at least"),
        Help("With a moving surface; 1.25 g used a gram of feed."),
    ]
    oxygen_high_mg_l: Annotated[
        OxygenAhead, Label("Oxygen by night, at most"), Help("0.6 g used a gram of feed.")
    ]
    kh_used_dh_week: Annotated[
        HardnessDrift,
        Label("Carbonate hardness used a week"),
        Help("Less what plants and soil give back."),
    ]
    weeks_to_low_kh: Annotated[
        WeeksAhead | None,
        Label("Weeks until KH is 1 °dH, without a change"),
        AnswersTo(("kh_dh",)),
        WhenNone("never"),
    ]
    verdict: Annotated[
        Verdict,
        Label("Verdict"),
        Choices(
            ("building up", "neither building up nor short", "plants run short"),
            levels=("caution", "info", "caution"),
        ),
        Help("Of nitrate between water changes; what harms animals stands in the words above."),
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]
