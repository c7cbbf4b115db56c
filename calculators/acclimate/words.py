"""What the calculator for new animals says: whether to drip, and what to do where not."""

from typing import NamedTuple

from calculators.acclimate.bag_ammonia import SHORT_TRIP_HOURS, Bag, Toxic
from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.science.animals.reading_lines import standing
from calculators.science.animals.reading_words import reading_notes
from calculators.science.water.ammonia import WATCH_NH3_MG_N_L

# Common practice, no source: the differences that animals bear at once, and how long a drip may take.
GH_STEP_DH = 4.0
WARMTH_STEP_C = 2.0
LONG_DRIP_MINUTES = 90.0
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


def notes(here: Arrival) -> tuple[Note, ...]:
    """Drip or not first, then the tank itself, then how."""
    how = (while_dripping(here),) if here.drip else (CLEAN_VESSEL,)
    return (
        *unfit_tank(here),
        answer(here),
        *reading_notes(ph=here.tank_ph, temperature_c=here.tank_temperature_c),
        TEST_TANK,
        match_warmth(here),
        *how,
        *about_hardness(here),
        GAS, NO_BAG_WATER, AFTERWARDS,
    )  # fmt: skip


def unfit_tank(here: Arrival) -> list[Note]:
    """A tank whose own readings kill takes no animals, dripped or not."""
    levels = {
        standing("ph", here.tank_ph).level,
        standing("temperature_c", here.tank_temperature_c).level,
    }
    if "deadly" not in levels:
        return []
    text = (
        "Put no animals into this tank: its own pH or temperature can kill. Keep them in clean, "
        "dechlorinated water of their own warmth and hardness, with air, until it is right."
    )
    return [Note("danger", text, True)]


def answer(here: Arrival) -> Note:
    """Whether to drip, and the reason."""
    if not here.drip:
        return Note("danger", f"Do not drip. {why_not(here)} {STEPS}", True, DANGER_LINK)
    text = (
        f"Drip about {show_number(here.minutes, 2)} minutes, until the vessel holds "
        f"{show_number(here.vessel_l, 2)} L, {show_number(here.share_percent)} % of it tank water. Then "
        "move the animals with a net, without the water."
    )
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


STEPS = (
    "Float the closed bag until its warmth is within 2 °C (4 °F) of the tank's. Then open it, take the "
    "animals out with a net within a minute or two, and let them into the tank. Put no air into the bag, "
    "and no bag water into the tank."
)


def match_warmth(here: Arrival) -> Note:
    """Temperature first, with the bag closed."""
    apart = abs(here.tank_temperature_c - here.bag.temperature_c)
    if apart <= WARMTH_STEP_C:
        text = (
            "Bag and tank are within 2 °C (4 °F): no floating is needed for warmth. Dim the light."
        )
        return Note("info", text)
    text = (
        f"Bag and tank are {show_number(apart, 2)} °C ({show_number(1.8 * apart, 2)} °F) apart. Float the "
        "bag closed, in the shade, for 15 to 30 minutes before anything else; where that is not enough, "
        "longer. Dim the light."
    )
    return Note("caution", text)


def while_dripping(here: Arrival) -> Note:
    """How to drip without harm."""
    text = (
        "Put bag water and animals into a clean vessel that no soap has touched, below the tank, covered "
        "and where it stays warm; a thin air hose with a knot lets the drops through. Watch it: a hose "
        "that slips off empties a tank."
    )
    if here.minutes <= LONG_DRIP_MINUTES:
        return Note("info", text)
    text += (
        f" {show_number(here.minutes, 2)} minutes are long: the vessel cools, oxygen falls and ammonia "
        "grows. Let it drip faster, or ask for a smaller share of tank water."
    )
    return Note("caution", text)


CLEAN_VESSEL = Note(
    "info",
    "Shrimp, snails and fish that must get used to another hardness can do so without the bag's water: "
    "net them into a clean vessel of dechlorinated water without ammonia, of the bag's own hardness and "
    "warmth, and let tank water drip into that, with air.",
)


def about_hardness(here: Arrival) -> list[Note]:
    """A difference of hardness, which shrimp and snails feel most."""
    if here.hardness is None:
        return [Note("info", f"Read the hardness (GH) of bag and tank where you can. {SHRIMP}")]
    apart = abs(here.hardness[0] - here.hardness[1])
    if apart <= GH_STEP_DH:
        return []
    text = f"Hardness differs by {show_number(apart, 2)} °dH. {SHRIMP}"
    if here.drip:
        text += " Let it take an hour or more, at an even pace."
    return [Note("caution", text)]


SHRIMP = (
    "Shrimp and snails bear a jump of hardness worse than of pH, and die at the next moult (common "
    f"practice: more than about {show_number(GH_STEP_DH)} °dH)."
)
TEST_TANK = Note(
    "caution",
    "Test the tank itself before you open the bag: ammonia and nitrite must read zero. A young or "
    "disturbed tank that shows either is no place for new animals.",
)
GAS = Note(
    "info",
    "The low pH of a bag is carbon dioxide from breath. It leaves within minutes to an hour of opening, "
    "faster with air, so the pH comes up by itself: a difference of pH alone is no reason to drip. With "
    "ammonia in the bag it is the reason not to.",
)
NO_BAG_WATER = Note(
    "caution",
    "Pour no bag or drip water into the tank: it brings ammonia, disease, snails and medicine. Nor into a "
    "pond, stream or drain outdoors.",
)
AFTERWARDS = Note(
    "info",
    "Lights off for the day, no food until tomorrow. A tank of their own for some weeks keeps disease "
    "from the others. Ask a vet who treats fish where animals lie down or gasp for more than an hour.",
)
