"""What may be dosed, to raise what, how often, and how a label counts."""

from typing import Literal

from calculators.core.quantity import Choices

Source = Literal[
    "kno3", "kh2po4", "k2so4", "mgso4_7h2o", "caso4_2h2o", "cacl2_2h2o", "fe_edta", "fe_dtpa",
    "urea", "label",
]  # fmt: skip
SOURCE_WORDS = Choices((
    "potassium nitrate, KNO₃", "potassium dihydrogen phosphate, KH₂PO₄", "potassium sulfate, K₂SO₄",
    "magnesium sulfate, MgSO₄·7H₂O", "gypsum, CaSO₄·2H₂O", "calcium chloride, CaCl₂·2H₂O",
    "iron EDTA", "iron DTPA", "urea", "a labelled bottle",
))  # fmt: skip
Nutrient = Literal["nitrate", "phosphate", "potassium", "magnesium", "calcium", "iron", "nitrogen"]
NUTRIENT_WORDS = Choices((
    "nitrate, NO₃", "phosphate, PO₄", "potassium, K", "magnesium, Mg", "calcium, Ca", "iron, Fe",
    "nitrogen, N",
))  # fmt: skip
Schedule = Literal["once", "daily", "weekly", "after-change"]
SCHEDULE_WORDS = Choices(("a single dose", "every day", "every week", "after each water change"))
DOSE_EVERY_DAYS: dict[str, float] = {"daily": 1.0, "weekly": 7.0}

# Which nitrogen a label means; unknown is the worse case, as urea and ammonium are.
NitrogenForm = Literal["unknown", "nitrate", "urea-or-ammonium"]
NITROGEN_FORM_WORDS = Choices((
    "the label does not say", "nitrate only", "urea or ammonium, also in part",
))  # fmt: skip
