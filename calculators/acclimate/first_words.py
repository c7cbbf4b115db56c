"""The first words to a keeper with a bag: whether to drip, and why not."""

from typing import NamedTuple

from calculators.acclimate.bag_ammonia import SHORT_TRIP_HOURS, Bag, Toxic
from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.science.animals.reading_lines import standing
from calculators.science.water.ammonia import WATCH_NH3_MG_N_L

# Common practice, no source: a drip is meant to take about an hour, and no bag stands open for half a day.
ASKED_DRIP_MINUTES = 60.0
QUICK_DRIP_MINUTES, SLOW_DRIP_MINUTES = 15.0, 240.0
GH_STEP_DH = 4.0  # common practice, no source: what shrimp and snails bear at once
WIDE_GAP_DH = 10.0  # judgement: days of the step that animals bear
WIDE_GAP_PH = 1.5  # judgement: between two waters in the open, once the gas of breath has left
DANGER_LINK = (Link("Animals in danger", "danger/"),)


class Arrival(NamedTuple):
    """A bag that has come, what the drip would take, and the tank; hardness as (bag, tank) or None."""

    bag: Bag
    toxic: Toxic
    drip: bool
    minutes: float
    vessel_l: float
    share_percent: float
    tank_ph: float
    tank_temperature_c: float
    hardness: tuple[float, float] | None
    is_unfit: bool  # the tank's own readings can kill
    tank_kh_dh: float | None
    drip_ml_min: float
    aired_ph: tuple[float | None, float | None]  # of the bag's and the tank's own water in the open

    @property
    def hardness_apart_dh(self) -> float:
        """The difference of hardness, °dH; none where one is not read."""
        return 0.0 if self.hardness is None else abs(self.hardness[0] - self.hardness[1])

    @property
    def is_of_another_ph(self) -> bool:
        """Whether the two waters differ in pH without the gas that each holds."""
        bag, tank = self.aired_ph
        return bag is not None and tank is not None and abs(bag - tank) > WIDE_GAP_PH

    @property
    def is_far(self) -> bool:
        """Whether the waters are too far apart for an hour of drops, or for no drops at all."""
        return self.hardness_apart_dh > WIDE_GAP_DH or self.is_of_another_ph


def can_kill(tank_ph: float, tank_temperature_c: float) -> bool:
    """Whether the tank's own pH or temperature, in °C, can kill."""
    levels = {standing("ph", tank_ph).level, standing("temperature_c", tank_temperature_c).level}
    return "deadly" in levels


def unfit_tank(here: Arrival) -> list[Note]:
    """A tank whose own readings kill takes no animals, dripped or not."""
    if not here.is_unfit:
        return []
    text = (
        "Put no animals into this tank: its own pH or temperature can kill. Keep them in clean, "
        "dechlorinated water of their own warmth and hardness, with air, until it is right."
    )
    return [Note("danger", text, True)]


def answer(here: Arrival) -> Note:
    """Whether to drip, and the reason; no step into a tank that can kill."""
    if here.is_unfit:
        return Note("danger", f"Do not drip from this tank. {CLEAN_WATER_STEPS}", True, DANGER_LINK)
    if not here.drip:
        return Note("danger", f"Do not drip. {why_not(here)} {steps(here)}", True, DANGER_LINK)
    text = (
        f"{pace(here)}, until the vessel holds "
        f"{show_number(here.vessel_l, 2)} L, {show_number(here.share_percent)} % of it tank water. Then "
        "move the animals with a net, without the water."
    )
    if here.is_far:
        text = f"The waters are too far apart for a drip alone: see below. If there is no other way: {text}"
        return Note("caution", text, True)
    if not QUICK_DRIP_MINUTES <= here.minutes <= SLOW_DRIP_MINUTES:
        return Note("caution", text, True)
    if here.bag.ammonia_mg_n_l is None:
        text += (
            " That is for a short trip: test the bag for ammonia as you open it, and if any shows, do not "
            "drip."
        )
        return Note("caution", text, True)
    if (here.toxic.opened or 0.0) >= WATCH_NH3_MG_N_L:
        text += (
            f" Begin at once and do not let it stand: in the open bag up to "
            f"{show_number(here.toxic.opened or 0.0, 2)} mg N/L of its ammonia turns toxic."
        )
        return Note("caution", text, True)
    if here.bag.ammonia_mg_n_l == 0 and here.bag.hours > SHORT_TRIP_HOURS:
        text += (
            " A bag of so many hours seldom holds no ammonia: test it once more before you begin."
        )
        return Note("caution", text, True)
    return Note("info", text, True)


def pace(here: Arrival) -> str:
    """How long to drip; at drops that are far too quick or too slow, how fast they should fall."""
    if QUICK_DRIP_MINUTES <= here.minutes <= SLOW_DRIP_MINUTES:
        return f"Drip about {show_number(here.minutes, 2)} minutes"
    is_quick = here.minutes < QUICK_DRIP_MINUTES
    ml_min = here.drip_ml_min * here.minutes / ASKED_DRIP_MINUTES
    why = "too quick: animals feel the jump" if is_quick else "too slow: the bag's water goes bad"
    return f"These drops are {why}. Let about {show_number(ml_min, 2)} mL fall a minute, which takes an hour"


def why_not(here: Arrival) -> str:
    """Why this bag is not dripped."""
    bag, toxic = here.bag, here.toxic
    if bag.ammonia_mg_n_l is None:
        return (
            f"After {show_number(bag.hours, 2)} hours a bag holds ammonia, and none was read: more than "
            f"{show_number(SHORT_TRIP_HOURS)} hours count as long travel here."
        )
    worst = max(toxic.opened or 0.0, toxic.at_tank_ph or 0.0, toxic.in_bag or 0.0)
    highest = max(toxic.open_ph, here.tank_ph)
    return (
        f"The bag holds {show_number(bag.ammonia_mg_n_l, 2)} mg N/L of ammonia. Its pH rises as it stands "
        f"open or takes up tank water, up to {show_number(highest, 2)}, and then as much as "
        f"{show_number(worst, 2)} is toxic."
    )


def steps(here: Arrival) -> str:
    """How to take the animals out of a bag with ammonia, and into which water."""
    if here.is_far:
        return (
            "The tank's water is too far from theirs: make them clean, dechlorinated water without ammonia, "
            "of the bag's own hardness and pH, with air, and leave the bag closed until it stands ready. "
            f"{CLEAN_WATER_STEPS}"
        )
    where = "let them into the tank"
    if here.hardness_apart_dh > GH_STEP_DH:
        where = "let fish into the tank, shrimp and snails into clean water of the bag's own hardness first"
    return (
        "Float the closed bag until its warmth is within 2 °C (4 °F) of the tank's. Then open it, take the "
        f"animals out with a net within a minute or two, and {where}. Put no air into the bag, and no bag "
        "water into the tank."
    )


CLEAN_WATER_STEPS = (
    "Float the closed bag in the water that you made for the animals until its warmth is within 2 °C "
    "(4 °F) of that. Then open it, take the animals out with a net within a minute or two, and let them "
    "into that water. Put no air into the bag, and no bag water into any tank."
)
