"""Ammonia by pH and temperature, one table for each reading on a kit's card."""

from calculators.core.figures import figure
from calculators.core.quantities import Nitrogen
from calculators.science.animals.toxic_lines import Grade, ammonia_grade
from calculators.science.water.ammonia import unionised_share
from scripts.pages.calculators.ready.table import ReadyRow, ReadyTable, ReadyValues, heading

NAME = "free-ammonia"
READINGS_MG_L = (0.25, 0.5, 1.0, 2.0, 4.0)  # the steps that most cards print: common practice
PH = (6.5, 7.0, 7.5, 8.0, 8.5, 9.0)
TEMPERATURES_C = (18.0, 22.0, 26.0, 30.0)
WORDS: dict[Grade, str] = {
    "in-range": "low",
    "watch": "watch: test daily",
    "harmful": "harmful: act today",
    "deadly": "DEADLY: act now",
}
FIRST = (
    "A cell that says deadly: stop feeding, keep the filter running, move the surface with air now, and "
    "open the page of animals in danger. A settled tank reads zero: low is no promise.",
    "Between two values take the higher one: the higher reading, the higher pH, the warmer water. Off the "
    "table upwards counts as deadly.",
    "Do not change water by this table. New water that is harder or less acid makes more of it toxic: in a "
    "tank below pH 7.5 give a conditioner that binds ammonia, by its label, before any change.",
)
AFTER = (
    "The figure is the toxic part, NH₃, in mg of nitrogen a litre. The reading is taken as nitrogen, which "
    "is the worse case where the kit's leaflet does not say what it counts.",
)


def ammonia_values() -> ReadyValues:
    """How much of a reading is toxic, and in words whether it can kill."""
    return ReadyValues(
        "Ammonia by pH and temperature", FIRST, tuple(map(of_reading, READINGS_MG_L)), AFTER
    )


def of_reading(reading: float) -> ReadyTable:
    """The table of one reading. The ``reading`` is in mg N/L."""
    return ReadyTable(
        f"The kit reads {heading(NAME, 'ammonia_mg_l', reading)}",
        "pH",
        tuple(heading(NAME, "temperature_c", degrees) for degrees in TEMPERATURES_C),
        tuple(
            ReadyRow(heading(NAME, "ph", ph), tuple(words(reading, ph, t) for t in TEMPERATURES_C))
            for ph in PH
        ),
    )


def words(reading: float, ph: float, temperature_c: float) -> str:
    """One cell: the band in words, then the toxic part, mg N/L.

    By the calculator's own formulas: all of its answer, with what to do about it, takes a tenth of a
    second a cell. ``tests/test_ready_values.py`` holds cells against whole answers. The ``reading`` is
    in mg N/L too, ionised and not.
    """
    toxic = figure(Nitrogen, reading * unionised_share(ph, temperature_c))
    return f"{WORDS[ammonia_grade(reading, ph, temperature_c)]}, {toxic}"
