"""Oxygen: saturation, and how a reading stands."""

from typing import Annotated, Literal, NamedTuple

from calculators.core.declare import calculator
from calculators.core.leads import Lead
from calculators.core.quantities import (
    FAHRENHEIT,
    Oxygen,
    OxygenSaturation,
    Pressure,
    Temperature,
)
from calculators.core.quantity import AnswersTo, Assumed, Choices, Help, Label, Valid
from calculators.core.result import Note, Series
from calculators.core.wording import FISH_IN_TROUBLE
from calculators.science.animals.reading_lines import edge_of
from calculators.science.animals.reading_words import reading_notes
from calculators.science.water.oxygen_solubility import pressure_at_altitude_hpa, saturation_mg_l

# The one-day minima of the US criteria of 1986 as we remember those (3 mg/L for grown warm-water
# fish, 5 mg/L for young ones); that document was located, its table not read.
ACT_MG_L = edge_of("oxygen_mg_l", "deadly_low")
WATCH_MG_L = edge_of("oxygen_mg_l", "harmful_low")
TOO_MUCH_PERCENT = 120.0  # common practice, no source
OXYGEN_OF_AIR = 0.2095  # by volume
MOST_PERCENT = 100 / OXYGEN_OF_AIR  # under pure oxygen
TOTAL_GAS_PERCENT = (
    110.0  # from here on fish can get gas bubbles: the United States' criterion (memory)
)
# So much oxygen, beside as much nitrogen as air gives, makes up that total.
BUBBLES_PERCENT = (TOTAL_GAS_PERCENT - 100 * (1 - OXYGEN_OF_AIR)) / OXYGEN_OF_AIR

Rating = Literal["act", "watch", "good", "too-much", "not-measured"]
READING = AnswersTo(("oxygen_mg_l",))
HINT_ALTITUDES_M = (500, 1_000, 2_000)


class OxygenStanding(NamedTuple):
    """What the water can hold, and how the reading stands against it."""

    saturation_mg_l: Annotated[Oxygen, Label("Oxygen at saturation")]
    saturation_percent: Annotated[
        OxygenSaturation | None, Label("Saturation of the reading"), READING
    ]
    rating: Annotated[
        Rating,
        Label("Rating"),
        Choices(
            (
                "too low: act now", "low: find the cause today", "enough", "more than air gives",
                "not measured",
            ),
            levels=("danger", "caution", "info", "caution", "info"),
        ),
    ]  # fmt: skip
    missing_mg_l: Annotated[
        Oxygen | None, Label("Missing to saturation"), Help("Zero above saturation."), READING
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]


@calculator(
    "Oxygen",
    sources=("benson-krause-1984", "iso-2533", "epa-1986-dissolved-oxygen", "wac-173-201a"),
    leads_to=(
        Lead("stocking", "How long it lasts your animals", {"temperature_c": "temperature_c"}),
    ),
)
def oxygen(
    temperature_c: Annotated[Temperature, Valid(0, 40)] = 25.0,
    pressure_hpa: Annotated[
        Pressure,
        Help("As it is where the tank stands, not reduced to sea level. 1 hPa is 1 mbar."),
        Assumed(),
    ] = 1013.25,
    oxygen_mg_l: Annotated[
        Oxygen | None, Label("Oxygen reading"), Help("Leave empty to see saturation alone.")
    ] = 6.4,
) -> OxygenStanding:
    """Find how much oxygen the water holds at saturation, and how a reading stands.

    Saturation is that of fresh water against moist air after Benson and Krause; warm water and thin
    air hold less. Dissolved salts of a freshwater tank change it by less than one per cent.

    The rating goes by mg/L, since that is what gills meet: at 3 and below act now, at 5 and below
    find the cause today. These are the United States' lines for warm-water fish, from memory; some
    animals need more. Plants can lift a reading above saturation by day while it falls low at night,
    so one reading at noon says little.
    """
    saturation = saturation_mg_l(temperature_c, pressure_hpa)
    percent = None if oxygen_mg_l is None else 100 * oxygen_mg_l / saturation
    rating = rate(oxygen_mg_l, percent)
    return OxygenStanding(
        saturation_mg_l=saturation,
        saturation_percent=percent,
        rating=rating,
        missing_mg_l=None if oxygen_mg_l is None else max(0.0, saturation - oxygen_mg_l),
        notes=(
            *reading_notes(oxygen_mg_l=oxygen_mg_l, temperature_c=temperature_c),
            *notes(rating, saturation, pressure_hpa, percent),
        ),
        series={"saturation": against_temperature(pressure_hpa)},
    )


