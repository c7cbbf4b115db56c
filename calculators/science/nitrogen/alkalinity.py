"""What the turnover of nitrogen does to carbonate hardness."""

from calculators.science.water import chemistry

CACO3_MG_PER_N = chemistry.CACO3 / chemistry.N  # two equivalents a mole nitrified


def alkalinity_change(
    to_ammonium: float, nitrified: float, ammonium_taken: float, nitrate_gone: float
) -> float:
    """Alkalinity gained, meq, from flows of nitrogen in mg.

    Equation: ΔAlk = (to ammonium − 2 · nitrified − ammonium taken up + nitrate taken up or lost) / 14.007
    Flows in mg N, 14.007 mg a mmol. Nitrification uses 7.1 g of calcium carbonate a g of nitrogen.
    Excretion and rot that make the ammonium first give half of it back, and so does nitrate that
    plants take or the soil loses.
    Here nitrate gone is what plants take or the soil loses, mg N.
    """
    return (to_ammonium - 2 * nitrified - ammonium_taken + nitrate_gone) / chemistry.N


def hardness_dh(alkalinity_meq: float, volume_l: float) -> float:
    """Carbonate hardness that goes with so much alkalinity in a tank, °dH.

    Equation: KH = Alk / volume / 0.3567
    Alk in meq, volume in L; a German degree is 10 mg of calcium oxide a litre. Drift is counted from
    the tap's hardness, which each water change brings nearer.
    """
    return alkalinity_meq / volume_l / chemistry.MEQ_PER_DH
