"""What to know about the source of a dose: handling, law, what to keep apart, what dissolves."""

import math

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.dosing.salts import Salt
from calculators.science.conversions import ML_PER_L
from calculators.science.water import chemistry

NEAR_THE_LIMIT = 0.8  # of what dissolves: below it a cool room does no harm; our judgement

HANDLING = Note(
    "caution",
    "Wear gloves and cover your eyes when you weigh and mix. Write on the bottle what it holds, how "
    "much of it is one dose, and the date. Keep it out of children's reach, and follow the pack.",
)
OXIDISER = Note(
    "caution",
    "Potassium nitrate is an oxidiser: it makes a fire fiercer. Keep it dry, in its own pack, away "
    "from heat and from anything that burns.",
)
LAW = Note(
    "caution",
    "Potassium nitrate can be misused for explosives. In the European Union (Regulation 2019/1148) "
    "and in Great Britain (Poisons Act 1972) sellers must report suspicious purchases; other "
    "countries have their own rules. Buy, store and mix it only as your local law says.",
)
IRON = Note(
    "caution",
    "Iron stains skin, cloth and stone, and swallowed it poisons children and pets. Light and a "
    "high pH break the chelate: EDTA from about pH 6.5, DTPA from about 7.5 (figures from memory). "
    "Keep the bottle dark, and dose little and often.",
)
APART = Note(
    "caution",
    "Keep phosphate and iron in separate bottles, and dose them on different days: together they "
    "drop out as a sludge that no plant can use.",
)
CALCIUM_APART = Note(
    "caution",
    "Keep calcium apart from sulfate and phosphate stocks: together they drop out as gypsum or "
    "calcium phosphate.",
)
GYPSUM = Note(
    "caution",
    "Gypsum barely dissolves, so no stock bottle is worth making. Stir a weighed dose into the "
    "tank or into new water; it takes hours to days.",
)
CALCIUM_CHLORIDE = Note(
    "caution",
    "Calcium chloride hurts eyes and grows hot in water: add the salt to the water, little by "
    "little, never water to the salt.",
)
COPPER = Note(
    "caution",
    "Read the label for copper, here and on any trace mix: in tests 0.03 mg/L killed half of the "
    "freshwater prawns in four days, and above 0.005 mg/L young amphipods did not grow up. Where "
    "shrimps or snails live, use no such bottle unless you know how much copper a dose adds.",
)
LABEL_FIRST = Note(
    "info",
    "Grams and what dissolves are left out for a labelled bottle: its maker has mixed it. The "
    "label comes first. A density that is not printed is taken as 1; the true one may be a third "
    "higher, and the dose is then that much stronger than wanted.",
)
NOTES_BY_SALT: dict[str, tuple[Note, ...]] = {
    "kno3": (OXIDISER, LAW),
    "kh2po4": (APART,),
    "k2so4": (CALCIUM_APART,),
    "mgso4_7h2o": (CALCIUM_APART,),
    "caso4_2h2o": (GYPSUM, CALCIUM_APART),
    "cacl2_2h2o": (CALCIUM_CHLORIDE, CALCIUM_APART),
    "fe_edta": (IRON, APART, COPPER),
    "fe_dtpa": (IRON, APART, COPPER),
    "urea": (),
}


def stock_notes(salt: Salt, grams: float, bottle_ml: float, least_dose_ml: float) -> list[Note]:
    """Whether the bottle dissolves, what would fit, and where the figure is from.

    The bottle would need this many ``grams`` of salt.
    """
    most = salt.most_g_l * bottle_ml / ML_PER_L
    origin = f"How much dissolves at 20 °C is {salt.origin}. A cooler room holds less."
    if grams <= most:
        near = grams > NEAR_THE_LIMIT * most
        return [Note("caution" if near else "info", origin)]
    least = round_up(least_dose_ml)
    fits = (
        f"Take {show_number(least, 6)} mL or more for a dose"
        if least <= bottle_ml
        else "Not even one dose fits into this bottle: take a larger one"
    )
    if grams / bottle_ml * ML_PER_L > salt.g_kg_water:
        first = "This does not dissolve:"
    else:
        first = (
            "So much dissolves in water, but not in a bottle filled up to its mark, where the salt "
            "takes room itself:"
        )
    return [
        Note(
            "caution",
            f"{first} the bottle would need {show_number(grams)} g and holds "
            f"{show_number(most)} g at most, so the rest lies on the bottom and every dose is "
            f"wrong. {fits}, or stir each dose into a jug of tank water.",
        ),
        Note("info", origin),
    ]


def round_up(value: float, digits: int = 3) -> float:
    """Round up to so many significant figures, so that what is said to fit does fit.

    The ``value`` and the result are in one unit, any.
    """
    if value <= 0:
        return 0.0
    step: float = 10.0 ** (math.floor(math.log10(value)) - digits + 1)
    return math.ceil(value / step) * step


def chelate_notes(salt: Salt, iron_mg_l: float) -> list[Note]:
    """The share of iron in a chelate as sold, and what else comes with it."""
    if not salt.bound_nitrogen:
        return []
    percent = show_number(100 * salt.share("iron"))
    per_iron = iron_mg_l / salt.share("iron") / salt.g_mol  # mmol of the chelate in a litre
    sodium = show_number(per_iron * salt.sodium * chemistry.NA)
    nitrogen = show_number(per_iron * salt.bound_nitrogen * chemistry.N)
    return [
        Note(
            "info",
            f"By its formula this salt is {percent} % iron; packs differ. If yours prints another "
            f"share, multiply the grams by {percent} and divide by the printed share. A dose also "
            f"adds {sodium} mg/L of sodium, and {nitrogen} mg/L of nitrogen that is locked in the "
            "chelate and not counted.",
        )
    ]
