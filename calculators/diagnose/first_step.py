"""What to do first: a reading that kills, then a cause that endangers animals, then leaves."""

from collections.abc import Mapping
from typing import NamedTuple

from calculators.diagnose.case_read import Case
from calculators.diagnose.likelihood import ODDS
from calculators.diagnose.problem_table import CAUSES, question_of
from calculators.diagnose.reading_steps import CHANGES, STEPS, Outside, change_for, deadly, harmful
from calculators.diagnose.triage import ENOUGH, fair_urgent, in_danger
from calculators.diagnose.water_step import (
    animals_suffer,
    is_cold,
    safe_action,
    shows_ammonia,
    water_of,
    with_care,
)
from calculators.diagnose.words import (
    AIR_FIRST,
    CHANGE_FIRST,
    CHECK_THE_HEATER,
    LOOK_FIRST,
    LOOK_TOO,
    THEN_TEST,
)

OWN_PROBLEM = {
    "ammonia_mg_n_l",
    "nitrite_mg_n_l",
}  # readings that have a problem's page of their own


class Known(NamedTuple):
    """What the first step is chosen by."""

    case: Case
    chances: Mapping[str, float]
    named: tuple[str, ...]
    readings: Mapping[str, float | None]
    urgent: bool
    enough: bool


def to_do_first(known: Known) -> tuple[str, str | None]:
    """The first safe step, and the problem it is for."""
    kills = deadly(known.readings)
    cause = endangering(known)
    if any(reading not in OWN_PROBLEM for reading, _ in kills):
        return against_readings(known, kills, cause)
    action, of = by_cause(known, cause)
    if is_cold(known.case) and animals_suffer(known.case):
        action += CHECK_THE_HEATER
    return action, of


def endangering(known: Known) -> str | None:
    """The cause that most likely endangers animals, if one does."""
    best = likeliest(known)
    if CAUSES[best].slowly and in_danger(known.case):
        return best  # the usual half change would do harm here
    fair = fair_urgent(known.chances, known.named)
    return fair[0] if fair else explains(known.chances) if in_danger(known.case) else None


def likeliest(known: Known) -> str:
    """The likeliest cause of all."""
    best: str = min(CAUSES, key=lambda cause: (-known.chances[cause], cause))
    return best


def explains(chances: Mapping[str, float]) -> str | None:
    """The cause that endangers animals, if one is likelier than all others of that kind together.

    Signs of danger need their own cause beside that of the leaves.
    """
    urgent = {cause: chances[cause] for cause in CAUSES if CAUSES[cause].urgency == "now"}
    best = min(urgent, key=lambda cause: (-urgent[cause], cause))
    return best if urgent[best] > ENOUGH * sum(urgent.values()) else None


def by_cause(known: Known, cause: str | None) -> tuple[str, str | None]:
    """The first step by the cause that endangers animals, else by the likeliest."""
    water = water_of(known.case)
    if cause:
        return safe_action(cause, water), cause
    if known.urgent:
        return f"{AIR_FIRST} {with_care(CHANGE_FIRST, water)} {THEN_TEST}", None
    if known.enough:
        best = likeliest(known)
        return safe_action(best, water), best
    harms = harmful(known.readings)
    if harms:
        return " ".join([*(STEPS[one].harmful for one in harms), LOOK_TOO]), None
    return LOOK_FIRST, None


def against_readings(known: Known, kills: Outside, cause: str | None) -> tuple[str, str | None]:
    """The first step against readings that kill, with what a cause adds to it, and one change of water."""
    water = water_of(known.case)
    said = [STEPS[one].deadly for one in kills]
    if cause and not is_shown_by(cause, known.case, kills):
        said.append(CAUSES[cause].besides or CAUSES[cause].first_action)
    change: str = change_for(kills)
    if change or (cause and CAUSES[cause].besides) or shows_ammonia(water):
        usual = CHANGES["tenth"] if cause and CAUSES[cause].slowly else CHANGE_FIRST
        said.append(with_care(change or usual, water))
    return " ".join(said), cause


def is_shown_by(cause: str, case: Case, kills: Outside) -> bool:
    """Whether a reading that kills speaks for the cause, so that its step is said already."""
    inputs = {f"readings.{reading}" for reading, _ in kills}
    return any(
        question_of(key) in inputs and ODDS[row.strength] > 1
        for key, row in CAUSES[cause].rows.items()
        if key in case.present()
    )
