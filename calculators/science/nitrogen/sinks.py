"""The fast part of the model, for the solver: how what drains the water hangs on what is in it.

Leaves and filter can empty the water within the hour, everything else takes days. The solver damps
what is fast, and here is its Jacobian: every sink by its pool, each flow in all the states that it
leaves and reaches, so that a step conserves what the model conserves. The right-hand side stays the
one place where rates are; this only makes steps longer, and no course hangs on it.
"""

from typing import NamedTuple

from calculators.science.nitrogen.alkalinity import hardness_dh
from calculators.science.nitrogen.constants import (
    DENITRIFICATION_HALF_MG_L,
    KH_RATE_HALF_DH,
    TURNOVER_PER_DAY,
)
from calculators.science.nitrogen.model import (
    ALKALINITY,
    AMMONIUM,
    DENITRIFIED,
    FIRST_COHORT,
    NITRATE,
    NITRIFIED,
    NITRITE,
    NITRITE_OXIDISERS,
    OTHER_PLANTS,
    OXIDISERS,
    Model,
)
from calculators.science.nitrogen.plant_constants import (
    AMMONIUM_BLOCKS_MG_L,
    AMMONIUM_PLANT_HALF_MG_L,
    AMMONIUM_UPTAKE,
    NITRATE_PLANT_HALF_MG_L,
    OTHER_PLANTS_HALF_MG_L,
)
from calculators.science.nitrogen.solver_parts import Damping, Solver, State
from calculators.science.water import chemistry

# Ammonium, nitrite, nitrate (mg N), hardness (°dH), the first step's capacity before and after soft
# water slows it, the second's (mg N a day), demand of the plants, their wish for nitrate (mg N a day),
# demand by cohort, and how far the nitrifiers grow.
Sinks = tuple[
    float, float, float, float, float, float, float, float, float, list[float], float
]  # fmt: skip


def by_pool(pool: float, largest: float, half: float) -> float:
    """Slope of ``limited_rate`` by its pool, a day.

    The ``pool`` and its ``half`` are in mg, the ``largest`` rate in mg a day.
    """
    room = half + largest / TURNOVER_PER_DAY
    return largest * room / (room + pool) ** 2


def by_largest(pool: float, largest: float, half: float) -> float:
    """Slope of ``limited_rate`` by its largest rate.

    It is a share; ``pool`` and ``half`` are in mg, ``largest`` in mg a day.
    """
    room = half + pool
    return pool * room / (room + largest / TURNOVER_PER_DAY) ** 2


class Slopes(NamedTuple):
    """Every flow by what it hangs on, times the width of the step: no unit, but ``hardness``.

    ``blocked`` is that of the plants' nitrate by ammonium, below nothing; ``hardness`` that of the
    first step by alkalinity, mg N a meq. ``grown`` is what the nitrifiers gain, mg N a day for each
    mg N oxidised; ``parts`` is each cohort's share of what plants take.
    """

    step_1: float
    step_2: float
    taken_a: float
    taken_n: float
    gas: float
    other: float
    blocked: float
    hardness: float
    grown: tuple[float, float]
    parts: list[float]


def damping(model: Model) -> Damping:
    """Solver of the stages' equations for one model."""
    volume = model.volume
    half_1, half_2 = model.ammonia_half * volume, model.nitrite_half * volume
    plants_a, plants_n = AMMONIUM_PLANT_HALF_MG_L * volume, NITRATE_PLANT_HALF_MG_L * volume
    soil, others = DENITRIFICATION_HALF_MG_L * volume, OTHER_PLANTS_HALF_MG_L * volume
    dh_per_meq = hardness_dh(1.0, volume)
    used_dh = 2 / chemistry.N * dh_per_meq  # of each mg N nitrified

    def damp(sinks: Sinks, g: float) -> Solver:
        (ammonium, nitrite, nitrate, hardness, unhindered, able_1, able_2, demand, wish, demands,
         calm) = sinks  # fmt: skip
        by_hardness = 0.0
        if model.start_kh is not None and hardness > 0:
            bare = KH_RATE_HALF_DH + used_dh * unhindered / TURNOVER_PER_DAY
            able_by_dh = unhindered * bare / (bare + hardness) ** 2
            by_hardness = by_largest(ammonium, able_1, half_1) * able_by_dh * dh_per_meq
        put_off = wish / (AMMONIUM_BLOCKS_MG_L * volume + ammonium)
        slopes = Slopes(
            g * by_pool(ammonium, able_1, half_1),
            g * by_pool(nitrite, able_2, half_2),
            g * by_pool(ammonium, AMMONIUM_UPTAKE * demand, plants_a),
            g * by_pool(nitrate, wish, plants_n),
            g * by_pool(nitrate, model.denitrification, soil),
            g * by_pool(nitrate, model.other_uptake, others),
            -g * by_largest(nitrate, wish, plants_n) * put_off,
            g * by_hardness,
            (calm * model.ammonia_growth, calm * model.nitrite_growth),
            [one / demand for one in demands] if demand > 0 else demands,
        )
        return solver(slopes)

    def fastest(sinks: Sinks) -> float:
        ammonium, nitrite, nitrate, _, _, able_1, able_2, demand, wish, _, _ = sinks
        drain_a = by_pool(ammonium, able_1, half_1)
        drain_a += by_pool(ammonium, AMMONIUM_UPTAKE * demand, plants_a)
        drain_i, drain_n = by_pool(nitrite, able_2, half_2), by_pool(nitrate, wish, plants_n)
        return max(drain_a, drain_i, drain_n)

    return Damping(fastest, damp)


def solver(slopes: Slopes) -> Solver:
    """Solves x = right side + width · W x.

    The flow of the first step is one unknown: ammonium, nitrite, nitrate and alkalinity follow from
    it, and it from them, so that one division gives it.
    """
    g_1, g_2, g_a, g_n, g_gas, g_other, blocked, g_k, (grown_1, grown_2), parts = slopes
    gone_n = g_n + g_gas + g_other
    still_a, still_i, still_n = 1 / (1 + g_a), 1 / (1 + g_2), 1 / (1 + gone_n)
    net_a = blocked - g_a
    # what a unit of that flow makes of the four
    a_1, i_1 = -still_a, still_i
    n_1 = still_n * (g_2 * i_1 - blocked * a_1)
    k_1 = (-2 + net_a * a_1 + gone_n * n_1) / chemistry.N
    share = 1 / (1 - g_1 * a_1 - g_k * k_1)

    def solve(right: State) -> State:
        x = right.copy()
        a, i = still_a * x[AMMONIUM], still_i * x[NITRITE]
        n = still_n * (x[NITRATE] + g_2 * i - blocked * a)
        k = x[ALKALINITY] + (net_a * a + gone_n * n) / chemistry.N
        step_1 = share * (g_1 * a + g_k * k)
        x[AMMONIUM] = a = a + a_1 * step_1
        x[NITRITE] = i = i + i_1 * step_1
        x[NITRATE] = n = n + n_1 * step_1
        x[ALKALINITY] = k + k_1 * step_1
        x[OXIDISERS] += grown_1 * step_1
        x[NITRITE_OXIDISERS] += grown_2 * g_2 * i
        taken, place = (g_a + blocked) * a + g_n * n, FIRST_COHORT + 1
        for part in parts:
            x[place] += part * taken
            place += 2
        x[NITRIFIED] += step_1
        x[DENITRIFIED] += g_gas * n
        x[OTHER_PLANTS] += g_other * n
        return x

    return solve
