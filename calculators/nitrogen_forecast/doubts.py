"""What in the figures given does not go together, or was taken for want of a figure."""

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.nitrogen_forecast.outlook import NITRITE_WATCH_MG_N_L
from calculators.science.light.plant_light import ASSUMED_DLI_MOL
from calculators.science.nitrogen.constants import (
    AMMONIA_LEFT_MG_L,
    KH_GROWTH_FULL_DH,
    KH_GROWTH_STOPS_DH,
    NITRITE_LEFT_MG_L,
    SLOW_SOIL_RELEASE_MG_M2_DAY,
)
from calculators.science.nitrogen.forecast_tank import Tank
from calculators.science.nitrogen.simulate import Outcome

MATURE_PERCENT = 50.0  # a filter that is called mature by its keeper; judgement
KIT_SEES_MG_L = 0.25  # the first step of a common ammonia kit; common practice, no source


def doubts(tank: Tank, outcome: Outcome, calm: float | None) -> list[Note]:
    """All that is to be said of the figures themselves.

    Ammonia and nitrite are ``calm`` from this day on, None where not before the end.
    """
    return [
        *not_mature(tank),
        *slow_food(tank, calm),
        *soft(tank, outcome),
        *light(tank),
        *soil(tank, outcome),
    ]


def not_mature(tank: Tank) -> list[Note]:
    """A mature filter leaves next to nothing: a reading says that it is not, or not for this load."""
    if tank.filter_maturity_percent < MATURE_PERCENT:
        return []
    read = [
        (what, reading, left)
        for what, reading, seen, left in (
            ("ammonia", tank.ammonia_mg_n_l, KIT_SEES_MG_L, AMMONIA_LEFT_MG_L),
            ("nitrite", tank.nitrite_mg_n_l, NITRITE_WATCH_MG_N_L, NITRITE_LEFT_MG_L),
        )
        if reading >= seen
    ]
    if not read:
        return []
    readings = " and ".join(f"{what} reads {show(reading, 2)}" for what, reading, _ in read)
    leaves = " and ".join(show(left, 1) for _, _, left in read)
    kinds = " and ".join(what for what, _, _ in read)
    return [
        Note(
            "caution",
            f"These figures do not go together: {readings} mg N/L, and a filter that is "
            f"{tank.filter_maturity_percent:.0f} % mature for this feed would leave about {leaves}. Trust "
            f"the test. Something feeds more than you entered, or the filter is damaged: enter a lower "
            f"maturity, for the forecast shows too little {kinds}.",
            first=True,
        )
    ]


def slow_food(tank: Tank, calm: float | None) -> list[Note]:
    """A new filter that shares its food with plants: that it takes its time is no reason to feed more.

    Ammonia and nitrite are ``calm`` from this day on, None where not before the end.
    """
    if not tank.plants or tank.filter_maturity_percent >= MATURE_PERCENT or calm == 0:
        return []
    return [
        Note(
            "info",
            "Plants share the food with this young filter: with less feed it can take weeks longer, now and "
            "then months, until ammonia and nitrite stay low, since its bacteria grow on what plants leave. "
            "Do not feed more to shorten it: the peaks would be higher and harm more.",
        )
    ]


def soft(tank: Tank, outcome: Outcome) -> list[Note]:
    """Hardness that runs out, or is not known."""
    if tank.kh_dh is None:
        return []
    lowest = min((line.kh, line.day) for line in outcome.record.lines)
    if lowest[0] >= KH_GROWTH_FULL_DH:
        return []
    below = next((one.day for one in outcome.record.lines if one.kh < KH_GROWTH_STOPS_DH), None)
    if below is None:
        text = (
            f"Carbonate hardness falls to {show(lowest[0], 2)} °dH about day {lowest[1]:.0f}. The filter "
            "grows slowly there. Test KH each week."
        )
        return [Note("caution", text)]
    when = "is" if below < 1 else f"falls from about day {below:.0f} on"
    return [
        Note(
            "caution",
            f"Carbonate hardness {when} below {show(KH_GROWTH_STOPS_DH, 1)} °dH: the filter stops growing "
            "there, and pH can drop. Ammonia that stands in acid water turns toxic when pH rises, so "
            "raise KH slowly, and test ammonia first.",
            first=True,
        )
    ]


def light(tank: Tank) -> list[Note]:
    """The light that was taken."""
    if tank.dli_mol is not None or not tank.plants:
        return []
    return [
        Note(
            "info",
            f"Daily light was not given: {show(ASSUMED_DLI_MOL, 2)} mol a m² is taken. "
            "Under a weaker lamp plants take less, and nitrate ends higher.",
        )
    ]


def soil(tank: Tank, outcome: Outcome) -> list[Note]:
    """How far the soil is counted, where plants run short."""
    if not outcome.record.hunger.spells:
        return []
    if not tank.soil_area_cm2:
        return [
            Note("info", "No soil is counted: where roots find food in it, plants last longer.")
        ]
    return [
        Note(
            "info",
            f"Of the soil {show(SLOW_SOIL_RELEASE_MG_M2_DAY, 1)} mg of nitrogen a m² "
            "and day are counted when it is new, halved in eight months: a guess. "
            "In rich soil rooted plants last longer.",
        )
    ]
