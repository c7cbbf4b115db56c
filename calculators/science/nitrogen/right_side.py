"""The right-hand side: every rate put together, written for speed."""

import math
from collections.abc import Callable

from calculators.science.light.plant_light import (
    DRY_G_PER_MOL,
    dimmest_share,
    lone_growth,
    stand_growth,
    stand_loss,
)
from calculators.science.nitrogen.alkalinity import alkalinity_change, hardness_dh
from calculators.science.nitrogen.constants import (
    DENITRIFICATION_HALF_MG_L,
    LEACHED_SHARE,
    TURNOVER_PER_DAY,
)
from calculators.science.nitrogen.model import ALKALINITY, FIRST_COHORT, Model
from calculators.science.nitrogen.nitrifiers import (
    acid_factor,
    capacity_change,
    growth_by_hardness,
    rate_by_hardness,
    used_to_ph,
)
from calculators.science.nitrogen.plant_constants import (
    AMMONIUM_PLANT_HALF_MG_L,
    AMMONIUM_UPTAKE,
    FLOATING_LIMIT_G_M2,
    LEAST_N,
    NITRATE_PLANT_HALF_MG_L,
    NITRATE_UPTAKE,
    OTHER_PLANTS_HALF_MG_L,
    SHADE_M2_PER_G,
)
from calculators.science.nitrogen.plant_rates import (
    crowding,
    floater_light,
    full_uptake,
    nitrate_share,
    paid_share,
    starving_loss,
    store_growth,
    store_room,
)
from calculators.science.nitrogen.sinks import Sinks
from calculators.science.nitrogen.soil_pools import release_per_day, slow_release_per_day, to_roots
from calculators.science.nitrogen.solver_parts import State
from calculators.science.nitrogen.transport import limited_rate


def right_side(model: Model) -> Callable[[float, State], list[float]]:
    """The derivatives as a function of time and state.

    They stand in order of the states, each in its unit a day.
    """
    whole = right_side_and_sinks(model)
    return lambda time, y: whole(time, y)[0]


