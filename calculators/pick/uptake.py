"""How much nitrogen an area of a plant takes out of the water, as a guess with its range."""

import math
from typing import NamedTuple

from calculators.pick.plant_table import GUESS, PlantEntry, RecordRange
from calculators.science.conversions import CM2_PER_M2, PERCENT_TO_MG_PER_G
from calculators.science.growth.bed import FULL_BED_G_M2
from calculators.science.growth.filling import growth_rate
from calculators.science.growth.floating_layers import layer_dry_g_m2
from calculators.science.light.plant_light import (
    ASSUMED_DLI_MOL,
    lone_growth,
    most_growth_g_m2_day,
    net_growth,
)
from calculators.science.nitrogen.plant_constants import (
    CRITICAL_N_PERCENT,
    DRY_SHARE_FLOATING,
    DRY_SHARE_ROOTED,
    FULL_N_FLOATING,
    FULL_N_ROOTED,
    HEALTHY_N_FLOATING,
    HEALTHY_N_ROOTED,
)
from calculators.science.nitrogen.plant_rates import floater_light

BED_SHARE_BETWEEN_TRIMS = 0.75  # of a full bed, mean between trims that take half; judgement
# The share of its nitrogen that a plant draws from the water and not from the soil; judgement, no source.
FROM_WATER = {"leaves": 1.0, "hanging-roots": 1.0, "both": 0.7, "roots": 0.3}
SHARE_SPREAD = 1.5  # those shares may be so many times more or less; judgement
DRY_ROOTED, DRY_FLOATING = (5.0, 16.0), (5.0, 10.0)  # % of wet mass, where the record has none


class NitrogenUptake(NamedTuple):
    """Nitrogen in mg a day from each cm², in open light: middle, and the factor either way."""

    mg_day_cm2: float
    spread: float  # low is the middle over it, high the middle times it
    wet_g_cm2: float
    floats: bool
    doubling_days: float
    dli_mol: float  # of the tank; of a middling lamp where it is not known
    most_mg_day_cm2: float  # that the light pays for

    def under(self, cover: float) -> float:
        """Nitrogen taken below floaters that cover so much of the surface, 0 to 1, in the same unit."""
        if self.floats:
            return self.mg_day_cm2
        light = floater_light(cover)
        shaded = max(0.0, net_growth(light * self.dli_mol)) / lone_growth(self.dli_mol)
        return min(self.mg_day_cm2 * shaded, self.most_mg_day_cm2 * light)


def uptake(plant: PlantEntry, dli_mol: float | None) -> NitrogenUptake | None:
    """The uptake of a plant; None if nobody knows how fast it grows.

    Equation: N = dry g · share from the water · tissue N · ln 2 / doubling
    Never more than the light can pay for. A floater that its record calls slow
    lives on the nitrogen of the air, and takes nothing.
    """
    if plant.doubling_days is None:
        return None
    floats = plant.habit == "floater"
    tissue, dry = make_up(plant, floats)
    usual_n = HEALTHY_N_FLOATING if floats else HEALTHY_N_ROOTED
    usual_dry = DRY_SHARE_FLOATING if floats else DRY_SHARE_ROOTED
    layer = layer_dry_g_m2(plant.name) if floats else FULL_BED_G_M2 * BED_SHARE_BETWEEN_TRIMS
    dry_share = clamped(usual_dry, dry.low / 100, dry.high / 100)
    n_mg_g = clamped(usual_n, tissue.low * PERCENT_TO_MG_PER_G, tissue.high * PERCENT_TO_MG_PER_G)
    share = 0.0 if floats and plant.role == "slow" else FROM_WATER[plant.uptake]
    dry_g_cm2 = layer * (dry_share / usual_dry if floats else 1.0) / CM2_PER_M2
    days = doubling(plant.doubling_days, plant.dli_mol, dli_mol)
    spreads = [half(plant.doubling_days), half(tissue), math.log(SHARE_SPREAD)]
    if floats:
        spreads[2] = half(dry)
    light = ASSUMED_DLI_MOL if dli_mol is None else dli_mol
    most = most_growth_g_m2_day(light) / CM2_PER_M2
    return NitrogenUptake(
        mg_day_cm2=min(dry_g_cm2 * growth_rate(days), most) * n_mg_g * share,
        spread=math.exp(math.hypot(*spreads)),
        wet_g_cm2=dry_g_cm2 / dry_share,
        floats=floats,
        doubling_days=days,
        dli_mol=light,
        most_mg_day_cm2=most * n_mg_g * share,
    )


def make_up(plant: PlantEntry, floats: bool) -> tuple[RecordRange, RecordRange]:
    """Tissue nitrogen (% of dry mass) and dry matter (% of wet mass): the record's, or what is usual."""
    full = FULL_N_FLOATING if floats else FULL_N_ROOTED
    usual = RecordRange(CRITICAL_N_PERCENT, full / PERCENT_TO_MG_PER_G, GUESS)
    dry = RecordRange(*(DRY_FLOATING if floats else DRY_ROOTED), GUESS)
    return plant.tissue_n_percent or usual, plant.dry_matter_percent or dry


def doubling(days: RecordRange, needs: RecordRange | None, light: float | None) -> float:
    """Doubling time by the light: the slow end at the least that it needs, the fast end at the most.

    In days; the ``light`` is in mol/m² a day, as is what it needs.
    """
    at = 0.5
    if needs is not None and light is not None and needs.high > needs.low:
        at = clamped((light - needs.low) / (needs.high - needs.low), 0.0, 1.0)
    return days.high * math.exp(-2 * half(days) * at)


def half(span: RecordRange) -> float:
    """Half the width of a range, in natural logarithms."""
    return math.log(span.high / span.low) / 2


def clamped(value: float, low: float, high: float) -> float:
    """A usual value, moved into a plant's own range.

    That range is from ``low`` to ``high``, in the value's unit.
    """
    return min(max(value, low), high)
