"""Where the nitrogen of a week's feed goes."""

from typing import Annotated

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow
from calculators.core.leads import Lead
from calculators.core.quantities import (
    PH,
    CarbonateHardness,
    ChangeRate,
    Concentration,
    DoublingTime,
    Ratio,
    Temperature,
)
from calculators.core.quantity import Assumed, Help, Label, Possible
from calculators.core.result import Refusal, Refused, Series
from calculators.nitrogen_balance.notes import notes
from calculators.nitrogen_balance.outputs import NitrogenBalance
from calculators.nitrogen_balance.tank_load import load_of, weeks_to_low
from calculators.science.animals.reading_words import reading_notes
from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.nitrogen import nitrogen_inputs
from calculators.science.nitrogen.balance import SHOWN_DAYS, cycle_of, exchanged, flows, judge, saw
from calculators.science.nitrogen.constants import DENITRIFICATION_MG_M2_DAY
from calculators.science.nitrogen.edges import LESS_GAS, MORE_GAS
from calculators.science.nitrogen.forecast_tank import common_surface_cm2
from calculators.science.nitrogen.steady import (
    Cycle,
    days_to_nothing,
    extra_to_hold,
    feed_for,
    floating_uptake,
    nitrate_of,
    settled_high,
    settled_low,
    standing_stems,
)
from calculators.science.nitrogen.uptake_fit import fit, fit_notes
from calculators.science.water.unread import HIGH_PH, WARM_C

NOTHING_MG_DAY = 1e-9

PLANTS_ROW = "Floaters, and trimmings a week"
CHANGE_ROW = "Water changes"
NITRATE_ROW = "Nitrate"


