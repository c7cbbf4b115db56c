"""What to do first: a reading that kills, then a cause that endangers animals, then leaves."""

import re
from collections.abc import Mapping
from typing import NamedTuple

from calculators.diagnose.beside_step import against_harm, is_shown_by, said_beside
from calculators.diagnose.case_read import Case
from calculators.diagnose.likelihood import ODDS
from calculators.diagnose.problem_table import CAUSES, FINDINGS
from calculators.diagnose.tests_named import without_given
from calculators.diagnose.triage import (
    ENOUGH,
    FAIR_CHANCE,
    fair_urgent,
    in_danger,
    known_readings,
)
from calculators.diagnose.water_step import (
    animals_suffer,
    by_nitrate,
    is_cold,
    kills_of,
    safe_action,
    slow_action,
    water_of,
)
from calculators.diagnose.words import (
    AIR_FIRST,
    ANIMALS_FIRST,
    CHANGE_FIRST,
    CHECK_THE_HEATER,
    look_first,
    look_too,
    then_test,
)
from calculators.science.animals.reading_lines import Side
from calculators.science.animals.reading_steps import (
    CHANGES,
    SHARES,
    STEPS,
    Outside,
    acting,
    change_for,
    harmful,
    percent_for,
    step_words,
)
from calculators.science.water.air_and_ammonia import BIND_BEFORE_AIR, air_kills
from calculators.science.water.careful_change import TEST_BEFORE, shows_ammonia, with_care
from calculators.science.water.change_words import CALM
from calculators.science.water.nitrate_of_tap import change_by_tap

OWN_PROBLEM = {
    "ammonia_mg_n_l",
    "nitrite_mg_n_l",
}  # readings that have a problem's page of their own
AMMONIA: tuple[str, Side] = ("ammonia_mg_n_l", "high")
AIR, SOON = re.compile(r"\b(?:air|ripple)\b"), 160  # letters; what an eye in a hurry reads
ADD_AIR = "Add air."
OXYGEN = "oxygen_mg_l"
AMMONIA_ROOT = "ammonia"
OF_WATER = ("water", "animals", "readings")  # where signs are that more than leaves may show
ASKED_BY_SLOW = {"ammonia_mg_n_l", "ph"}  # what the action of a slow cause has tested itself
SLOWLY = "Pour it in slowly, over an hour or more: this water has little to hold its pH."


class FirstStepEvidence(NamedTuple):
    """What the first step is chosen by."""

    case: Case
    chances: Mapping[str, float]
    named: tuple[str, ...]
    readings: Mapping[str, float | None]
    urgent: bool
    enough: bool


def to_do_first(evidence: FirstStepEvidence) -> tuple[str, str | None]:
    """The first safe step, and the problem it is for; no reading that was given is asked for."""
    action, of = first_of_all(evidence)
    before = said_beside(evidence.case, evidence.chances, of)
    if before not in action:
        action = put_before(before, action)
    if animals_suffer(evidence.case):
        action = action if AIR.search(action[:SOON]) else f"{ADD_AIR} {action}"
    elif frees_by_air(evidence) and AIR.search(action):
        action = f"{BIND_BEFORE_AIR} {action}"
    return without_given(action, known_readings(evidence.case)), of


def put_before(before: str, action: str) -> str:
    """What goes before an action; air comes first, but where the room itself has to be aired before."""
    if not action.startswith(AIR_FIRST):
        return f"{before} {action}"
    if before.startswith(ANIMALS_FIRST):
        return f"{before} {action.removeprefix(f'{ANIMALS_FIRST}. ')}"
    return f"{AIR_FIRST} {before}{action.removeprefix(AIR_FIRST)}"


def frees_by_air(evidence: FirstStepEvidence) -> bool:
    """Whether air would free ammonia that kills, in water whose oxygen is not known to be low."""
    water = water_of(evidence.case)
    outside = [*acting(evidence.readings), *harmful(evidence.readings)]
    is_short = any(reading == OXYGEN for reading, _ in outside)
    return not is_short and air_kills(*water[:4])


def first_of_all(evidence: FirstStepEvidence) -> tuple[str, str | None]:
    """The first safe step in the words of the records, and the problem it is for."""
    kills = acting(evidence.readings)
    cause = endangering(evidence)
    is_own = all(reading in OWN_PROBLEM for reading, _ in kills)
    if not is_own or passes_over(cause, evidence.case, kills) or (kills and is_slow(evidence)):
        return against_readings(evidence, kills, cause)
    action, of = by_cause(evidence, cause)
    action = f"{against_harm(evidence.case, evidence.readings, of, action)} {action}".strip()
    if is_cold(evidence.case) and animals_suffer(evidence.case):
        action += CHECK_THE_HEATER
    return action, of


