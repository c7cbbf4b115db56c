"""The picture of a bag's ammonia: how much of it is toxic at each pH."""

from calculators.acclimate.bag_ammonia import Bag, Toxic
from calculators.core.result import Line, Mark, Series
from calculators.science.water.ammonia import ACT_NH3_MG_N_L, WATCH_NH3_MG_N_L, unionised_share

LOWEST_PH, STEPS, STEP_PH = 6.0, 26, 0.1


def pictures(
    bag: Bag, toxic: Toxic, tank_ph: float, tank_temperature_c: float
) -> dict[str, Series]:
    """Toxic ammonia of the bag's water against pH, with the pH of bag, tank and the open vessel marked."""
    if not bag.ammonia_mg_n_l:
        return {}
    warmest = max(bag.temperature_c, tank_temperature_c)
    steps = [LOWEST_PH + STEP_PH * step for step in range(STEPS + 1)]
    places = ((bag.ph, "bag"), (tank_ph, "tank"), (toxic.open_ph, "open"))
    curve = Series(
        label="Toxic ammonia of the bag's water",
        unit="mg N/L",
        x_label="pH",
        x_unit="",
        x=steps,
        y=[bag.ammonia_mg_n_l * unionised_share(ph, warmest) for ph in steps],
        lines=(Line("harms", WATCH_NH3_MG_N_L), Line("can kill", ACT_NH3_MG_N_L)),
        marks=tuple(
            Mark(ph, name) for ph, name in places if ph is not None and steps[0] <= ph <= steps[-1]
        ),
    )
    return {"nh3_by_ph": curve}
