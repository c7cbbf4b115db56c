"""Salts that give water its hardness: what each is made of, and the ions it gives.

Molar masses follow from the formula with the water of crystallisation, as the crystals are weighed.
"""

from collections.abc import Mapping
from typing import Literal, NamedTuple

from calculators.science.water import chemistry

Ion = Literal["calcium", "magnesium", "sodium", "potassium", "sulfate", "chloride", "bicarbonate"]
ION_G_MOL: dict[Ion, float] = {
    "calcium": chemistry.CA,
    "magnesium": chemistry.MG,
    "sodium": chemistry.NA,
    "potassium": chemistry.K,
    "sulfate": chemistry.SULFATE,
    "chloride": chemistry.CHLORIDE,
    "bicarbonate": chemistry.BICARBONATE,
}


class MineralSalt(NamedTuple):
    """A salt as it is weighed; ``ions`` counts what one formula unit gives to the water."""

    name: str
    atoms: Mapping[str, int]
    ions: Mapping[Ion, int]

    @property
    def g_mol(self) -> float:
        """Molar mass in g/mol, water of crystallisation included."""
        return chemistry.molar_mass(**self.atoms)


SALTS: dict[str, MineralSalt] = {
    "cacl2_2h2o": MineralSalt(
        "calcium chloride dihydrate",
        {"Ca": 1, "Cl": 2, "O": 2, "H": 4},
        {"calcium": 1, "chloride": 2},
    ),
    "caso4_2h2o": MineralSalt(
        "gypsum (calcium sulfate dihydrate)", {"Ca": 1, "S": 1, "O": 6, "H": 4}, {"calcium": 1, "sulfate": 1}
    ),
    "mgso4_7h2o": MineralSalt(
        "magnesium sulfate heptahydrate",
        {"Mg": 1, "S": 1, "O": 11, "H": 14},
        {"magnesium": 1, "sulfate": 1},
    ),
    "mgcl2_6h2o": MineralSalt(
        "magnesium chloride hexahydrate",
        {"Mg": 1, "Cl": 2, "O": 6, "H": 12},
        {"magnesium": 1, "chloride": 2},
    ),
    "nahco3": MineralSalt(
        "sodium bicarbonate", {"Na": 1, "H": 1, "C": 1, "O": 3}, {"sodium": 1, "bicarbonate": 1}
    ),
    "khco3": MineralSalt(
        "potassium bicarbonate", {"K": 1, "H": 1, "C": 1, "O": 3}, {"potassium": 1, "bicarbonate": 1}
    ),
}  # fmt: skip

# What dissolves at 10 °C by PHREEQC is 2.43 g in a litre, and more in warmer water; measured at 25 °C
# 2.5 to 3.1 (lebedev-2017).
GYPSUM_G_L = 2.4
