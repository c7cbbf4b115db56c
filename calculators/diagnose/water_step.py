"""How to change water in this tank, where the usual large change could do harm.

A problem's own first action may say "change half the water". That holds in most tanks; where ammonia
shows or pH is low it can turn ammonium into toxic ammonia, and then the words here stand in its place.
"""

import re

from calculators.diagnose.case_read import Case
from calculators.diagnose.problem_table import CAUSES, FINDINGS, ChangeOrdered, upper_edge
from calculators.diagnose.triage import readings_of
from calculators.science.animals.reading_steps import (
    NITRITE,
    SHARES,
    acting,
    asked_beside_ammonia,
    deadly,
)
from calculators.science.animals.toxic_lines import ammonia_standing
from calculators.science.water.asked_change import AskedChange
from calculators.science.water.careful_change import (
    A_TENTH,
    TEST_BEFORE,
    WaterForChange,
    careful_change,
    lower,
    test_first,
    treated,
)
from calculators.science.water.first_change import daily_rise, hardness_jump
from calculators.science.water.nitrate_of_tap import AMMONIA, NITRATE, change_by_tap, tap_is_lower
from calculators.science.water.unread import HIGHEST_PH

NITRITE_SHOWS = "nitrite-shows"
AT_THIS_PH = "At this pH test ammonia before any large change of water."
TESTS_BEFORE = "test ammonia before you change"
SENTENCE = re.compile(r"(?<=[.]) (?=[A-Z])")
LEANS_ON_THE_LAST = re.compile(r"If (?!ammonia|no ammonia|animals)|Where it ")
POISON = "what is in the water"
# A question of a record, and the words for the case that its answer is no; left out once the tap was read.
TEST_THE_TAP = "test the tap. Where it reads lower than the tank, "
ELSE_OTHER_WATER = "; where it does not, use other water"
# What a first action of a record orders, in percent, by its word there.
ORDERED: dict[str, float] = {
    "half": 50.0,
    **{str(name): share for name, (share, _) in SHARES.items()},
}
TEST_IS_DONE = "Your reading of ammonia shows none: that test is done."
# What a band stands for where no figure was given: the worse end of what it leaves open; judgement.
TAKEN_AS = {
    "ammonia-none": ("ammonia_mg_n_l", 0.0),
    "ammonia-trace": ("ammonia_mg_n_l", upper_edge("ammonia-trace")),
    "ammonia-shows": ("ammonia_mg_n_l", 3.0),
    "ph-low": ("ph", upper_edge("ph-low")),
    "ph-high": ("ph", HIGHEST_PH),
    "kh-near-zero": ("kh_dh", 0.0),
}


def water_of(case: Case) -> WaterForChange:
    """The water by the figures given, or by the bands that were said to be true, and the new water."""
    readings: dict[str, float] = {}
    for key in case.present():
        if key in TAKEN_AS:
            reading, value = TAKEN_AS[key]
            readings[reading] = value
    for reading in WaterForChange._fields:
        answer = case.answers.get(f"readings.{reading}")
        if answer and answer.value is not None:
            readings[reading] = answer.value
    return WaterForChange(**readings, **case.tap._asdict(), asked=asked_by(case))


def asked_by(case: Case) -> AskedChange | None:
    """The change of water that nitrite or nitrate asks for, by the figures or by the band of nitrite."""
    readings = readings_of(case)
    outside = acting(readings)
    if NITRITE_SHOWS in case.present() and NITRITE not in outside:
        outside.append(NITRITE)
    return asked_beside_ammonia(outside, [reading for reading, _ in deadly(readings)])