def right_side_and_sinks(model: Model) -> Callable[[float, State], tuple[State, Sinks]]:
    """The derivatives, and what drains the water; written for speed, each rate by its name."""
    volume, turnover = model.volume, TURNOVER_PER_DAY
    excreted, rotting = model.fate.excreted, model.fate.rotting
    mineralisation, release, slow = (
        model.mineralisation,
        release_per_day(),
        slow_release_per_day(),
    )
    half_1, half_2 = model.ammonia_half * volume, model.nitrite_half * volume
    half_plants_a = AMMONIUM_PLANT_HALF_MG_L * volume
    half_plants_n = NITRATE_PLANT_HALF_MG_L * volume
    half_soil, half_other = DENITRIFICATION_HALF_MG_L * volume, OTHER_PLANTS_HALF_MG_L * volume
    grow_1, die_1, seed = model.ammonia_growth, model.ammonia_decay, model.seed
    grow_2, die_2 = model.nitrite_growth, model.nitrite_decay
    shade = SHADE_M2_PER_G / model.surface_m2
    limit = 1 / (FLOATING_LIMIT_G_M2 * model.surface_m2)
    cohorts = [
        (one.members, 1 / (one.layer * model.surface_m2) if one.floating else 0.0, one.full)
        for one in model.cohorts
    ]  # how much of the surface a gram covers, nothing for rooted plants
    light = model.dli_mol if model.lamp else 0.0
    lone, dimmest = lone_growth(light), dimmest_share(light)
    open_gain, open_loss = (part / lone for part in stand_growth(light, light, 0.0))
    paid = DRY_G_PER_MOL * model.surface_m2
    used_dh = -hardness_dh(alkalinity_change(0, 1, 0, 0), volume)  # of each mg N nitrified
    is_soft, falls = model.start_kh is not None, model.used_to_ph > model.ph
    exp = math.exp

    def derivatives(time: float, y: State) -> tuple[State, Sinks]:
        ammonium, nitrite, nitrate, solids, dead, soil, slow_soil, oxidisers, nitrite_oxidisers = y[
            :ALKALINITY
        ]
        masses, speeds, afloat, place, afloat_speed, cover = [], [], 0.0, FIRST_COHORT, 0.0, 0.0
        for members, covers, _ in cohorts:
            growth, mass, speed = y[place], 0.0, 0.0
            for start, rate in members:
                now = start * exp(rate * growth)
                mass += now
                speed += rate * now
            masses.append(mass)
            speeds.append(speed)
            if covers:
                afloat += mass
                afloat_speed += speed
                cover += covers * mass
            place += 2
        # a heap of more than a full mat grows no faster than a full mat
        mat = afloat * limit
        heap = mat if mat > 1 else 1.0
        crowd = crowding(mat)
        top = floater_light(cover)
        growable = afloat_speed / heap * open_gain
        float_paid = paid_share(growable, paid * light * (cover if cover < 1 else 1.0))
        top *= light
        growths, demands, shed, litter, demand, place = [], [], [], 0.0, 0.0, FIRST_COHORT + 1
        rooted_demand = 0.0
        for (_, floating, full), mass, speed in zip(cohorts, masses, speeds, strict=True):
            store = y[place] / mass
            starving = starving_loss(store)
            most_taken = full_uptake(speed, store_room(store, full), full)
            if floating:
                grown = store_growth(store, full) * open_gain * float_paid / heap
                most_taken /= heap
                shaded, crowded = open_loss, grown * crowd
            else:
                depth = shade * mass
                bottom = top * exp(-depth)
                gain, shaded = stand_growth(top, bottom, depth)
                gain /= lone
                if dimmest:
                    least = stand_growth(top * dimmest, bottom * dimmest, depth)[1]
                    shaded = stand_loss(shaded, lone, least)
                else:
                    shaded /= lone
                grown = store_growth(store, full) * gain
                grown *= paid_share(speed * grown, paid * (top - bottom))
                crowded = 0.0
                top = bottom
                rooted_demand += most_taken
            lost = speed * (crowded + shaded) * store
            if starving:
                lost += speed * starving * (store if store < LEAST_N else LEAST_N)
            growths.append(grown - crowded - shaded - starving)
            demands.append(most_taken)
            shed.append(lost)
            litter += lost
            demand += most_taken
            place += 2
        work, life = 1.0, 1.0
        if falls:
            work = life = acid_factor(model.ph, used_to_ph(model.ph, model.used_to_ph, time))
        able_1, able_2 = oxidisers * work, nitrite_oxidisers * work
        calm, unhindered, hardness = 1.0, able_1, 0.0
        if is_soft:
            hardness = model.hardness(y[ALKALINITY])
            calm = growth_by_hardness(hardness)
            able_1 *= rate_by_hardness(hardness, used_dh * able_1)
        step_1 = limited_rate(ammonium, able_1, half_1, turnover)
        step_2 = limited_rate(nitrite, able_2, half_2, turnover)
        gas = limited_rate(nitrate, model.denitrification, half_soil, turnover)
        other = limited_rate(nitrate, model.other_uptake, half_other, turnover)
        taken_a = limited_rate(ammonium, AMMONIUM_UPTAKE * demand, half_plants_a, turnover)
        wish_n = NITRATE_UPTAKE * demand * nitrate_share(ammonium / volume)
        taken_n = limited_rate(nitrate, wish_n, half_plants_n, turnover)
        mineralised, rotted = mineralisation * solids, model.litter_rate * dead
        released, slowly = release * soil, slow * slow_soil
        roots = to_roots(slowly, rooted_demand)
        to_ammonium = excreted + mineralised + rotted + released + slowly - roots
        back = (1 - model.refractory) * litter
        slopes = [
            to_ammonium - step_1 - taken_a,
            step_1 - step_2,
            step_2 - taken_n - gas - other,
            rotting + LEACHED_SHARE * back - mineralised,
            (1 - LEACHED_SHARE) * back - rotted,
            -released,
            -slowly,
            calm * capacity_change(step_1, oxidisers, grow_1, life * die_1, seed),
            calm * capacity_change(step_2, nitrite_oxidisers, grow_2, life * die_2, seed),
            alkalinity_change(to_ammonium, step_1, taken_a, taken_n + gas + other),
        ]
        per_demand = (taken_a + taken_n) / demand if demand > 0 else 0.0
        per_root = roots / rooted_demand if rooted_demand > 0 else 0.0
        for (_, floating, _), growth, most_taken, lost in zip(
            cohorts, growths, demands, shed, strict=True
        ):
            slopes.append(growth)
            found = per_demand if floating else per_demand + per_root
            slopes.append(found * most_taken - lost)
        slopes += [step_1, gas, model.refractory * litter, other]
        sinks = (
            ammonium, nitrite, nitrate, hardness, unhindered, able_1, able_2, demand, wish_n,
            demands, calm,
        )  # fmt: skip
        return slopes, sinks

    return derivatives
