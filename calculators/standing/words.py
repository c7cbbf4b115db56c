"""What the standing of a tank says beside its figures: the first step first, then what is not known."""

import re
from datetime import date, timedelta

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.core.wording import DANGER_PAGE, upper
from calculators.science.animals.reading_steps import STEPS, change_for
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.freshest import figure_now
from calculators.science.shelf.harm import AMMONIA, NITRITE, ReadingOutside, ammonia_water
from calculators.science.shelf.latest import Latest, ago
from calculators.science.shelf.learned import learned_sentences
from calculators.science.shelf.plants import plants
from calculators.science.shelf.tank import TANK_FIELDS
from calculators.science.shelf.tank_state import TankState
from calculators.science.shelf.verdict import FIRST_HOUR, LEVEL
from calculators.science.water.careful_change import WaterForChange, careful_change, with_care
from calculators.standing.nitrogen_outlook import NITRATE, Ahead, NoOutlook
from calculators.standing.outlook_words import BY_BAND, BY_FIT, harm_sentence, reaches
from calculators.standing.telling_reading import TellingReading

MOST_BLANKS = 6
FITTED, CANNOT_TELL = "fitted to your readings", "not fitted: your readings cannot tell yet"
CONTRADICT = (
    "not fitted: your readings do not go with the tank's figures. Look at its feed, the weight of its "
    "plants and the nitrate of the new water"
)
# What of the weeks ahead is said before the figures: what is toxic at once already where the band reaches it.
SURE_ENOUGH = {AMMONIA: (BY_FIT, BY_BAND), NITRITE: (BY_FIT, BY_BAND), NITRATE: (BY_FIT,)}
NOT_SAID = ("id", "name", "demo", "place", "length_cm", "width_cm", "water_cm", "dli_mol",
            "entered", "soil_depth_cm", "cap_depth_cm", "lamp", "filter")  # fmt: skip
FEEDING = re.compile("stop feeding|feed nothing", re.IGNORECASE)
STOP = "Stop feeding for two days, take out what is dead or rots, and test daily."
AGAIN_FIRST = "Test it again today. If it still reads so: "
CHEAP = "Feeding is never due: animals that are hungry are safer than food that rots."


def notes(stand: TankState, ahead: Ahead) -> list[Note]:
    """The notes of an answer, what matters most first."""
    found = [sentence_note(stand), *steps(stand), *harm_ahead(stand, ahead), *old_readings(stand)]
    test = stand.next_test
    found.append(Note("info", f"Test next: {READINGS[test.what].name}, {test.why}."))
    found += [Note("info", text) for text in learned_sentences(stand.tank, stand.log)]
    found.append(outlook_note(ahead, stand.log.today))
    found += doubts(stand)
    return [*found, Note("info", CHEAP)]


def sentence_note(stand: TankState) -> Note:
    """The verdict's sentence, with the way to the danger page where animals may be in danger."""
    verdict = stand.judged.verdict
    deadly = any(harm.is_deadly for harm in stand.judged.harms)
    links = (DANGER_PAGE,) if verdict == "act" or deadly or stand.judged.deaths.asks else ()
    return Note(LEVEL[verdict], stand.judged.sentence, True, links)


def steps(stand: TankState) -> list[Note]:
    """What to do about each reading that harms or kills, and one change of water for all of them."""
    deadly = [harm for harm in stand.judged.harms if harm.is_deadly]
    found = []
    if deadly:
        own = " ".join(
            filter(None, [*(step_of(harm, stand) for harm in deadly), change_words(stand, deadly)])
        )
        first = FIRST_HOUR[:1] if FEEDING.search(own) else FIRST_HOUR  # said once
        again = AGAIN_FIRST if all(harm.reading.is_old for harm in deadly) else ""
        found.append(Note("danger", f"{again}{' '.join(first)} {own}", True))
    for harm in (one for one in stand.judged.harms if not one.is_deadly):
        said = f"{upper(harm.words())}."
        text = "" if said == stand.judged.sentence else f"{said} "
        found += [Note("caution", f"{text}{step_of(harm, stand)}".strip(), True)]
    return [note for note in found if note.text]


