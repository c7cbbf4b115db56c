"""How to change water in this tank, where the usual large change could do harm.

A problem's own first action may say "change half the water". That holds in most tanks; where ammonia
shows or pH is low it can turn ammonium into toxic ammonia, and then the words here stand in its place.
"""

from typing import NamedTuple

from calculators.diagnose.case_read import Case
from calculators.diagnose.problem_table import CAUSES, FINDINGS, upper_edge
from calculators.science.animals.reading_lines import standing
from calculators.science.water.changing_water import first_step_for_ammonia
from calculators.science.water.unread import HIGHEST_PH

NO_AMMONIA_MG_N_L = upper_edge("ammonia-none")
# What a band stands for where no figure was given: the worse end of what it leaves open; judgement.
TAKEN_AS = {
    "ammonia-none": ("ammonia_mg_n_l", 0.0),
    "ammonia-trace": ("ammonia_mg_n_l", upper_edge("ammonia-trace")),
    "ammonia-shows": ("ammonia_mg_n_l", 3.0),
    "ph-low": ("ph", upper_edge("ph-low")),
    "ph-high": ("ph", HIGHEST_PH),
    "kh-near-zero": ("kh_dh", 0.0),
}
ACID_PH = 7.5  # below it a change with common tap water can free more ammonia than it takes out, by the model

SAME_WATER = "dechlorinated water within 2 °C (4 °F) of the tank’s"
A_TENTH = (
    f"Change a tenth of the water, slowly, with {SAME_WATER}; then read the pH, and wait some hours "
    "before the next tenth: a quick rise harms as well."
)
TEST_BEFORE = (
    "Test ammonia before you change any water. If it shows, open the calculator for changing water with "
    "ammonia first. If it reads zero: "
)
TEST_FIRST = (
    "At this pH test ammonia before a large change; it takes five minutes. If it shows, a change can turn "
    "it toxic: open the calculator for changing water with ammonia first. If it reads zero: "
)
IF_IN_DOUBT = (
    f" But if your pH is under {ACID_PH}, or the new water is harder than the tank’s, test ammonia first: "
    "where it shows, a change can turn it toxic."
)
IF_HARDER = (
    " If the new water is harder than the tank’s, test ammonia first: where it shows, a change can make "
    "it worse."
)


class WaterForChange(NamedTuple):
    """What is known of the water that decides how it may be changed; None where it is not."""

    ammonia_mg_n_l: float | None = None
    ph: float | None = None
    kh_dh: float | None = None
    temperature_c: float | None = None


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
    return WaterForChange(**readings)


def shows_ammonia(water: WaterForChange) -> bool:
    """Whether a reading or a band says that there is ammonia."""
    return water.ammonia_mg_n_l is not None and water.ammonia_mg_n_l > NO_AMMONIA_MG_N_L


def careful_change(water: WaterForChange) -> str | None:
    """The change of water that these readings allow; None where the usual one does no harm."""
    if water.ammonia_mg_n_l is not None and shows_ammonia(water):
        return first_step_for_ammonia(
            water.ammonia_mg_n_l, water.ph, water.kh_dh, water.temperature_c
        )
    if water.ph is not None and standing("ph", water.ph).side == "low":
        return A_TENTH if water.ammonia_mg_n_l is not None else TEST_BEFORE + A_TENTH
    return None


def test_first(water: WaterForChange) -> bool:
    """Whether ammonia, of which nothing is known, must be read before a large change."""
    return water.ammonia_mg_n_l is None and water.ph is not None and water.ph < ACID_PH


def with_care(change: str, water: WaterForChange) -> str:
    """A change of water in words, as these readings allow it."""
    careful = careful_change(water)
    if careful:
        return careful
    if test_first(water):
        return TEST_FIRST + change[:1].lower() + change[1:]
    if water.ammonia_mg_n_l is not None:
        return change
    return change + (IF_IN_DOUBT if water.ph is None else IF_HARDER)


def safe_action(cause: str, water: WaterForChange) -> str:
    """A problem's first action, its change of water put as this tank allows it.

    Where nothing is known of ammonia, the action itself says what to do if it shows.
    """
    record = CAUSES[cause]
    if record.besides is None:
        return record.first_action
    careful = careful_change(water)
    return f"{careful} {record.besides}" if careful else record.first_action


def is_cold(case: Case) -> bool:
    """Whether the water, or the room with no heater, was said to be cold."""
    return not case.present().isdisjoint({"water-cold", "cool-room"})


def animals_suffer(case: Case) -> bool:
    """Whether something seen on the animals means danger."""
    return any(FINDINGS[key].danger and FINDINGS[key].where == "animals" for key in case.present())
