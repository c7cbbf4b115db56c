"""What to do first, whatever harms: one note a kind of harm, readings of now before forecasts."""

from collections.abc import Callable, Sequence

from calculators.core.numbers import show_number as show
from calculators.core.result import Link, Note
from calculators.nitrogen_forecast.first_hour import next_hour
from calculators.nitrogen_forecast.run_harm import HarmfulReading
from calculators.nitrogen_forecast.water_advice import (
    A_QUARTER_DAILY,
    DAILY_CHANGE_PERCENT,
    hardness_known,
    how_to_change,
)
from calculators.science.animals.reading_lines import LINES
from calculators.science.animals.reading_steps import NITRATE, asked_beside_ammonia
from calculators.science.animals.reading_words import WARMTH_STEP
from calculators.science.nitrogen.forecast_tank import Event, Tank
from calculators.science.water.air_and_ammonia import BIND_BEFORE_AIR, air_kills

TOXIC = ("ammonia", "nitrite")
TOO_WARM = (
    "Now: switch off heater and lamp{first} lift the lid, let a fan blow over the water and add air, since "
    f"warm water holds little oxygen. Cool by about {WARMTH_STEP} an hour, no faster; no ice in the tank."
)  # common practice, no source
TOO_COLD = (
    "Now: see whether the heater works, and pull its plug before your hands go in. Cover the tank, "
    f"and warm it by about {WARMTH_STEP} an hour, no faster. Feed nothing until it is warm."
)  # common practice, no source
TOO_ACID = (
    "Now: test pH again with a second kit{test}. Acid water holds ammonia harmless, and it turns toxic as "
    "pH rises. Bring pH back over days, never by one large dose."
)
TEST_BEFORE_CHANGE = ", and test ammonia before you change any water"
TOO_ALKALINE = (
    "Now: test pH again with a second kit{test}: at this pH a little ammonia kills. Stop what raises the "
    "pH, add air, and bring it back over hours in small changes of water; never by a dose of acid."
)
TEST_AT_ONCE = ", and test ammonia"


def first_steps(harms: Sequence[HarmfulReading], tank: Tank, events: Sequence[Event]) -> list[Note]:
    """What to do, in the order of what harms; ``found`` is ordered so."""
    notes: list[Note] = []
    for harm in harms:
        if harm.reading in TOXIC:
            toxic = [one for one in harms if one.reading in TOXIC]
            note = next_hour(toxic, tank, any(kills_by_nitrate(one) for one in harms))
        elif harm.reading == "nitrate_mg_l":
            note = against_nitrate(harm, tank, events)
        else:
            note = FIXED[harm.reading](harm, tank)
        notes += [] if note in notes else [note]
    return notes


def kills_by_nitrate(harm: HarmfulReading) -> bool:
    """Whether nitrate that is read now asks for a change of its own, in smaller parts."""
    return harm.reading == "nitrate_mg_l" and harm.is_now and harm.band == "deadly"


def against_warmth(harm: HarmfulReading, tank: Tank) -> Note:
    """Too warm or too cold; where air would free ammonia that kills, a binder comes before it."""
    if harm.side == "low":
        return Note("danger", TOO_COLD)
    binds = air_kills(tank.ammonia_mg_n_l, tank.ph, tank.kh_dh, tank.temperature_c)
    return Note("danger", TOO_WARM.format(first=f". {BIND_BEFORE_AIR} Then" if binds else ","))


def against_ph(harm: HarmfulReading, tank: Tank) -> Note:
    """Too acid or too alkaline; ammonia that was read is not asked for again."""
    text, test = (
        (TOO_ALKALINE, TEST_AT_ONCE) if harm.side == "high" else (TOO_ACID, TEST_BEFORE_CHANGE)
    )
    return Note("danger", text.format(test="" if tank.ammonia_mg_n_l > 0 else test))


FIXED: dict[str, Callable[[HarmfulReading, Tank], Note]] = {
    "temperature_c": against_warmth,
    "ph": against_ph,
}


def against_nitrate(harm: HarmfulReading, tank: Tank, events: Sequence[Event]) -> Note:
    """Nitrate that kills, as read or as forecast; what brings it there is named, the tap as well."""
    edge = LINES["nitrate_mg_l"].harmful_high or 0.0
    tap = f"{show(tank.tap_nitrate_mg_l, 2)} mg/L"
    if not harm.is_now:
        return Note("danger", before_it_comes(harm, tank, events, edge))
    change = how_to_change(
        tank.ammonia_mg_n_l, tank, A_QUARTER_DAILY, asked_beside_ammonia([NITRATE])
    )
    until = f"Go on until a test reads under {edge:.0f} mg/L."
    if tank.tap_nitrate_mg_l >= harm.value:
        other = (
            f"This tap holds no less nitrate than the tank, {tap}: use other water for all changes."
        )
        return Note("danger", f"Now: stop dosing and feed little. {other} {change} {until}")
    if tank.tap_nitrate_mg_l >= edge:
        until = (
            f"This tap has {tap}, and no change with it goes below that: for the rest find water that "
            f"holds less, until a test reads under {edge:.0f} mg/L."
        )
    text = f"Now: stop dosing and feed little. {change} {until}"
    return Note("danger", text, links=(change_link(harm.value, edge, tank),))


def before_it_comes(harm: HarmfulReading, tank: Tank, events: Sequence[Event], edge: float) -> str:
    """What keeps nitrate from the level that is forecast.

    From ``edge`` on, in mg/L as NO3, a tap brings nitrate that harms.
    """
    doses = sorted(event for event in events if event.kind == "dose" and event.day <= harm.day)
    dosed = sum(event.value for event in doses)
    alone = harm.value - dosed < (LINES["nitrate_mg_l"].deadly_high or 0.0)
    parts = []
    if doses:
        first, last = doses[0].day, doses[-1].day
        which = f"dose of day {first:.0f}"
        if len(doses) > 1:
            days = f"from day {first:.0f} to {last:.0f}" if last > first else f"of day {first:.0f}"
            which = f"{len(doses)} doses {days}"
        does = "it is what brings" if len(doses) == 1 else "they are what brings"
        if not alone:
            does = "it helps to bring" if len(doses) == 1 else "they help to bring"
        parts.append(f"Leave out the {which}: {does} nitrate there.")
    if not doses or not alone:
        if tank.tap_nitrate_mg_l >= edge:
            parts.append(
                "Before it gets there: feed less, add plants, and change with water that holds less "
                f"nitrate than this tap, which has {show(tank.tap_nitrate_mg_l, 2)} mg/L."
            )
        else:
            parts.append("Before it gets there: feed less, and change more water or add plants.")
    return " ".join(parts)


def change_link(nitrate_mg_l: float, edge: float, tank: Tank) -> Link:
    """The water-change calculator filled in; a tap above the line is no target.

    That line is ``edge``, mg/L as NO3 like the nitrate.
    """
    given: dict[str, float | str] = {
        "what": "nitrate",
        "now_mg_l": nitrate_mg_l,
        "tap_mg_l": tank.tap_nitrate_mg_l,
        "target_mg_l": max(edge, tank.tap_nitrate_mg_l),
        "max_change_percent": DAILY_CHANGE_PERCENT,
        "volume_l": tank.volume_l,
        **hardness_known(tank),
    }
    return Link("How many changes for this nitrate", "calculators/water-change/", given)
