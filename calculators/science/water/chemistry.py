"""Atomic weights, molar masses, and what follows from them.

Atomic weights are the abridged standard values of IUPAC's commission (source key ciaaw-2021);
the tests compare every molar mass with a library that carries the same table.
"""

ATOMIC_WEIGHT = {
    "H": 1.008,
    "C": 12.011,
    "N": 14.007,
    "O": 15.999,
    "Na": 22.990,
    "Mg": 24.305,
    "P": 30.974,
    "S": 32.06,
    "Cl": 35.45,
    "K": 39.098,
    "Ca": 40.078,
    "Fe": 55.845,
}


def molar_mass(**atoms: int) -> float:
    """Molar mass in g/mol of a formula given by its atoms: ``molar_mass(N=1, H=4)``."""
    return sum(ATOMIC_WEIGHT[element] * count for element, count in atoms.items())


N = molar_mass(N=1)
P = molar_mass(P=1)
K = molar_mass(K=1)
NITRATE = molar_mass(N=1, O=3)
NITRITE = molar_mass(N=1, O=2)
AMMONIUM = molar_mass(N=1, H=4)
AMMONIA = molar_mass(N=1, H=3)
PHOSPHATE = molar_mass(P=1, O=4)
SULFATE = molar_mass(S=1, O=4)
CHLORIDE = molar_mass(Cl=1)
BICARBONATE = molar_mass(H=1, C=1, O=3)
WATER = molar_mass(H=2, O=1)
P2O5 = molar_mass(P=2, O=5)
K2O = molar_mass(K=2, O=1)
CAO = molar_mass(Ca=1, O=1)
CACO3 = molar_mass(Ca=1, C=1, O=3)
MGO = molar_mass(Mg=1, O=1)
MG = molar_mass(Mg=1)
CA = molar_mass(Ca=1)
FE = molar_mass(Fe=1)
NA = molar_mass(Na=1)

NITRATE_PER_N = NITRATE / N  # g of nitrate that hold one g of nitrogen
PHOSPHATE_PER_P = PHOSPHATE / P
PHOSPHATE_PER_P2O5 = 2 * PHOSPHATE / P2O5  # a label prints phosphorus as its oxide
POTASSIUM_PER_K2O = 2 * K / K2O

CAO_MG_PER_DH = 10.0  # one German degree is 10 mg of calcium oxide a litre, by definition
MMOL_PER_DH = CAO_MG_PER_DH / CAO  # of calcium and magnesium together
MEQ_PER_DH = 2 * MMOL_PER_DH  # two charges an ion
CACO3_MG_PER_DH = MMOL_PER_DH * CACO3

NITROGEN_SHARE_OF_PROTEIN = 0.16  # the customary factor 6.25 turned round

WATER_KG_L = 0.997  # at 25 °C, 1 atm (source key teos-10)
