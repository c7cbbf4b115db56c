"""What the turnover of nitrogen does to carbonate hardness."""

from calculators.core import chemistry

CACO3_MG_PER_N = chemistry.CACO3 / chemistry.N  # 7.146: two equivalents a mole nitrified


def alkalinity_change(
    to_ammonium: float, nitrified: float, ammonium_taken: float, nitrate_gone: float
) -> float:
    """Alkalinity gained, meq, from flows of nitrogen in mg.

    Equation: ΔAlk = (to ammonium − 2 · nitrified − ammonium taken up + nitrate taken up or lost) / 14.007
    Nitrification uses 7.14 g of calcium carbonate a g of nitrogen. Excretion and rot that make the
    ammonium first give half of it back, and so does nitrate that plants take or the soil loses.
    """
    return (to_ammonium - 2 * nitrified - ammonium_taken + nitrate_gone) / chemistry.N


def hardness_dh(alkalinity_meq: float, volume_l: float) -> float:
    """Carbonate hardness in °dH that goes with so much alkalinity in a tank."""
    return alkalinity_meq / volume_l / chemistry.MEQ_PER_DH
