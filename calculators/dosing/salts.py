"""The salts that the book doses: what each is made of, and how much of it dissolves.

Shares follow from the formula and standard atomic weights; nothing in this table repeats them.
Ammonium nitrate and other ammonium salts are left out on purpose: the one is an explosive
precursor, and all of them dose ammonia.
"""

from collections.abc import Mapping
from typing import NamedTuple

from calculators.science.water import chemistry
from calculators.science.water.chemistry import molar_mass

ADDED = (
    "nitrate", "phosphate", "potassium", "magnesium", "calcium", "iron", "nitrogen", "sulfate",
    "chloride",
)  # fmt: skip
MOLAR_MASS = dict(
    zip(
        ADDED,
        (
            chemistry.NITRATE, chemistry.PHOSPHATE, chemistry.K, chemistry.MG, chemistry.CA,
            chemistry.FE, chemistry.N, chemistry.SULFATE, chemistry.CHLORIDE,
        ),
        strict=True,
    )
)  # fmt: skip


HANDBOOK = "a handbook figure, quoted from memory"
COMPUTED = "computed with a geochemical library"
MAKERS = "a makers' figure, quoted from memory: your pack comes first"


class Salt(NamedTuple):
    """A salt as it is weighed, water of crystallisation included.

    ``yields`` counts what one formula unit gives to the water. ``g_kg_water`` is what dissolves at
    20 °C in a kilogram of water put into the bottle; ``saturated_g_ml`` the density it then has.
    """

    key: str
    name: str
    formula: str
    atoms: Mapping[str, int]
    yields: Mapping[str, int]
    g_kg_water: float
    saturated_g_ml: float
    origin: str = HANDBOOK  # of the solubility, for the keeper to read
    sodium: int = 0  # beside the keys of the contract: said in a note
    bound_nitrogen: int = 0  # locked in a chelate, no plant food: said in a note, not counted

    @property
    def g_mol(self) -> float:
        """Molar mass in g/mol."""
        return molar_mass(**self.atoms)

    def share(self, key: str) -> float:
        """Gram of an ion or element that a gram of the salt gives to the water."""
        return self.yields.get(key, 0) * MOLAR_MASS[key] / self.g_mol

    def shares(self) -> dict[str, float | None]:
        """The share of everything that a dose may add, by its key; None for what is not known.

        A share is gram in a gram of the salt.
        """
        return {key: self.share(key) for key in ADDED}

    @property
    def most_g_l(self) -> float:
        """The most, in grams, that a litre bottle filled up to its mark holds dissolved at 20 °C.

        Less than dissolves in a litre of water, because the salt itself takes room.
        """
        return self.g_kg_water / (1000 + self.g_kg_water) * self.saturated_g_ml * 1000


# Where a solubility is from (source keys). handbook-solubility: MEMORY, in part seen second-hand.
# phreeqc: computed with the geochemical library that the tests repeat. Densities of the saturated
# solutions: computed with that library, unless said otherwise.
TABLE = (
    Salt(
        "kno3",
        "potassium nitrate",
        "KNO3",
        {"K": 1, "N": 1, "O": 3},
        {"potassium": 1, "nitrate": 1, "nitrogen": 1},
        316,  # handbook 31.6 g in 100 g, MEMORY; a public chart rounds it to 32
        1.162,
    ),
    Salt(
        "kh2po4",
        "potassium dihydrogen phosphate",
        "KH2PO4",
        {"K": 1, "H": 2, "P": 1, "O": 4},
        {"potassium": 1, "phosphate": 1},
        226,  # handbook 22.6 g in 100 g, MEMORY; seen second-hand
        1.137,
    ),
    Salt(
        "k2so4",
        "potassium sulfate",
        "K2SO4",
        {"K": 2, "S": 1, "O": 4},
        {"potassium": 2, "sulfate": 1},
        111,  # handbook 11.1 g in 100 g, MEMORY; seen second-hand; phreeqc computes 10.2
        1.081,
    ),
    Salt(
        "mgso4_7h2o",
        "magnesium sulfate heptahydrate",
        "MgSO4(H2O)7",
        {"Mg": 1, "S": 1, "O": 11, "H": 14},
        {"magnesium": 1, "sulfate": 1},
        1075,  # phreeqc; handbook 33.7 g anhydrous in 100 g, MEMORY, makes 1066
        1.283,
        COMPUTED,
    ),
    Salt(
        "caso4_2h2o",
        "calcium sulfate dihydrate (gypsum)",
        "CaSO4(H2O)2",
        {"Ca": 1, "S": 1, "O": 6, "H": 4},
        {"calcium": 1, "sulfate": 1},
        2.54,  # phreeqc
        1.000,
        COMPUTED,
    ),
    Salt(
        "cacl2_2h2o",
        "calcium chloride dihydrate",
        "CaCl2(H2O)2",
        {"Ca": 1, "Cl": 2, "O": 2, "H": 4},
        {"calcium": 1, "chloride": 2},
        1300,  # handbook 74.5 g anhydrous in 100 g, MEMORY, worked out for the dihydrate
        1.425,
    ),
    Salt(
        "fe_edta",
        "iron EDTA (sodium salt, trihydrate)",
        "C10H12FeN2NaO8(H2O)3",
        {"C": 10, "H": 18, "Fe": 1, "N": 2, "Na": 1, "O": 11},
        {"iron": 1},
        90,  # makers' sheets, MEMORY
        1.04,  # estimated
        MAKERS,
        sodium=1,
        bound_nitrogen=2,
    ),
    Salt(
        "fe_dtpa",
        "iron DTPA (disodium salt)",
        "C14H18FeN3Na2O10",
        {"C": 14, "H": 18, "Fe": 1, "N": 3, "Na": 2, "O": 10},
        {"iron": 1},
        100,  # makers' sheets, MEMORY, rough
        1.05,  # estimated
        MAKERS,
        sodium=2,
        bound_nitrogen=3,
    ),
    Salt(
        "urea",
        "urea",
        "CO(NH2)2",
        {"C": 1, "O": 1, "N": 2, "H": 4},
        {"nitrogen": 2},
        1079,  # handbook 107.9 g in 100 g, MEMORY; 108 seen second-hand
        1.146,  # carried on from 1.090 at 32.5 % (ISO 22241-1, MEMORY)
    ),
)
SALTS = {salt.key: salt for salt in TABLE}
