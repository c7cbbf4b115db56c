"""What oxygen a water's surface brings in, and where the oxygen of a tank settles against a demand."""

from typing import NamedTuple

from calculators.science.animals.reading_lines import LINES, Standing, standing
from calculators.science.conversions import CM2_PER_DM2
from calculators.science.nitrogen.forecast_tank import common_surface_cm2
from calculators.science.water.oxygen_solubility import saturation_at_sea_level_mg_l

DM_PER_CM = 0.1
# How fast gas passes a water's surface, cm/h. A lake in no wind: 2 (Cole and Caraco 1998, from
# memory). 7 is the median of a small lake under light wind (boreal-lake-gas-2014), taken here for a
# surface that a pump or an air stone keeps moving; a strong air stone may do several times as much.
STILL_CM_H = 2.0
MOVED_CM_H = 7.0


class OxygenBalance(NamedTuple):
    """Oxygen, mg/L: what the water can hold, and where it settles at a demand, never below zero."""

    saturated: float
    still: float
    moved: float

    @property
    def standing_still(self) -> Standing:
        """How the water stands where nothing moves its surface, as in a power cut."""
        return standing("oxygen_mg_l", self.still)

    @property
    def standing_moved(self) -> Standing:
        """How it stands with a surface that moves."""
        return standing("oxygen_mg_l", self.moved)


def air_of(demand_mg_h: float, volume_l: float, temperature_c: float) -> OxygenBalance:
    """Where oxygen settles: what comes in, velocity · surface · (saturation − oxygen), meets the demand.

    Demand in mg/h. The surface is that of a common tank of the volume; plants and light are left out.
    """
    saturated = saturation_at_sea_level_mg_l(temperature_c)
    return OxygenBalance(
        saturated,
        max(0.0, saturated - demand_mg_h / litres_an_hour(STILL_CM_H, volume_l)),
        max(0.0, saturated - demand_mg_h / litres_an_hour(MOVED_CM_H, volume_l)),
    )


def litres_an_hour(velocity_cm_h: float, volume_l: float) -> float:
    """How much water a surface renews with air in an hour: dm of depth times dm² of surface."""
    surface_dm2 = common_surface_cm2(volume_l) / CM2_PER_DM2
    return velocity_cm_h * DM_PER_CM * surface_dm2


def hours_until(
    oxygen_mg_l: float, demand_mg_h: float, volume_l: float, warm_c: float
) -> float | None:
    """Hours in which a demand takes saturated water to a reading with no air coming in; None without one."""
    if demand_mg_h <= 0:
        return None
    spare = max(0.0, saturation_at_sea_level_mg_l(warm_c) - oxygen_mg_l)
    return spare * volume_l / demand_mg_h


def harmful_mg_l() -> float:
    """The oxygen at which harm begins, from the one table of lines."""
    return LINES["oxygen_mg_l"].harmful_low or 0.0
