"""What goes before the first step: what to stop, and what other signs and readings ask for at once."""

from collections.abc import Mapping

from calculators.diagnose.case_read import Case
from calculators.diagnose.likelihood import ODDS
from calculators.diagnose.problem_table import CAUSES, FINDINGS, question_of
from calculators.diagnose.triage import known_readings
from calculators.diagnose.water_step import animals_suffer
from calculators.science.animals.reading_steps import Outside, harmful, step_words

RECENTLY = "recently"
MOST_DANGERS = 3  # causes beside the first; who stands at a tank reads no more
OVER_WEEKS = ("gh_dh", "kh_dh")  # readings whose step takes weeks stand in the notes alone


def against_what_came_before(case: Case, chances: Mapping[str, float], of: str | None) -> list[str]:
    """The cause of something that came before animals suffered, though another cause is likelier.

    Empty where nothing of the kind was said, or where the step ``of`` that cause is given already.
    """
    if not animals_suffer(case):
        return []
    causes = {
        cause
        for key in case.present()
        if FINDINGS[key].where == RECENTLY and FINDINGS[key].input is None
        for cause in strongly_for(key)
        if CAUSES[cause].besides and not CAUSES[cause].shared_root
    }
    if not causes or of in causes:
        return []
    return [max(causes, key=lambda cause: (chances[cause], cause))]


def against_other_dangers(case: Case, chances: Mapping[str, float], of: str | None) -> list[str]:
    """The causes, the likeliest first, at which a sign of danger points that the step ``of`` one says nothing
    of: copper that a test shows is seen to, though the water's lost hardness is likelier.

    A sign that speaks as strongly for several causes points at none; a reading has a step of its own.
    """
    found = set()
    for key in case.present():
        causes = strongly_for(key)
        if FINDINGS[key].danger and not is_measured(key, case) and len(causes) == 1:
            found.update(causes)
    if of:
        found -= {cause for cause in found if root_of(cause) == root_of(of)}
    return sorted(found, key=lambda cause: (-chances[cause], cause))


def said_beside(case: Case, chances: Mapping[str, float], of: str | None) -> str:
    """What is to be done before the first step ``of`` a cause, without a change of water; mostly nothing."""
    causes = [
        *against_other_dangers(case, chances, of),
        *against_what_came_before(case, chances, of),
    ]
    words = [without_change(cause) for cause in dict.fromkeys(causes)]
    return " ".join([one for one in words if one][:MOST_DANGERS])


def against_harm(
    case: Case, readings: Mapping[str, float | None], of: str | None, action: str
) -> str:
    """The steps against readings that harm and do not kill, of which the first step says nothing."""
    is_for_animals = of is not None and CAUSES[of].urgency == "now"
    outside = [
        place
        for place in harmful(readings)
        if place[0] not in OVER_WEEKS
        if not (is_for_animals and is_shown_by(str(of), case, [place]))
    ]
    steps = [step_words(place, False, known_readings(case)) for place in outside]
    return " ".join(step for step in steps if step not in action)


def strongly_for(key: str) -> set[str]:
    """The causes that endanger animals and for which a finding speaks strongly."""
    return {
        cause
        for cause, record in CAUSES.items()
        if record.urgency == "now" and key in record.rows
        if record.rows[key].strength == "strong-for"
    }


def without_change(cause: str) -> str:
    """A problem's first action without its change of water; empty where it has none without."""
    record = CAUSES[cause]
    return record.besides or ("" if record.change else record.first_action)


def is_measured(key: str, case: Case) -> bool:
    """Whether a finding follows from a figure."""
    answer = case.answers.get(question_of(key))
    return answer is not None and answer.value is not None


def is_shown_by(cause: str, case: Case, outside: Outside) -> bool:
    """Whether one of these readings speaks for the cause, so that its step is said already."""
    inputs = {f"readings.{reading}" for reading, _ in outside}
    return any(
        question_of(key) in inputs and ODDS[row.strength] > 1
        for key, row in CAUSES[cause].rows.items()
        if key in case.present()
    )


def root_of(cause: str) -> str:
    """What a cause has in common with others of its root; the cause itself where it has none."""
    return CAUSES[cause].shared_root or cause