@calculator(
    "Nitrogen balance",
    sources=(
        "timmons-ebeling",
        "gerloff-krombholz-1966",
        "reddy-debusk-1985",
        "veraart-2011",
        "nitrification-biofilm",
        "epa-2013-ammonia",
        "benson-krause-1984",
        "boreal-lake-gas-2014",
        "boyd-feed-oxygen",
        "camargo-2005",
        "arithmetic",
    ),
    leads_to=(
        Lead(
            "nitrogen-forecast",
            "The same tank day by day",
            {
                key: key
                for key in (
                    "volume_l",
                    "feed_g_week",
                    "protein_percent",
                    "floater_area_cm2",
                    "floater_doubling_days",
                    "trimmings_g_week",
                    "change_percent",
                    "change_every_days",
                    "tap_nitrate_mg_l",
                    "nitrate_mg_l",
                    "ph",
                    "temperature_c",
                    "kh_dh",
                )
            },
        ),
        Lead(
            "kh-budget",
            "How long carbonate hardness lasts",
            {
                "volume_l": "volume_l",
                "kh_dh": "kh_dh",
                "nitrified_mg_n_day": "ammonia_n_mg_day",
                "change_percent": "change_percent",
                "change_every_days": "change_every_days",
            },
        ),
    ),
)
def nitrogen_balance(
    volume_l: nitrogen_inputs.TankVolume = 120.0,
    feed_g_week: nitrogen_inputs.Feed = 3.0,
    protein_percent: Annotated[nitrogen_inputs.FeedProtein, Assumed(), FINER] = 45.0,
    plant_uptake_mg_n_day: Annotated[
        nitrogen_inputs.PlantUptake,
        Help("If you have it; empty: worked out from cover and trimmings."),
        FINER,
    ] = None,
    floater_area_cm2: Annotated[nitrogen_inputs.FloaterArea, InRow(PLANTS_ROW)] = 600.0,
    floater_doubling_days: Annotated[nitrogen_inputs.FloaterDoubling, Assumed(), FINER] = 7.0,
    trimmings_g_week: Annotated[
        nitrogen_inputs.Trimmings,
        Label("Trimmings a week, wet, without floaters"),
        Help(
            "Rooted plants that you cut, shaken off and weighed. Thinned floaters go by their cover."
        ),
        InRow(PLANTS_ROW, "Trimmings"),
    ] = 50.0,
    soil_area_cm2: Annotated[
        nitrogen_inputs.SoilArea | None,
        Help("Length times width of the bed; 0 for none. Empty: all of a common tank's bottom."),
        FINER,
    ] = None,
    denitrification_mg_n_m2_day: Annotated[nitrogen_inputs.Denitrification, FINER, Assumed()] = (
        DENITRIFICATION_MG_M2_DAY
    ),
    change_percent: Annotated[nitrogen_inputs.ChangeShare, InRow(CHANGE_ROW, "Each time")] = 20.0,
    change_every_days: Annotated[nitrogen_inputs.ChangeEvery, InRow(CHANGE_ROW, "Every")] = 14.0,
    tap_nitrate_mg_l: Annotated[nitrogen_inputs.TapNitrate, InRow(NITRATE_ROW, "New water")] = 5.0,
    nitrate_mg_l: Annotated[nitrogen_inputs.Nitrate, InRow(NITRATE_ROW, "Tank now")] = 15.0,
    target_nitrate_mg_l: Annotated[
        Concentration, Label("Nitrate you want to hold"), Possible(0, 1_000), Assumed(), FINER
    ] = 10.0,
    stem_doubling_days: Annotated[DoublingTime, Label("Stems double in"), FINER, Assumed()] = 14.0,
    ph: Annotated[PH, Possible(4, 11), FINER, Assumed()] = HIGH_PH,
    temperature_c: Annotated[Temperature, Possible(0, 40), FINER, Assumed()] = WARM_C,
    kh_dh: Annotated[CarbonateHardness | None, Help("Says how long it lasts."), FINER] = None,
    slope_week: Annotated[
        ChangeRate | None,
        Label("Measured change of nitrate"),
        Help("From the trend of your readings: fits the uptake to them."),
        FINER,
    ] = None,
    slope_low_week: Annotated[ChangeRate | None, Label("Its lower limit"), FINER] = None,
    slope_high_week: Annotated[ChangeRate | None, Label("Its upper limit"), FINER] = None,
    next_reading_ratio: Annotated[
        Ratio | None,
        Label("Width of the trend with one reading more"),
        Help("From the trend."),
        FINER,
    ] = None,
) -> NitrogenBalance:
    """Find where the nitrogen of a week's feed goes, and where nitrate settles.

    A budget of steady flows. In: what the animals excrete, 0.092 g of ammonia nitrogen for each gram
    of protein. Out: plants, the soil's denitrification, and water changes. Nitrate between two
    changes rises or falls by the difference; changes pull it towards the tap's reading, so it
    settles at tap + rise between changes / share changed.

    Uptake is the growth of the floating cover (60 g dry mass a m², 3.0 % nitrogen) and the
    nitrogen of what you cut (8 % dry matter, 2.5 %), unless you give a measured one. The soil's rate is
    taken as it is; the forecast scales it with nitrate. Droppings that rot are left out of the
    middle figure and shown as the most it can be; the forecast follows them, too.

    The load is judged, too. Ammonia: how soon it harms if the filter stops, and where it settles on a
    film of bacteria 3 to 10 times the water's surface. Oxygen: 0.6 to 1.25 g for each gram of feed
    against what a still and a moving surface bring in. Carbonate hardness: 7.1 mg of calcium
    carbonate a mg of nitrogen nitrified, half of it back for what plants and soil take.

    All equations and constants: How the nitrogen model works.
    """
    check_slopes(slope_week, slope_low_week, slope_high_week)
    bed = common_surface_cm2(volume_l) if soil_area_cm2 is None else soil_area_cm2
    week_flows = flows(
        feed_g_week,
        protein_percent,
        plant_uptake_mg_n_day,
        (floater_area_cm2, floater_doubling_days),
        trimmings_g_week,
        (bed, denitrification_mg_n_m2_day),
    )
    share = change_percent / 100
    cycle = cycle_of(week_flows, volume_l, share, change_every_days, tap_nitrate_mg_l)
    days = days_to_nothing(nitrate_mg_l, cycle)
    high = settled(nitrate_mg_l, cycle)
    verdict = judge(cycle, days)
    more = extra_to_hold(cycle, target_nitrate_mg_l, volume_l)
    per_cm2 = floating_uptake(1.0, floater_doubling_days)
    feed_to_balance = feed_for(week_flows.plants + week_flows.denitrified, protein_percent)
    feed_for_target = feed_for(week_flows.excreted - more, protein_percent)
    slopes = (slope_week, slope_low_week, slope_high_week)
    uptake = fit(week_flows, slopes, next_reading_ratio, volume_l)
    load = load_of(week_flows, feed_g_week, volume_l, ph, temperature_c)
    soil = (bed, denitrification_mg_n_m2_day)
    at_balance, at_target = (
        load_of(
            flows(feed, protein_percent, week_flows.plants, (0.0, 1.0), 0.0, soil),
            feed,
            volume_l,
            ph,
            temperature_c,
        )
        for feed in (feed_to_balance, max(0.0, feed_for_target))
    )
    weeks = weeks_to_low(kh_dh, load.kh_dh_week)
    saw_teeth = series(nitrate_mg_l, cycle)
    more_gas = nitrate_of((MORE_GAS - 1) * week_flows.denitrified, volume_l)
    rotting = DAYS_PER_WEEK * nitrate_of(week_flows.rotting_at_most, volume_l)
    return NitrogenBalance(
        feed_n_mg_day=week_flows.fed,
        ammonia_n_mg_day=week_flows.excreted,
        plants_n_mg_day=week_flows.plants,
        denitrified_n_mg_day=week_flows.denitrified,
        denitrified_low_n_mg_day=LESS_GAS * week_flows.denitrified,
        denitrified_high_n_mg_day=MORE_GAS * week_flows.denitrified,
        changed_out_n_mg_day=exchanged(nitrate_mg_l, volume_l, cycle),
        tap_n_mg_day=exchanged(tap_nitrate_mg_l, volume_l, cycle),
        nitrate_change_mg_l_week=DAYS_PER_WEEK * cycle.rise_day,
        nitrate_change_at_least_mg_l_week=DAYS_PER_WEEK * (cycle.rise_day - more_gas),
        nitrate_change_at_most_mg_l_week=DAYS_PER_WEEK * cycle.rise_day + rotting,
        settled_nitrate_high_mg_l=high,
        settled_nitrate_low_mg_l=settled_low(cycle, high),
        days_to_shortage=days,
        feed_to_balance_g_week=feed_to_balance,
        feed_for_target_g_week=feed_for_target if feed_for_target >= 0 else None,
        extra_stems_g=max(0.0, standing_stems(more, stem_doubling_days)),
        extra_floater_area_cm2=max(0.0, more / per_cm2),
        fitted_uptake_mg_n_day=uptake.middle,
        fitted_uptake_low_mg_n_day=uptake.low,
        fitted_uptake_high_mg_n_day=uptake.high,
        fitted_width_next_mg_n_day=uptake.width_next,
        load_mg_n_l_day=load.ammonia.load_mg_n_l_day,
        hours_to_harmful_ammonia=load.ammonia.hours_to_harm,
        filter_ammonia_low_mg_n_l=load.ammonia.ammonia_low,
        filter_ammonia_high_mg_n_l=load.ammonia.ammonia_high,
        oxygen_low_mg_l=load.air_high_need.moved,
        oxygen_high_mg_l=load.air_low_need.moved,
        kh_used_dh_week=load.kh_dh_week,
        weeks_to_low_kh=weeks,
        verdict=verdict,
        notes=(
            *reading_notes(ph=ph, temperature_c=temperature_c),
            *notes(
                verdict,
                week_flows,
                cycle,
                days,
                high,
                nitrate_mg_l,
                saw_teeth.y[-1],
                load,
                (kh_dh, weeks),
                measured=plant_uptake_mg_n_day is not None,
                tap=tap_nitrate_mg_l,
                feed_to_balance=feed_to_balance,
                target=target_nitrate_mg_l,
                feed_now=feed_g_week,
                feed_for_target=feed_for_target,
                at_balance=at_balance,
                at_target=at_target,
            ),
            *fit_notes(uptake, week_flows),
        ),
        series={"nitrate": saw_teeth},
    )


