"""The first day: the constants and states that follow from a tank."""

from calculators.science.light.plant_light import ASSUMED_DLI_MOL
from calculators.science.nitrogen.cohorts import gather, start_store
from calculators.science.nitrogen.constants import (
    AMMONIA_GROWTH_25,
    BACKGROUND_MG_L_DAY,
    NITRATE_PER_N,
    NITRITE_DECAY_25,
    NITRITE_GROWTH_25,
    NITRITE_HALF_MG_L,
    PH_FREE_FROM,
    SEED_MG_L_DAY,
)
from calculators.science.nitrogen.feed_fate import (
    FeedFate,
    feed_fate,
    feed_nitrogen_mg_day,
    litter_per_day,
    mineralisation_per_day,
)
from calculators.science.nitrogen.filter_food import with_its_bacteria
from calculators.science.nitrogen.forecast_tank import Rates, Tank
from calculators.science.nitrogen.model import Model
from calculators.science.nitrogen.nitrifiers import (
    mature_capacity,
    start_capacity,
    temperature_factor,
)
from calculators.science.nitrogen.soil_pools import (
    denitrification_at_most,
    release_per_day,
    slow_release_per_day,
    slow_soil_mg,
    soil_ammonium_mg,
)
from calculators.science.nitrogen.solver_parts import State
from calculators.science.water import chemistry


def build(tank: Tank, rates: Rates = Rates()) -> tuple[Model, State]:  # noqa: B008 - immutable
    """The model of a tank, and its states on the first day."""
    model = constants_of_run(tank, rates)
    maturity = tank.filter_maturity_percent
    area, volume = tank.soil_area_cm2, tank.volume_l
    release = rates.soil_release * tank.soil_release_mg_n_m2_day
    soil = soil_ammonium_mg(area, release, tank.soil_age)
    slow_soil = slow_soil_mg(area, tank.soil_age, rates.soil_release)
    comes = model.fate.excreted + model.fate.rotting + release_per_day() * soil
    used_to = comes if tank.filter_load_mg_n_day is None else tank.filter_load_mg_n_day
    food = max(comes, used_to) + slow_release_per_day() * slow_soil
    model = with_its_bacteria(model, tank, food)
    load = used_to + BACKGROUND_MG_L_DAY * volume
    full_1 = mature_capacity(load, model.ammonia_growth, model.ammonia_decay)
    full_2 = mature_capacity(load, model.nitrite_growth, model.nitrite_decay)
    start_kh = model.tap_kh if model.start_kh is None else model.start_kh
    state = [
        tank.ammonia_mg_n_l * volume,
        tank.nitrite_mg_n_l * volume,
        tank.nitrate_mg_l / NITRATE_PER_N * volume,
        # a running tank holds the mulm that its feed keeps up
        maturity / 100 * model.fate.rotting / model.mineralisation,
        0.0,
        soil,
        slow_soil,
        start_capacity(full_1, model.seed, maturity),
        start_capacity(full_2, model.seed, maturity),
        (start_kh - model.tap_kh) * volume * chemistry.MEQ_PER_DH,
    ]
    for cohort in model.cohorts:
        state += [0.0, start_store(cohort, tank.plant_nitrogen_percent)]
    return model, [*state, 0.0, 0.0, 0.0, 0.0]


def constants_of_run(tank: Tank, rates: Rates) -> Model:
    """What stays the same through a run, but for feed and trims."""
    warm, maturity = temperature_factor(tank.temperature_c), tank.filter_maturity_percent / 100
    used_to = tank.ph if tank.usual_ph is None else tank.usual_ph
    tap_kh = tank.kh_dh if tank.tap_kh_dh is None else tank.tap_kh_dh
    denitrified = denitrification_at_most(tank.soil_area_cm2, tank.denitrification_mg_n_m2_day)
    return Model(
        volume=tank.volume_l,
        surface_m2=tank.surface_m2,
        fate=fate_of(tank, rates, tank.feed_g_week),
        cohorts=gather(tank.plants, rates.growth),
        mineralisation=rates.mineralisation * mineralisation_per_day(tank.temperature_c),
        denitrification=rates.denitrification * denitrified,
        other_uptake=tank.other_uptake_mg_n_day,
        ammonia_growth=warm * AMMONIA_GROWTH_25,
        ammonia_decay=warm * rates.ammonia_decay,
        nitrite_growth=warm * NITRITE_GROWTH_25,
        nitrite_decay=warm * NITRITE_DECAY_25,
        seed=SEED_MG_L_DAY * tank.volume_l,
        ammonia_half=rates.ammonia_half,
        nitrite_half=NITRITE_HALF_MG_L,
        litter_rate=rates.mineralisation * litter_per_day(tank.temperature_c),
        refractory=rates.refractory,
        ph=tank.ph,
        # what comes into a new tank is used to neutral water
        used_to_ph=maturity * used_to + (1 - maturity) * max(PH_FREE_FROM, used_to),
        start_kh=tank.kh_dh,
        tap_kh=tap_kh or 0.0,
        dli_mol=ASSUMED_DLI_MOL if tank.dli_mol is None else tank.dli_mol,
    )


def fate_of(tank: Tank, rates: Rates, feed_g_week: float) -> FeedFate:
    """Where the feed goes, for this tank at this ration."""
    fed = rates.feed * feed_nitrogen_mg_day(feed_g_week, tank.protein_percent)
    return feed_fate(fed, rates.retained_percent, tank.uneaten_percent)
