"""What to do about a reading that harms or kills, by reading and side; the quickest killer first.

Common practice, no source, but for the lines themselves (``science/animals/reading_lines.py``). No
step may undo another: light is left alone where oxygen is short, and water is changed by one sentence.
"""

from collections.abc import Collection, Mapping
from typing import Literal, NamedTuple

from calculators.core.numbers import show_number
from calculators.core.wording import joined
from calculators.science.animals.reading_lines import LINES, Side, edge_of, standing
from calculators.science.animals.reading_words import WARMTH_STEP
from calculators.science.animals.toxic_lines import ammonia_standing
from calculators.science.water.asked_change import AskedChange
from calculators.science.water.careful_change import SAME_WATER
from calculators.science.water.change_choice import ACID_PERCENT

Change = Literal["", "third", "quarter", "lower", "tenth"]


TAPS_NITRATE = "tap_nitrate_mg_l"


class ReadingSteps(NamedTuple):
    """What a reading that kills asks for, what one that harms asks for, and the change of water.

    ``test`` has the other readings that must be known, by key: ``asked_for`` words those not taken yet.
    """

    deadly: str
    harmful: str
    change: Change = ""
    test: tuple[str, ...] = ()


STEPS: dict[tuple[str, Side], ReadingSteps] = {
    ("oxygen_mg_l", "low"): ReadingSteps(
        "Animals can die within the hour for want of oxygen. Make the surface ripple now with an air "
        "stone or the filter’s outlet, take off a third of the floaters, and feed nothing.",
        "Oxygen is low, and it falls further until dawn. Move the surface before dark and all night, look "
        "for what uses it up, and read it again before the lights go on. If animals gasp, or it reads "
        f"{show_number(edge_of('oxygen_mg_l', 'deadly_low'))} mg/L or less, add air at once.",
    ),
    ("temperature_c", "high"): ReadingSteps(
        "Water this warm can kill within hours. Unplug the heater, lift the lid, let a fan blow over the "
        f"surface from a dry stand, and add air. Cool by {WARMTH_STEP} an hour at most; no ice.",
        "The water is too warm for most. Check the heater, lift the lid, and add air: warm water holds "
        "little oxygen. Cool it slowly.",
    ),
    ("temperature_c", "low"): ReadingSteps(
        "Water this cold kills most warm-water kinds within a day or two. Check the heater: is it plugged "
        f"in, under water, its lamp on? Unplug it before your hands go in. Warm by {WARMTH_STEP} an hour at "
        "most, with a heater or a closed bottle of warm water; pour in no warm water. Feed nothing.",
        "The water is cold for most warm-water kinds. Check the heater if there is one, and warm slowly.",
    ),
    ("ph", "high"): ReadingSteps(
        "At this pH gills burn, and most ammonia is in its toxic form. Put in no acid. Add air, which "
        "brings carbon dioxide back. Look for lime, concrete, shells or a cleaner, and take it out.",
        "The pH is so high that it troubles animals, and makes ammonia more toxic. Plants in strong light "
        "can do this by day; read it again before lights-on. Put in no acid.",
        "lower",
        ("ammonia_mg_n_l",),
    ),
    ("ph", "low"): ReadingSteps(
        "At this pH gills fail. Put in nothing that raises it: a jump harms again, and turns ammonium into "
        "toxic ammonia. Add air, feed nothing, and check the kit on tap water.",
        "The pH is so low that it troubles most animals, and the filter hardly works. Put in nothing that "
        "raises it quickly.",
        "tenth",
        ("ammonia_mg_n_l", "kh_dh"),
    ),
    ("ammonia_mg_n_l", "high"): ReadingSteps(
        "Ammonia kills here. Stop feeding, add air, and take out what is dead or rots.", "", "tenth"
    ),
    ("nitrite_mg_n_l", "high"): ReadingSteps(
        "Nitrite keeps blood from carrying oxygen. Stop feeding for two days and add air.", "", "third"
    ),
    ("nitrate_mg_l", "high"): ReadingSteps(
        "Nitrate this high kills small animals within days. Feed nothing for two days.",
        "Nitrate is at a level that harms sensitive animals over time. Feed less if food is left lying.",
        "quarter",
        (TAPS_NITRATE,),
    ),
    ("copper_ug_l", "high"): ReadingSteps(
        "Copper this high kills shrimp and snails within days. Stop what may bring it in: a medicine, a "
        "plant feed, a new pipe. Put fresh activated carbon into the filter, and test the new water for "
        "copper before you change any. If a vet had you give it, ask them first.",
        "Copper at this level harms shrimp and snails over time. Look for what brings it in: a medicine, a "
        "plant feed, pipes. Test the new water for it.",
    ),
    ("gh_dh", "low"): ReadingSteps(
        "", "So little hardness troubles shrimp and snails: raise GH by 1 to 2 degrees over a week. "
        "Use no harder tap water while ammonia shows: it turns it toxic.",
        "", ("ammonia_mg_n_l",),
    ),
    ("gh_dh", "high"): ReadingSteps("", "So much hardness troubles soft-water kinds. Lower it over weeks."),
    ("kh_dh", "low"): ReadingSteps(
        "", "With no carbonate hardness the pH can fall within days. Raise nothing quickly. Some soft-water "
        "shrimp are kept so on purpose.", "", ("ph", "ammonia_mg_n_l"),
    ),
}  # fmt: skip
TO_KINDS_THAT_LIVE_COLD = "Kinds that live cold all winter are in no such haste."
NITRITE: tuple[str, Side] = ("nitrite_mg_n_l", "high")
NITRATE: tuple[str, Side] = ("nitrate_mg_l", "high")
AGAIN: dict[Change, str] = {
    "third": ", and again half a day apart, until nitrite reads zero",
    "quarter": ", refilled slowly over an hour, and a quarter each day until the reading is down",
}
# What is changed at a time, in percent and in words.
SHARES: dict[Change, tuple[float, str]] = {
    "third": (100 / 3, "a third"),
    "quarter": (25.0, "a quarter"),
    "lower": (25.0, "a quarter"),
    "tenth": (ACID_PERCENT, "a tenth"),
}
CHANGES: dict[Change, str] = {
    "third": f"Change a third of the water now with {SAME_WATER}{AGAIN['third']}.",
    "quarter": f"Change a quarter of the water now with {SAME_WATER}{AGAIN['quarter']}; not more at once, "
    "since animals are used to it.",
    "lower": f"Change a quarter of the water with {SAME_WATER}, if you have read that its "
    "pH is lower; read again after an hour before you change more.",
    "tenth": f"Change a tenth of the water now with {SAME_WATER}, and test again.",
}
CAREFUL_FIRST: tuple[Change, ...] = ("tenth", "lower", "quarter", "third")
Outside = list[tuple[str, Side]]


