"""How plants grow on their store of nitrogen, and what shades and crowds them."""

import math

from calculators.science.nitrogen.plant_constants import (
    AMMONIUM_BLOCKS_MG_L,
    CRITICAL_N,
    LEAST_N,
    LIGHT_THROUGH_COVER,
    STARVING_LOSS,
)


def store_growth(store: float, full: float) -> float:
    """Growth that a plant's own nitrogen allows, 0 to 1 (Droop's cell quota).

    Equation: g = (1 − least/q) / (1 − least/full)
    q = Q/B, mg N a g dry mass; least 6.2 (0.62 %); full 40, afloat 50. At the critical 13 (1.3 %)
    growth is down to about 0.6.
    The store q is in mg N a g dry mass.
    """
    if store <= LEAST_N:
        return 0.0
    return (1 - LEAST_N / store) / (1 - LEAST_N / full)


def store_room(store: float, full: float) -> float:
    """How much of its largest uptake a plant still uses, 1 when empty, 0 when full.

    Equation: room = (full − q) / (full − least)
    It is a share. The store q and what it is when full are in mg N a g dry mass.
    """
    return (full - store) / (full - LEAST_N) if store < full else 0.0


def full_uptake(growing_g_day: float, room: float, full: float) -> float:
    """Nitrogen that plants would take from plenty of nitrate, over 1.2, mg a day.

    Equation: V = r · B · full · room; nitrate up to 1.2 · V, half of it at 0.2 mg N/L;
    ammonium up to 7.2 · V, half of it at 0.1 mg N/L
    r = ln 2 / doubling, B dry mass: r · B is the growth of a well-fed plant, g dry a day. V is summed
    over all plants, taken from the water as every sink is, and shared out by each plant's V. With
    1.2 a fast plant on nitrate alone settles at 2.5 % nitrogen (3.0 % afloat), the middle of
    published tissue values. A floating fern took ammonium 6 to 14 times as fast as nitrate; 6 is
    used. The half-saturations are from memory.
    """
    return growing_g_day * full * room


def nitrate_share(ammonium_mg_l: float) -> float:
    """How much of the uptake of nitrate goes on beside ammonium, which plants prefer.

    Equation: f = 0.3 / (0.3 + A), A in mg N/L
    That plants prefer ammonium is measured; the 0.3 is a judgement.
    """
    return AMMONIUM_BLOCKS_MG_L / (AMMONIUM_BLOCKS_MG_L + ammonium_mg_l)


def starving_loss(store: float) -> float:
    """Leaves lost by a starving plant, as a share of healthy growth.

    Equation: loss = 0.5 · (1.3 % − q) / (1.3 % − 0.62 %) below the critical store
    A shed leaf takes only the least nitrogen with it: the rest was withdrawn into the
    tips. That old leaves go first is common practice; the 0.5 is a judgement.
    """
    if store >= CRITICAL_N:
        return 0.0
    return STARVING_LOSS * min(1.0, (CRITICAL_N - store) / (CRITICAL_N - LEAST_N))


def crowding(mat_share: float) -> float:
    """Fronds that crowding kills for each that grows in a floating mat: logistic growth.

    Equation: x = mass / (180 g dry a m² · surface); dB/dt = r · B · g · (1 − x)
    The new fronds grow all the same and the crowded ones die and sink, so that a closed mat goes on
    taking nitrogen and laying it down as mulm.
    """
    return min(1.0, mat_share)


def floater_light(cover: float, through: float = LIGHT_THROUGH_COVER) -> float:
    """Light below floating plants, mean over the surface, 0 to 1.

    Equation: I = 1 − cover · (1 − 0.1); in a mat of more than one closed layer I = 0.1^cover
    That a closed layer lets a tenth through is a judgement, 0.02 to 0.4 by plant, and so is that each
    further layer takes as much of what is left: a mat that nobody thins is dark below under any lamp.
    The cover is in closed layers.
    """
    return 1 - cover * (1 - through) if cover <= 1 else math.pow(through, cover)


def paid_share(growing: float, payable: float) -> float:
    """Share of the growth that doubling times promise which the light can pay for, 0 to 1.

    Equation: share = min(1, payable / growing)
    payable is 1.88 g dry for each mol of light that the plants absorb.
    """
    return payable / growing if growing > payable else 1.0
