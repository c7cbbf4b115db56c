"""How to change water in this tank without making its ammonia worse."""

from calculators.science.animals.reading_steps import SHARES
from calculators.science.nitrogen.forecast_tank import Tank
from calculators.science.water.asked_change import AskedChange
from calculators.science.water.careful_change import (
    WaterForChange,
    careful_change,
    is_acid,
    shows_ammonia,
)
from calculators.science.water.change_words import CALM
from calculators.science.water.first_change import hardness_jump

# No ammonia in the run may be one that nobody has read, so a test still comes before a change.
A_THIRD = (
    "If a test shows no ammonia, change a third of the water with dechlorinated water of the same "
    "temperature and pH."
)
# Common practice, no source: large changes at once strain animals.
DAILY_CHANGE_PERCENT = SHARES["quarter"][0]
A_QUARTER_DAILY = (
    f"If a test shows no ammonia, change {DAILY_CHANGE_PERCENT:.0f} % of the water today, and again each "
    "day, with dechlorinated water of the same temperature and about the same hardness."
)
A_TENTH = (
    "If a test shows no ammonia, change a tenth of the water, slowly, with dechlorinated water of the same "
    "temperature; read the pH before the next tenth, since a quick rise harms as well."
)


def how_to_change(
    ammonia_mg_n_l: float, tank: Tank, usual: str = A_THIRD, asked: AskedChange | None = None
) -> str:
    """The first step with water: by what a change would do to the ammonia, where any shows.

    ``usual`` is the change where none shows; in water so acid that it harms only a tenth is changed.
    ``asked`` is the change that nitrite or nitrate asks for beside ammonia.
    """
    water = WaterForChange(
        ammonia_mg_n_l, tank.ph, tank.kh_dh, tank.temperature_c, tank.tap_ph, tank.tap_kh_dh,
        tank.gh_dh, tank.tap_gh_dh,
        asked=asked,
    )  # fmt: skip
    if not shows_ammonia(water):
        jump = hardness_jump(asked.percent, water.gaps, asked.killer) if asked else ""
        return A_TENTH if is_acid(water) else f"{jump} {usual}".strip()
    step = careful_change(water) or usual
    return step.replace(f" {CALM}", "")  # it stands in the sentence before


def hardness_known(tank: Tank) -> dict[str, float | str]:
    """What is known of the hardness of tank and tap, by the keys of the calculators of a change, in °dH."""
    hardness = {
        "kh_dh": tank.kh_dh,
        "gh_dh": tank.gh_dh,
        "tap_kh_dh": tank.tap_kh_dh,
        "tap_gh_dh": tank.tap_gh_dh,
    }
    return {key: value for key, value in hardness.items() if value is not None}