def step_of(harm: ReadingOutside, stand: TankState) -> str:
    """What a reading asks for, but for the change of water."""
    if harm.reading.what == AMMONIA:
        careful = careful_change(water_of(stand)) or STOP
        return careful if not harm.is_deadly else "Add air, and test the other readings."
    if harm.reading.what == NITRITE and not harm.is_deadly:
        return STOP
    step = STEPS.get((harm.reading.what, harm.side))
    if step is None:
        return ""
    return step.deadly if harm.is_deadly else step.harmful


def change_words(stand: TankState, deadly: list[ReadingOutside]) -> str:
    """The change of water that the deadly readings allow; empty where they ask for none."""
    change = change_for([(harm.reading.what, harm.side) for harm in deadly])
    return with_care(change, water_of(stand)) if change else ""


def water_of(stand: TankState) -> WaterForChange:
    """What is known of the water that decides how it may be changed; an old test of ammonia is none."""
    readings, tank = stand.judged.readings, stand.tank
    ammonia, water = readings.get(AMMONIA), ammonia_water(tank, readings)
    return WaterForChange(
        fresh(ammonia) if ammonia and not any(ammonia.values) else ammonia and ammonia.value,
        water.ph,
        figure_now("kh_dh", tank, readings),
        water.temperature_c,
        tank.tap.ph if tank.tap else None,
        tank.tap.kh_dh if tank.tap else None,
    )


def fresh(reading: Latest) -> float | None:
    """A reading's value while it is of use."""
    return None if reading.is_old else reading.value


def old_readings(stand: TankState) -> list[Note]:
    """The readings that are older than they are of use, in one line."""
    old = [one for one in stand.judged.readings.values() if one.is_old]
    if not old:
        return []
    said = ", ".join(f"{READINGS[one.what].name} {ago(one.age_days)}" for one in old)
    return [Note("info", f"Older than such a reading is of use: {said}.")]


def harm_ahead(stand: TankState, ahead: Ahead) -> list[Note]:
    """What the fitted weeks may bring that harms, before the figures; not what a kit alone leaves open."""
    if ahead.weeks is None:
        return []
    water = ammonia_water(stand.tank, stand.judged.readings)
    harmful = {harm.reading.what for harm in stand.judged.harms}  # said with their first step
    coming = [one for one in reaches(ahead.weeks, water)
              if one.by in SURE_ENOUGH[one.what] and one.what not in harmful]  # fmt: skip
    return [Note("caution", harm_sentence(one, water), True) for one in coming]


def outlook_note(found: Ahead, today: date) -> Note:
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
    if telling.count == 1:
        return f" Read nitrate on {day}: by then the ways it may go lie further apart than {step}."
    return f" Read nitrate {telling.count} more times, the last on {day}, and they can tell."


def doubts(stand: TankState) -> list[Note]:
    """What the tank does not say, what the book does not know, and what was left out."""
    tank, found = stand.tank, [Note("caution", text) for text in stand.doubts]
    blanks = [field.label if field.label == "pH" else f"{field.label[:1].lower()}{field.label[1:]}"
              for field in TANK_FIELDS
              if field.key not in NOT_SAID and getattr(tank, field.key) is None]  # fmt: skip
    if blanks:
        more = f" and {len(blanks) - MOST_BLANKS} more" if len(blanks) > MOST_BLANKS else ""
        found.append(Note("info", f"Not filled in: {', '.join(blanks[:MOST_BLANKS])}{more}."))
    unknown = [held.plant for held in tank.plants or [] if held.plant not in plants()]
    if unknown:
        found.append(Note("info", f"Not in this book: {', '.join(unknown)}."))
    if stand.log.left_out:
        found.append(
            Note("caution", f"{stand.log.left_out} entries are of a later day and do not count.")
        )
    if tank.demo:
        found.append(Note("info", "This tank is invented, to try things on."))
    return found