def check_slopes(middle: float | None, low: float | None, high: float | None) -> None:
    """Refuse limits that do not go with the slope.

    The slope is the ``middle``, ``low`` and ``high`` its limits, all in mg/L a week. Raises
    ``Refused``.
    """
    wrong = []
    if low is not None and middle is not None and low > middle:
        wrong.append(Refusal("slope_low_week", "the lower limit is above the change", high=middle))
    if middle is None and low is not None and high is not None and low > high:
        wrong.append(Refusal("slope_low_week", "the lower limit is above the upper", high=high))
    if high is not None and middle is not None and high < middle:
        wrong.append(Refusal("slope_high_week", "the upper limit is below the change", low=middle))
    if wrong:
        raise Refused(*wrong)


def settled(now: float, cycle: Cycle) -> float | None:
    """Where nitrate settles before a change; it stays where it is if nothing moves it at all.

    Both ``now`` and the result are mg/L as NO3; None where it never settles.
    """
    if cycle.share <= 0 and abs(cycle.rise_day) < NOTHING_MG_DAY:
        return now
    return settled_high(cycle)


def series(now: float, cycle: Cycle) -> Series:
    """Nitrate over the next twelve weeks. The level ``now`` is in mg/L as NO3."""
    days, levels = saw(now, cycle, SHOWN_DAYS)
    return Series("Nitrate", "mg/L", "Day", "days", days, levels)
