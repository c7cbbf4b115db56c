"""The first day: the constants and states that follow from a tank."""

from calculators.science.nitrogen.cohorts import gather, start_store
from calculators.science.nitrogen.constants import (
    AMMONIA_DECAY_25,
    AMMONIA_GROWTH_25,
    BACKGROUND_MG_L_DAY,
    NEW_TANK_SHARE,
    NITRATE_PER_N,
    NITRITE_DECAY_25,
    NITRITE_GROWTH_25,
)
from calculators.science.nitrogen.feed import (
    FeedFate,
    feed_fate,
    feed_nitrogen_mg_day,
    mineralisation_per_day,
)
from calculators.science.nitrogen.model import Model
from calculators.science.nitrogen.nitrifiers import (
    acid_factor,
    mature_capacity,
    start_capacity,
    temperature_factor,
)
from calculators.science.nitrogen.ode import State
from calculators.science.nitrogen.soil import (
    denitrification_at_most,
    release_per_day,
    soil_ammonium_mg,
)
from calculators.science.nitrogen.tank import Rates, Tank


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