def rate(oxygen_mg_l: float | None, percent: float | None) -> Rating:
    """Rate a reading, low oxygen before too much of it."""
    if oxygen_mg_l is None or percent is None:
        return "not-measured"
    if oxygen_mg_l <= ACT_MG_L:
        return "act"
    if oxygen_mg_l <= WATCH_MG_L:
        return "watch"
    return "too-much" if percent > TOO_MUCH_PERCENT else "good"


def notes(
    rating: Rating, saturation: float, pressure_hpa: float, percent: float | None
) -> list[Note]:
    """What to do about it, animals first.

    The ``saturation`` is what water in balance with the air holds, mg/L; the reading is ``percent`` of it.
    """
    advice = list(FOR_RATING[rating])
    if percent is not None and percent > BUBBLES_PERCENT:
        advice = [Note("caution", GAS_BUBBLES, True)]
    if percent is not None and percent > MOST_PERCENT:
        advice = [Note("danger", NO_WATER_HOLDS_IT, True)]
    if saturation < WATCH_MG_L:
        why = "Even saturated water holds less than 5 mg/L here: lower the temperature slowly."
        advice.append(Note("caution", why))
    advice.append(Note("info", MEASURE_AT_DAWN))
    if pressure_hpa > pressure_at_altitude_hpa(HINT_ALTITUDES_M[0]):
        advice.append(Note("info", altitude_hint()))
    return advice


def altitude_hint() -> str:
    """Mean pressures for places above the sea, since weather reports hide the altitude."""
    pressures = ", ".join(
        f"{pressure_at_altitude_hpa(height):.0f} hPa at {height:,} m" for height in HINT_ALTITUDES_M
    )
    return (
        "Weather reports give pressure as it would be at sea level. High up, enter the true one: "
        f"on average {pressures}."
    )


def against_temperature(pressure_hpa: float) -> Series:
    """Saturation from 10 to 35 °C at this pressure."""
    degrees = [float(degree) for degree in range(10, 36)]
    return Series(
        label="Oxygen at saturation",
        unit="mg/L",
        x_label="Water temperature",
        x_unit="°C",
        x=degrees,
        y=[saturation_mg_l(degree, pressure_hpa) for degree in degrees],
        x_us=FAHRENHEIT,
    )


MEASURE_AT_DAWN = (
    "Oxygen is lowest just before the lights go on and highest late in the afternoon: measure before "
    "lights-on. Let the probe or the sample stand at the tank's temperature."
)
NO_WATER_HOLDS_IT = (
    "No water holds so much, not even under pure oxygen: the meter or the figure is wrong, and what the "
    "animals have is not known. Set the meter in open air and measure again. If they gasp, add air now."
)
GAS_BUBBLES = (
    f"So much oxygen lifts all gas in the water together above {TOTAL_GAS_PERCENT:.0f} % of saturation, at "
    "which fish can get gas bubbles under the skin and in the gills; or the meter is wrong. Move the surface "
    "now, look for an air leak in a pump, set the meter in open air and measure again. Fish with bubbles or "
    "bulging eyes need a vet."
)
AIR_NOW = (
    "Now: move the surface with the filter outlet or an air stone, thin out floating plants, and stop "
    "feeding. Where the ammonia test reads zero, also change a third of the water with dechlorinated "
    "water of the same temperature or up to 2 °C (4 °F) cooler. Look for a dead animal, rotting plants "
    "or a stopped filter."
)
DRY_HANDS = (
    "Electricity and water: pull the plugs before you reach in, keep the air pump above the water "
    "line or use a non-return valve, and let cables hang in a loop below the socket."
)
FOR_RATING: dict[Rating, tuple[Note, ...]] = {
    "act": (Note("danger", AIR_NOW), FISH_IN_TROUBLE, Note("caution", DRY_HANDS)),
    "watch": (
        Note(
            "caution",
            "Low. If animals hang at the surface or breathe fast, treat it as an emergency: move the "
            "surface, add air, stop feeding.",
        ),
        Note("info", "Usual causes: warm water, a closed mat of floaters, much feed, a dirty filter."),
        Note("caution", DRY_HANDS),
    ),
    "good": (),
    "too-much": (
        Note(
            "caution",
            "Far above saturation. Plants do this in strong light, and it is harmless for hours; "
            f"total gas above {TOTAL_GAS_PERCENT:.0f} % of saturation, as from an air leak in a pump, can "
            "give fish gas bubbles under the skin. Move the surface, and measure again before lights-on.",
        ),
    ),
    "not-measured": (
        Note("info", "No reading was given, so its saturation and what is missing are left empty."),
    ),
}  # fmt: skip
