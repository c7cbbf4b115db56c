"""The two steps of nitrification, and the bacteria that grow with their food."""

import math

from calculators.science.nitrogen.constants import (
    NEW_TANK_SHARE,
    NITRIFIER_THETA,
    PH_FREE_FROM,
    PH_LEAST,
    PH_SLOPE,
)


def temperature_factor(temperature_c: float) -> float:
    """How temperature speeds the nitrifiers, 1 at 25 °C.

    Equation: f = 1.08^(T − 25)
    """
    return math.pow(NITRIFIER_THETA, temperature_c - 25)


def acid_factor(ph: float) -> float:
    """How acid water slows their growth, 1 from pH 7.2 up.

    Equation: f = max(0.15, 1 − 0.833 · (7.2 − pH)) below pH 7.2
    The line is that of suspended sludge and reaches zero at pH 6; films used to acid water are
    known to go on, so it stops at 0.15.
    """
    return max(PH_LEAST, min(1.0, 1 - PH_SLOPE * (PH_FREE_FROM - ph)))


def capacity_change(
    oxidised: float, capacity: float, growth: float, decay: float, seed: float
) -> float:
    """How a population grows on what it oxidises and dies back, mg N a day, a day.

    Equation: dX/dt = growth · oxidised − decay · (X − seed)
    X is its capacity: what it could oxidise in a day with plenty of food. Fed for long, the water
    settles where growth equals decay: half · decay / (growth − decay), 0.07 mg N/L of ammonia.
    """
    return growth * oxidised - decay * (capacity - seed)


def mature_capacity(load: float, growth: float, decay: float) -> float:
    """The capacity in balance with a steady load, both mg N a day.

    Equation: X = load · growth / decay
    """
    return load * growth / decay


def start_capacity(mature: float, maturity_percent: float) -> float:
    """The capacity on the first day.

    Equation: X0 = X_mature · (0.001 + 0.999 · maturity/100)
    A thousandth comes into any tank with plants and hands: a judgement, under which ammonia peaks
    in the second week and nitrite in the fourth, as keepers see it.
    """
    return mature * (NEW_TANK_SHARE + (1 - NEW_TANK_SHARE) * maturity_percent / 100)
