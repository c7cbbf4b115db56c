"""The two steps of nitrification, and the bacteria that grow with their food."""

import math

from calculators.science.nitrogen.constants import (
    ACCLIMATION_DAYS,
    FOOD_TIMES,
    KH_GROWTH_FULL_DH,
    KH_GROWTH_STOPS_DH,
    KH_RATE_HALF_DH,
    NITRIFIER_THETA,
    PH_FREE_FROM,
    PH_LEAST,
    PH_SLOPE,
    TURNOVER_PER_DAY,
)


def temperature_factor(temperature_c: float) -> float:
    """How temperature speeds the nitrifiers, 1 at 25 °C.

    Equation: f = 1.08^(T − 25)
    """
    return math.pow(NITRIFIER_THETA, temperature_c - 25)


def used_to_ph(ph: float, at_start: float, day: float) -> float:
    """The pH that the films are used to, as they get used to the water.

    Equation: W = pH + (W0 − pH) · exp(−day/20)
    W0 is the pH that the filter has had before. Reactors were led from neutral water to pH 4.5 in
    weeks, and other species had taken over within 60 days.
    The pH at start is W0.
    """
    return ph + (at_start - ph) * math.exp(-day / ACCLIMATION_DAYS)


def acid_factor(ph: float, used_to: float) -> float:
    """How a fall of pH slows the nitrifiers, 1 in water that they are used to.

    Equation: f = max(0.15, 1 − 0.833 · (min(7.2, W) − pH))
    Films that are used to pH 4.3 worked as fast as others do at neutral pH; what slows them is the
    fall. The slope is that of suspended sludge. It scales work, growth and decay alike.
    """
    return max(PH_LEAST, min(1.0, 1 - PH_SLOPE * (min(PH_FREE_FROM, used_to) - ph)))


def growth_by_hardness(kh_dh: float) -> float:
    """How much of their growth and decay goes on in soft water, 0 to 1.

    Equation: h = (KH − 1) / (2 − 1), at least 0, at most 1
    They draw their carbon from it, and below 1 °dH pH falls. The lines are common practice, a judgement.
    """
    span = KH_GROWTH_FULL_DH - KH_GROWTH_STOPS_DH
    return max(0.0, min(1.0, (kh_dh - KH_GROWTH_STOPS_DH) / span))


def rate_by_hardness(kh_dh: float, used_dh_day: float) -> float:
    """How much of their work goes on in soft water, 0 to 1: what is not there is not used up.

    Equation: b = KH / (KH + 0.1 + used/24)
    ``used_dh_day`` is what they would use in a day at full rate, °dH. The 0.1 is a judgement. The last
    term is the limit of transport: they cannot use the water's alkalinity faster than it reaches them.
    """
    if kh_dh <= 0:
        return 0.0
    return kh_dh / (kh_dh + KH_RATE_HALF_DH + used_dh_day / TURNOVER_PER_DAY)


def capacity_change(
    oxidised: float, capacity: float, growth: float, decay: float, seed: float
) -> float:
    """How a population grows on what it oxidises and dies back, mg N a day, a day.

    Equation: dX/dt = growth · oxidised − decay · (X − seed)
    X is its capacity: what it could oxidise in a day with plenty of food. Fed for long, the water
    settles where growth equals decay: half · decay / (growth − decay), 0.009 mg N/L of ammonia. Acid and soft
    water scale growth and decay alike.
    """
    return growth * oxidised - decay * (capacity - seed)


def half_by_food(half: float, least: float, load: float, growth: float, at_hand: float) -> float:
    """The half-saturation of the bacteria that so much food lets grow, mg N/L.

    Equation: K = min(K, 2 · load / μ + at hand), at least the lowest published
    load in mg N/L a day, at hand what the water holds at the start. Bacteria that need more than
    scarce food ever brings are overgrown by those that need less: published kinds of poor water have
    the lowest half-saturations, and kinds of both come into most waters. How far it goes is a
    judgement: the food that comes in the time in which they grow e times at half their pace.
    ``half`` is that of plenty and ``least`` the lowest, mg N/L, the ``growth`` is a day.
    """
    return max(min(half, least), min(half, FOOD_TIMES * load / growth + at_hand))


def mature_capacity(load: float, growth: float, decay: float) -> float:
    """The capacity in balance with a steady load, both mg N a day.

    Equation: X = load · growth / decay
    """
    return load * growth / decay


def start_capacity(mature: float, seed: float, maturity_percent: float) -> float:
    """The capacity on the first day.

    Equation: X0 = seed + (X_mature − seed) · maturity/100
    The seed, 0.001 mg N a litre and day, comes into any tank with plants and hands, whatever is fed:
    a judgement. It is never more than a mature population.
    """
    return seed + max(0.0, mature - seed) * maturity_percent / 100
