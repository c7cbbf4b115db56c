"""Words by which a name or a docstring says the unit or the shape of its numbers."""

import re

# Parts of a name, between underscores. A letter alone is a unit only behind another part: ``volume_l``.
NAME_UNITS = re.compile(
    r"""
    (?: l | ml | dl | m | cm | mm | cm2 | m2 | m3 | px | g | kg | mg | ug | mol | mmol | umol | meq | dh
    | ph | c | k | w | kw | j | s | h | min | hpa | pa | kpa | mpa | v | kwh | litres | days? | weeks?
    | hours? | minutes? | seconds? | years? | months? | percent | shares? | ratios? | factor | odds
    | probability | chances? | bits | degrees | kelvin | celsius | lumens | dli | ppfd | prandtl
    | nusselt | pixels | octets | bytes )
    """,
    re.VERBOSE,
)
NAME_COUNTS = re.compile(
    r"""
    (?: counts? | number | digits | seed | port | rows? | columns? | index | status | code | steps?
    | times | turns? | pairs | lobes | rings | stems | leaves | lines | most | least | weight | depth
    | place | levels? | figures | runs? )
    """,
    re.VERBOSE,
)
UNIT = re.compile(
    r"""
    (?<![\w/]) (?:
      mg | µg | ug | g | kg | mL | L | mm | cm | m | cm² | m² | cm2 | m2 | mol | mmol | µmol | meq | °dH
    | °C | °F | K | W | J | hPa | Pa | kPa | MPa | N | s | ms | MB | KB | pH | %
    | (?i: grams? | litres? | millilitres? | metres? | centimetres? | millimetres? | kelvin | degrees?
      | watts? | joules? | lumens? | lux | (?: milli | nano )? seconds? | minutes? | hours? | days?
      | weeks? | years? | months? | pixels? | octets? | bytes? | bits | metric | units? | per[ ]cent
      | percent | shares? | ratios? | factors? | fractions? | multiples? | probabilit(?:y|ies) | chances?
      | odds | likelihoods? | logarithms? | 0[ ]to[ ]1 | of[ ]1 | how[ ]many | numbers?[ ]of | counts?
      | counted | most[ ](?:rings|stems) | digits | scores? | index | status | port | seed )
    ) (?!\w)
    """,
    re.VERBOSE,
)
# How the numbers of a sequence stand in it, or by what a table finds them.
SHAPE = re.compile(
    r"\b(?:each|every|pairs?|triples?|rows?|columns?|then|as many|in order|from \w+ to|by|both|ends)\b",
    re.IGNORECASE,
)
NAMED_PARTS = re.compile(r"\band\b|,|\bbetween\b|\brange\b", re.IGNORECASE)


def unit_in_name(name: str) -> bool:
    """Whether a name carries its unit, or says that it has none, as ``share`` does."""
    parts = name.split("_")
    return any(NAME_UNITS.fullmatch(part) for part in parts if len(part) > 1 or len(parts) > 1)


def count_in_name(name: str) -> bool:
    """Whether a name says that it counts things, or their place in a row."""
    return any(NAME_COUNTS.fullmatch(part) for part in name.split("_"))
