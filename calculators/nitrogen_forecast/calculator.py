"""Nitrogen day by day: animals, filter, soil and plants together."""

from typing import Annotated, Literal

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InOrder, InRow, Part, Preset, Presets
from calculators.core.leads import Lead, OnlyBeside, Rows, Value
from calculators.core.quantities import (
    PH,
    Area,
    ArealNitrogenFlow,
    CarbonateHardness,
    Concentration,
    DailyLight,
    Days,
    GeneralHardness,
    Nitrogen,
    Percent,
    Temperature,
    TissueNitrogen,
)
from calculators.core.quantity import Assumed, Choices, Help, Label, MayBeEmpty, Possible, Valid
from calculators.nitrogen_forecast.doubts import doubts
from calculators.nitrogen_forecast.ensemble import band, is_unsettled, run_all
from calculators.nitrogen_forecast.forecast_result import (
    calm_in_all,
    cut_short,
    late,
    result,
)
from calculators.nitrogen_forecast.inverse import Answers, answers
from calculators.nitrogen_forecast.outputs import NitrogenForecast
from calculators.nitrogen_forecast.past_readings import (
    PastChange,
    PastReading,
    start_from,
)
from calculators.nitrogen_forecast.target_words import target_cautions
from calculators.nitrogen_forecast.toxic_now import toxic_notes, toxic_now
from calculators.science.conversions import CM2_PER_M2
from calculators.science.fitting.fit_readings import AMMONIA, NITRITE
from calculators.science.nitrogen import nitrogen_inputs
from calculators.science.nitrogen.constants import LARGEST_RETAINED_PERCENT, SOIL_RELEASE_MG_M2_DAY
from calculators.science.nitrogen.forecast_tank import (
    Event,
    Rates,
    StandingPlant,
    Tank,
    common_surface_cm2,
)
from calculators.science.nitrogen.plant_constants import FLOATING_WET_G_M2
from calculators.science.water.new_water import LIMITS_A_CHANGE, TapGh, TapPh
from calculators.science.water.unread import WARM_C

EXAMPLE_PLANTS = [
    StandingPlant("Ambulia", 300.0, 10.0),
    StandingPlant("Wendt's cryptocoryne", 150.0, 45.0),
    StandingPlant("Frogbit", 60.0, 7.0, True),
]
# What stands in where a keeper leaves it empty lies on the animals' side: no changes carry nitrate
# off, and warm water makes more of the ammonia toxic than that of most tanks. The tap's is half of
# the most that drinking water may hold (50 mg/L as NO₃, World Health Organization); judgement.
NO_CHANGES = 0.0
UNTESTED_TAP_MG_L = 25.0
NEW_STEMS_DOUBLE_DAYS = 14.0  # for the question how many more would do; judgement
DOINGS = Presets(
    (
        Preset("Change water", {"kind": "change", "value": 30.0}),
        Preset("Trim", {"kind": "trim", "value": 50.0}),
        Preset("New feed", {"kind": "feed", "value": 3.0}),
        Preset("Dose nitrate", {"kind": "dose", "value": 5.0}),
        Preset("No light", {"kind": "dark", "value": 7.0}),
        Preset("Plants die off", {"kind": "die-off", "value": 50.0}),
    )
)
TANK = Part("The tank and its feed")
WATER = Part("Water changes and the tap")
NOW = Part("What you read now")
PLANTS = Part("Plants, and what you do")
MORE_WATER = Part("More on the water", closed=True)
EARLIER = Part("What you read in the weeks before", closed=True)
CARE = Part("Trimming, thinning and light", closed=True)
AHEAD = Part("How far, how sure, what for", closed=True)

TANK_ROW = "Water and filter"
CHANGE_ROW = "Each change"
READING_ROW = "In the tank"


