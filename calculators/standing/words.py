"""What the standing of a tank says beside its figures: the first step first, then what is not known."""

import re

from calculators.core.result import Note
from calculators.core.wording import DANGER_PAGE, upper
from calculators.science.animals.animal_table import ANIMALS
from calculators.science.animals.animal_warmth import warmth_step
from calculators.science.animals.reading_lines import standing
from calculators.science.animals.reading_steps import (
    STEPS,
    TAPS_NITRATE,
    asked_beside_ammonia,
    asked_for,
    change_for,
    percent_for,
    step_words,
)
from calculators.science.shelf.contradictions import way_out_words
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.freshest import figure_now
from calculators.science.shelf.harmful_readings import (
    AMMONIA,
    NITRITE,
    ReadingOutside,
    ammonia_water,
)
from calculators.science.shelf.latest import Latest
from calculators.science.shelf.learned import learned_sentences
from calculators.science.shelf.recorded_plants import plants
from calculators.science.shelf.shelf_tank import TANK_FIELDS, TapWater
from calculators.science.shelf.tank_state import TankState
from calculators.science.shelf.tank_verdict import LEVEL, shown_ammonia
from calculators.science.water.careful_change import WaterForChange, careful_change, with_care
from calculators.science.water.nitrate_of_tap import NITRATE, change_by_tap
from calculators.science.water.readings_fit import READ_AGAIN, fit_together, misfit_words
from calculators.science.water.unread import WARM_C
from calculators.standing.nitrogen_outlook import WeeksAhead
from calculators.standing.outlook_notes import harm_ahead, outlook_note

MOST_BLANKS = 6
BESIDE_AMMONIA = ("nitrite_mg_n_l", "ph", "kh_dh", "temperature_c")
OWN_FIGURES = ("temperature_c", "ph", "gh_dh", "kh_dh")
NOT_SAID = ("id", "name", "demo", "place", "length_cm", "width_cm", "water_cm", "dli_mol",
            "entered", "soil_depth_cm", "cap_depth_cm", "lamp", "filter")  # fmt: skip
FEEDING = re.compile("stop feeding|feed nothing", re.IGNORECASE)
STOP = "Stop feeding for two days, take out what is dead or rots, and test daily."
AGAIN_FIRST = "Test it again today. If it still reads so: "
CHEAP = "Feeding is never due: animals that are hungry are safer than food that rots."


def notes(stand: TankState, ahead: WeeksAhead) -> list[Note]:
    """The notes of an answer, what matters most first."""
    found = [
        sentence_note(stand),
        *steps(stand),
        *(Note("caution", way_out_words(one), True) for one in stand.judged.torn),
        *do_not_fit(stand),
        *own_figures(stand),
        *harm_ahead(stand, ahead),
        *old_readings(stand),
    ]
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
            filter(
                None,
                [
                    *(step_of(harm, stand) for harm in deadly),
                    change_now(stand),
                ],
            )
        )
        hour = stand.judged.first_hour
        first = hour[:1] if FEEDING.search(own) else hour  # said once
        again = AGAIN_FIRST if all(harm.reading.is_old for harm in deadly) else ""
        found.append(Note("danger", f"{again}{' '.join(first)} {own}", True))
    if shown_ammonia(stand.judged.readings) and not any(
        harm.acts_at_once or harm.reading.what == AMMONIA for harm in stand.judged.harms
    ):
        found.append(Note("caution", careful_change(water_of(stand)) or STOP, True))
    for harm in (one for one in stand.judged.harms if not one.is_deadly):
        said = f"{upper(harm.words())}."
        text = "" if said == stand.judged.sentence else f"{said} "
        found += [Note("caution", f"{text}{step_of(harm, stand)}".strip(), True)]
    return [note for note in found if note.text]


def do_not_fit(stand: TankState) -> list[Note]:
    """That the pH and the carbonate hardness that hold now cannot be of one water."""
    water = water_of(stand)
    at = WARM_C if water.temperature_c is None else water.temperature_c
    if water.ph is None or water.kh_dh is None or fit_together(water.ph, water.kh_dh, at):
        return []
    return [Note("caution", f"{misfit_words(water.ph, water.kh_dh, at)} {READ_AGAIN}", True)]


