"""A tank on paper: its card, and the sheet for whoever feeds during a holiday. Animals come first.

The message is ``{"message": "paper", "kind": "card" | "holiday", "tank", "entries", "today"}``; a holiday
also has ``from`` and ``to`` (days), ``spoon_g`` (grams of feed in a level spoon, or null) and ``call``
(whom to call, in words, or null).
"""

from collections.abc import Mapping
from datetime import date
from typing import Any

from calculators.core.dates import DAY, is_day, read_date
from calculators.core.numbers import show_number
from calculators.core.result import BadInput
from calculators.science.animals.animal_table import ANIMALS
from calculators.science.animals.reading_lines import LINES
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.plants import plant_name
from calculators.science.shelf.portions import portion_of
from calculators.science.shelf.reading import read_entries, read_tank
from calculators.science.shelf.sheet import Part, Sheet, sheet_html
from calculators.science.shelf.stand import Stand, stand_of
from calculators.science.shelf.tank import ShelfTank
from calculators.science.shelf.verdict import FIRST_HOUR

LONGEST_DAYS = 60
MOST_CALL_LETTERS = 200
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


def paper_reply(asked: Mapping[str, Any]) -> dict[str, Any]:
    """``{"title", "html", "parts"}`` of a sheet. Raises ``BadInput`` for what cannot be read."""
    tank = read_tank(asked["tank"])
    today = day_of(asked, "today") if asked.get("today") else date.today()
    stand = stand_of(tank, read_entries(asked.get("entries", [])), today)
    sheet = SHEETS[kind_of(asked)](stand, asked)
    parts = [part._asdict() for part in sheet.parts]
    return {"title": sheet.title, "html": sheet_html(sheet), "parts": parts}


def kind_of(asked: Mapping[str, Any]) -> str:
    """Which sheet is wanted."""
    kind = asked.get("kind")
    if kind not in SHEETS:
        raise BadInput(("kind", f"{kind!r:.40} is no sheet; allowed are {', '.join(SHEETS)}"))
    return str(kind)


def card(stand: Stand, asked: Mapping[str, Any]) -> Sheet:
    """The card that stands at a tank."""
    tank = stand.tank
    parts = [
        Part("Animals", animal_lines(tank)),
        Part("Plants", [plant_name(held.plant) for held in tank.plants or []]),
        Part("Feed", [feed_line(tank)]),
        Part("Change of water", [change_line(tank)]),
        Part("Act at", limit_lines()),
        Part("In danger", [GASPING], warns=True),
    ]
    return Sheet(tank.name, litres_line(tank), parts, "A6")


def holiday(stand: Stand, asked: Mapping[str, Any]) -> Sheet:
    """The sheet for whoever feeds."""
    tank, start, end = stand.tank, day_of(asked, "from"), day_of(asked, "to")
    if not 0 <= (end - start).days <= LONGEST_DAYS:
        raise BadInput(
            (
                "to",
                f"{end} does not follow; allowed is from {start} on, {LONGEST_DAYS} days at most",
            )
        )
    portion = portion_of(tank, start, end, spoon_of(asked))
    parts = [
        Part("One portion", [f"{portion.words}. Once a day, only on these days:"]),
        Part("Days", [day_line(day) for day in portion.days]),
        Part("Never", NEVER, warns=True),
        Part("Look, every time", [warmth_line(tank), *LOOK]),
        Part("If something is wrong", [GASPING, *call_lines(asked)]),
        Part("Before leaving, the keeper does", before_lines(stand, end)),
    ]
    return Sheet(f"{tank.name}: {start} to {end}", litres_line(tank), parts, "A4")


def day_of(asked: Mapping[str, Any], key: str) -> date:
    """A day of the message."""
    text = asked.get(key)
    if not isinstance(text, str) or not is_day(text):
        raise BadInput((key, f"{text!r:.40} will not do; allowed is {DAY.words}"))
    return read_date(text)


def spoon_of(asked: Mapping[str, Any]) -> float | None:
    """The grams in a level spoon; None where nobody weighed it."""
    grams = asked.get("spoon_g")
    if grams is None:
        return None
    if isinstance(grams, bool) or not isinstance(grams, int | float) or not 0.01 <= grams <= 50:
        raise BadInput(("spoon_g", f"{grams!r:.40} will not do; allowed is 0.01 to 50 g"))
    return float(grams)


def call_lines(asked: Mapping[str, Any]) -> list[str]:
    """Whom to call: the keeper's words, and a line for a vet."""
    call = asked.get("call")
    if call is not None and (not isinstance(call, str) or len(call) > MOST_CALL_LETTERS):
        raise BadInput(
            ("call", f"will not do; allowed is a text of up to {MOST_CALL_LETTERS} characters")
        )
    return [f"Call: {call or BLANK}", f"A vet who treats fish: {BLANK}"]


def before_lines(stand: Stand, end: date) -> list[str]:
    """What falls due until the end of a holiday."""
    found = [f"{one.task}, due {one.on}" for one in stand.due if one.on <= end]
    return [*found, "Set ready the water for topping up, and one portion for each day, in boxes."]


def animal_lines(tank: ShelfTank) -> list[str]:
    """The animals by name and number."""
    return [
        f"{show_number(held.count_)} × {name_of(held.animal)}"
        if held.count_
        else name_of(held.animal)
        for held in tank.animals or []
    ]


def name_of(animal: str) -> str:
    """The name of an animal; of one that is not in this book, its key."""
    known = ANIMALS.get(animal)
    return (known.common or known.name) if known else animal


def feed_line(tank: ShelfTank) -> str:
    """The feed as the tank has it."""
    if tank.feed_g_week is None:
        return f"{BLANK} a day"
    return (
        f"{show_number(tank.feed_g_week)} g a week, {show_number(tank.feed_g_week / 7, 2)} g a day"
    )


def change_line(tank: ShelfTank) -> str:
    """The change of water as the tank has it."""
    change = tank.change
    if change is None or change.percent is None or change.every_days is None:
        return BLANK
    return f"{show_number(change.percent)} % every {show_number(change.every_days)} days"


def litres_line(tank: ShelfTank) -> str:
    """What is known of the water."""
    known = [
        f"{show_number(tank.volume_l)} L" if tank.volume_l else "",
        f"{show_number(tank.temperature_c)} °C" if tank.temperature_c is not None else "",
        f"pH {show_number(tank.ph)}" if tank.ph is not None else "",
    ]
    return ", ".join(filter(None, known)) or BLANK


def warmth_line(tank: ShelfTank) -> str:
    """How warm the water should be, and where it harms."""
    lines = LINES["temperature_c"]
    usual = BLANK if tank.temperature_c is None else f"{show_number(tank.temperature_c)} °C"
    low, high = show_number(lines.harmful_low or 0), show_number(lines.harmful_high or 0)
    return f"The water is at {usual}. At {low} or less, or {high} and more: call."


def limit_lines() -> list[str]:
    """Where the readings of a keeper's kit begin to harm."""
    made = ["ammonia: whenever it shows"]
    for what in LIMITS:
        lines, one = LINES[what], READINGS[what]
        ends = [f"{show_number(lines.harmful_low)} or less"] if lines.harmful_low else []
        ends += [f"{show_number(lines.harmful_high)} or more"] if lines.harmful_high else []
        made.append(f"{one.name}: {', '.join(ends)} {one.unit}".rstrip())
    return made


def day_line(day: date) -> str:
    """A day with a box to tick."""
    return f"☐ {day:%A} {day.isoformat()}"


SHEETS = {"card": card, "holiday": holiday}
