"""The lines of a tank's sheets of paper: what lives in it, where its readings harm, what never to do."""

from datetime import date

from calculators.core.numbers import show_number
from calculators.core.quantities import GALLON
from calculators.science.animals.animal_table import animal_name
from calculators.science.animals.reading_lines import LINES
from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.shelf.both_units import in_both
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.freshest import figure_now
from calculators.science.shelf.shelf_tank import ShelfTank
from calculators.science.shelf.tank_state import TankState
from calculators.science.shelf.tank_verdict import FIRST_HOUR

WARMTH = READINGS["temperature_c"]
LIMITS = ("temperature_c", "ph", "nitrite_mg_n_l", "nitrate_mg_l")
BLANK = "______________________"
LOOK = [
    "Do the animals swim, and breathe calmly? Count a few of each kind.",
    "Does the filter run, and the water move?",
    "Is the water as warm as written above?",
    "Does anything lie dead? Take it out, and feed nothing that day.",
]
NEVER = [
    "Feed less rather than more. In doubt feed none: hungry animals are safe for days; rotting food kills.",
    "Never pour in a week's food at once.",
    "Do not top up from the hot tap. If water must go in, take only what was set ready, slowly.",
    "Do not change water, wash the filter, or pour in anything from a bottle.",
    "Do not reach in while heater and lamp are plugged in. A tingle: hands out, switch off at the fuse box.",
]
GASPING = "Animals gasp or lie down: " + " ".join(FIRST_HOUR) + " Then call."


def before_lines(stand: TankState, end: date) -> list[str]:
    """What falls due until the end of a holiday; first of all what harms the animals today."""
    is_harmed = stand.judged.verdict in ("act", "watch")
    first = [f"First of all: {stand.judged.sentence}"] if is_harmed else []
    found = [f"{one.task}, due {one.on}" for one in stand.due if one.on <= end]
    return [
        *first,
        *found,
        "Set ready the water for topping up, and one portion for each day, in boxes.",
    ]


def animal_lines(tank: ShelfTank) -> list[str]:
    """The animals by name and number."""
    return [
        f"{show_number(held.count_)} × {animal_name(held.animal)}"
        if held.count_
        else animal_name(held.animal)
        for held in tank.animals or []
    ]


def feed_line(tank: ShelfTank) -> str:
    """The feed as the tank has it."""
    if tank.feed_g_week is None:
        return f"{BLANK} a day"
    week, day = show_number(tank.feed_g_week), show_number(tank.feed_g_week / DAYS_PER_WEEK, 2)
    return f"{week} g a week, {day} g a day"


def change_line(tank: ShelfTank) -> str:
    """The change of water as the tank has it."""
    change = tank.change
    if change is None or change.percent is None or change.every_days is None:
        return BLANK
    return f"{show_number(change.percent)} % every {show_number(change.every_days)} days"


def litres_line(stand: TankState) -> str:
    """What is known of the water."""
    warmth, ph = (water_now(stand, what) for what in ("temperature_c", "ph"))
    known = [
        in_both(stand.tank.volume_l, "L", GALLON) if stand.tank.volume_l else "",
        WARMTH.words(warmth) if warmth is not None else "",
        f"pH {show_number(ph)}" if ph is not None else "",
    ]
    return ", ".join(filter(None, known)) or BLANK


def water_now(stand: TankState, what: str) -> float | None:
    """A figure of the water, as entered or as read, whichever is fresher.

    In the unit of what is asked for.
    """
    return figure_now(what, stand.tank, stand.judged.readings)


def warmth_line(stand: TankState) -> str:
    """How warm the water should be, and where it harms."""
    lines = LINES["temperature_c"]
    warmth = water_now(stand, "temperature_c")
    usual = BLANK if warmth is None else WARMTH.words(warmth)
    low, high = WARMTH.words(lines.harmful_low or 0), WARMTH.words(lines.harmful_high or 0)
    return f"The water is at {usual}. At {low} or less, or {high} or more: call."


def limit_lines() -> list[str]:
    """Where the readings of a keeper's kit begin to harm."""
    made = ["ammonia: whenever it shows"]
    for what in LIMITS:
        lines, one = LINES[what], READINGS[what]
        ends = [f"{one.words(lines.harmful_low)} or less"] if lines.harmful_low else []
        ends += [f"{one.words(lines.harmful_high)} or more"] if lines.harmful_high else []
        made.append(f"{one.name}: {', '.join(ends)}")
    return made


def day_line(day: date) -> str:
    """A day with a box to tick."""
    return f"☐ {day:%A} {day.isoformat()}"
