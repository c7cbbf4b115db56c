"""Tanks that several tests of the nitrogen engine run."""

from calculators.science.nitrogen.forecast_tank import Event, StandingPlant, Tank

NO_DROPPINGS = 42.5  # percent kept in the animals; then only the excreted ammonia is left

BARE = Tank(volume_l=100, feed_g_week=7, protein_percent=45, plants=())
LEAN = Tank(
    volume_l=120,
    feed_g_week=2,
    protein_percent=45,
    plants=(
        StandingPlant("stems", 300, 10),
        StandingPlant("rosettes", 150, 45),
        StandingPlant("floaters", 60, 7, True),
    ),
    soil_area_cm2=2800,
    denitrification_mg_n_m2_day=5,
    trimmings_g_week=30,
    change_percent=20,
    change_every_days=14,
    tap_nitrate_mg_l=5,
    nitrate_mg_l=15,
    dli_mol=6,
)
NEW = LEAN._replace(
    plants=(StandingPlant("stems", 20, 14),),
    filter_maturity_percent=0,
    feed_g_week=5,
    nitrate_mg_l=0,
)
RICH = LEAN._replace(feed_g_week=14, nitrate_mg_l=40, ph=6.4, temperature_c=21, uneaten_percent=10)
SHRIMP = Tank(
    volume_l=54,
    feed_g_week=0.3,
    protein_percent=35,
    plants=(StandingPlant("fast stems", 200, 9),),
    soil_area_cm2=1800,
    denitrification_mg_n_m2_day=5,
    nitrate_mg_l=10,
    soil_age_days=200,
    dli_mol=6,
)
TANKS = {"bare": BARE, "lean": LEAN, "new": NEW, "rich": RICH, "shrimp": SHRIMP}

EVENTS = [
    Event(10, "trim", 80),
    Event(20.5, "change", 50),
    Event(33, "feed", 9),
    Event(40, "dose", 12),
]
