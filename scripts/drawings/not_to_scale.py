"""What a drawing cannot show to scale, said beside it."""

from scripts.drawings.size import TALLEST_MM, frame
from scripts.records.plant import Plant

BENDS = ("stem", "rosette", "rootless-stem", "grass")
MM_IN_CM = 10.0


def remark(plant: Plant, tank_height_cm: float) -> str:
    """One sentence on a plant that is taller than its picture; empty where all is to scale."""
    tall = plant.size.height_cm
    if plant.traits is None or tall is None:
        return ""
    water = frame(tank_height_cm).surface / MM_IN_CM
    if plant.traits.draw == "marginal" and tall.high * MM_IN_CM > TALLEST_MM:
        return (
            f"It can grow to {tall.high:g} cm; here it is shown {TALLEST_MM / MM_IN_CM:g} cm tall."
        )
    if plant.traits.draw in BENDS and tall.high > water:
        return f"It can grow longer ({tall.high:g} cm) than this water is deep ({water:g} cm)."
    return ""
