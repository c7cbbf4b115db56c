"""The weeks ahead in notes: what may come that harms, the forecast, and which reading would tell more."""

from datetime import date, timedelta

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.science.shelf.engine_tank import NITRATE
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.harmful_readings import AMMONIA, NITRITE, ammonia_water
from calculators.science.shelf.tank_state import TankState
from calculators.standing.nitrogen_outlook import NoOutlook, WeeksAhead
from calculators.standing.outlook_words import BY_BAND, BY_FIT, harm_sentence, reaches
from calculators.standing.telling_reading import TellingReading

FITTED, CANNOT_TELL = "fitted to your readings", "not fitted: your readings cannot tell yet"
CONTRADICT = (
    "not fitted: your readings do not go with the tank's figures. Look at its feed, the weight of its "
    "plants and the nitrate of the new water"
)
# What of the weeks ahead is said before the figures: what is toxic at once already where the band reaches it.
SURE_ENOUGH = {AMMONIA: (BY_FIT, BY_BAND), NITRITE: (BY_FIT, BY_BAND), NITRATE: (BY_FIT,)}


def harm_ahead(stand: TankState, ahead: WeeksAhead) -> list[Note]:
    """What the fitted weeks may bring that harms, before the figures; not what a kit alone leaves open."""
    if ahead.weeks is None:
        return []
    water = ammonia_water(stand.tank, stand.judged.readings)
    harmful = {harm.reading.what for harm in stand.judged.harms}  # said with their first step
    coming = [one for one in reaches(ahead.weeks, water)
              if one.by in SURE_ENOUGH[one.what] and one.what not in harmful]  # fmt: skip
    return [Note("caution", harm_sentence(one, water), True) for one in coming]


def outlook_note(found: WeeksAhead, today: date) -> Note:
    """The forecast in a sentence, or what it lacks; where nothing was fitted, which reading would tell."""
    ahead = found.outlook
    if isinstance(ahead, NoOutlook):
        return Note("info", f"No forecast: it needs {', '.join(ahead.missing)}.")
    low, middle, high = (
        show_number(end, 2) for end in (ahead.low, ahead.nitrate_in_28_days_mg_l, ahead.high)
    )
    how = FITTED if ahead.fitted else CONTRADICT if found.contradicts else CANNOT_TELL
    text = f"In four weeks nitrate is about {middle} mg/L, {low} to {high}, {how}."
    if ahead.uptake_times is not None:
        times = show_number(ahead.uptake_times, 2)
        text += f" By them your plants take up {times} times what their growth promises."
    if ahead.days_to_shortage is not None:
        days = show_number(ahead.days_to_shortage, 2)
        text += f" The hungriest plants run short in about {days} days."
    return Note("info", text + telling_words(found.telling, today))


def telling_words(telling: TellingReading | None, today: date) -> str:
    """Which reading, on which day, would tell."""
    if telling is None:
        return ""
    step = READINGS[NITRATE].words(telling.kit_step)
    if telling.in_days is None:
        return f" A kit with a finer step than {step} would tell."
    on = today + timedelta(telling.in_days)
    day = f"{on.day} {on:%B}"
    if telling.readings == 1:
        return f" Read nitrate on {day}: by then the ways it may go lie further apart than {step}."
    return f" Read nitrate {telling.readings} more times, the last on {day}, and they can tell."