def endangering(evidence: FirstStepEvidence) -> str | None:
    """The cause that most likely endangers animals, if one does."""
    fair = fair_urgent(evidence.chances, evidence.named)
    if not is_slow(evidence):
        return fair[0] if fair else explains(evidence.chances) if in_danger(evidence.case) else None
    # Ammonia in acid water is what the slow cause is about; what else endangers them goes before it.
    others = [*fair, explains(evidence.chances)]
    beside = (one for one in others if one and CAUSES[one].shared_root != AMMONIA_ROOT)
    slow = likeliest(evidence)
    return next(beside, slow if is_seen_in_water(evidence, slow) else None)


def is_slow(evidence: FirstStepEvidence) -> bool:
    """Whether animals are in danger in water of which a large change would do harm by itself."""
    return bool(CAUSES[likeliest(evidence)].slowly) and in_danger(evidence.case)


def is_seen_in_water(evidence: FirstStepEvidence, cause: str) -> bool:
    """Whether a cause is fairly likely, or something in the water or on the animals speaks for it: a leaf
    alone does not explain why animals suffer.
    """
    return evidence.chances[cause] >= FAIR_CHANCE or any(
        FINDINGS[key].where in OF_WATER and ODDS[row.strength] > 1
        for key, row in CAUSES[cause].rows.items()
        if key in evidence.case.present()
    )


def likeliest(evidence: FirstStepEvidence) -> str:
    """The likeliest cause of all."""
    best: str = min(CAUSES, key=lambda cause: (-evidence.chances[cause], cause))
    return best


def explains(chances: Mapping[str, float]) -> str | None:
    """The cause that endangers animals, if one is likelier than all others of that kind together.

    Signs of danger need their own cause beside that of the leaves.
    """
    urgent = {cause: chances[cause] for cause in CAUSES if CAUSES[cause].urgency == "now"}
    best = min(urgent, key=lambda cause: (-urgent[cause], cause))
    return best if urgent[best] > ENOUGH * sum(urgent.values()) else None


def by_cause(evidence: FirstStepEvidence, cause: str | None) -> tuple[str, str | None]:
    """The first step by the cause that endangers animals, else by the likeliest."""
    water, known = water_of(evidence.case), known_readings(evidence.case)
    if cause:
        slow = is_slow(evidence) and not CAUSES[cause].slowly
        action = slow_action(cause, water) if slow else safe_action(cause, water)
        if CAUSES[cause].slowly and animals_suffer(evidence.case):
            action = f"{action} {then_test(known | ASKED_BY_SLOW)}"
        return action, cause
    if evidence.urgent:
        then = then_test(known)
        usual, percent = usual_change(is_slow(evidence))
        change = by_nitrate(with_care(usual, water, percent), water)
        return f"{AIR_FIRST} {change} {then}", None
    if evidence.enough:
        best = likeliest(evidence)
        return safe_action(best, water), best
    harms = harmful(evidence.readings)
    if harms:
        steps = [step_words(reading, False, known) for reading in harms]
        asked = {test for reading in harms for test in STEPS[reading].test}
        return " ".join([*steps, look_too(known | asked)]), None
    return look_first(known), None


def usual_change(slow: bool) -> tuple[str, float]:
    """The change of water where nothing says how much, in words and in percent; ``slow`` where a large one
    would do harm by itself.
    """
    if slow:
        return CHANGES["tenth"], SHARES["tenth"][0]
    return CHANGE_FIRST, SHARES["third"][0]


def against_readings(
    evidence: FirstStepEvidence, kills: Outside, cause: str | None
) -> tuple[str, str | None]:
    """The first step against readings that kill, with what a cause adds to it, and one change of water."""
    water = water_of(evidence.case)
    change: str = change_for(kills)
    careful, slow = "", is_slow(evidence) or bool(cause and CAUSES[cause].slowly)
    if change or (cause and CAUSES[cause].besides) or shows_ammonia(water):
        usual, percent = usual_change(slow)
        careful = with_care(change or usual, water, percent_for(kills) or percent)
        asking = [reading for reading, _ in kills] if change else kills_of(water)
        tap, tank = water.tap_nitrate_mg_l, water.nitrate_mg_l
        careful = said_once(change_by_tap(careful, asking, tap, tank), kills)
    known = known_readings(evidence.case)
    if careful.startswith(TEST_BEFORE):
        known |= {AMMONIA[0]}  # the change asks for it itself
    sentences = [step_words(reading, True, known) for reading in kills]
    if cause and not is_shown_by(cause, evidence.case, kills):
        sentences.append(CAUSES[cause].besides or CAUSES[cause].first_action)
    sentences += [careful] if careful else []
    if careful and slow and change == CHANGES["third"]:
        sentences.append(SLOWLY)
    return " ".join(sentences), cause


def said_once(careful: str, kills: Outside) -> str:
    """A change of water in words, without what the step against ammonia has said already."""
    return careful.replace(f" {CALM}", "") if AMMONIA in kills else careful


def passes_over(cause: str | None, case: Case, outside: Outside) -> bool:
    """Whether a cause's own step says nothing of these readings, since none of them speaks for it."""
    return cause is not None and bool(outside) and not is_shown_by(cause, case, outside)
