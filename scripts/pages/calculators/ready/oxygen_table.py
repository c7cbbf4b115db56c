"""Oxygen by temperature, at sea level and high up."""

from calculators.core.numbers import show_number
from calculators.oxygen import ACT_MG_L, AIR_NOW, WATCH_MG_L
from calculators.science.animals.reading_lines import standing
from calculators.science.water.oxygen_solubility import pressure_at_altitude_hpa
from scripts.pages.calculators.ready.table import (
    ReadyRow,
    ReadyTable,
    ReadyValues,
    WorkedCell,
    cell,
    heading,
)

NAME = "oxygen"
TEMPERATURES_C = (10.0, 15.0, 18.0, 20.0, 22.0, 24.0, 26.0, 28.0, 30.0, 32.0, 34.0)
ALTITUDES_M = (0, 500, 1_000, 2_000)
FIRST = (
    f"A reading of {show_number(ACT_MG_L)} mg/L or less is DEADLY for many animals: act now. At "
    f"{show_number(WATCH_MG_L)} mg/L or less it is harmful: find the cause today. Gasping animals need no "
    "reading.",
    AIR_NOW,
)
AFTER = (
    "The water cannot hold more for long; less than the table says is used up faster than it comes in. "
    "Oxygen is lowest just before the lights go on: measure then. Between two values take the warmer.",
)


def oxygen_values() -> ReadyValues:
    """What full water holds."""
    return ReadyValues("Oxygen by temperature", FIRST, (saturation(),), AFTER)


def saturation() -> ReadyTable:
    """Oxygen at saturation by temperature down and altitude across; the band of the warmth in words."""
    return ReadyTable(
        "Oxygen at saturation, mg/L",
        "Water",
        ("at sea level", *(f"at {height:,} m" for height in ALTITUDES_M[1:])),
        tuple(
            ReadyRow(
                ": ".join(filter(None, (heading(NAME, "temperature_c", t), band(t)))),
                tuple(answer_at(t, height).shown("saturation_mg_l") for height in ALTITUDES_M),
            )
            for t in TEMPERATURES_C
        ),
    )


def band(temperature_c: float) -> str:
    """Whether water so cold or warm harms, in words; nothing where it does not."""
    level, side = standing("temperature_c", temperature_c)
    if not side:
        return ""
    return f"{'DEADLY' if level == 'deadly' else 'harmful'}, too {'warm' if side == 'high' else 'cold'}"


def answer_at(temperature_c: float, altitude_m: float) -> WorkedCell:
    """The calculator's answer for one cell."""
    return cell(
        NAME,
        temperature_c=temperature_c,
        pressure_hpa=pressure_at_altitude_hpa(altitude_m),
        oxygen_mg_l=None,
    )
