"""A labelled bottle: from its printed analysis to what a gram of it gives to the water."""

from typing import NamedTuple

from calculators.core.result import Refusal, Refused
from calculators.water import chemistry

LEAST_PERCENT = 0.0001  # a smaller share is none: no label prints it
# The share, and so the field of the form, that brings each nutrient.
BROUGHT_BY = {
    "nitrogen": "n",
    "nitrate": "n",
    "phosphate": "p2o5",
    "potassium": "k2o",
    "magnesium": "mg",
    "iron": "fe",
}


PERCENT = 1.0
GRAMS_A_LITRE = 10.0  # that one percent is, in a bottle of which a millilitre weighs a gram


class Analysis(NamedTuple):
    """A printed analysis in percent by weight."""

    n: float
    p2o5: float
    k2o: float
    fe: float
    mg: float

    def shares(self) -> dict[str, float | None]:
        """Gram of each ion or element in a gram of the product; None where the label is silent.

        The form of the nitrogen is not known: ``nitrate`` is what all of it would make at most.
        """
        return {
            "nitrate": self.n / 100 * chemistry.NITRATE_PER_N,
            "phosphate": self.p2o5 / 100 * chemistry.PHOSPHATE_PER_P2O5,
            "potassium": self.k2o / 100 * chemistry.POTASSIUM_PER_K2O,
            "magnesium": self.mg / 100,
            "calcium": None,
            "iron": self.fe / 100,
            "nitrogen": self.n / 100,
            "sulfate": None,
            "chloride": None,
        }

    def percent(self, nutrient: str) -> float:
        """The printed share that brings a nutrient; 0 where the form has no field for it."""
        return self._asdict()[BROUGHT_BY[nutrient]] if nutrient in BROUGHT_BY else 0.0

    def check(self, nutrient: str, scale: float = 1.0) -> None:
        """Refuse an analysis that cannot be, or one without the nutrient asked for.

        ``scale`` is how much of the label's unit one percent is, so that limits are told in it.
        """
        if sum(self) > 100:
            whole = "100 %" if scale == 1 else f"{100 * scale:,.0f} g/L"
            why = f"the printed shares add up to more than {whole}"
            largest = max(self._fields, key=self._asdict().__getitem__)
            room = max(0.0, 100 - sum(self) + max(self))
            raise Refused(Refusal(f"label_{largest}_percent", why, 0, room * scale))
        if self.percent(nutrient) >= LEAST_PERCENT:
            return
        printed = tuple(key for key in BROUGHT_BY if self.percent(key) >= LEAST_PERCENT)
        if printed:
            why = f"the analysis of the label shows no {nutrient}"
            raise Refused(Refusal("nutrient", why, choices=printed))
        why = "fill in the printed analysis of the bottle, at least the share of what you dose"
        field = f"label_{BROUGHT_BY.get(nutrient, 'n')}_percent"
        raise Refused(Refusal(field, why, LEAST_PERCENT * scale, 100 * scale))
