"""A tank of the shelf as the nitrogen engine takes it, and what it does not say that the engine needs."""

from datetime import date

from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.nitrogen.constants import DENITRIFICATION_MG_M2_DAY
from calculators.science.nitrogen.forecast_tank import StandingPlant, Tank
from calculators.science.shelf.freshest import figure_now
from calculators.science.shelf.latest import USE_DAYS, Latest
from calculators.science.shelf.learned import learned_of
from calculators.science.shelf.log import Log
from calculators.science.shelf.recorded_plants import plant_name, plants
from calculators.science.shelf.shelf_tank import PlantHeld, ShelfTank

NITRATE = "nitrate_mg_l"
CUT_DAYS = 42  # over which what was cut is counted
NO_FEED_PROTEIN = 1.0  # percent; of no feed it is nothing


def lacks(tank: ShelfTank, log: Log, readings: dict[str, Latest]) -> list[str]:
    """What the tank does not say that the forecast needs."""
    latest = readings.get(NITRATE)
    wanted = [
        ("its litres", tank.volume_l),
        ("the feed a week", tank.feed_g_week),
        ("the feed's protein", tank.protein_percent if tank.feed_g_week else 0.0),
        ("its change of water", tank.change and tank.change.percent),
        ("the nitrate of the new water", tank.tap and tank.tap.nitrate_mg_l),
        ("its plants", tank.plants),
        ("a temperature", figure_now("temperature_c", tank, readings)),
        ("a pH", figure_now("ph", tank, readings)),
        ("a reading of nitrate of the last two weeks",
         latest if latest and latest.age_days <= USE_DAYS[NITRATE] else None),
    ]  # fmt: skip
    missing = [words for words, value in wanted if value is None]
    for held in tank.plants or []:
        if held.wet_g is None:
            missing.append(f"the weight of {plant_name(held.plant)}")
        elif pace_of(held, log) is None:
            missing.append(f"how fast {plant_name(held.plant)} grows")
    return missing


def pace_of(held: PlantHeld, log: Log) -> float | None:
    """The days in which a plant doubles: as learned here, else as its record says."""
    facts = plants().get(held.plant)
    return learned_of(held, log).doubling_days or (facts.doubling_days if facts else None)


def model_tank(tank: ShelfTank, log: Log, readings: dict[str, Latest]) -> Tank:
    """The tank as the engine takes it. Call only where nothing is missing."""
    assert tank.change is not None
    assert tank.tap is not None
    return Tank(
        volume_l=tank.volume_l or 0.0,
        feed_g_week=tank.feed_g_week or 0.0,
        protein_percent=tank.protein_percent or NO_FEED_PROTEIN,
        plants=tuple(
            StandingPlant(held.plant, held.wet_g or 0.0, pace_of(held, log) or 1.0, floats(held))
            for held in tank.plants or []
        ),
        soil_area_cm2=tank.soil_area_cm2 or 0.0,
        denitrification_mg_n_m2_day=DENITRIFICATION_MG_M2_DAY,
        trimmings_g_week=cut_a_week(log, "trim", "thin"),
        change_percent=tank.change.percent or 0.0,
        change_every_days=tank.change.every_days or DAYS_PER_WEEK,
        tap_nitrate_mg_l=tank.tap.nitrate_mg_l or 0.0,
        nitrate_mg_l=readings[NITRATE].value,
        ph=figure_now("ph", tank, readings) or 7.0,
        temperature_c=figure_now("temperature_c", tank, readings) or 0.0,
        surface_cm2=tank.surface_cm2,
        ammonia_mg_n_l=lately_read("ammonia_mg_n_l", readings),
        nitrite_mg_n_l=lately_read("nitrite_mg_n_l", readings),
        kh_dh=figure_now("kh_dh", tank, readings),
        tap_kh_dh=tank.tap.kh_dh,
        dli_mol=tank.dli_mol,
        soil_age_days=soil_age(tank, log),
    )


def lately_read(what: str, readings: dict[str, Latest]) -> float:
    """What was read of late, else none: the engine takes an untested tank to hold none. In mg/L."""
    latest = readings.get(what)
    return latest.value if latest and latest.age_days <= USE_DAYS[what] else 0.0


def soil_age(tank: ShelfTank, log: Log) -> float | None:
    """Days since the soil was flooded; None where nobody said."""
    if tank.flooded_on is None:
        return None
    return float(log.days_ago(date.fromisoformat(tank.flooded_on)))


def floats(held: PlantHeld) -> bool:
    """Whether a plant floats, by its record."""
    facts = plants().get(held.plant)
    return bool(facts and facts.floating)


def cut_a_week(log: Log, *kinds: str) -> float:
    """What the entries of some kinds took out a week of late, g wet."""
    lately = [one for one in log.of(*kinds) if log.days_ago(one.day) <= CUT_DAYS]
    return sum(one.value for one in lately) * DAYS_PER_WEEK / CUT_DAYS
