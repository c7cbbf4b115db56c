"""What the calculator for new animals says: whether to drip, then how, and what to do where not."""

from calculators.acclimate.first_words import (
    GH_STEP_DH,
    WIDE_GAP_DH,
    Arrival,
    answer,
    unfit_tank,
)
from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.science.animals.reading_words import WARMTH_STEP, reading_notes
from calculators.science.water.gentle import STEP_DH_A_DAY
from calculators.science.water.readings_fit import READ_AGAIN, fit_together, misfit_words

# Common practice, no source: the difference that animals bear at once, and how long a drip may take.
WARMTH_STEP_C = 2.0
LONG_DRIP_MINUTES = 90.0
FAR_APART_C = 8.0


def notes(here: Arrival) -> tuple[Note, ...]:
    """Drip or not first, then the tank itself, then how."""
    tank = reading_notes(ph=here.tank_ph, temperature_c=here.tank_temperature_c)
    if here.is_unfit:  # no word of how to get animals used to it
        return (*unfit_tank(here), answer(here), *tank, TEST_TANK, about_gas(here), NO_BAG_WATER)
    return (
        answer(here),
        *tank,
        *do_not_fit(here),
        TEST_TANK,
        match_warmth(here),
        while_dripping(here) if here.drip else clean_vessel(here),
        *about_hardness(here),
        about_gas(here), NO_BAG_WATER, AFTERWARDS,
    )  # fmt: skip


def match_warmth(here: Arrival) -> Note:
    """Temperature first, with the bag closed."""
    apart = abs(here.tank_temperature_c - here.bag.temperature_c)
    if apart <= WARMTH_STEP_C:
        text = (
            "Bag and tank are within 2 °C (4 °F): no floating is needed for warmth. Dim the light."
        )
        return Note("info", text)
    if apart > FAR_APART_C:
        text = (
            f"Bag and tank are {show_number(apart, 2)} °C ({show_number(1.8 * apart, 2)} °F) apart, far more "
            "than animals bear at once. Before all else: put them into clean, aired water of the bag's own "
            f"warmth, and let that come to the tank's by about {WARMTH_STEP} an hour. Drip only then."
        )
        return Note("danger", text, True)
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


def do_not_fit(here: Arrival) -> list[Note]:
    """That the tank's pH and carbonate hardness cannot be of one water; a bag may hold so much gas."""
    kh = here.tank_kh_dh
    if kh is None or fit_together(here.tank_ph, kh, here.tank_temperature_c):
        return []
    words = misfit_words(here.tank_ph, kh, here.tank_temperature_c, "of the tank")
    return [Note("caution", f"{words} {READ_AGAIN}", True)]


def clean_vessel(here: Arrival) -> Note:
    """How to get used to another hardness without the bag's water; by drops only where they bridge it."""
    drops = "" if here.is_far else ", and let tank water drip into that"
    text = (
        "Shrimp, snails and fish that must get used to another hardness can do so without the bag's water: "
        "net them into a clean vessel of dechlorinated water without ammonia, of the bag's own hardness and "
        f"warmth{drops}, with air."
    )
    return Note("info", text)


def about_hardness(here: Arrival) -> list[Note]:
    """A difference of hardness, which shrimp and snails feel most."""
    if here.hardness is None:
        return [Note("info", f"Read the hardness (GH) of bag and tank where you can. {SHRIMP}")]
    apart = here.hardness_apart_dh
    if apart <= GH_STEP_DH:
        return []
    text = f"Hardness differs by {show_number(apart, 2)} °dH. {SHRIMP}"
    if apart > WIDE_GAP_DH:
        text += (
            " An hour of drops does not bridge so wide a gap: make them water as hard as the bag's in a tank "
            f"of their own, and bring it over by about {STEP_DH_A_DAY} °dH a day."
        )
    elif here.drip and not here.is_far:
        text += " Let it take an hour or more, at an even pace."
    return [Note("caution", text, apart > WIDE_GAP_DH)]


SHRIMP = (
    "Shrimp and snails bear a jump of hardness worse than of pH, and die at the next moult (common "
    f"practice: more than about {show_number(GH_STEP_DH)} °dH)."
)
TEST_TANK = Note(
    "caution",
    "Test the tank itself before you open the bag: ammonia and nitrite must read zero. A young or "
    "disturbed tank that shows either is no place for new animals.",
)
GAS = (
    "The low pH of a bag is carbon dioxide from breath. It leaves within minutes to an hour of opening, "
    "faster with air, so the pH comes up by itself: a difference of pH alone is no reason to drip. With "
    "ammonia in the bag it is the reason not to."
)


def about_gas(here: Arrival) -> Note:
    """What the pH of a bag means: gas of breath, or another water."""
    bag, tank = here.aired_ph
    if bag is None or tank is None:
        text = (
            f"{GAS} But water with next to no carbonate hardness is acid by itself and stays so: enter pH "
            "and KH of both to see."
        )
        return Note("info", text)
    if not here.is_of_another_ph:
        return Note("info", GAS)
    text = (
        f"Without their gas the bag's water comes to about pH {show_number(bag, 2)} and the tank's to "
        f"{show_number(tank, 2)}: these are two waters, and no hour of drops bridges that. Ask what the "
        "animals were kept in, and keep them in such water"
    )
    text += "." if here.is_unfit else "; bring it over within days, with its hardness."
    return Note("caution", text, True)


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
