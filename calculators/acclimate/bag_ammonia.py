"""How toxic the ammonia of a bag is: as it is, in the tank's water, and once the bag stands open.

A closed bag fills with carbon dioxide, which holds its pH down. An open one loses it within
minutes to an hour, and its pH goes up by itself to what its carbonate hardness gives with air. Tank
water that drips in brings its own carbonate hardness, and thins the ammonia.
"""

from typing import NamedTuple

from calculators.science.water.ammonia import (
    WATCH_NH3_MG_N_L,
    acute_limit_mg_n_l,
    free_kills,
    unionised_share,
)
from calculators.science.water.water_mix import Water, aired_state, dissolved, mix

# An unread carbonate hardness is taken as that of hard water, where pH ends high.
HARD_KH_DH = 10.0
STEPS_OF_DRIP = 10  # of the way from bag water to the mix at the end
SHORT_TRIP_HOURS = 2.0  # common practice, no source: from a shop near by


class Bag(NamedTuple):
    """A bag of water as it was read; None is what was not. Ammonia in mg N/L, hours closed."""

    ammonia_mg_n_l: float | None
    ph: float | None
    kh_dh: float | None
    temperature_c: float
    hours: float


class TankWater(NamedTuple):
    """The water that drips in; its share at the end, 0 to under 1. KH None is not read."""

    ph: float
    kh_dh: float | None
    temperature_c: float
    share: float


class Toxic(NamedTuple):
    """Un-ionised ammonia of the bag, mg N/L: as it is, all of it at the tank's pH, and stood open.

    ``opened`` is the worst of the way to the end of the drip, ``open_ph`` the highest pH on it, in
    balance with twice the carbon dioxide of outdoor air.
    """

    in_bag: float | None
    at_tank_ph: float | None
    opened: float | None
    open_ph: float


def toxic_parts(bag: Bag, tank: TankWater) -> Toxic:
    """The bag's ammonia at each pH that its animals may meet."""
    ammonia = bag.ammonia_mg_n_l
    opened, open_ph = worst_open(bag, tank)
    if ammonia is None:
        return Toxic(None, None, None, open_ph)
    return Toxic(
        None if bag.ph is None else ammonia * unionised_share(bag.ph, bag.temperature_c),
        ammonia * unionised_share(tank.ph, tank.temperature_c),
        opened,
        open_ph,
    )


def worst_open(bag: Bag, tank: TankWater) -> tuple[float, float]:
    """The most toxic ammonia and the highest pH of the open bag while tank water drips in.

    With its own pH unread, a bag is taken to be at the tank's: in the open, hardness decides.
    """
    warmest = max(bag.temperature_c, tank.temperature_c)
    ammonia = bag.ammonia_mg_n_l or 0.0
    closed = Water(tank.ph if bag.ph is None else bag.ph, hard(bag.kh_dh), warmest, ammonia)
    waters = dissolved(closed), dissolved(Water(tank.ph, hard(tank.kh_dh), warmest))
    worst, highest = 0.0, closed.ph
    for step in range(STEPS_OF_DRIP + 1):
        share = tank.share * step / STEPS_OF_DRIP
        ph = max(aired_state(mix(*waters, share)).ph, closed.ph if step == 0 else 0.0)
        worst = max(worst, (1 - share) * ammonia * unionised_share(ph, warmest))
        highest = max(highest, ph)
    return worst, highest


def aired_ph(ph: float | None, kh_dh: float | None, temperature_c: float) -> float | None:
    """The pH that a water comes to in the open, at °dH and °C; None where one of both was not read."""
    if ph is None or kh_dh is None:
        return None
    return aired_state(dissolved(Water(ph, kh_dh, temperature_c))).ph


def hard(kh_dh: float | None) -> float:
    """A carbonate hardness, that of hard water where it was not read. In °dH."""
    return HARD_KH_DH if kh_dh is None else kh_dh


def may_drip(bag: Bag, toxic: Toxic, tank: TankWater) -> bool:
    """Whether an hour in the open bag's water is no danger.

    By the lines of the table: below the harmful one at the tank's pH and as it is, and below the
    deadly one and the acute criterion once it stands open. Without a reading a short trip alone will do.
    """
    if bag.ammonia_mg_n_l is None or toxic.at_tank_ph is None or toxic.opened is None:
        return bag.hours <= SHORT_TRIP_HOURS
    warmest = max(bag.temperature_c, tank.temperature_c)
    highest = max(toxic.open_ph, tank.ph)
    return (
        max(toxic.at_tank_ph, toxic.in_bag or 0.0) < WATCH_NH3_MG_N_L
        and not free_kills(toxic.opened)
        and bag.ammonia_mg_n_l <= acute_limit_mg_n_l(highest, warmest)
    )
