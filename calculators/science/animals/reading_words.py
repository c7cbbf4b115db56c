"""What is said first of a pH, warmth or oxygen that harms or kills, by the one table of such lines.

Each with a first action that can do no harm in any water: nothing here asks for a large change, for
acid or for a dose, since with ammonia in the water each of them can kill.
"""

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.core.wording import DANGER_PAGE
from calculators.science.animals.reading_lines import standing

WARMTH_STEP = (
    "1 °C (2 °F)"  # an hour: how fast animals may be warmed or cooled; common practice, no source
)
OXYGEN, WARM = "oxygen_mg_l", ("temperature_c", "high")
LAMP_OFF = ", turn off the lamp"
NAMES = {"ph": "A pH", "oxygen_mg_l": "Oxygen"}
ACTIONS = {
    (
        "ph",
        "low",
    ): "Check it with a second test, and test ammonia: as pH rises, it turns toxic. Only where "
    "none shows change a tenth of the water, slowly, and read the pH before the next tenth. Never pour in "
    "a pH product.",
    (
        "ph",
        "high",
    ): "Check it with a second test, add air, stop feeding, and test ammonia at once: at this "
    "pH much of it is toxic. Look for stone, cement or a product that raises it. Never pour in acid.",
    (
        "temperature_c",
        "low",
    ): "Look at the heater: unplug it before you reach in. Warm the water by no more "
    f"than about {WARMTH_STEP} an hour, and pour in no warm water.",
    (
        "temperature_c",
        "high",
    ): f"Unplug the heater{LAMP_OFF}, take off the cover, add air, and let a "
    f"fan blow over the surface. Cool it by no more than about {WARMTH_STEP} an hour, with no ice.",
    ("oxygen_mg_l", "low"): "Add air and move the surface now, and stop feeding.",
}


# The same beside a reading of ammonia: the test is taken, and how to change water hangs on it.
BESIDE_AMMONIA = {
    (
        "ph",
        "low",
    ): "Check it with a second test. Never pour in a pH product: as pH rises, ammonia turns toxic.",
    (
        "ph",
        "high",
    ): "Check it with a second test, add air and stop feeding: at this pH much of any ammonia is "
    "toxic. Look for stone, cement or a product that raises it. Never pour in acid.",
}


def reading_notes(*, ammonia_is_read: bool = False, **readings: float | None) -> list[Note]:
    """Notes on readings (by their keys in the table) that harm or kill, the deadly ones first.

    Where ``ammonia_is_read``, none asks for a test of it, nor for a change of water.
    """
    notes = []
    for key, value in readings.items():
        if value is None:
            continue
        level, side = standing(key, value)
        if level == "in-range" or (key, side) not in ACTIONS:
            continue
        verb = "can kill animals" if level == "deadly" else "harms many animals over time"
        action = BESIDE_AMMONIA.get((key, side)) if ammonia_is_read else None
        if (key, side) == WARM and is_short(readings.get(OXYGEN)):
            action = ACTIONS[WARM].replace(LAMP_OFF, "")  # plants in light give oxygen
        text = f"{shown(key, value)} {verb}. {action or ACTIONS[(key, side)]}"
        links = (DANGER_PAGE,) if level == "deadly" else ()
        notes.append(Note("danger" if level == "deadly" else "caution", text, True, links))
    return sorted(notes, key=lambda note: note.level != "danger")


def is_short(oxygen_mg_l: float | None) -> bool:
    """Whether oxygen was read and is low; in mg/L."""
    return oxygen_mg_l is not None and standing(OXYGEN, oxygen_mg_l).side == "low"


def shown(key: str, value: float) -> str:
    """A reading with its name and unit, warmth in both scales.

    The ``value`` is in the unit of its lines.
    """
    number = show_number(value)
    if key == "temperature_c":
        return f"Water of {number} °C ({show_number(value * 1.8 + 32)} °F)"
    return f"{NAMES[key]} of {number}" + (" mg/L" if key == "oxygen_mg_l" else "")
