"""Units that a person may write behind a number, such as "5 gal" or "78 °F", and what they come to.

A unit belongs to a family, and an input takes every unit of the family of its own. So "ppm" is mg/L for
a dissolved thing and a hardness for a hardness. What could mean two things is left out: mg/L for an
input in mg N/L may be counted as nitrogen or as ammonium, and a third more or less is not to be guessed.
"""

from typing import NamedTuple

from calculators.core.quantities import INCH_CM, OUNCE_G, POUND_KG, US_GALLON_L
from calculators.core.quantity import Quantity
from calculators.science.water.chemistry import CACO3_MG_PER_DH, CAO_MG_PER_DH, MEQ_PER_DH

IMPERIAL_GALLON_L = 4.54609  # exact, by definition
FOOT_CM = 12 * INCH_CM
DAY_MIN = 24 * 60
# US customary kitchen measures; NIST SP 811, appendix B.8
US_TEASPOON_ML = US_GALLON_L * 1000 / 768
US_FLUID_OUNCE_ML = US_GALLON_L * 1000 / 128
MERCURY_MM_HPA = 1.333224  # conventional millimetre of mercury; NIST SP 811, appendix B.8
ATMOSPHERE_HPA = 1013.25  # exact, by definition
# As CaCO3, mg/L: a French degree is 10, an English one a grain (64.79891 mg, exact) in an imperial gallon
GRAIN_MG = 64.79891
FRENCH_DH = 10 / CACO3_MG_PER_DH
ENGLISH_DH = GRAIN_MG / IMPERIAL_GALLON_L / CACO3_MG_PER_DH
US_GRAIN_DH = GRAIN_MG / US_GALLON_L / CACO3_MG_PER_DH

# What a keyboard may send for a sign, as it is compared: one degree, one micro, plain figures.
PLAIN_SIGNS = str.maketrans(
    {
        "º": "°",
        "µ": "μ",
        "²": "2",
        "³": "3",
        "₂": "2",
        "₃": "3",
        "₄": "4",
        "\u00a0": " ",
        "\u202f": " ",
    }
)


class Written(NamedTuple):
    """A unit: how it is shown, its size in a family's own measure, and how else it is written."""

    shown: str
    size: float
    others: tuple[str, ...] = ()
    offset: float = 0.0  # for temperatures: the reading of 0 °C


