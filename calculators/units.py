"""Between the units a kit, a label or a guide may use."""

from typing import Annotated, Literal, NamedTuple

from calculators.core.declare import calculator
from calculators.core.quantities import INCH_CM, OUNCE_G, POUND_KG, US_GALLON_L, Factor
from calculators.core.quantity import Choices, Help, Label, Quantity
from calculators.core.result import Note, Refusal, Refused
from calculators.core.written_units import IMPERIAL_GALLON_L
from calculators.science.water import chemistry

GRAIN_MG = POUND_KG * 1e6 / 7000  # exact, by definition: 64.79891 mg
FRENCH_DEGREE_CACO3_MG_L = 10.0  # by definition
ABSOLUTE_ZERO_C = -273.15

# How much of each unit is one and the same amount; units of one family change into each other.
FAMILIES: dict[str, dict[str, float]] = {
    "nitrate": {"nitrate": chemistry.NITRATE, "nitrate-n": chemistry.N},
    "nitrite": {"nitrite": chemistry.NITRITE, "nitrite-n": chemistry.N},
    "ammonia": {
        "ammonia": chemistry.AMMONIA,
        "ammonium": chemistry.AMMONIUM,
        "ammonia-n": chemistry.N,
    },
    # what holds two of phosphorus; a kit counts phosphate, a label its oxide or the element
    "phosphorus": {
        "phosphate": 2 * chemistry.PHOSPHATE,
        "phosphate-p": 2 * chemistry.P,
        "p2o5": chemistry.P2O5,
        "p": 2 * chemistry.P,
    },
    "potassium on a label": {"k2o": chemistry.K2O, "k": 2 * chemistry.K},
    "magnesium on a label": {"mgo": chemistry.MGO, "magnesium": chemistry.MG},
    "calcium on a label": {"cao": chemistry.CAO, "calcium": chemistry.CA},
    "parts of a litre": {"mg-l": 1.0, "ug-l": 1000.0},
    "hardness": {
        "dgh": 1.0,
        "ppm-caco3": chemistry.CACO3_MG_PER_DH,
        "mmol-l": chemistry.MMOL_PER_DH,
        "meq-l": chemistry.MEQ_PER_DH,
        "french-degree": chemistry.CACO3_MG_PER_DH / FRENCH_DEGREE_CACO3_MG_L,
        "english-degree": chemistry.CACO3_MG_PER_DH * IMPERIAL_GALLON_L / GRAIN_MG,
        "grain-us-gallon": chemistry.CACO3_MG_PER_DH * US_GALLON_L / GRAIN_MG,
    },
    "volume": {
        "litre": 1.0,
        "us-gallon": 1 / US_GALLON_L,
        "imperial-gallon": 1 / IMPERIAL_GALLON_L,
    },
    "mass": {"gram": 1.0, "kilogram": 0.001, "ounce": 1 / OUNCE_G, "pound": 0.001 / POUND_KG},
    "length": {"cm": 1.0, "inch": 1 / INCH_CM},
    "temperature": {"celsius": 1.0, "fahrenheit": 1.8},
}
FAHRENHEIT_AT_0_C = 32.0

Unit = Literal[
    "nitrate", "nitrate-n", "nitrite", "nitrite-n", "ammonia", "ammonium", "ammonia-n",
    "phosphate", "phosphate-p", "p2o5", "p", "k2o", "k", "mgo", "magnesium", "cao",
    "calcium", "mg-l", "ug-l", "dgh", "ppm-caco3", "mmol-l", "meq-l",
    "french-degree", "english-degree", "grain-us-gallon", "litre", "us-gallon", "imperial-gallon",
    "gram", "kilogram", "ounce", "pound", "cm", "inch", "celsius", "fahrenheit",
]  # fmt: skip
WORDS = Choices((
    "nitrate, NO₃", "nitrate nitrogen, NO₃-N", "nitrite, NO₂", "nitrite nitrogen, NO₂-N",
    "ammonia, NH₃", "ammonium, NH₄", "ammonia nitrogen, N", "phosphate, PO₄",
    "phosphate phosphorus, PO₄-P", "phosphorus as P₂O₅", "phosphorus, P", "potassium as K₂O",
    "potassium, K", "magnesium as MgO", "magnesium, Mg", "calcium as CaO", "calcium, Ca",
    "mg/L (ppm)", "µg/L (ppb)", "German degrees, °dH", "ppm or mg/L as CaCO₃", "mmol/L", "meq/L",
    "French degrees, °fH", "English degrees (Clark), °e", "grains a US gallon, gpg", "litres",
    "US gallons", "imperial gallons", "grams", "kilograms", "ounces", "pounds", "centimetres",
    "inches", "degrees Celsius", "degrees Fahrenheit",
))  # fmt: skip
Amount = Annotated[float, Quantity("Value", "", (-1e9, 1e9), digits=5)]


