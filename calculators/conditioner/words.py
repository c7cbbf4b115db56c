"""What the calculator for conditioner says: what kills first, the label, then what is left behind."""

from calculators.conditioner.ammonia_words import Treated, about_ammonia
from calculators.conditioner.chlorine import (
    HARMS_MG_L,
    THIOSULFATE_CRYSTALS,
    THIOSULFATE_DRY,
    thiosulfate_g,
)
from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.core.wording import CHANGE_WITH_CARE

MOST_IN_TAP_MG_L = 5.0  # the guideline of the World Health Organization for drinking water; memory
# Common practice, no source: labels ask for 0.02 to 0.5 mL a litre.
LEAST_LABEL_ML_L, MOST_LABEL_ML_L = 0.005, 2.0
LEAST_WEIGHED_G = 1.0  # common practice, no source: what a kitchen scale still tells


def notes(here: Treated) -> tuple[Note, ...]:
    """A label that cannot be, the dose and why it is needed, then ammonia, then how to go about it."""
    return (
        *odd_label(here),
        dose(here),
        *about_ammonia(here),
        *about_reading(here),
        about_label(here.kind),
        straight_in(here),
        thiosulfate(here),
        TOO_MUCH, GASPING, CHANGE_WITH_CARE,
    )  # fmt: skip


def dose(here: Treated) -> Note:
    """The answer, with what untreated water does."""
    ml, litres = show_number(here.ml_per_l * here.water_l), show_number(here.water_l)
    if is_likely(here.ml_per_l):
        text = f"Give {ml} mL to {litres} L of new water before it meets animals, and stir. "
    else:  # nobody should pour what a slip of two figures comes to
        text = (
            f"These two figures would be {ml} mL for {litres} L of new water: give that only if the label, "
            "read again, says so. "
        )
    if here.chlorine_mg_l < HARMS_MG_L:
        return Note("caution", text + UNTESTED, True)
    text += (
        f"Untreated it can kill within hours: chlorine and chloramine are toxic from about "
        f"{HARMS_MG_L} mg/L, and this water holds {show_number(here.chlorine_mg_l, 2)}."
    )
    return Note("danger", text, True)


UNTESTED = (
    "The reading shows next to no chlorine, but it changes from day to day, most after work on the "
    f"pipes; {HARMS_MG_L} mg/L harms, and most kits do not show so little."
)


def is_likely(label_ml_l: float) -> bool:
    """Whether a conditioner's label may ask for so much. In mL for each litre."""
    return LEAST_LABEL_ML_L <= label_ml_l <= MOST_LABEL_ML_L


def odd_label(here: Treated) -> list[Note]:
    """A label's dose that no conditioner asks for, where two figures were likely swapped."""
    if is_likely(here.ml_per_l):
        return []
    if here.ml_per_l < LEAST_LABEL_ML_L:
        text = (
            f"1 mL for {show_number(1 / here.ml_per_l, 2)} L is less than a label asks for, mostly 1 mL for "
            "2 to 50 L. Read the label again before you trust it: too little leaves chlorine, and chlorine "
            "kills."
        )
        return [Note("danger", text, True)]
    text = (
        f"{show_number(here.ml_per_l, 2)} mL for each litre is more than a label asks for, mostly less than "
        f"1 mL. Read the label again before you give any, and see whether mL and litres stand in their "
        "places: too much conditioner takes the oxygen out of the water."
    )
    return [Note("danger", text, True)]


def about_reading(here: Treated) -> list[Note]:
    """A reading that tap water hardly has."""
    if here.chlorine_mg_l <= MOST_IN_TAP_MG_L:
        return []
    text = (
        f"{show_number(here.chlorine_mg_l, 2)} mg/L is more than drinking water should hold: test again. "
        "If it is so, do not use the water, and ask the supplier."
    )
    return [Note("danger", text, True)]


def about_label(kind: str) -> Note:
    """The label goes first, and chloramine may need more."""
    text = "The product's label goes before this page. "
    if kind == "chlorine":
        text += "Suppliers change over to chloramine, for weeks or for good: ask now and then."
    else:
        text += (
            "Look there for the word chloramine: some ask for more of it than for chlorine, and some do "
            "not treat it at all. Standing overnight does not take chloramine out."
        )
    return Note("caution", text)


def straight_in(here: Treated) -> Note:
    """Water that runs straight into the tank."""
    text = "Where new water runs straight into the tank, put in the dose for the whole tank first"
    if here.tank_l is not None and is_likely(here.ml_per_l):
        text += f", {show_number(here.ml_per_l * here.tank_l)} mL for {show_number(here.tank_l)} L"
    return Note("caution", f"{text}, then let it in slowly. A bucket treated before is safer.")


def thiosulfate(here: Treated) -> Note:
    """How to use the plain salt, and what it does not do."""
    grams = thiosulfate_g(here.chlorine_mg_l, here.water_l)
    stronger = show_number(THIOSULFATE_CRYSTALS / THIOSULFATE_DRY, 2)
    text = (
        "Plain sodium thiosulfate is for those who have it with a label: it takes out chlorine and binds "
        f"no ammonia. The figure is for its crystals (pentahydrate); the dry powder is {stronger} times "
        "as strong. Keep it from children and food."
    )
    if 0 < grams < LEAST_WEIGHED_G:
        millilitres = show_number(100 * grams, 2)
        text += f" So little cannot be weighed: dissolve 10 g in water to make 1 L, and use {millilitres} mL."
    return Note("info", text)


TOO_MUCH = Note(
    "caution",
    "Do not give it many times over, and move the surface with air: conditioners take oxygen, those with "
    "sulfites at once, thiosulfate over days. Then test: total chlorine must read zero.",
)
GASPING = Note(
    "caution",
    "If animals gasp or dart after new water, put in conditioner for the whole tank, by its label, and "
    "strong air, at once.",
    links=(
        Link("Chlorine after a water change", "problems/chlorine-after-water-change/"),
        Link("Animals in danger", "danger/"),
    ),
)