def safe_action(cause: str, water: WaterForChange) -> str:
    """A problem's first action, its change of water put as this tank and its tap allow it.

    Where nothing is known of ammonia, the action itself says what to do if it shows; in acid water the test
    is asked for before all else.
    """
    record = CAUSES[cause]
    if record.besides is None:
        return record.first_action
    careful = careful_change(water)
    if careful:
        careful = by_nitrate(careful, water)
        parts = [careful, record.besides]  # food and air come before a change that nitrite asks for
        return " ".join(parts if water.asked is None else reversed(parts))
    action = with_this_tap(cause, water)
    if test_first(water) and TESTS_BEFORE not in action:
        return f"{AT_THIS_PH} {action}"
    if water.ammonia_mg_n_l is not None and "ammonia" in action:
        return f"{action} {TEST_IS_DONE}"
    return action


def with_this_tap(cause: str, water: WaterForChange) -> str:
    """The words of a problem's first action, with what this tap's nitrate, hardness and ammonia add."""
    record = CAUSES[cause]
    action: str = record.first_action
    tap, tank = water.tap_nitrate_mg_l, water.nitrate_mg_l
    if TEST_THE_TAP in action and tap is not None and tank is not None:
        if tap >= tank:
            return f"{record.besides} {change_by_tap(action, [NITRATE], tap, tank)}"
        action = action.replace(TEST_THE_TAP, "").replace(ELSE_OTHER_WATER, "")
        action = f"{action} {tap_is_lower(tap)}"
    if record.slowly:
        kh, tap_kh = water.kh_dh, water.tap_kh_dh
        before = "" if kh is None or tap_kh is None else daily_rise(kh, tap_kh)
    else:
        poison = POISON if record.urgency == "now" else ""
        killer = water.asked.killer if water.asked else poison
        percent = ORDERED[record.change.share] if record.change else 0.0
        before = hardness_jump(percent, water.gaps, killer)
    return treated(by_nitrate(before_the_change(action, before, record.change), water), water)


def before_the_change(action: str, words: str, change: ChangeOrdered | None) -> str:
    """An action with some words before the sentence that orders a change, since a reader may stop there.

    A condition stays beside the test that it hangs on. Where it orders none, they stand at its end.
    """
    if not words:
        return action
    sentences = SENTENCE.split(action)
    place = next(
        (one for one, said in enumerate(sentences) if change and change.words in said),
        len(sentences),
    )
    while 0 < place < len(sentences) and LEANS_ON_THE_LAST.match(sentences[place]):
        place -= 1
    return " ".join([*sentences[:place], words, *sentences[place:]])


def by_nitrate(change: str, water: WaterForChange) -> str:
    """A change of water in words, by the nitrate of this tap and of the tank."""
    return change_by_tap(change, kills_of(water), water.tap_nitrate_mg_l, water.nitrate_mg_l)


def kills_of(water: WaterForChange) -> list[str]:
    """The readings, by key, that a change of this water is for."""
    named = (("nitrite_mg_n_l", "nitrite"), (NITRATE, "nitrate"))
    words = water.asked.reading.split(" and ") if water.asked else []
    found = [key for key, name in named if name in words]
    total, ph, warmth = water.ammonia_mg_n_l, water.ph, water.temperature_c
    kills = total and ammonia_standing(total, ph, warmth).level == "deadly"
    return [*found, AMMONIA] if kills else found


def slow_action(cause: str, water: WaterForChange) -> str:
    """A problem's first action in water that holds no pH, where a large change would do harm by itself."""
    record = CAUSES[cause]
    if record.besides is None:
        return record.first_action
    careful = careful_change(water)
    if careful:
        return f"{by_nitrate(careful, water)} {record.besides}"
    tested = water.ammonia_mg_n_l is not None
    jump = hardness_jump(SHARES["tenth"][0], water.gaps)
    tenth = f"{jump} {A_TENTH if tested else TEST_BEFORE + lower(A_TENTH)}".strip()
    return f"{record.besides} {treated(by_nitrate(tenth, water), water)}"


def is_cold(case: Case) -> bool:
    """Whether the water, or the room with no heater, was said to be cold."""
    return not case.present().isdisjoint({"water-cold", "cool-room"})


def animals_suffer(case: Case) -> bool:
    """Whether something seen on the animals means danger."""
    return any(FINDINGS[key].danger and FINDINGS[key].where == "animals" for key in case.present())
