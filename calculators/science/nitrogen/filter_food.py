"""Which bacteria the food of a new filter selects: those of scarce food where it is scarce."""

from calculators.science.nitrogen.constants import (
    LEAST_AMMONIA_HALF_MG_L,
    LEAST_NITRITE_HALF_MG_L,
    NITRITE_HALF_MG_L,
)
from calculators.science.nitrogen.forecast_tank import Rates, Tank
from calculators.science.nitrogen.model import Model
from calculators.science.nitrogen.nitrifiers import half_by_food


def with_its_bacteria(model: Model, tank: Tank, load_mg_day: float) -> Model:
    """The model with the half-saturations that a load of ammonia selects in a new filter.

    The load is in mg N a day; what the water holds at the start is food as well. What plants take is
    not left out: how much they will is less sure than what is fed. A mature film keeps those of
    plenty, whatever it lives on: real tanks show more ammonia than the forecast, never less.
    """
    load = load_mg_day / model.volume
    ammonia, maturity = tank.ammonia_mg_n_l, tank.filter_maturity_percent / 100
    scarce_1 = half_by_food(
        model.ammonia_half, LEAST_AMMONIA_HALF_MG_L, load, model.ammonia_growth, ammonia
    )
    both = ammonia + tank.nitrite_mg_n_l
    scarce_2 = half_by_food(
        model.nitrite_half, LEAST_NITRITE_HALF_MG_L, load, model.nitrite_growth, both
    )
    return model._replace(
        ammonia_half=scarce_1 + maturity * (model.ammonia_half - scarce_1),
        nitrite_half=scarce_2 + maturity * (model.nitrite_half - scarce_2),
    )


def with_plenty(model: Model, rates: Rates) -> Model:
    """The model with the half-saturations of plenty, where food may come all at once."""
    return model._replace(ammonia_half=rates.ammonia_half, nitrite_half=NITRITE_HALF_MG_L)
