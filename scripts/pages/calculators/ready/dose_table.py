"""Salts by litres: one dose, and a bottle that holds fifty."""

from collections.abc import Callable
from typing import NamedTuple

from calculators.core.numbers import show_number
from scripts.pages.calculators.ready.table import (
    ReadyRow,
    ReadyTable,
    ReadyValues,
    WorkedCell,
    cell,
    heading,
    said_of_all,
)

NAME = "dosing"
LITRES = (10.0, 20.0, 40.0, 60.0, 80.0, 100.0, 120.0, 180.0, 240.0, 300.0)


class SaltColumn(NamedTuple):
    """A salt, what it raises, and by how much: small rises that many keepers take (common practice)."""

    source: str
    formula: str
    nutrient: str
    symbol: str
    rise_mg_l: float


SALTS = (
    SaltColumn("kno3", "KNO₃", "nitrate", "NO₃", 5.0),
    SaltColumn("kh2po4", "KH₂PO₄", "phosphate", "PO₄", 0.5),
    SaltColumn("k2so4", "K₂SO₄", "potassium", "K", 5.0),
    SaltColumn("mgso4_7h2o", "MgSO₄·7H₂O", "magnesium", "Mg", 2.0),
    SaltColumn("fe_edta", "iron EDTA", "iron", "Fe", 0.1),
)
FIRST = (
    "Test first, and add the rise to what the water holds already. Salts of ammonium and urea are left out: "
    "they can turn into ammonia that kills.",
    "Litres are those of the water, without soil and stones. Between two take the smaller.",
)
AFTER = (
    "Weigh to a tenth of the dose or better: kitchen scales cannot weigh under a gram.",
    "What dissolves is counted at 20 °C; a cooler room dissolves less.",
)
TOO_STRONG = "does not dissolve"


def dosing_values() -> ReadyValues:
    """Grams by litres of water, and what holds of each salt."""
    bottle = answer_at(SALTS[0], 100.0).answer["inputs"]
    per_bottle = (
        f"Grams for a bottle of {show_number(bottle['bottle_ml'])} mL, filled with water to the mark: "
        f"one dose is {show_number(bottle['dose_ml'])} mL"
    )
    return ReadyValues(
        "Salts by litres",
        (*FIRST, *cautions()),
        (table("Grams for one dose", grams), table(per_bottle, grams_in_bottle)),
        AFTER,
    )


def cautions() -> tuple[str, ...]:
    """What the calculator warns of at every volume, of whichever salt; each once."""
    said = [
        text for salt in SALTS for text in said_of_all(answer_at(salt, litres) for litres in LITRES)
    ]
    return tuple(text for text in dict.fromkeys(said) if "not entered" not in text)


def table(caption: str, shown: Callable[[WorkedCell], str]) -> ReadyTable:
    """A table of all salts by litres."""
    return ReadyTable(
        caption,
        "Water",
        tuple(
            f"{salt.formula}: {salt.symbol} up by {show_number(salt.rise_mg_l)} mg/L"
            for salt in SALTS
        ),
        tuple(
            ReadyRow(
                heading(NAME, "volume_l", litres),
                tuple(shown(answer_at(salt, litres)) for salt in SALTS),
            )
            for litres in LITRES
        ),
    )


def answer_at(salt: SaltColumn, litres: float) -> WorkedCell:
    """The calculator's answer for one dose of a salt."""
    return cell(
        NAME,
        schedule="once",
        change_percent=None,
        change_every_days=None,
        volume_l=litres,
        nutrient=salt.nutrient,
        rise_mg_l=salt.rise_mg_l,
        source=salt.source,
    )


def grams(dose: WorkedCell) -> str:
    """The salt of one dose."""
    return dose.shown("grams_per_dose")


def grams_in_bottle(dose: WorkedCell) -> str:
    """The salt of a bottle, or that so much does not dissolve in it."""
    fits = (
        dose.value("grams_per_bottle")
        <= dose.value("most_g_l") * dose.answer["inputs"]["bottle_ml"] / 1000
    )
    return dose.shown("grams_per_bottle") if fits else TOO_STRONG
