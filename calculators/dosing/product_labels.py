"""A labelled bottle: from its printed analysis to what a millilitre of it gives to the water."""

from typing import NamedTuple

from calculators.core.result import Refusal, Refused
from calculators.science.conversions import ML_PER_L
from calculators.science.water import chemistry

LEAST_PERCENT = 0.0001  # a smaller share is none: no label prints it
MOST_GRAMS_A_LITRE = 1_500.0  # more than any bottle weighs
# The share, and so the field of the form, that brings each nutrient.
BROUGHT_BY = {
    "nitrogen": "n",
    "nitrate": "n",
    "phosphate": "p2o5",
    "potassium": "k2o",
    "magnesium": "mg",
    "iron": "fe",
}


class Analysis(NamedTuple):
    """A printed analysis, in percent by weight or in grams a litre."""

    n: float
    p2o5: float
    k2o: float
    fe: float
    mg: float


class Printed(NamedTuple):
    """What a label prints: percent by weight with the density in g/mL, or grams a litre."""

    percent: Analysis
    density_g_ml: float
    grams_a_litre: Analysis

    def grams_a_millilitre(self) -> Analysis:
        """Gram of each printed thing in a millilitre."""
        pairs = zip(self.percent, self.grams_a_litre, strict=True)
        return Analysis(
            *(share / 100 * self.density_g_ml + mass / ML_PER_L for share, mass in pairs)
        )

    def shares(self) -> dict[str, float | None]:
        """Gram of each ion or element in a millilitre of the product; None where the label is silent.

        The form of the nitrogen is not known: ``nitrate`` is what all of it would make at most.
        """
        grams = self.grams_a_millilitre()
        return {
            "nitrate": grams.n * chemistry.NITRATE_PER_N,
            "phosphate": grams.p2o5 * chemistry.PHOSPHATE_PER_P2O5,
            "potassium": grams.k2o * chemistry.POTASSIUM_PER_K2O,
            "magnesium": grams.mg,
            "calcium": None,
            "iron": grams.fe,
            "nitrogen": grams.n,
            "sulfate": None,
            "chloride": None,
        }

    def holds(self, nutrient: str) -> bool:
        """Whether the label prints what brings a nutrient; False where the form has no field for it."""
        part = BROUGHT_BY.get(nutrient)
        if part is None:
            return False
        percent, grams = self.percent._asdict()[part], self.grams_a_litre._asdict()[part]
        return bool(percent >= LEAST_PERCENT or grams >= 10 * LEAST_PERCENT)

    def check(self, nutrient: str) -> None:
        """Refuse a label that cannot be, or one without the nutrient asked for.

        Raises ``Refused``.
        """
        refuse_too_much(self.percent, "percent", 100, "100 %")
        refuse_too_much(self.grams_a_litre, "g_l", MOST_GRAMS_A_LITRE, "1,500 g/L")
        for part in Analysis._fields:
            if getattr(self.percent, part) and getattr(self.grams_a_litre, part):
                why = "filled in by percent and by grams a litre: leave one of them at 0"
                raise Refused(Refusal(f"label_{part}_g_l", why, 0, 0))
        if self.holds(nutrient):
            return
        printed = tuple(key for key in BROUGHT_BY if self.holds(key))
        if printed:
            why = f"the analysis of the label shows no {nutrient}"
            raise Refused(Refusal("nutrient", why, choices=printed))
        why = "fill in the printed analysis of the bottle, at least the share of what you dose"
        field = f"label_{BROUGHT_BY.get(nutrient, 'n')}_percent"
        raise Refused(Refusal(field, why, LEAST_PERCENT, 100))


def refuse_too_much(analysis: Analysis, ending: str, most: float, words: str) -> None:
    """Refuse parts that together are more than the whole.

    The ``most`` is in the unit of the analysis, percent or g/L. Raises ``Refused``, naming the largest
    part.
    """
    if sum(analysis) > most:
        why = f"the printed shares add up to more than {words}"
        largest = max(analysis._fields, key=analysis._asdict().__getitem__)
        room = max(0.0, most - sum(analysis) + max(analysis))
        raise Refused(Refusal(f"label_{largest}_{ending}", why, 0, room))