class Converted(NamedTuple):
    """The figure in the other unit."""

    result: Annotated[Amount, Label("Result")]
    factor: Annotated[Factor | None, Label("Factor"), Help("Result divided by value.")]
    notes: tuple[Note, ...]


@calculator("Units", sources=("ciaaw-2021", "nist-sp-811", "hardness-units-table"))
def units(
    value: Annotated[Amount, Label("Value")] = 5.0,
    from_: Annotated[Unit, Label("From"), WORDS] = "nitrate-n",
    to: Annotated[Unit, Label("To"), WORDS] = "nitrate",
) -> Converted:
    """Change a figure between the units that a kit, a label or a guide may use.

    Concentrations stay in the same unit of mass a litre: 5 mg/L of nitrate nitrogen is 22 mg/L of
    nitrate. A German degree is 10 mg of calcium oxide a litre, a French one 10 mg of calcium
    carbonate; an English degree and a grain a US gallon are a grain of it in an imperial and a US
    gallon. For carbonate hardness, mmol/L here means calcium carbonate, so 1 mmol/L is 2 meq/L.
    Ounces are those of weight, 16 to the pound.
    """
    family = family_of(from_)
    if to not in family:
        raise Refused(Refusal("to", f"{from_} cannot become {to}", choices=tuple(family)))
    check(value, from_)
    if "celsius" in family:
        return temperature(value, from_, to)
    factor = family[to] / family[from_]
    return Converted(value * factor, factor, notes(family))


def family_of(unit: str) -> dict[str, float]:
    """The units that one can change into, each with its size.

    A size is a molar mass, or how much of the family's base unit it is; only the ratio of two counts.
    """
    return next(family for family in FAMILIES.values() if unit in family)


def check(value: float, unit: str) -> None:
    """Refuse an amount that cannot be: below nothing, or below absolute zero.

    The ``value`` is in ``unit``. Raises ``Refused`` with the least that can be.
    """
    least = {
        "celsius": ABSOLUTE_ZERO_C,
        "fahrenheit": ABSOLUTE_ZERO_C * 1.8 + FAHRENHEIT_AT_0_C,
    }.get(unit, 0.0)
    if value < least:
        raise Refused(Refusal("value", f"too low for {unit}", low=least))


def temperature(value: float, from_: str, to: str) -> Converted:
    """Temperatures need an offset, so that no single factor holds.

    The ``value`` is in degrees of the scale it comes from.
    """
    if from_ == to:
        return Converted(value, 1.0, ())
    result = (
        value * 1.8 + FAHRENHEIT_AT_0_C if from_ == "celsius" else (value - FAHRENHEIT_AT_0_C) / 1.8
    )
    why = "A temperature has no single factor: the two scales start at different points."
    return Converted(result, None, (Note("info", why),))


def notes(family: dict[str, float]) -> tuple[Note, ...]:
    """Where a mix-up of the units does harm."""
    if "grain-us-gallon" in family:
        text = (
            "A bare degree may be German, French or English, and a degree of one is not a degree of "
            "another. Find out which one the kit counts before you act on it."
        )
        return (Note("caution", text),)
    if not family.keys().isdisjoint(("nitrate", "nitrite", "ammonia", "phosphate")):
        return (
            Note(
                "caution",
                "Guides differ in which unit they mean. Before you act on a limit, find out whether it is "
                "given as the ion or as the element: as nitrate or as nitrogen, as phosphate or as "
                "phosphorus.",
            ),
        )
    return ()
