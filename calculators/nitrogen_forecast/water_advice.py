"""How to change water in this tank without making its ammonia worse."""

from calculators.science.nitrogen.tank import Tank
from calculators.science.water.change_words import CALM
from calculators.science.water.changing_water import first_step_for_ammonia

WITHOUT_AMMONIA = (
    "Change a third to a half of the water with dechlorinated water of the same temperature and pH."
)


def how_to_change(ammonia_mg_n_l: float, tank: Tank) -> str:
    """The first step with water: by what a change would do to the ammonia, where any shows."""
    if ammonia_mg_n_l <= 0:
        return WITHOUT_AMMONIA
    step = first_step_for_ammonia(
        ammonia_mg_n_l, tank.ph, tank.kh_dh, tank.temperature_c, tank.tap_ph, tank.tap_kh_dh
    )
    return step.replace(f" {CALM}", "")  # it stands in the sentence before