FAMILIES: tuple[tuple[Written, ...], ...] = (
    (
        Written("L", 1000, ("litre", "litres", "liter", "liters", "ltr")),
        Written("mL", 1, ("millilitre", "millilitres", "milliliter", "milliliters", "cc")),
        # A bare gallon is the US one: the British trade sells tanks by the litre.
        Written("US gal", US_GALLON_L * 1000, (
            "gal", "gals", "gallon", "gallons", "us gallon", "us gallons", "usgal", "usg",
        )),
        Written("imp gal", IMPERIAL_GALLON_L * 1000, (
            "imperial gallon", "imperial gallons", "uk gal", "uk gallon", "uk gallons",
        )),
        Written("tsp", US_TEASPOON_ML, ("teaspoon", "teaspoons")),
        Written("tbsp", 3 * US_TEASPOON_ML, ("tablespoon", "tablespoons")),
        Written("US fl oz", US_FLUID_OUNCE_ML, ("fl oz", "floz", "fluid ounce", "fluid ounces")),
    ),
    (
        Written("cm", 1, ("centimetre", "centimetres", "centimeter", "centimeters")),
        Written("mm", 0.1, ("millimetre", "millimetres", "millimeter", "millimeters")),
        Written("m", 100, ("metre", "metres", "meter", "meters")),
        Written("in", INCH_CM, ("inch", "inches", '"', "\u2033", "\u201d", "''")),
        Written("ft", FOOT_CM, ("foot", "feet", "'", "\u2032", "\u2019")),
    ),
    (
        Written("cm²", 1, ("sq cm",)),
        Written("dm²", 100, ("sq dm",)),
        Written("m²", 10_000, ("sq m",)),
        Written("sq in", INCH_CM**2, ("in²",)),
        Written("sq ft", FOOT_CM**2, ("ft²",)),
    ),
    (
        Written("g", 1, ("gram", "grams", "gramme", "grammes")),
        Written("mg", 0.001, ("milligram", "milligrams")),
        Written("kg", 1000, ("kilo", "kilos", "kilogram", "kilograms")),
        Written("oz", OUNCE_G, ("ounce", "ounces")),
        Written("lb", POUND_KG * 1000, ("lbs", "pound", "pounds")),
    ),
    (
        Written("°C", 1, ("c", "celsius", "deg c", "degrees c", "degrees celsius")),
        Written("°F", 1.8, ("f", "fahrenheit", "deg f", "degrees f", "degrees fahrenheit"), 32),
    ),
    (
        Written("mg/L", 1, ("ppm", "mg per l", "mg per litre", "mg per liter", "mg/litre")),
        Written("g/L", 1000, ("mg/ml", "g per l", "g per litre")),
        Written("µg/L", 0.001, ("ppb", "ug/l")),
    ),
    (Written("mg N/L", 1, ("mg/l n", "mg/l-n", "mg/l as n", "ppm n", "ppm-n", "ppm as n")),),
    (
        Written("°dH", 1, ("dh", "dgh", "dkh", "°dgh", "°dkh", "°gh", "°kh", "°d", "german degrees")),
        Written("ppm as CaCO₃", 1 / CACO3_MG_PER_DH, (
            "ppm", "ppm caco3", "mg/l as caco3", "mg/l caco3",
        )),
        Written("°fH", FRENCH_DH, ("fh", "french degrees")),
        Written("°e", ENGLISH_DH, ("e", "eh", "clark", "°clark", "english degrees")),
        Written("gpg", US_GRAIN_DH, ("grains", "grains per gallon", "grains/gal")),
        Written("meq/L", 1 / MEQ_PER_DH, ("meq",)),
    ),
    (
        Written("days", DAY_MIN, ("d", "day")),
        Written("weeks", 7 * DAY_MIN, ("week", "wk", "wks")),
        Written("h", 60, ("hour", "hours", "hr", "hrs")),
        Written("min", 1, ("mins", "minute", "minutes")),
        Written("s", 1 / 60, ("sec", "secs", "second", "seconds")),
    ),
    (
        Written("hPa", 1, ("mbar", "millibar", "millibars")),
        Written("kPa", 10),
        Written("bar", 1000),
        Written("mmHg", MERCURY_MM_HPA, ("mm hg", "torr")),
        Written("inHg", MERCURY_MM_HPA * 10 * INCH_CM, ("in hg",)),
        Written("atm", ATMOSPHERE_HPA),
    ),
    (Written("g/mL", 1, ("g/cm³", "kg/l", "kg/dm³")),),
    (Written("lm", 1, ("lumen", "lumens")),),
    (Written("µmol/m²/s", 1, ("µmol", "umol", "umol/m²/s", "ppfd")),),
    (Written("mol/m²/day", 1, ("mol", "mol/m²/d", "dli")),),
    (Written("%", 1, ("percent", "per cent", "pct")),),
)  # fmt: skip
assert CAO_MG_PER_DH == 10  # a German degree; the other degrees above are counted from it


def plainly(unit: str) -> str:
    """A unit as it is compared: no capitals, no raised or lowered figures, single spaces, one micro sign."""
    flat = unit.translate(PLAIN_SIGNS).casefold()
    return " ".join(flat.split()).rstrip(".").replace("° ", "°")


def spellings(written: Written) -> list[str]:
    """All ways to write a unit, as they are compared."""
    return [plainly(name) for name in (written.shown, *written.others)]


def units_of(quantity: Quantity) -> list[Written]:
    """The units that a thing may be written in, with their size in its own unit; its own comes first."""
    own = plainly(quantity.unit)
    if own.startswith("%"):
        own = "%"
    matching = [
        (family, written)
        for family in FAMILIES
        for written in family
        if plainly(written.shown) == own
    ]
    if not matching:
        return [Written(quantity.unit, 1.0)] if quantity.unit else []
    family, base = matching[0]
    others = [
        Written(written.shown, written.size / base.size, written.others, written.offset)
        for written in family
        if written is not base
    ]
    special = [Written(name, size) for name, size in quantity.written]
    return [base._replace(size=1.0), *others, *special]


def to_metric(quantity: Quantity, value: float, unit: str) -> float:
    """A value in a written unit, in the quantity's own. Raises ``ValueError`` with the units that will do."""
    for written in units_of(quantity):
        if plainly(unit) in spellings(written):
            is_degrees = written.offset or written.shown == "°C"
            return (value - written.offset) / written.size if is_degrees else value * written.size
    names = [written.shown for written in units_of(quantity)]
    if not names:
        raise ValueError(f"{unit[:20]!r} will not do here; write the number alone")
    listed = " or ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)
    raise ValueError(f"the unit {unit[:20]!r} is not one of this field's; write {listed}")
