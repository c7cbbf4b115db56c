"""How to change water in this tank without making its ammonia worse."""

from calculators.nitrogen.tank import Tank


def how_to_change(ammonia_mg_n_l: float, tank: Tank) -> str:
    """The first step with water, by what the ammonia in it would do."""
    del ammonia_mg_n_l, tank
    return "Change a third to a half of the water with dechlorinated water of the same temperature and pH."
