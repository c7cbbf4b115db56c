"""How to change water in this tank, where the usual large change could do harm.

A problem's own first action may say "change half the water". That holds in most tanks; where ammonia
shows or pH is low it can turn ammonium into toxic ammonia, and then the words here stand in its place.
"""

from calculators.diagnose.case_read import Case
from calculators.diagnose.problem_table import CAUSES, FINDINGS, upper_edge
from calculators.diagnose.triage import readings_of
from calculators.science.animals.reading_steps import NITRITE, acting, asked_beside_ammonia
from calculators.science.water.asked_change import AskedChange
from calculators.science.water.careful_change import (
    A_TENTH,
    TEST_BEFORE,
    WaterForChange,
    careful_change,
    lower,
    test_first,
)
from calculators.science.water.unread import HIGHEST_PH

NITRITE_SHOWS = "nitrite-shows"
AT_THIS_PH = "At this pH test ammonia before any large change of water."
TESTS_BEFORE = "test ammonia before you change"
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
    """The water by the figures given, or by the bands that were said to be true."""
    readings: dict[str, float] = {}
    for key in case.present():
        if key in TAKEN_AS:
            reading, value = TAKEN_AS[key]
            readings[reading] = value
    for reading in WaterForChange._fields:
        answer = case.answers.get(f"readings.{reading}")
        if answer and answer.value is not None:
            readings[reading] = answer.value
    return WaterForChange(**readings, asked=asked_by(case))


def asked_by(case: Case) -> AskedChange | None:
    """The change of water that nitrite or nitrate asks for, by the figures or by the band of nitrite."""
    outside = acting(readings_of(case))
    if NITRITE_SHOWS in case.present() and NITRITE not in outside:
        outside.append(NITRITE)
    return asked_beside_ammonia(outside)


def safe_action(cause: str, water: WaterForChange) -> str:
    """A problem's first action, its change of water put as this tank allows it.

    Where nothing is known of ammonia, the action itself says what to do if it shows; in acid water the test
    is asked for before all else.
    """
    record = CAUSES[cause]
    if record.besides is None:
        return record.first_action
    careful = careful_change(water)
    if careful:
        parts = [careful, record.besides]  # food and air come before a change that nitrite asks for
        return " ".join(parts if water.asked is None else reversed(parts))
    action: str = record.first_action
    if test_first(water) and TESTS_BEFORE not in action:
        return f"{AT_THIS_PH} {action}"
    if water.ammonia_mg_n_l is not None and "ammonia" in action:
        return f"{action} {TEST_IS_DONE}"
    return action


def slow_action(cause: str, water: WaterForChange) -> str:
    """A problem's first action in water that holds no pH, where a large change would do harm by itself."""
    record = CAUSES[cause]
    if record.besides is None:
        return record.first_action
    careful = careful_change(water)
    if careful:
        return f"{careful} {record.besides}"
    tested = water.ammonia_mg_n_l is not None
    return f"{record.besides} {A_TENTH if tested else TEST_BEFORE + lower(A_TENTH)}"


def is_cold(case: Case) -> bool:
    """Whether the water, or the room with no heater, was said to be cold."""
    return not case.present().isdisjoint({"water-cold", "cool-room"})


def animals_suffer(case: Case) -> bool:
    """Whether something seen on the animals means danger."""
    return any(FINDINGS[key].danger and FINDINGS[key].where == "animals" for key in case.present())
