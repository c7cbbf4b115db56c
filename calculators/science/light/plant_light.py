"""What daily light can pay for: the cap on plants' growth, compensation, and shade in a stand.

One place for all that ask it: the forecast, picking, the planting plan and floaters.
"""

import math
from typing import Annotated

from calculators.science.nitrogen.about import About

CARBON_G_MOL: Annotated[
    float, About("g/mol", "molar mass of carbon", "well-documented", "atomic weights", "ciaaw-2021")
] = 12.011  # fmt: skip
CARBON_PER_PHOTON: Annotated[
    float, About("mol/mol", "carbon fixed for each photon, at most, over a day", "uncertain",
                 "from memory: 1/8 in the laboratory, half of it in a stand")
] = 1 / 16  # fmt: skip
CARBON_SHARE: Annotated[
    float, About("g/g", "carbon in dry mass", "uncertain",
                 "from memory: 0.35 to 0.42; sea grasses 0.336 on the mean")
] = 0.4  # fmt: skip
DRY_G_PER_MOL: Annotated[
    float, About("g/mol", "dry mass that a mole of absorbed light can pay for", "uncertain",
                 "from the two above")
] = CARBON_PER_PHOTON * CARBON_G_MOL / CARBON_SHARE  # fmt: skip
LIGHT_HALF_MOL: Annotated[
    float, About("mol/m² a day", "light at which growth saturates by half: 25 µmol/m²/s for 8 hours",
                 "uncertain", "measured 15.6 to 34.8 µmol/m²/s in one stem plant", "egeria-light-2010")
] = 0.72  # fmt: skip
COMPENSATION_MOL: Annotated[
    float, About("mol/m² a day", "light below which leaves lose mass: 7.5 µmol/m²/s for 8 hours",
                 "uncertain", "measured 7.5 to 16.2 µmol/m²/s in one stem plant; the low end",
                 "egeria-light-2010")
] = 0.216  # fmt: skip
ASSUMED_DLI_MOL: Annotated[
    float, About("mol/m² a day", "daily light of a middling lamp, where none is given", "uncertain",
                 "judgement: 100 µmol/m²/s for 8 hours")
] = 2.9  # fmt: skip
LEAST_NET: Annotated[
    float, About("", "net growth, over growth in saturating light, below which no doubling time is seen",
                 "uncertain", "judgement: a tank too dark for nearly any plant")
] = 0.2  # fmt: skip
THIN: Annotated[
    float, About("", "attenuation below which a stand takes no light to speak of", "uncertain",
                 "judgement: for the arithmetic alone")
] = 1e-6  # fmt: skip
UPKEEP: Annotated[
    float, About("", "upkeep over growth in saturating light", "uncertain", "from the two light constants")
] = COMPENSATION_MOL / (COMPENSATION_MOL + LIGHT_HALF_MOL)  # fmt: skip


def most_growth_g_m2_day(dli_mol: float) -> float:
    """The most dry mass that daily light lets grow, g a m² and day.

    Equation: most = light · (1/16) · 12.011 / 0.4
    light in mol a m² and day, all absorbed. 2.33 mol pay for 4.4 g. From memory, and a judgement.
    """
    return DRY_G_PER_MOL * dli_mol


def least_doubling_days(dry_g_m2: float, dli_mol: float) -> float:
    """The shortest doubling time that daily light pays for in a cover or bed of some dry mass.

    Equation: days = ln 2 · mass / (light · (1/16) · 12.011 / 0.4)
    mass in g dry a m² of what is covered; that it takes all light is a judgement.
    """
    most = most_growth_g_m2_day(dli_mol)
    return math.log(2) * dry_g_m2 / most if most > 0 else math.inf


def net_growth(light_mol: float) -> float:
    """Growth less upkeep in some light, over growth in saturating light; below zero leaves are lost.

    Equation: net = I / (I + 0.72) − 0.216 / (0.216 + 0.72)
    I in mol a m² and day: zero at the compensation light, 0.216.
    """
    return light_mol / (light_mol + LIGHT_HALF_MOL) - UPKEEP


def lone_growth(light_mol: float) -> float:
    """The net growth of an unshaded plant that its doubling time stands for.

    Equation: net = net of the light at the surface; below 0.2 that of 2.9 mol a m² and day
    Doubling times are asked for in this tank's light; shade is counted against that. In light that lets
    hardly anything grow, and with the lamp off, no doubling is seen: there it is that of a middling lamp,
    so that a tank without light and one whose lamp is off lose leaves at one pace. A judgement.
    The light is in mol a m² and day.
    """
    net = net_growth(light_mol)
    return net if net >= LEAST_NET else net_growth(ASSUMED_DLI_MOL)


def dimmest_share(light_mol: float) -> float:
    """The dimmest light in which a doubling is seen, as a share of this light, 0 to 1.

    Equation: I_d = 0.72 · (0.2 + 0.231) / (1 − 0.2 − 0.231); share = I_d / light
    It is 0 where it bounds no loss: in dimmer light, and in more than 2.9 mol a m² and day. A judgement,
    as the 0.2 is. The light is in mol a m² and day.
    """
    dimmest = LIGHT_HALF_MOL * (LEAST_NET + UPKEEP) / (1 - LEAST_NET - UPKEEP)
    return dimmest / light_mol if dimmest < light_mol < ASSUMED_DLI_MOL else 0.0


def stand_loss(lost: float, lone: float, lost_at_dimmest: float) -> float:
    """What a stand loses for each unit of growth that its doubling time stands for.

    Equation: loss = loss of the stand / net growth of the lone plant, and no more than what the same
    stand loses in the dimmest light in which a doubling is seen, where that growth is taken at 2.9 mol
    Without the bound a dense stand would lose leaves faster in dim light than in the dark, since a
    doubling seen in dim light stands for a quick plant. More light never kills faster: a judgement.
    What is ``lost``, ``lost_at_dimmest`` and the ``lone`` growth above zero are shares of the largest
    growth.
    """
    return min(lost / lone, lost_at_dimmest / net_growth(ASSUMED_DLI_MOL))


def stand_growth(top: float, bottom: float, attenuation: float) -> tuple[float, float]:
    """What the lit layers of a stand gain, and what the layers below the compensation light lose.

    Equation: gain = (ln((I_0 + 0.72) / (I_e + 0.72)) − 0.231 · a_e) / a;
    loss = (0.231 · (a − a_e) − ln((I_e + 0.72) / (I_b + 0.72))) / a
    I_0, I_b: light at top and bottom, I_e: 0.216 or what is nearest to it in the stand, a_e the
    attenuation down to it. Means over the stand, which takes light as Beer and Lambert say.
    Light, also at the top and bottom, is in mol/m² a day; the attenuation of the whole stand is a
    natural logarithm, and gain and loss are factors of the largest growth.
    """
    if attenuation < THIN:
        net = net_growth(top)
        return (net, 0.0) if net > 0 else (0.0, -net)
    # by comparisons: this is called more often than anything else
    edge = bottom if bottom > COMPENSATION_MOL else COMPENSATION_MOL
    if edge > top:
        edge = top
    lit = math.log(top / edge) if edge > 0 else 0.0
    gain = math.log((top + LIGHT_HALF_MOL) / (edge + LIGHT_HALF_MOL)) - UPKEEP * lit
    loss = UPKEEP * (attenuation - lit)
    if edge > bottom:
        loss -= math.log((edge + LIGHT_HALF_MOL) / (bottom + LIGHT_HALF_MOL))
    return (gain if gain > 0 else 0.0) / attenuation, (loss if loss > 0 else 0.0) / attenuation