def own_figures(stand: TankState) -> list[Note]:
    """Figures that stand with the tank and were never read, where they harm or kill if they still hold."""
    found = []
    for what in OWN_FIGURES:
        value = getattr(stand.tank, what)
        if value is None or what in stand.judged.readings:
            continue
        level = standing(what, value).level
        if level != "in-range":
            does = "can kill" if level == "deadly" else "harms many animals over time"
            one = READINGS[what]
            text = f"The tank says {one.name} of {one.words(value)}, which {does}. Read it today."
            found.append(Note("danger" if level == "deadly" else "caution", text, True))
    return found


def step_of(harm: ReadingOutside, stand: TankState) -> str:
    """What a reading asks for, but for the change of water."""
    if harm.reading.what == AMMONIA:
        said = any(one.is_deadly for one in stand.judged.harms) and change_now(stand)
        careful = STOP if said else careful_change(water_of(stand)) or STOP
        return careful if not harm.is_deadly else asked_for(BESIDE_AMMONIA, read_since(harm, stand))
    if harm.kind:
        return warmth_step(ANIMALS[harm.kind], harm.value)
    if harm.reading.what == NITRITE and not harm.is_deadly:
        others = any(  # whose own step has the change for both
            one.is_deadly or one.reading.what == AMMONIA for one in stand.judged.harms
        )
        return STOP if others else f"{STOP} {change_words(stand, [harm])}"
    place = (harm.reading.what, harm.side)
    return step_words(place, harm.is_deadly, read_since(harm, stand)) if place in STEPS else ""


def read_since(harm: ReadingOutside, stand: TankState) -> list[str]:
    """The readings, by key, that are no older than the one that harms."""
    age = harm.reading.age_days
    known = [what for what, one in stand.judged.readings.items() if one.age_days <= age]
    tap = stand.tank.tap
    return known if tap is None or tap.nitrate_mg_l is None else [*known, TAPS_NITRATE]


def change_now(stand: TankState) -> str:
    """One change of water for all that asks for a step now; empty where none of it asks for a change."""
    return change_words(stand, [one for one in stand.judged.harms if one.acts_at_once])


def change_words(stand: TankState, acting: list[ReadingOutside]) -> str:
    """The change of water that readings which ask for a step now allow; empty where they ask for none."""
    outside = [(harm.reading.what, harm.side) for harm in acting]
    change = change_for(outside)
    water = water_of(stand)
    careful = with_care(change, water, percent_for(outside)) if change else ""
    kills = [harm.reading.what for harm in acting]
    return change_by_tap(careful, kills, water.tap_nitrate_mg_l, water.nitrate_mg_l)


def water_of(stand: TankState) -> WaterForChange:
    """What is known of the water that decides how it may be changed; an old test of ammonia is none."""
    readings, tank = stand.judged.readings, stand.tank
    ammonia, water = readings.get(AMMONIA), ammonia_water(tank, readings)
    nitrate, tap = readings.get(NITRATE), tank.tap or TapWater()
    acting = [harm for harm in stand.judged.harms if harm.acts_at_once]
    return WaterForChange(
        fresh(ammonia) if ammonia and not any(ammonia.values) else ammonia and ammonia.value,
        water.ph,
        figure_now("kh_dh", tank, readings),
        water.temperature_c,
        tap.ph,
        tap.kh_dh,
        figure_now("gh_dh", tank, readings),
        tap.gh_dh,
        nitrate_mg_l=nitrate.value if nitrate else None,
        tap_nitrate_mg_l=tap.nitrate_mg_l,
        asked=asked_beside_ammonia(
            [(harm.reading.what, harm.side) for harm in acting],
            [harm.reading.what for harm in acting if harm.is_deadly],
        ),
    )


def fresh(reading: Latest) -> float | None:
    """A reading's value while it is of use."""
    return None if reading.is_old else reading.value


def old_readings(stand: TankState) -> list[Note]:
    """The readings that are older than they are of use, in one line."""
    old = [one for one in stand.judged.readings.values() if one.is_old]
    if not old:
        return []
    said = ", ".join(f"{READINGS[one.what].name} {one.of_when}" for one in old)
    return [Note("info", f"Older than such a reading is of use: {said}.")]


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
    if stand.log.later:
        many = len(stand.log.later)
        said = "One entry is" if many == 1 else f"{many} entries are"
        why = "of a later day. What harms or died counts, the rest does not."
        found.append(Note("caution", f"{said} {why}"))
    if tank.demo:
        found.append(Note("info", "This tank is invented, to try things on."))
    return found
