"""The right-hand side: every rate put together. Nitrogen in mg, plants in g dry mass, time in days.

The states, in order: ammonium, nitrite, nitrate, rotting solids, soil ammonium, capacity of the
two nitrifiers; then for each cohort its growth integral and its nitrogen; then what only adds up:
nitrified, denitrified, buried, taken by other plants, alkalinity.
"""

import math
from typing import NamedTuple

from calculators.nitrogen.alkalinity import alkalinity_change
from calculators.nitrogen.cohorts import Cohort, gather, start_store
from calculators.nitrogen.constants import (
    AMMONIA_DECAY_25,
    AMMONIA_GROWTH_25,
    AMMONIA_HALF_MG_L,
    AMMONIUM_PLANT_HALF_MG_L,
    AMMONIUM_UPTAKE,
    BACKGROUND_MG_L_DAY,
    DENITRIFICATION_HALF_MG_L,
    FLOATING_LAYER_G_M2,
    FLOATING_LIMIT_G_M2,
    LABILE_SHARE,
    LEAST_N,
    NEW_TANK_SHARE,
    NITRATE_PER_N,
    NITRATE_PLANT_HALF_MG_L,
    NITRATE_UPTAKE,
    NITRITE_DECAY_25,
    NITRITE_GROWTH_25,
    NITRITE_HALF_MG_L,
    OTHER_PLANTS_HALF_MG_L,
    SHADE_M2_PER_G,
    TURNOVER_PER_DAY,
)
from calculators.nitrogen.feed import (
    FeedFate,
    feed_fate,
    feed_nitrogen_mg_day,
    mineralisation_per_day,
)
from calculators.nitrogen.nitrifiers import (
    acid_factor,
    capacity_change,
    mature_capacity,
    start_capacity,
    temperature_factor,
)
from calculators.nitrogen.ode import RightSide, State
from calculators.nitrogen.plants import (
    canopy_growth,
    crowding,
    floater_light,
    nitrate_share,
    starving_loss,
    store_growth,
    store_room,
)
from calculators.nitrogen.soil import (
    denitrification_at_most,
    release_per_day,
    soil_ammonium_mg,
)
from calculators.nitrogen.tank import Rates, Tank
from calculators.nitrogen.transport import limited_rate

AMMONIUM, NITRITE, NITRATE, SOLIDS, SOIL, OXIDISERS, NITRITE_OXIDISERS = range(7)
FIRST_COHORT = 7
NITRIFIED, DENITRIFIED, BURIED, OTHER_PLANTS, ALKALINITY = range(-5, 0)


class Model(NamedTuple):
    """Constants of one run, worked out once. Changes of feed and trims make a new one."""

    volume: float
    surface_m2: float
    fate: FeedFate
    cohorts: tuple[Cohort, ...]
    mineralisation: float
    denitrification: float
    other_uptake: float
    ammonia_growth: float
    ammonia_decay: float
    nitrite_growth: float
    nitrite_decay: float
    ammonia_seed: float
    nitrite_seed: float


def build(tank: Tank, rates: Rates = Rates()) -> tuple[Model, State]:  # noqa: B008 - immutable
    """The model of a tank, and its states on the first day."""
    warm, acid = temperature_factor(tank.temperature_c), acid_factor(tank.ph)
    fate = fate_of(tank, rates, tank.feed_g_week)
    soil = soil_ammonium_mg(
        tank.soil_area_cm2, rates.soil_release * tank.soil_release_mg_n_m2_day, tank.soil_age
    )
    cohorts = gather(tank.plants, rates.growth)
    load = fate.excreted + fate.rotting + release_per_day() * soil
    load += BACKGROUND_MG_L_DAY * tank.volume_l
    grow_1, die_1 = warm * acid * AMMONIA_GROWTH_25, warm * AMMONIA_DECAY_25
    grow_2, die_2 = warm * acid * NITRITE_GROWTH_25, warm * NITRITE_DECAY_25
    full_1, full_2 = mature_capacity(load, grow_1, die_1), mature_capacity(load, grow_2, die_2)
    model = Model(
        volume=tank.volume_l,
        surface_m2=tank.surface_m2,
        fate=fate,
        cohorts=cohorts,
        mineralisation=rates.mineralisation * mineralisation_per_day(tank.temperature_c),
        denitrification=rates.denitrification
        * denitrification_at_most(tank.soil_area_cm2, tank.denitrification_mg_n_m2_day),
        other_uptake=tank.other_uptake_mg_n_day,
        ammonia_growth=grow_1,
        ammonia_decay=die_1,
        nitrite_growth=grow_2,
        nitrite_decay=die_2,
        ammonia_seed=NEW_TANK_SHARE * full_1,
        nitrite_seed=NEW_TANK_SHARE * full_2,
    )
    maturity = tank.filter_maturity_percent
    state = [
        tank.ammonia_mg_n_l * tank.volume_l,
        tank.nitrite_mg_n_l * tank.volume_l,
        tank.nitrate_mg_l / NITRATE_PER_N * tank.volume_l,
        # a running tank holds the mulm that its feed keeps up
        maturity / 100 * fate.rotting / model.mineralisation,
        soil,
        start_capacity(full_1, maturity),
        start_capacity(full_2, maturity),
    ]
    for cohort in cohorts:
        state += [0.0, start_store(cohort, tank.plant_nitrogen_percent)]
    return model, [*state, 0.0, 0.0, 0.0, 0.0, 0.0]


def fate_of(tank: Tank, rates: Rates, feed_g_week: float) -> FeedFate:
    """Where the feed goes, for this tank at this ration."""
    fed = feed_nitrogen_mg_day(feed_g_week, tank.protein_percent)
    return feed_fate(fed, rates.retained_percent, tank.uneaten_percent)


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
                wanted = speed * full * store_room(store, full) / heap
                crowded = grown * crowd
            else:
                depth = shade * mass
                bottom = top * exp(-depth)
                grown = store_growth(store, full) * canopy_growth(top, bottom, depth)
                wanted = speed * full * store_room(store, full)
                crowded = 0.0
                top = bottom
            lost = speed * (crowded * store + starving * LEAST_N)
            growths.append(grown - crowded - starving)
            demands.append(wanted)
            shed.append(lost)
            litter += lost
            demand += wanted
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
        for growth, wanted, lost in zip(growths, demands, shed, strict=True):
            slopes.append(growth)
            slopes.append(per_demand * wanted - lost)
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
