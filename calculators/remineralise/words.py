"""What the calculator for minerals says beside its figures; animals first."""

from typing import NamedTuple

from calculators.core.figures import figure
from calculators.core.numbers import show_number
from calculators.core.quantities import (
    US_GALLON_L,
    CarbonateHardness,
    GeneralHardness,
    Litres,
    SaltMass,
)
from calculators.core.result import Link, Note
from calculators.core.wording import joined
from calculators.remineralise.mineral_salts import GYPSUM_G_L, SALTS
from calculators.remineralise.recipe import Recipe, Wish
from calculators.remineralise.recipe_harm import beside_carbonate, harms
from calculators.science.water.change_words import BIND
from calculators.science.water.gentle import STEP_DH_A_DAY

LEAST_G = 1.0  # what a kitchen scale weighs with some sense; common practice, no source
USUAL_RATIO = (1.0, 10.0)  # common practice, no source: beyond it one of the two falls short
LIME_DH = 8.0  # where both hardnesses reach it, water in the open is over-full of lime, by PHREEQC


class RecipeWater(NamedTuple):
    """The recipe asked for and made, the hardnesses it reaches and those that were wanted, °dH."""

    wish: Wish
    made: Recipe
    gh_dh: float
    kh_dh: float
    target_gh_dh: float
    target_kh_dh: float


GRADE = Note(
    "caution",
    "Take food or laboratory grade with the formula on its label, never de-icing salt or building "
    "plaster. Weigh away from children, keep dust out of eyes and lungs, and follow the label. Calcium "
    "chloride grows hot in water: a little salt into much water, never the other way.",
)
INHABITED = Note(
    "caution",
    "Where animals live, raise hardness slowly: the tank's own reading by no more than about "
    f"{STEP_DH_A_DAY} °dH a day (common practice, no source). Where a test shows ammonia, raise neither KH "
    f"nor pH: that can turn it toxic. First {BIND}.",
    False,
    (Link("How to change water when ammonia shows", "calculators/ammonia-change/"),),
)


def notes(water: RecipeWater) -> tuple[Note, ...]:
    """What harms first, then the grams, then how to mix and to use it."""
    if not any((water.made.calcium_g, water.made.magnesium_g, water.made.carbonate_g)):
        return (*harms(water.made, water.gh_dh, water.kh_dh), grams(water), *above(water))
    return (
        *harms(water.made, water.gh_dh, water.kh_dh),
        grams(water),
        *above(water),
        mixing(water),
        INHABITED,
        *beside_carbonate(water.made),
        *odd(water),
        GRADE,
    )


def grams(water: RecipeWater) -> Note:
    """The answer in plain words."""
    wish, made = water.wish, water.made
    weighed = (
        (made.calcium_g, wish.calcium),
        (made.magnesium_g, wish.magnesium),
        (made.carbonate_g, wish.carbonate),
    )
    parts = [f"{figure(SaltMass, mass)} g of {SALTS[key].name}" for mass, key in weighed if mass]
    reads = f"GH {figure(GeneralHardness, water.gh_dh)} and KH {figure(CarbonateHardness, water.kh_dh)} °dH"
    gallons = show_number(wish.volume_l / US_GALLON_L)
    litres = f"{figure(Litres, wish.volume_l)} L ({gallons} US gal)"
    if not parts:
        return Note("info", f"Nothing is to be added: the water reads {reads} already.", True)
    return Note("info", f"{joined(parts)} in {litres} of water make {reads}.", True)


def above(water: RecipeWater) -> list[Note]:
    """A water that is harder than wanted, which no salt mends."""
    wish, over = water.wish, []
    if wish.gh_rise_dh is None:
        over.append(f"GH above the {figure(GeneralHardness, water.target_gh_dh)} °dH")
    if wish.kh_rise_dh is None:
        over.append(f"KH above the {figure(CarbonateHardness, water.target_kh_dh)} °dH")
    if not over:
        return []
    text = (
        f"The water has {joined(over)} that you want, and no salt takes hardness out: mix in purified "
        "water first."
    )
    given: dict[str, float | str] = {
        "gh_dh": water.gh_dh, "kh_dh": water.kh_dh, "mix_gh_dh": 0.0, "mix_kh_dh": 0.0,
        "target_gh_dh": water.target_gh_dh, "volume_l": wish.volume_l,
    }  # fmt: skip
    return [Note("caution", text, True, (Link("Mix two waters", "calculators/hardness/", given),))]


def mixing(water: RecipeWater) -> Note:
    """How to dissolve it, with what gypsum asks for."""
    text = (
        "Dissolve it in a bucket, one salt after the other, never dry in a tank with animals. Let it "
        "stand overnight with air, then test GH, KH and pH before you use it."
    )
    gypsum = water.made.calcium_g if water.wish.calcium == "caso4_2h2o" else None
    if gypsum:
        text += (
            f" Gypsum dissolves slowly and no more than {GYPSUM_G_L:g} g in a litre: stir it into at least "
            f"{show_number(gypsum / GYPSUM_G_L, 2)} L for hours, until none lies on the bottom."
        )
    return Note("caution", text)


def odd(water: RecipeWater) -> list[Note]:
    """Masses too small to weigh, a ratio out of the common, and water that is over-full of lime."""
    masses = (water.made.calcium_g, water.made.magnesium_g, water.made.carbonate_g)
    small = [mass for mass in masses if mass and mass < LEAST_G]
    notes = []
    if small:
        text = (
            f"Under {LEAST_G:g} g a kitchen scale is a guess: use one that shows hundredths, or dissolve ten "
            "times the mass in a litre of purified water and take a tenth of that."
        )
        notes.append(Note("info", text))
    low, high = USUAL_RATIO
    if water.wish.gh_rise_dh and not low <= water.wish.ratio <= high:
        text = (
            f"Calcium to magnesium of {show_number(water.wish.ratio, 2)} to 1 is out of the common: "
            f"{low:g} to {high:g} keeps either from falling short (common practice, no source)."
        )
        notes.append(Note("caution", text))
    if min(water.gh_dh, water.kh_dh) >= LIME_DH:
        text = (
            "Water so hard in both may drop lime as it stands, and then reads less. That takes calcium "
            "and carbonate out together."
        )
        notes.append(Note("info", text))
    return notes
