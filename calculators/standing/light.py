"""The tank's light and what its floating cover leaves of it, in a sentence."""

from calculators.core.figures import figure
from calculators.core.quantities import Cover, DailyLight
from calculators.core.result import Note
from calculators.science.light.lamps import share_through_floaters
from calculators.science.shelf.tank_state import TankState

COVER = "cover_percent"
# Percent of the light that passes a full cover: mats 2 to 10, thin ones 10 to 40; a judgement.
THIN_MAT, DENSE_MAT = 40.0, 2.0


def light_note(stand: TankState) -> list[Note]:
    """Nothing where the tank does not say its light; no cover that is older than it is of use."""
    light, cover = stand.tank.dli_mol, stand.judged.readings.get(COVER)
    if light is None:
        return []
    text = f"Light at the surface: {figure(DailyLight, light)} mol/m² a day."
    if cover and not cover.is_old:
        least, most = (
            figure(DailyLight, light * share_through_floaters(cover.value, through))
            for through in (DENSE_MAT, THIN_MAT)
        )
        text += (
            f" Floaters cover {figure(Cover, cover.value)} %, {cover.when}: "
            f"{least} to {most} of it pass them, by how thick they lie."
        )
    return [Note("info", text)]
