"""The verdict on a stock of animals in words: too many, many, or no line reached, with the figure why."""

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.science.animals.burden import Burdens

MOST_MINUTES, FEW_MINUTES = 120, 5
NO_PERMISSION = "That is no permission for more."


def burden_notes(loads: Burdens) -> list[Note]:
    """The verdict first, with what to do for animals that are in it and for a keeper without any."""
    if loads.is_overstocked:
        return [overstocked(loads)]
    if loads.is_heavy:
        return [heavy(loads)]
    load = show(loads.ammonia.load_mg_n_l_day, 2)
    text = (
        f"No line of ours is reached: {load} mg of nitrogen a litre and day, and oxygen near "
        f"{show(loads.air.still, 2)} mg/L even with a still surface, plants and bacteria left out. "
        f"{NO_PERMISSION}"
    )
    return [Note("info", text, first=True)]


def overstocked(loads: Burdens) -> Note:
    """Too many, and why."""
    why = [air_words(loads)] if loads.short_of_air else []
    why += [ammonia_words(loads)] if loads.too_much_ammonia else []
    text = (
        f"Overstocked. {' '.join(why)} Animals already in it: keep the surface moving day and night, "
        "feed little, test ammonia today and every day, have a battery air pump ready, and find "
        "other homes or a larger tank for some. No animals yet: put in far fewer."
    )
    return Note("danger", text, first=True)


def heavy(loads: Burdens) -> Note:
    """Many, and why."""
    why = []
    if loads.air.standing_still.level != "in-range":
        why.append(air_words(loads))
    if loads.ammonia.harms_within(24) or loads.ammonia.films_may_fail:
        why.append(ammonia_words(loads))
    text = (
        f"Heavy load. {' '.join(why) or air_words(loads)} Animals already in it: keep the surface moving, "
        "test ammonia each week, and have a battery air pump ready for a power cut. No animals yet: put in "
        "fewer, a few at a time."
    )
    return Note("caution", text, first=True)


def air_words(loads: Burdens) -> str:
    """Oxygen: how long it lasts, and where it settles."""
    return (
        f"At rest they empty saturated water of oxygen in {in_hours(loads.hours_to_empty or 0)} if no air "
        f"comes in, and are in trouble after {in_hours(loads.hours_to_harm or 0)}; a still surface "
        f"holds about {show(loads.air.still, 2)} mg/L, a moving one {show(loads.air.moved, 2)}."
    )


def ammonia_words(loads: Burdens) -> str:
    """Ammonia: the load, and how long the tank stands without its filter."""
    load, hours = loads.ammonia.load_mg_n_l_day, loads.ammonia.hours_to_harm or 0
    return (
        f"They give off {show(load, 2)} mg of nitrogen a litre and day as ammonia, and without a filter "
        f"it harms after {in_hours(hours)}."
    )


def in_hours(hours: float) -> str:
    """A time in words: in minutes where it is less than two hours."""
    minutes = round(60 * hours)
    if minutes >= MOST_MINUTES:
        return f"{show(hours, 2)} hours"
    return "a few minutes" if minutes < FEW_MINUTES else f"{minutes} minutes"
