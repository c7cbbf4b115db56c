"""What of a tank goes into which input of which calculator: one table for Python and for the browser.

A source is a path: ``tank.net_l`` is the tank's own figure, ``reading.ph`` its latest reading,
``days_since.flooded_on`` the age of a day of the tank, ``=nitrogen`` a constant that goes with the
others. The first that holds something is taken. What needs a formula is filled in ``form_filling.py``.
"""

Sources = tuple[str, ...]


def own(*keys: str) -> dict[str, Sources]:
    """Inputs that take the tank's field of the same name."""
    return {key: (f"tank.{key}",) for key in keys}


def read(*keys: str) -> dict[str, Sources]:
    """Inputs that take the latest reading of that name, or else the tank's field."""
    return {key: (f"reading.{key}", f"tank.{key}") for key in keys}


LITRES: dict[str, Sources] = {"volume_l": ("tank.net_l",)}
CHANGES: dict[str, Sources] = {
    "change_percent": ("tank.change.percent",),
    "change_every_days": ("tank.change.every_days",),
}
SIDES = own("length_cm", "width_cm")
LAYERS = own("soil_depth_cm", "cap_depth_cm")
FEED = own("feed_g_week", "protein_percent")
TAP_HARDNESS: dict[str, Sources] = {
    "tap_gh_dh": ("tank.tap.gh_dh",),
    "tap_kh_dh": ("tank.tap.kh_dh",),
}
NITRATE: dict[str, Sources] = {"nitrate_mg_l": ("reading.nitrate_mg_l",)}
AMMONIA: dict[str, Sources] = {
    "ammonia_mg_l": ("reading.ammonia_mg_n_l",),
    "reported_as": ("=nitrogen",),
}
WATER = read("ph", "temperature_c")
NITROGEN = {
    **LITRES, **FEED, **CHANGES, **NITRATE, **WATER, **own("soil_area_cm2"), **read("kh_dh"),
    "tap_nitrate_mg_l": ("tank.tap.nitrate_mg_l",),
}  # fmt: skip
DIAGNOSED = (
    "nitrate_mg_l", "phosphate_mg_l", "ammonia_mg_n_l", "nitrite_mg_n_l", "ph", "temperature_c",
    "gh_dh", "kh_dh", "oxygen_mg_l",
)  # fmt: skip

FILLS: dict[str, dict[str, Sources]] = {
    "acclimate": {f"tank_{key}": sources for key, sources in
                  read("temperature_c", "ph", "kh_dh", "gh_dh").items()},
    "ammonia-change": {**AMMONIA, **WATER, **read("kh_dh", "gh_dh"), **LITRES,
                       "tap_ph": ("tank.tap.ph",), **TAP_HARDNESS},
    "chloride": {"nitrite_mg_n_l": ("reading.nitrite_mg_n_l",), **LITRES},
    "conditioner": {"tank_l": ("tank.net_l",), **WATER},
    "diagnose": {**{f"readings.{key}": (f"reading.{key}",) for key in DIAGNOSED},
                 **own("light_hours", "feed_g_week"), **LITRES,
                 "cover_percent": ("reading.cover_percent",),
                 "tank_age_days": ("days_since.flooded_on",), **TAP_HARDNESS,
                 "tap_ph": ("tank.tap.ph",), "tap_nitrate_mg_l": ("tank.tap.nitrate_mg_l",)},
    "dosing": {**CHANGES, **LITRES},
    "floaters": {**SIDES, **own("dli_mol"), "cover_percent": ("reading.cover_percent",)},
    "free-ammonia": {**AMMONIA, **WATER},
    "hardness": {**read("gh_dh", "kh_dh", "ph", "temperature_c"), **LITRES,
                 "mix_gh_dh": ("tank.tap.gh_dh",), "mix_kh_dh": ("tank.tap.kh_dh",)},
    "kh-budget": {**LITRES, **read("kh_dh"), **CHANGES, "tap_kh_dh": ("tank.tap.kh_dh",)},
    "light": {**SIDES, "depth_cm": ("tank.water_cm",), "hours": ("tank.light_hours",),
              "floater_cover_percent": ("reading.cover_percent",)},
    "nitrogen-balance": NITROGEN,
    "nitrogen-forecast": {**NITROGEN, "start_ammonia_mg_n_l": ("reading.ammonia_mg_n_l",),
                          "start_nitrite_mg_n_l": ("reading.nitrite_mg_n_l",),
                          **TAP_HARDNESS, **read("gh_dh"), "tap_ph": ("tank.tap.ph",), **own("dli_mol"),
                          "soil_age_days": ("days_since.flooded_on",)},
    "oxygen": {**read("temperature_c"), "oxygen_mg_l": ("reading.oxygen_mg_l",)},
    "pick": {**own("place"), "height_cm": ("tank.water_cm",), **read("temperature_c", "ph", "gh_dh"),
             **LITRES, **own("dli_mol")},
    "planting-plan": {**SIDES, **own("dli_mol")},
    "remineralise": LITRES,
    "soil": {**SIDES, **FEED, **LAYERS},
    "stocking": {**LITRES, **own("protein_percent"), **WATER},
    "surface-cover": SIDES,
    "tank": {**SIDES, **LAYERS},
    "top-up": {**LITRES, **read("gh_dh", "kh_dh"), **TAP_HARDNESS, **CHANGES},
    "trend": {**LITRES, **FEED, **own("soil_area_cm2"), "tap_value": ("tank.tap.nitrate_mg_l",)},
    "trimmings": {**LITRES, **own("protein_percent")},
    "warmth": {**SIDES, "net_l": ("tank.net_l",), "water_c": ("reading.temperature_c", "tank.temperature_c")},
    "water-change": {**LITRES, **read("ph", "kh_dh", "gh_dh"), **TAP_HARDNESS},
}  # fmt: skip


def durable() -> dict[str, dict[str, str]]:
    """The tank's field to which a figure of a form may be saved, by calculator and input."""
    return {
        calculator: {key: path for key, sources in fills.items() for path in sources
                     if path.startswith("tank.")}
        for calculator, fills in FILLS.items()
    }  # fmt: skip
