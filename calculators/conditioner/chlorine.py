"""Chlorine and chloramine of tap water: the ammonia they set free, and the thiosulfate they take."""

from calculators.science.water import chemistry

CL2 = chemistry.molar_mass(Cl=2)
THIOSULFATE_CRYSTALS = chemistry.molar_mass(Na=2, S=2, O=8, H=10)  # Na2S2O3.5H2O
THIOSULFATE_DRY = chemistry.molar_mass(Na=2, S=2, O=3)
O2 = chemistry.molar_mass(O=2)

# One NH2Cl counts as one Cl2 in a test of total chlorine, and holds one N: 5.06 to 1 by mass.
NITROGEN_PER_CHLORINE = chemistry.N / CL2
# Suppliers dose 3 to 5 parts of chlorine to one of ammonia nitrogen (nhmrc-chloramines); at 3 the
# rest of the ammonia is in the water free.
LEAST_CHLORINE_PER_NITROGEN = 3.0
# Two thiosulfate to one chlorine, to tetrathionate: enough at any pH. To sulfate one would do for
# four chlorine, 0.88 g a g, but that goes to its end only in acid water. Practice: 7.4 (piper-1982).
THIOSULFATE_PER_CHLORINE_MOLES = 2.0
# Toxic to fish and others even below it (wef-mop-8).
HARMS_MG_L = 0.02


def bound_ammonia_mg_n_l(chlorine_mg_l: float) -> float:
    """Ammonia nitrogen inside so much monochloramine, mg N/L; chlorine in mg/L as Cl2."""
    return chlorine_mg_l * NITROGEN_PER_CHLORINE


def most_ammonia_mg_n_l(chlorine_mg_l: float) -> float:
    """The most ammonia nitrogen that a supplier's ratio brings with so much chlorine, mg N/L."""
    return chlorine_mg_l / LEAST_CHLORINE_PER_NITROGEN


def thiosulfate_g(chlorine_mg_l: float, water_l: float) -> float:
    """Crystals of sodium thiosulfate (pentahydrate) that are enough at any pH, g."""
    ratio = THIOSULFATE_PER_CHLORINE_MOLES * THIOSULFATE_CRYSTALS / CL2
    return ratio * chlorine_mg_l * water_l / 1000


def oxygen_taken_mg_l(chlorine_mg_l: float) -> float:
    """Oxygen that the unused part of that thiosulfate can take over days, once it is all sulfate, mg/L.

    Thiosulfate gives eight electrons on its way to sulfate; chlorine takes two, oxygen four.
    """
    thiosulfate = THIOSULFATE_PER_CHLORINE_MOLES * 8
    return chlorine_mg_l / CL2 * (thiosulfate - 2) / 4 * O2
