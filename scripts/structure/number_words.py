"""Words by which a name or a docstring says the unit or the shape of its numbers."""

import re

# Parts of a name, between underscores. A letter alone is a unit only behind another part: ``volume_l``.
NAME_UNITS = frozenset(
    """
    l ml dl m cm mm cm2 m2 m3 px g kg mg ug mol mmol umol meq dh ph c k w kw j s h min hpa pa v kwh
    litres day days week weeks hour hours minute minutes second seconds year years month months
    percent share shares ratio ratios factor odds probability chance chances bits degrees kelvin celsius
    lumens dli ppfd prandtl nusselt rayleigh grashof pixels octets bytes
    """.split()
)
NAME_COUNTS = frozenset(
    """
    count counts number digits seed port row rows column columns index status code step steps times turns
    turn pairs lobes rings stems leaves lines most least weight depth place levels figures
    """.split()
)
UNIT = re.compile(
    r"""
    (?<![\w/]) (?:
      mg | µg | ug | g | kg | mL | L | mm | cm | m | cm² | m² | cm2 | m2 | mol | mmol | µmol | meq | °dH | °C | °F | K
    | W | J | hPa | Pa | kPa | MPa | N | s | ms | MB | KB | pH
    | (?i: grams? | litres? | millilitres? | metres? | centimetres? | millimetres? | kelvin | degrees? | watts? | joules?
      | seconds? | minutes? | hours? | days? | weeks? | years? | months? | lumens? | lux | pixels? | octets? | metric
      | per[ ]cent | percent | shares? | ratios? | factors? | fractions? | probabilit(?:y|ies) | chances? | odds
      | likelihoods? | logarithms? | bits | 0[ ]to[ ]1 | of[ ]1 | how[ ]many | numbers?[ ]of | counts? | counted
      | digits | units? | scores? | multiples? | index | status | port | seed | most[ ](?:rings|stems) )
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
    return any(part in NAME_UNITS for part in parts if len(part) > 1 or len(parts) > 1)


def count_in_name(name: str) -> bool:
    """Whether a name says that it counts things, or their place in a row."""
    return any(part in NAME_COUNTS for part in name.split("_"))
