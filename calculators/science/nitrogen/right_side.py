"""The right-hand side: every rate put together, written for speed."""

import math

from calculators.science.nitrogen.alkalinity import alkalinity_change
from calculators.science.nitrogen.constants import (
    AMMONIA_HALF_MG_L,
    DENITRIFICATION_HALF_MG_L,
    LABILE_SHARE,
    NITRITE_HALF_MG_L,
    TURNOVER_PER_DAY,
)
from calculators.science.nitrogen.model import FIRST_COHORT, Model
from calculators.science.nitrogen.nitrifiers import capacity_change
from calculators.science.nitrogen.ode import RightSide, State
from calculators.science.nitrogen.plant_constants import (
    AMMONIUM_PLANT_HALF_MG_L,
    AMMONIUM_UPTAKE,
    FLOATING_LAYER_G_M2,
    FLOATING_LIMIT_G_M2,
    LEAST_N,
    NITRATE_PLANT_HALF_MG_L,
    NITRATE_UPTAKE,
    OTHER_PLANTS_HALF_MG_L,
    SHADE_M2_PER_G,
)
from calculators.science.nitrogen.plant_rates import (
    canopy_growth,
    crowding,
    floater_light,
    full_uptake,
    nitrate_share,
    starving_loss,
    store_growth,
    store_room,
)
from calculators.science.nitrogen.soil import release_per_day
from calculators.science.nitrogen.transport import limited_rate


def right_side(model: Model) -> RightSide:
    """The derivatives as a function of time and state; written for speed, each rate by its name."""
    volume, turnover = model.volume, TURNOVER_PER_DAY
    excreted, rotting = model.fate.excreted, model.fate.rotting
    mineralisation, release = model.mineralisation, release_per_day()
    half_1, half_2 = AMMONIA_HALF_MG_L * volume, NITRITE_HALF_MG_L * volume
    half_plants_a = AMMONIUM_PLANT_HALF_MG_L * volume
    half_plants_n = NITRATE_PLANT_HALF_MG_L * volume
    half_soil, half_other = DENITRIFICATION_HALF_MG_L * volume, OTHER_PLANTS_HALF_MG_L * volume
    grow_1, die_1, seed_1 = model.ammonia_growth, model.ammonia_decay, model.ammonia_seed
    grow_2, die_2, seed_2 = model.nitrite_growth, model.nitrite_decay, model.nitrite_seed
    shade = SHADE_M2_PER_G / model.surface_m2
    layer = 1 / (FLOATING_LAYER_G_M2 * model.surface_m2)
    limit = 1 / (FLOATING_LIMIT_G_M2 * model.surface_m2)
    cohorts = [(cohort.members, cohort.floating, cohort.full) for cohort in model.cohorts]
    exp = math.exp

    def derivatives(time: float, y: State) -> State:
        ammonium, nitrite, nitrate, solids, soil, oxidisers, nitrite_oxidisers = y[:7]
        masses, speeds, afloat, place = [], [], 0.0, FIRST_COHORT
        for members, floating, _ in cohorts:
            growth, mass, speed = y[place], 0.0, 0.0
            for start, rate in members:
                now = start * exp(rate * growth)
                mass += now
                speed += rate * now
            masses.append(mass)
            speeds.append(speed)
            if floating:
                afloat += mass
            place += 2
        # a heap of more than a full mat grows no faster than a full mat
        mat = afloat * limit
        heap = mat if mat > 1 else 1.0
        crowd = crowding(mat)
        top = floater_light(afloat * layer)
        growths, demands, shed, litter, demand, place = [], [], [], 0.0, 0.0, FIRST_COHORT + 1
        for (_, floating, full), mass, speed in zip(cohorts, masses, speeds, strict=True):
            store = y[place] / mass
            starving = starving_loss(store)
            if floating:
                grown = store_growth(store, full) / heap
                most_taken = full_uptake(speed, store_room(store, full), full) / heap
                crowded = grown * crowd
            else:
                depth = shade * mass
                bottom = top * exp(-depth)
                grown = store_growth(store, full) * canopy_growth(top, bottom, depth)
                most_taken = full_uptake(speed, store_room(store, full), full)
                crowded = 0.0
                top = bottom
            lost = speed * (crowded * store + starving * min(store, LEAST_N))
            growths.append(grown - crowded - starving)
            demands.append(most_taken)
            shed.append(lost)
            litter += lost
            demand += most_taken
            place += 2
        step_1 = limited_rate(ammonium, oxidisers, half_1, turnover)
        step_2 = limited_rate(nitrite, nitrite_oxidisers, half_2, turnover)
        gas = limited_rate(nitrate, model.denitrification, half_soil, turnover)
        other = limited_rate(nitrate, model.other_uptake, half_other, turnover)
        taken_a = limited_rate(ammonium, AMMONIUM_UPTAKE * demand, half_plants_a, turnover)
        wish_n = NITRATE_UPTAKE * demand * nitrate_share(ammonium / volume)
        taken_n = limited_rate(nitrate, wish_n, half_plants_n, turnover)
        mineralised, released = mineralisation * solids, release * soil
        slopes = [
            excreted + mineralised + released - step_1 - taken_a,
            step_1 - step_2,
            step_2 - taken_n - gas - other,
            rotting + LABILE_SHARE * litter - mineralised,
            -released,
            capacity_change(step_1, oxidisers, grow_1, die_1, seed_1),
            capacity_change(step_2, nitrite_oxidisers, grow_2, die_2, seed_2),
        ]
        per_demand = (taken_a + taken_n) / demand if demand > 0 else 0.0
        for growth, most_taken, lost in zip(growths, demands, shed, strict=True):
            slopes.append(growth)
            slopes.append(per_demand * most_taken - lost)
        to_ammonium = excreted + mineralised + released
        slopes += [
            step_1,
            gas,
            (1 - LABILE_SHARE) * litter,
            other,
            alkalinity_change(to_ammonium, step_1, taken_a, taken_n + gas + other),
        ]
        return slopes

    return derivatives
