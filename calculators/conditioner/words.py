"""What the calculator for conditioner says: what kills first, the label, then what is left behind."""

from typing import NamedTuple

from calculators.conditioner.chlorine import (
    HARMS_MG_L,
    THIOSULFATE_CRYSTALS,
    THIOSULFATE_DRY,
    thiosulfate_g,
)
from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.core.wording import CHANGE_WITH_CARE
from calculators.science.water.ammonia import chronic_limit_mg_n_l, rate

MOST_IN_TAP_MG_L = 5.0  # the guideline of the World Health Organization for drinking water; memory
LEAST_WEIGHED_G = 1.0  # common practice, no source: what a kitchen scale still tells
CHANGE_TITLE = "How to change water when ammonia shows"


class Treated(NamedTuple):
    """The new water and what meets the animals; volumes in L, concentrations in mg/L or mg N/L.

    ``most`` is the ammonia that the new water may bring, ``meets`` that in the water where animals
    are, ``toxic`` the un-ionised part of ``meets``; None is what was not given.
    """

    water_l: float
    chlorine_mg_l: float
    kind: str
    ml_per_l: float
    tank_l: float | None
    most: float
    meets: float
    ph: float | None
    temperature_c: float
    toxic: float | None


def notes(here: Treated) -> tuple[Note, ...]:
    """The dose and why it cannot be left out, then ammonia, then how to go about it."""
    return (
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
    text = f"Give {ml} mL to {litres} L of new water before it meets animals, and stir. "
    if here.chlorine_mg_l < HARMS_MG_L:
        return Note("caution", text + UNTESTED, True)
    text += (
        f"Untreated it can kill within hours: chlorine and chloramine are toxic from about "
        f"{HARMS_MG_L} mg/L, and this water holds {show_number(here.chlorine_mg_l, 2)}."
    )
    return Note("caution", text, True)


UNTESTED = (
    "The reading shows next to no chlorine, but it changes from day to day, most after work on the "
    f"pipes; {HARMS_MG_L} mg/L harms, and most kits do not show so little."
)


def about_reading(here: Treated) -> list[Note]:
    """A reading that tap water hardly has."""
    if here.chlorine_mg_l <= MOST_IN_TAP_MG_L:
        return []
    text = (
        f"{show_number(here.chlorine_mg_l, 2)} mg/L is more than drinking water should hold: test again. "
        "If it is so, do not use the water, and ask the supplier."
    )
    return [Note("danger", text, True)]


def about_ammonia(here: Treated) -> list[Note]:
    """The ammonia that stays, by how toxic it is where animals meet it; nothing for chlorine alone."""
    if here.meets == 0:
        return []
    where = "in the tank" if here.tank_l is not None else "in the new water"
    start = (
        "If the supplier uses chloramine, its" if here.kind == "unknown" else "Chloramine's"
    ) + f" ammonia stays: up to {show_number(here.meets, 2)} mg N/L {where}"
    if here.ph is None or here.toxic is None:
        text = f"{start}. How much of it is toxic hangs on the pH: enter it. {BINDS}"
        return [Note("caution", text, True, onward(here))]
    limit = chronic_limit_mg_n_l(here.ph, here.temperature_c)
    rating = rate(here.meets / limit, here.toxic)
    toxic = f"{start}, {show_number(here.toxic, 2)} of it toxic at pH {show_number(here.ph)}"
    if rating == "act":
        text = f"{toxic}: above the line to act. {BINDS} Or change less water at a time."
        return [Note("danger", text, True, onward(here))]
    if rating == "watch":
        return [Note("caution", f"{toxic}. {BINDS} Test daily.", True, onward(here))]
    return [Note("info", f"{toxic}, below the working lines. {RISES}", False, onward(here))]


BINDS = (
    "Use a conditioner whose label says that it binds the ammonia of chloramine; one of thiosulfate "
    "alone does not."
)
RISES = (
    "It adds to what the tank has, and more turns toxic as pH rises: a filter and plants take it up in "
    "a day or two, a new tank does not."
)


def onward(here: Treated) -> tuple[Link, ...]:
    """The calculators for ammonia, filled in; the tank's own ammonia is the keeper's to test."""
    change: dict[str, float | str] = {"tap_ammonia_mg_n_l": here.most}
    free: dict[str, float | str] = {"ammonia_mg_l": here.meets, "reported_as": "nitrogen"}
    if here.ph is not None:
        free |= {"ph": here.ph, "temperature_c": here.temperature_c}
    return (
        Link("How much of it is toxic", "calculators/free-ammonia/", free),
        Link(CHANGE_TITLE, "calculators/ammonia-change/", change),
    )


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
    if here.tank_l is not None:
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
