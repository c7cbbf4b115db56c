"""What the warmth calculator says beside its figures: what kills first is said first."""

from calculators.core.figures import figure
from calculators.core.numbers import show_number
from calculators.core.quantities import FAHRENHEIT, HoursAhead, Temperature
from calculators.core.result import Level, Link, Note
from calculators.science.animals.reading_lines import edge_of, standing
from calculators.warmth.outputs import Ahead, HeaterPower, Power, Warmth

LARGE_W = 1_000  # common practice: beyond it the wiring is an electrician's matter
EVAPORATION_COOLS_C = (
    3.0  # the most by which an open tank stays below its room, as the words below say
)
LEAST_COOLS_C = 1.0  # and the least
FAR_TOO_WARM_C = 3.0  # above what is wanted; a judgement, no source
MOST_MINUTES = 120
AIR_FIRST = "In a power cut want of oxygen kills before cold does: move the surface first, and feed nothing."
AIR_IN_WARMTH = (
    "In a power cut warm water soon lacks oxygen: move the surface first, and feed nothing."
)
WRAP = Note(
    "info",
    "Without power: blankets or newspaper round the sides and under the tank, dry and off lamps and plugs; "
    "the top open a hand for air. Warm by closed bottles of warm water hung in, one at a time, about "
    "1 °C (2 °F) an hour. Never pour hot water in: it scalds animals, and a quick change of warmth kills. "
    "No candle, stove or generator in the room.",
)
ELECTRICITY = Note(
    "caution",
    "A heater in water can kill you: pull its plug before your hands go in and before a water change, "
    "and let it cool for 15 minutes, or it bursts in air. A loop of cable below the socket, a "
    "residual-current breaker (RCD, GFCI) on the circuit; an electrician where unsure. Follow its label.",
    True,
)
THERMOMETER = Note(
    "info",
    "Trust no dial: read a thermometer at the far end of the tank each day (common practice).",
)


def notes(answer: Warmth, water_c: float, room_c: float, lid: bool) -> tuple[Note, ...]:
    """Danger to animals and to the keeper first, then the answer, then what keeps it safe."""
    return (
        *harmful_warmth(water_c),
        *warm_room(room_c, water_c, lid),
        *([ELECTRICITY] if answer.heater_w else []),
        verdict(answer, water_c, room_c, lid),
        *power_cut(answer, room_c, water_c),
        *sticking(answer),
        *([] if answer.heater_w else [ELECTRICITY]),
        *([] if water_c <= room_c else [WRAP]),
        THERMOMETER,
        *wiring(answer),
    )


def degrees(celsius: float) -> str:
    """A temperature in both units."""
    fahrenheit = show_number(celsius * FAHRENHEIT.factor + FAHRENHEIT.offset, 2)
    return f"{figure(Temperature, celsius)} °C ({fahrenheit} °F)"


def harmful_warmth(water_c: float) -> list[Note]:
    """A temperature that harms most animals, whatever the heater."""
    how = standing("temperature_c", water_c)
    if how.level == "in-range":
        return []
    cold = "cold" if how.side == "low" else "warm"
    verb = "kills" if how.level == "deadly" else "harms"
    text = (
        f"Water of {degrees(water_c)} {verb} many fish and shrimp: it is too {cold}. Look up your animals "
        "before you set a heater to it, and move by no more than 1 °C (2 °F) an hour."
    )
    return [Note("danger" if how.level == "deadly" else "caution", text, True)]


def verdict(answer: Warmth, water_c: float, room_c: float, lid: bool) -> Note:
    """The answer in plain words."""
    if water_c < room_c:
        text = (
            f"No heater for this: the room is warmer than {degrees(water_c)}. The water comes near the "
            "room's warmth, an open tank one to three degrees below. Ask again with the coldest night."
        )
        is_near = room_c - EVAPORATION_COOLS_C < water_c + FAR_TOO_WARM_C
        if is_near or warm_room(room_c, water_c, lid):  # which has said it already
            return Note("info", text, True)
        text += (
            " Animals that are kept so cool for a reason may not bear that: look up what they bear, and cool "
            "slowly, with the lid off, a fan over the surface from a dry stand, and air."
        )
        return Note("caution", text, True, (Link("Heat waves", "guides/heat-waves/"),))
    low, high = figure(Power, answer.loss_w_low), figure(Power, answer.loss_w_high)
    single_w, each = figure(HeaterPower, answer.heater_w), figure(HeaterPower, answer.heater_each_w)
    single = (
        f"one of {single_w} W, or " if answer.heater_count == 2 and answer.heater_w <= 300 else ""
    )
    text = (
        f"It loses {low} to {high} W: {single}{answer.heater_count} heaters of {each} W. "
        "Smaller ones, at both ends, are the common way: one that fails or sticks does less."
    )
    if not lid:
        text += " A lid saves much of it."
    return Note("info", text, True)


