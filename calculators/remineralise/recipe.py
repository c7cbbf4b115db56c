"""The grams of each salt that bring a water to its two hardnesses, and the ions they add."""

from collections.abc import Mapping
from typing import NamedTuple

from calculators.remineralise.mineral_salts import ION_G_MOL, SALTS, Ion, MineralSalt
from calculators.science.water import chemistry


class Wish(NamedTuple):
    """A rise of general and carbonate hardness in °dH, None where it is to fall, in so many litres.

    ``ratio`` is the mass of calcium for each of magnesium; the salts are keys of the table.
    """

    volume_l: float
    gh_rise_dh: float | None
    kh_rise_dh: float | None
    ratio: float
    calcium: str
    magnesium: str
    carbonate: str


class Recipe(NamedTuple):
    """Grams of the three salts, None where the hardness is to fall, and the ions in mg/L."""

    calcium_g: float | None
    magnesium_g: float | None
    carbonate_g: float | None
    adds: dict[Ion, float]

    @property
    def dissolved_mg_l(self) -> float:
        """All that the salts add, without their water of crystallisation."""
        return sum(self.adds.values())


def recipe(wish: Wish) -> Recipe:
    """Work out the grams.

    Equation: rise · 0.1783 mmol/L = Ca / 40.078 + Mg / 24.305, with Ca = ratio · Mg in mg/L
    Equation: bicarbonate = rise · 0.3567 mmol/L
    """
    hardness = (wish.gh_rise_dh or 0.0) * chemistry.MMOL_PER_DH
    magnesium_mg = hardness / (wish.ratio / chemistry.CA + 1 / chemistry.MG)
    amounts = (  # mmol/L of each salt, one calcium, magnesium or bicarbonate in each
        (SALTS[wish.calcium], wish.ratio * magnesium_mg / chemistry.CA),
        (SALTS[wish.magnesium], magnesium_mg / chemistry.MG),
        (SALTS[wish.carbonate], (wish.kh_rise_dh or 0.0) * chemistry.MEQ_PER_DH),
    )
    grams = [mmol * salt.g_mol / 1000 * wish.volume_l for salt, mmol in amounts]
    hard, buffered = wish.gh_rise_dh is not None, wish.kh_rise_dh is not None
    return Recipe(
        grams[0] if hard else None,
        grams[1] if hard else None,
        grams[2] if buffered else None,
        ions_of(amounts),
    )


def ions_of(amounts: tuple[tuple[MineralSalt, float], ...]) -> dict[Ion, float]:
    """The ions that so many mmol/L of some salts add, by ion, in mg/L."""
    counted: Mapping[Ion, float] = {
        ion: sum(mmol * salt.ions.get(ion, 0) for salt, mmol in amounts) for ion in ION_G_MOL
    }
    return {ion: mmol * ION_G_MOL[ion] for ion, mmol in counted.items()}
