"""The bottle that a dose comes from: one that the keeper mixes, or one bought with a label."""

from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.dosing.cautions import Plan
from calculators.dosing.notes import (
    COPPER,
    HANDLING,
    LABEL_FIRST,
    NOTES_BY_SALT,
    chelate_notes,
    stock_notes,
)
from calculators.dosing.salts import Salt
from calculators.science.conversions import ML_PER_L


class Bottle(NamedTuple):
    """The figures of a bottle, in the order of the calculator's outputs; None: does not apply."""

    grams_per_dose: float | None
    ml_per_dose: float | None
    grams_per_bottle: float | None
    doses_per_bottle: float | None
    bottle_g_l: float | None
    solubility_g_l: float | None
    most_g_l: float | None
    dissolves: bool | None
    least_dose_ml: float | None


def mixed(salt: Salt, grams: float, bottle_ml: float, dose_ml: float) -> Bottle:
    """A bottle that holds ``grams`` of a salt in each ``dose_ml``, filled with water to its mark."""
    strength = grams / dose_ml * ML_PER_L
    return Bottle(
        grams_per_dose=grams,
        ml_per_dose=None,
        grams_per_bottle=grams / dose_ml * bottle_ml,
        doses_per_bottle=bottle_ml / dose_ml,
        bottle_g_l=strength,
        solubility_g_l=salt.g_kg_water,
        most_g_l=salt.most_g_l,
        dissolves=strength <= salt.g_kg_water,
        least_dose_ml=grams / salt.most_g_l * ML_PER_L,
    )


def bought(ml: float, bottle_ml: float) -> Bottle:
    """A labelled bottle, of which ``ml`` make a dose."""
    doses = bottle_ml / ml if ml else None
    return Bottle(None, ml, None, doses, None, None, None, None, None)


def verdict(bottle: Bottle, dose_ml: float, plan: Plan, target: float | None, form: str) -> Note:
    """The answer in plain words; it never promises a bottle in which the salt does not dissolve.

    ``form`` is that of the nitrogen: where a label hides it, a rise of nitrate is one at most. The
    ``target`` is a level in mg/L, None where a rise was asked for.
    """
    if not plan.rise:
        return Note("info", "No rise is wanted, so there is nothing to dose.", True)
    to = f"raises {plan.nutrient} by {show_number(plan.rise)} mg/L"
    if target is not None:
        to += f", from {show_number(plan.now)} to {show_number(target)} mg/L"
    if bottle.ml_per_dose is not None:
        most = " at most" if plan.nutrient == "nitrate" and form != "nitrate" else ""
        return Note("info", f"{show_number(bottle.ml_per_dose)} mL of the bottle {to}{most}.", True)
    grams = show_number(bottle.grams_per_dose or 0.0)
    if (bottle.least_dose_ml or 0.0) > dose_ml:
        text = f"{grams} g of the salt {to}, but so strong a bottle does not dissolve."
        return Note("caution", text, True)
    text = (
        f"{grams} g of the salt {to}. Weigh {show_number(bottle.grams_per_bottle or 0.0)} g into the "
        f"bottle and fill it to the mark: a dose is {show_number(dose_ml, 6)} mL."
    )
    return Note("info", text, True)


def bottle_notes(salt: Salt | None, bottle: Bottle, bottle_ml: float, iron: float) -> list[Note]:
    """What to know about the bottle; ``iron`` in mg/L is what a dose adds."""
    if salt:
        return [
            *stock_notes(
                salt, bottle.grams_per_bottle or 0.0, bottle_ml, bottle.least_dose_ml or 0.0
            ),
            *NOTES_BY_SALT[salt.key],
            HANDLING,
            *chelate_notes(salt, iron),
            Note(
                "info",
                "Weigh to a tenth of the dose or better: kitchen scales cannot weigh under a gram. "
                "The millilitres of a labelled bottle are left out for a salt.",
            ),
        ]
    notes = [COPPER, HANDLING, LABEL_FIRST]
    if bottle.doses_per_bottle is None:
        notes.append(Note("info", "No rise, no dose: the number of doses has no meaning."))
    elif bottle.doses_per_bottle < 1:
        ml = show_number(bottle.ml_per_dose or 0.0)
        notes.insert(0, Note("caution", f"One dose is {ml} mL, more than the bottle holds."))
    return notes