TESTS = {
    "ammonia_mg_n_l": "ammonia",
    "nitrite_mg_n_l": "nitrite",
    "ph": "pH",
    "kh_dh": "KH",
    "temperature_c": "temperature",
    TAPS_NITRATE: "the tap’s nitrate",
}


def step_words(place: tuple[str, Side], is_deadly: bool, known: Collection[str]) -> str:
    """The step for one reading, with the others that it needs and that are not ``known`` yet, by key.

    Empty where there is none for that band. Raises ``KeyError`` for a place without steps.
    """
    step = STEPS[place]
    words = step.deadly if is_deadly else step.harmful
    tests = asked_for(step.test, known)
    return f"{words} {tests}".strip() if words else ""


def asked_for(tests: Collection[str], known: Collection[str]) -> str:
    """Which of these readings to take now, by key, in a sentence; empty where all are known."""
    unread = [TESTS[one] for one in tests if one not in known]
    return f"Test {joined(unread)} now." if unread else ""


def deadly(readings: Mapping[str, float | None]) -> Outside:
    """The readings that kill, with their side; what kills first stands first."""
    return at_level(readings, "deadly")


def acting(readings: Mapping[str, float | None]) -> Outside:
    """The readings that ask for a step now: those that kill, and nitrite from its one line on."""
    harms = at_level(readings, "harmful")
    found = {*deadly(readings), *(place for place in harms if place == NITRITE)}
    return [place for place in STEPS if place in found]


def asked_beside_ammonia(outside: Outside, kills: Collection[str] = ()) -> AskedChange | None:
    """The change that nitrite or nitrate outside its range asks for, for water that holds ammonia too.

    The most careful of all; None where neither stands among them. ``kills`` are the readings, by key,
    that kill: nitrite that does waits for no water of the tank's own hardness.
    """
    names = {NITRITE: "nitrite", NITRATE: "nitrate"}
    found = [place for place in outside if place in names]
    change = most_careful(found)
    if not change:
        return None
    reading = joined([names[place] for place in found])
    killer = names[NITRITE] if NITRITE in found and NITRITE[0] in kills else ""
    return AskedChange(reading, *SHARES[change], AGAIN.get(change, ""), killer)


def harmful(readings: Mapping[str, float | None]) -> Outside:
    """The readings that harm but do not kill, with their side."""
    return [place for place in at_level(readings, "harmful") if STEPS[place].harmful]


def at_level(readings: Mapping[str, float | None], level: str) -> Outside:
    """The readings in one band, in the order of ``STEPS``."""
    outside = set[tuple[str, Side]]()
    for key, value in readings.items():
        if value is None:
            continue
        if key == "ammonia_mg_n_l":
            band = ammonia_standing(value, readings["ph"], readings["temperature_c"])
        elif key in LINES:
            band = standing(key, value)
        else:
            continue
        if band.level == level and band.side:
            outside.add((key, band.side))
    return [place for place in STEPS if place in outside]


def change_for(outside: Outside) -> str:
    """The change of water that readings ask for: the most careful of all; empty where none does."""
    change = most_careful(outside)
    return CHANGES[change] if change else ""


def percent_for(outside: Outside) -> float:
    """How much that change is, in percent of the water; 0 where none is asked for."""
    change = most_careful(outside)
    return SHARES[change][0] if change else 0.0


def most_careful(outside: Outside) -> Change:
    """The most careful change that readings ask for, by its name."""
    asked = {STEPS[place].change for place in outside}
    return next((change for change in CAREFUL_FIRST if change in asked), "")
