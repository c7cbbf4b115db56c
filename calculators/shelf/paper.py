"""A tank on paper: its card, and the sheet for whoever feeds during a holiday. Animals come first.

The message is ``{"message": "paper", "kind": "card" | "holiday", "tank", "entries", "today"}``; a holiday
also has ``from`` and ``to`` (days), ``spoon_g`` (grams of feed in a level spoon, or null) and ``call``
(whom to call, in words, or null).
"""

from collections.abc import Mapping
from datetime import date
from typing import Any

from calculators.core.dates import DAY, is_day, read_date
from calculators.core.result import BadInput
from calculators.science.shelf.reading import read_entries, read_tank
from calculators.science.shelf.recorded_plants import plant_name
from calculators.science.shelf.tank_state import TankState, state_of_tank
from calculators.shelf.paper_lines import (
    BLANK,
    GASPING,
    LOOK,
    NEVER,
    animal_lines,
    before_lines,
    change_line,
    day_line,
    feed_line,
    limit_lines,
    litres_line,
    warmth_line,
)
from calculators.shelf.portions import portion_of
from calculators.shelf.sheet import Sheet, SheetPart, sheet_html

LONGEST_DAYS = 60
MOST_CALL_LETTERS = 200


def paper_reply(asked: Mapping[str, Any]) -> dict[str, Any]:
    """``{"title", "html", "parts"}`` of a sheet. Raises ``BadInput`` for what cannot be read."""
    tank = read_tank(asked["tank"])
    today = day_of(asked, "today") if asked.get("today") else date.today()
    stand = state_of_tank(tank, read_entries(asked.get("entries", [])), today)
    sheet = SHEETS[kind_of(asked)](stand, asked)
    parts = [part._asdict() for part in sheet.parts]
    return {"title": sheet.title, "html": sheet_html(sheet), "parts": parts}


def kind_of(asked: Mapping[str, Any]) -> str:
    """Which sheet is wanted. Raises ``BadInput`` for any other."""
    kind = asked.get("kind")
    if kind not in SHEETS:
        raise BadInput(("kind", f"{kind!r:.40} is no sheet; allowed are {', '.join(SHEETS)}"))
    return str(kind)


def card(stand: TankState, asked: Mapping[str, Any]) -> Sheet:
    """The card that stands at a tank."""
    tank = stand.tank
    parts = [
        SheetPart("In danger", [GASPING], "never"),  # first: a long list may run over the page
        SheetPart("Animals", animal_lines(tank)),
        SheetPart("Plants", [plant_name(held.plant) for held in tank.plants or []]),
        SheetPart("Feed", [feed_line(tank)]),
        SheetPart("Change of water", [change_line(tank)]),
        SheetPart("Act at", limit_lines()),
    ]
    return Sheet(tank.name, litres_line(stand), parts, "A6")


def holiday(stand: TankState, asked: Mapping[str, Any]) -> Sheet:
    """The sheet for whoever feeds. Raises ``BadInput`` where the days do not follow."""
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
        SheetPart("One portion", [f"{portion.words}. Once a day, only on these days:"]),
        SheetPart("Days", [day_line(day) for day in portion.days], "ticks"),
        SheetPart("Never", NEVER, "never"),
        SheetPart("Look, every time", [warmth_line(stand), *LOOK]),
        SheetPart("If something is wrong", [GASPING, *call_lines(asked)]),
        SheetPart("Before leaving, the keeper does", before_lines(stand, end)),
    ]
    return Sheet(f"{tank.name}: {start} to {end}", litres_line(stand), parts, "A4")


def day_of(asked: Mapping[str, Any], key: str) -> date:
    """A day of the message. Raises ``BadInput`` for what is none."""
    text = asked.get(key)
    if not isinstance(text, str) or not is_day(text):
        raise BadInput((key, f"{text!r:.40} will not do; allowed is {DAY.words}"))
    return read_date(text)


def spoon_of(asked: Mapping[str, Any]) -> float | None:
    """The grams in a level spoon; None where nobody weighed it.

    Raises ``BadInput`` for what cannot be.
    """
    grams = asked.get("spoon_g")
    if grams is None:
        return None
    if isinstance(grams, bool) or not isinstance(grams, int | float) or not 0.01 <= grams <= 50:
        raise BadInput(("spoon_g", f"{grams!r:.40} will not do; allowed is 0.01 to 50 g"))
    return float(grams)


def call_lines(asked: Mapping[str, Any]) -> list[str]:
    """Whom to call: the keeper's words, and a line for a vet.

    Raises ``BadInput`` for what is no text, or too long.
    """
    call = asked.get("call")
    if call is not None and (not isinstance(call, str) or len(call) > MOST_CALL_LETTERS):
        raise BadInput(
            ("call", f"will not do; allowed is a text of up to {MOST_CALL_LETTERS} characters")
        )
    return [f"Call: {call or BLANK}", f"A vet who treats fish: {BLANK}"]


SHEETS = {"card": card, "holiday": holiday}
