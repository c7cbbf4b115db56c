"""What is asked of the picker, worked out from its inputs."""

from typing import Literal, NamedTuple

from calculators.science.light.lamps import (
    CLASS_FROM_MOL,
    USUAL_ATTENUATION_PER_M,
    LightClass,
    share_at_depth,
)

Role = Literal["fast", "steady", "slow"]

# The daily light taken for a class, mol/m²/day: its middle. High has no upper end; 4 is our judgement.
CLASS_MOL: dict[LightClass, float] = {
    "low": (CLASS_FROM_MOL["low"] + CLASS_FROM_MOL["medium"]) / 2,
    "medium": (CLASS_FROM_MOL["medium"] + CLASS_FROM_MOL["high"]) / 2,
    "high": 4.0,
}
USUAL_HEIGHT_CM = 35.0  # where no height is given: the light calculator's default depth


class Wishes(NamedTuple):
    """The tank and the wishes; None is not known, and an empty tuple is anything."""

    dli_mol: float | None = None  # mol/m²/day at the plants on the soil
    surface_mol: float | None = None  # the same at the surface, for what floats
    surface_worked_out: bool = False
    height_cm: float | None = None  # water above the soil
    temperature_c: float | None = None
    ph: float | None = None
    gh_dh: float | None = None
    minutes_week: float | None = None
    place: str = "other"
    animals: tuple[str, ...] = ()
    habits: tuple[str, ...] = ()
    looks: tuple[str, ...] = ()
    role: Role | None = None
    demand_mg_n_day: float | None = None
    most_listed: int = 6
    surface_cm2: float | None = None


def light_of(
    dli: float | None, light: LightClass | None, surface: float | None, height: float | None
) -> tuple[float | None, float | None, bool]:
    """Daily light at the plants, at the surface, and whether the latter was worked out from the former.

    The figure goes before the class. Light at the surface is that at the soil over e^(−1 per m ·
    depth). Light is in mol/m² a day, the ``height`` in cm.
    """
    at_plants = dli if dli is not None else CLASS_MOL[light] if light else None
    if surface is not None or at_plants is None:
        return at_plants, surface, False
    depth = USUAL_HEIGHT_CM if height is None else height
    return at_plants, at_plants / share_at_depth(USUAL_ATTENUATION_PER_M, depth), True