@calculator(
    "Nitrogen forecast",
    sources=(
        "timmons-ebeling",
        "summerfelt-penne-2007",
        "monod-1949",
        "nitrification-wetland-2003",
        "nitrification-biofilm",
        "downing-1964",
        "tarre-green-2004",
        "green-2007",
        "kits-2017",
        "siegrist-1999",
        "jung-2022-affinity",
        "ushiki-2017",
        "kim-2025-nitrospira",
        "xie-2004-decay",
        "egeria-light-2010",
        "droop-1973",
        "gerloff-krombholz-1966",
        "jampeetong-brix-2009",
        "room-thomas-1986",
        "driever-2005",
        "janse-2005",
        "reddy-1983-flux",
        "veraart-2011",
        "revsbech-2005",
        "emerson-1975",
        "epa-2013-ammonia",
        "bc-nitrite",
        "dormand-prince-1980",
        "hairer-1993",
        "rang-angermann-2005",
        "hairer-wanner-1996",
    ),
    leads_to=(
        Lead(
            "upkeep",
            "The minutes that this tank takes",
            {
                "tanks": Rows(
                    {
                        "name": Value("This tank"),
                        "change_every_days": OnlyBeside("change_percent", "change_every_days"),
                    }
                )
            },
        ),
    ),
)
def nitrogen_forecast(
    volume_l: Annotated[nitrogen_inputs.TankVolume, TANK, InRow(TANK_ROW)] = 120.0,
    feed_g_week: Annotated[nitrogen_inputs.Feed, TANK] = 3.0,
    protein_percent: Annotated[nitrogen_inputs.FeedProtein, FINER, Assumed()] = 45.0,
    plant_uptake_mg_n_day: Annotated[
        nitrogen_inputs.PlantUptake,
        Label("Measured uptake of plants not listed"),
        Help("Comes on top of the listed plants; empty for none."),
        FINER,
    ] = None,
    floater_area_cm2: Annotated[
        nitrogen_inputs.FloaterArea,
        Label("Floating cover not listed"),
        Help("Or list floaters by weight among the plants, not both."),
        FINER,
        Assumed(),
    ] = 0.0,
    floater_doubling_days: Annotated[nitrogen_inputs.FloaterDoubling, FINER, Assumed()] = 7.0,
    trimmings_g_week: Annotated[
        nitrogen_inputs.Trimmings,
        Label("Trimmings a week, wet, at most"),
        Help("From all plants alike; never more than has grown since the start."),
        CARE,
        Assumed(),
    ] = 30.0,
    thin_floaters_to_percent: Annotated[
        Percent | None,
        Label("Floaters thinned each week to"),
        Possible(5, 100),
        Help("Share of the surface; empty: never. It leaves light for the stems."),
        CARE,
    ] = None,
    soil_area_cm2: Annotated[
        nitrogen_inputs.SoilArea | None,
        Help("Length times width of the bed; 0 for none. Empty: all of a common tank's bottom."),
        FINER,
    ] = None,
    denitrification_mg_n_m2_day: Annotated[
        nitrogen_inputs.Denitrification,
        Help("At 10 mg/L nitrate; it rises with nitrate. 1 to 30, about 5."),
        FINER,
        Assumed(),
    ] = 5.0,
    change_percent: Annotated[
        nitrogen_inputs.ChangeShare, WATER, Assumed(), InRow(CHANGE_ROW, "Each time")
    ] = NO_CHANGES,
    change_every_days: Annotated[
        nitrogen_inputs.ChangeEvery, WATER, Assumed(), InRow(CHANGE_ROW, "Every")
    ] = 14.0,
    tap_nitrate_mg_l: Annotated[
        nitrogen_inputs.TapNitrate, MORE_WATER, Assumed()
    ] = UNTESTED_TAP_MG_L,
    nitrate_mg_l: Annotated[nitrogen_inputs.Nitrate, NOW, InRow(READING_ROW, "Nitrate")] = 15.0,
    days: Annotated[Days, Label("Days ahead"), Possible(1, 365), AHEAD, Assumed()] = 90.0,
    ph: Annotated[PH, Possible(4, 11), Valid(6.0, 9.0), NOW, InRow(READING_ROW)] = 7.4,
    temperature_c: Annotated[
        Temperature, Possible(0, 40), Valid(15, 32), MORE_WATER, Assumed()
    ] = WARM_C,
    start_ammonia_mg_n_l: Annotated[
        Nitrogen | None,
        Label("Total ammonia nitrogen now"),
        Possible(0, 100),
        Help("Empty: not tested, and none is taken."),
        NOW,
        InRow(READING_ROW, "Ammonia"),
    ] = None,
    start_nitrite_mg_n_l: Annotated[
        Nitrogen | None,
        Label("Nitrite nitrogen now"),
        Possible(0, 100),
        Help("Empty: not tested, and none is taken."),
        NOW,
        InRow(READING_ROW, "Nitrite"),
    ] = None,
    kh_dh: Annotated[
        CarbonateHardness | None,
        Label("Carbonate hardness (KH) now"),
        Help("Nitrification spends it; below 1 °dH the filter stops growing. Empty: not counted."),
        MORE_WATER,
    ] = None,
    dli_mol: Annotated[
        DailyLight | None,
        Label("Daily light at the surface"),
        Help("From the light calculator. Empty: 2.9, a middling lamp. It limits what plants grow."),
        CARE,
    ] = None,
    usual_ph: Annotated[
        PH | None,
        Label("pH that the filter has had"),
        Possible(4, 11),
        Help("Where pH fell not long ago. Empty: as now."),
        FINER,
    ] = None,
    tap_kh_dh: Annotated[
        CarbonateHardness | None, Label("Carbonate hardness (KH) of the new water"), MORE_WATER
    ] = None,
    tap_ph: Annotated[TapPh, MORE_WATER] = None,
    gh_dh: Annotated[GeneralHardness | None, LIMITS_A_CHANGE, MORE_WATER] = None,
    tap_gh_dh: Annotated[TapGh, MORE_WATER] = None,
    filter_maturity_percent: Annotated[
        Percent,
        Label("Maturity of the filter"),
        Help("0 a new tank, 100 one that has carried this load for months."),
        TANK,
        InRow(TANK_ROW, "Maturity"),
    ] = 100.0,
    plants: Annotated[list[StandingPlant], Label("Plants"), PLANTS, MayBeEmpty()] = EXAMPLE_PLANTS,
    events: Annotated[
        list[Event],
        Label("What you do, and when"),
        Help("Single days, besides what you do again and again."),
        PLANTS,
        DOINGS,
        InOrder("day", 7),
    ] = [],  # noqa: B006 - the runner never hands it out to be changed
    readings: Annotated[
        list[PastReading] | None,
        Label("Readings of the weeks before"),
        Help(
            "To fit uptake, feed and filter to: of nitrate three over ten days at least, with today's. "
            "Changes of water that are not dated are taken as entered, counted from the first."
        ),
        EARLIER,
        MayBeEmpty(),
    ] = None,
    past_changes: Annotated[
        list[PastChange] | None,
        Label("Changes of water since the first of them"),
        Help(
            "Each on its day. Empty is taken as the changes above, counted from the first reading."
        ),
        EARLIER,
        MayBeEmpty(),
    ] = None,
    uneaten_percent: Annotated[
        Percent,
        Label("Feed left uneaten"),
        Help("It rots whole; 0 if all is gone in minutes."),
        FINER,
        Assumed(),
    ] = 0.0,
    retained_percent: Annotated[
        Percent,
        Label("Feed nitrogen kept in the animals"),
        Possible(0, LARGEST_RETAINED_PERCENT),
        Help("Growing fish 12 to 44, most often 20 to 40."),
        FINER,
        Assumed(),
    ] = 30.0,
    soil_age_days: Annotated[
        Days | None,
        Label("Soil under water since"),
        Help("Empty: new with a new filter, settled with a mature one."),
        FINER,
    ] = None,
    soil_release_mg_n_m2_day: Annotated[
        ArealNitrogenFlow,
        Label("Ammonium from new soil, at first"),
        Help("45 without a cap in a laboratory; 7 to 800 by soil. A cap holds much back."),
        FINER,
        Assumed(),
    ] = SOIL_RELEASE_MG_M2_DAY,
    plant_nitrogen_percent: Annotated[
        TissueNitrogen, Label("Nitrogen in the plants now"), FINER, Assumed()
    ] = 2.5,
    surface_cm2: Annotated[
        Area | None,
        Label("Water surface"),
        Possible(1, 1_000_000),
        Help("Empty: that of a common tank."),
        FINER,
    ] = None,
    spread: Annotated[
        Literal["none", "band"],
        Label("Show how unsure it is"),
        Choices(("the middle only", "low, middle and high")),
        AHEAD,
        Assumed(),
    ] = "none",
    target_nitrate_mg_l: Annotated[
        Concentration | None,
        Label("Nitrate you want at the end"),
        Possible(0.1, 1_000),
        Help("Finds the feed, stems or cover for it; takes some seconds."),
        AHEAD,
    ] = None,
) -> NitrogenForecast:
    """Forecast ammonia, nitrite, nitrate and the plants' nitrogen store, day by day.

    Feed becomes ammonia at once and by rot; two groups of nitrifiers grow on it; plants take
    ammonium first, then nitrate, into a store they grow on. The store lasts a while after the water
    is empty. Below 1.3 % of dry mass leaves brown. Floaters shade what stands below them, stems
    shade each other, and none grows more than the day's light pays for. Dead leaves rot and come
    back. New soil gives off ammonium for some weeks, and soil turns nitrate into gas.

    Plants that grow at nearly the same pace share one store. Daily means: no night, no hour of
    feeding. Temperature and pH stay as given; a filter gets used to its pH.
    Phosphate, potassium, iron and carbon dioxide are taken to be enough; where they are not, plants
    take less nitrogen than this says.

    All equations and constants: How the nitrogen model works.
    """
    cover = StandingPlant(
        "Floating cover",
        floater_area_cm2 / CM2_PER_M2 * FLOATING_WET_G_M2,
        floater_doubling_days,
        True,
    )
    ammonia = toxic_now(start_ammonia_mg_n_l, AMMONIA, readings or ())
    nitrite = toxic_now(start_nitrite_mg_n_l, NITRITE, readings or ())
    tank = Tank(
        volume_l=volume_l,
        feed_g_week=feed_g_week,
        protein_percent=protein_percent,
        plants=(*plants, cover) if floater_area_cm2 else tuple(plants),
        soil_area_cm2=common_surface_cm2(volume_l) if soil_area_cm2 is None else soil_area_cm2,
        denitrification_mg_n_m2_day=denitrification_mg_n_m2_day,
        other_uptake_mg_n_day=plant_uptake_mg_n_day or 0.0,
        trimmings_g_week=trimmings_g_week,
        thin_to_percent=thin_floaters_to_percent,
        change_percent=change_percent,
        change_every_days=change_every_days,
        tap_nitrate_mg_l=tap_nitrate_mg_l,
        nitrate_mg_l=nitrate_mg_l,
        ammonia_mg_n_l=ammonia.taken,
        nitrite_mg_n_l=nitrite.taken,
        kh_dh=kh_dh,
        tap_kh_dh=tap_kh_dh,
        tap_ph=tap_ph,
        gh_dh=gh_dh,
        tap_gh_dh=tap_gh_dh,
        usual_ph=usual_ph,
        dli_mol=dli_mol,
        ph=ph,
        temperature_c=temperature_c,
        filter_maturity_percent=filter_maturity_percent,
        uneaten_percent=uneaten_percent,
        soil_age_days=soil_age_days,
        soil_release_mg_n_m2_day=soil_release_mg_n_m2_day,
        plant_nitrogen_percent=plant_nitrogen_percent,
        surface_cm2=surface_cm2,
    )
    started = start_from(
        tank, Rates(retained_percent=retained_percent), readings or (), past_changes or None
    )
    tank, rates = started.tank, started.rates
    shown, asked_days = spread == "band", days
    outcome, edge_runs, days = run_all(
        tank, events, days, rates, shown or is_unsettled(tank, events)
    )
    around = band(outcome, edge_runs) if shown else None
    at_edges = [run.record for run in edge_runs]
    to_target = Answers(None, None, None, unfinished=days < asked_days)
    if target_nitrate_mg_l is not None and days == asked_days:
        to_target = answers(
            tank,
            events,
            days,
            rates,
            target_nitrate_mg_l,
            NEW_STEMS_DOUBLE_DAYS,
            floater_doubling_days,
        )
    notes = [
        *started.notes,
        *target_cautions(target_nitrate_mg_l, to_target, tank, events, days, rates),
        *late(events, days),
    ]
    notes += [*cut_short(days, asked_days), *toxic_notes((ammonia, nitrite))]
    calm = calm_in_all([outcome.record, *at_edges], tank)
    notes += doubts(tank, outcome, calm)
    return result(
        outcome, tank, events, days, around, at_edges, to_target, calm, notes, started.fitted
    )