def warm_room(room_c: float, water_c: float, lid: bool) -> list[Note]:
    """A room that warms the water to what harms or kills; none where the water is the warmer one.

    Under a ``lid`` next to nothing evaporates, and the water comes to the room's own warmth.
    """
    warm = room_c if lid else room_c - LEAST_COOLS_C
    if water_c >= room_c or standing("temperature_c", warm).side != "high":
        return []
    level = standing("temperature_c", warm).level
    verb = "kills" if level == "deadly" else "harms"
    text = (
        f"In a room of {degrees(room_c)} the water can come to {degrees(warm)}, which {verb} many "
        "animals. Lamp and heater off, cover off, air on, a fan over the surface from a dry stand. Cool "
        "by no more than 1 °C (2 °F) an hour, with no ice."
    )
    links = (Link("Heat waves", "guides/heat-waves/"),)
    return [Note("danger" if level == "deadly" else "caution", text, True, links)]


def power_cut(answer: Warmth, room_c: float, water_c: float) -> list[Note]:
    """What happens without power: air, then how fast it cools, then where it ends."""
    links = (Link("Power cuts", "guides/power-cuts/"),)
    if water_c < room_c:
        return [Note("caution", AIR_IN_WARMTH, True, links)]
    end = standing("temperature_c", room_c)
    cold = end.level != "in-range" and end.side == "low"
    text = AIR_FIRST + falling(answer)
    if cold:
        verb = "kills" if end.level == "deadly" else "harms"
        text += f" In the end it is as cold as the room, {degrees(room_c)}, and that {verb} many animals."
    level: Level = "danger" if cold and reaches_soon(answer) else "caution"
    return [Note(level, text, True, links)]


def falling(answer: Warmth) -> str:
    """How long the fall takes, and what it leads to."""
    if answer.hours_low is None:
        return ""
    fast = figure(HoursAhead, answer.hours_low)
    slow = "" if answer.hours_high is None else figure(HoursAhead, answer.hours_high)
    hours = fast if fast == slow or not slow else f"{fast} to {slow}"
    within = f"{hours} hours"
    if 60 * (answer.hours_high or answer.hours_low) < MOST_MINUTES:
        least = round(60 * answer.hours_low)
        most = round(60 * (answer.hours_high or answer.hours_low))
        within = f"{least} to {most} minutes" if most > least else f"{least} minutes"
    text = f" Without heat it is down to {degrees(answer.after_fall_c)} in about {within}."
    how = standing("temperature_c", answer.after_fall_c)
    if how.side == "low":
        text += f" That {'kills' if how.level == 'deadly' else 'harms'} many fish and shrimp."
    return text


def reaches_soon(answer: Warmth) -> bool:
    """Whether the fall that was asked for itself ends where animals die."""
    how = standing("temperature_c", answer.after_fall_c)
    return answer.hours_low is not None and how.level == "deadly" and how.side == "low"


def sticking(answer: Warmth) -> list[Note]:
    """What a thermostat that sticks would do to the animals."""
    if answer.heater_w == 0:
        return []
    single = too_hot("the one heater", answer.stuck_c)
    smaller = too_hot("one of the smaller ones", answer.stuck_each_c)
    if not single and not smaller:
        text = (
            "A thermostat can stick on, and does so on warm days too. Heaters of these sizes alone would not "
            "bring the water to a harmful warmth."
        )
        return [Note("info", text)]
    warnings = " ".join(part for part in (single, smaller) if part)
    text = f"A thermostat can stick on, on a warm day too. {warnings} "
    text += (
        "A second, separate thermostat that cuts the power guards against it."
        if smaller
        else "That is why smaller ones are better."
    )
    return [Note("caution", text)]


def too_hot(which: str, settled_c: float | None) -> str:
    """A sentence where a heater that sticks would bring water to a harmful warmth; else nothing."""
    if settled_c is not None and round(settled_c) < edge_of("temperature_c", "harmful_high"):
        return ""  # as it is shown, to a whole degree
    warm = "above 45 °C (113 °F)" if settled_c is None else f"up to {figure(Ahead, settled_c)} °C"
    kills = settled_c is None or round(settled_c) >= edge_of("temperature_c", "deadly_high")
    return f"With {which} the water could then reach {warm}, which {'kills' if kills else 'harms'}."


def wiring(answer: Warmth) -> list[Note]:
    """Heaters of so much power are no longer a matter of one socket."""
    if answer.heater_w < LARGE_W:
        return []
    text = (
        "So much power wants an electrician and its own circuit; insulating the tank comes first."
    )
    return [Note("caution", text)]
