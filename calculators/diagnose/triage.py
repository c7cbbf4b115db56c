"""Animals before leaves: what is urgent, whether enough is known, and what to do first."""

from collections.abc import Mapping

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.diagnose.case_read import Case
from calculators.diagnose.cause_posterior import prior_weight
from calculators.diagnose.likelihood import ODDS
from calculators.diagnose.problem_table import CAUSES, FINDINGS, question_of
from calculators.science.animals.reading_steps import (
    TO_KINDS_THAT_LIVE_COLD,
    deadly,
    harmful,
    step_words,
)
from calculators.science.evidence.weighing import SOMETHING_ELSE
from calculators.science.water.ammonia import chronic_limit_mg_n_l
from calculators.science.water.readings_fit import READ_AGAIN, fit_together, misfit_words
from calculators.science.water.unread import WARM_C

JUDGED = ("ammonia_mg_n_l", "ph", "temperature_c")  # what a reading of ammonia is judged by
IN_DANGER = "Animals may be in danger. See to them first; leaves can wait."
NOT_ENOUGH = "Not enough to tell. Answer the next check; change nothing yet."
SEE_TO_IT_FIRST = "Not enough to tell the cause. Do the first step, then answer the next check."
FAIR_CHANCE = 0.15  # from here on an urgent cause goes before a likelier one about leaves
RAISED = 2.0  # ... if what was found has at least doubled it
BESIDE_THE_POINT = 0.2  # what a cause that fits nothing pointed at weighs when a question is chosen
ENOUGH = 0.5  # the leading root must be likelier than all the rest together


def fair_urgent(chances: Mapping[str, float], named: tuple[str, ...]) -> list[str]:
    """The causes that endanger animals and that the findings make fairly likely."""
    weights = {cause: prior_weight(cause, named) for cause in CAUSES}
    total = sum(weights.values())
    return [
        cause
        for cause in sorted(CAUSES, key=lambda cause: (-chances[cause], cause))
        if CAUSES[cause].urgency == "now"
        and chances[cause] >= FAIR_CHANCE
        and chances[cause] >= RAISED * weights[cause] / total
    ]


def is_urgent(
    case: Case,
    chances: Mapping[str, float],
    named: tuple[str, ...],
    readings: Mapping[str, float | None],
) -> bool:
    """Whether animals may be in danger: by a finding, a reading that kills, or a likely cause."""
    return in_danger(case) or bool(deadly(readings)) or bool(fair_urgent(chances, named))


def in_danger(case: Case) -> bool:
    """Whether a finding means danger to animals by itself."""
    return any(FINDINGS[key].danger for key in case.present())


def readings_of(case: Case) -> dict[str, float | None]:
    """The readings that were given as figures, by key; None where one was not."""
    start = "readings."
    figures = {key: answer.value for key, answer in case.answers.items() if key.startswith(start)}
    return dict.fromkeys(JUDGED) | {key[len(start) :]: value for key, value in figures.items()}


def animals_come_first(case: Case) -> bool:
    """Whether a sign, or a reading that kills, says that animals are in danger."""
    return in_danger(case) or bool(deadly(readings_of(case)))


def worth_asking_about(case: Case, chances: Mapping[str, float]) -> dict[str, float]:
    """The chances, by cause, that the next check is for.

    Only what endangers animals keeps its chance where a sign or a reading says so; they add up to 1.
    """
    if not animals_come_first(case):
        return dict(chances)
    causes = {
        cause: chance
        for cause, chance in chances.items()
        if cause == SOMETHING_ELSE or CAUSES[cause].urgency == "now"
    }
    total = sum(causes.values())
    return {cause: causes.get(cause, 0.0) / total for cause in chances}


def complained_of(case: Case, chances: Mapping[str, float], where: str) -> dict[str, float]:
    """The chances, by cause, that a question at the tank is for: sooner what fits what was pointed at.

    Someone who points at black roots is not asked about green dust, common as that is. The ranking
    itself never makes use of this. Where animals may be in danger, they come first.
    """
    if animals_come_first(case):
        return worth_asking_about(case, chances)
    seen = {key for key in case.present() if FINDINGS[key].input is None}
    fits = {
        cause
        for cause in CAUSES
        for key, row in CAUSES[cause].rows.items()
        if ODDS[row.strength] > 1
        and (key in seen if seen else FINDINGS[key].where == where and row.strength == "strong-for")
    }
    causes = {
        cause: chance * (1 if cause in fits or cause == SOMETHING_ELSE else BESIDE_THE_POINT)
        for cause, chance in chances.items()
    }
    total = sum(causes.values())
    return {cause: chance / total for cause, chance in causes.items()}


def is_enough(case: Case, chances: Mapping[str, float]) -> bool:
    """Whether one root, a problem with those of the same root, is likelier than everything else together."""
    if not case.answers:
        return False
    roots: dict[str, float] = {}
    for cause, chance in chances.items():
        root = cause if cause == SOMETHING_ELSE else CAUSES[cause].shared_root or cause
        roots[root] = roots.get(root, 0.0) + chance
    return any(root != SOMETHING_ELSE and chance > ENOUGH for root, chance in roots.items())


def known_readings(case: Case) -> frozenset[str]:
    """The readings, by key, of which a figure or a band was said, those of the new water included."""
    start = "readings."
    present = {question_of(key) for key in case.present()}
    measured = {key for key, answer in case.answers.items() if answer.value is not None}
    tap = {key for key, value in case.tap._asdict().items() if value is not None}
    return frozenset(key[len(start) :] for key in present | measured if key.startswith(start)) | tap


def warnings(
    case: Case, readings: Mapping[str, float | None], urgent: bool, enough: bool
) -> list[Note]:
    """What the keeper must know beside the ranking."""
    notes = []
    if urgent:
        notes.append(Note("danger", IN_DANGER))
    ammonia, ph, warmth = (readings[key] for key in ("ammonia_mg_n_l", "ph", "temperature_c"))
    if ammonia and ph is not None and warmth is not None:
        limit = chronic_limit_mg_n_l(ph, warmth)
        times = show_number(ammonia / limit, 2)
        notes.append(
            Note(
                "danger" if ammonia > limit else "caution",
                f"At this pH and temperature your ammonia is {times} times the US limit for lasting "
                "exposure. The aim is none at all.",
            )
        )
    kh, at = readings["kh_dh"], WARM_C if warmth is None else warmth
    if ph is not None and kh is not None and not fit_together(ph, kh, at):
        notes.append(Note("danger", f"{misfit_words(ph, kh, at)} {READ_AGAIN}"))
    harms = harmful(readings)
    known = known_readings(case)
    notes += [Note("caution", step_words(reading, False, known)) for reading in harms]
    if ("temperature_c", "low") in deadly(readings):
        notes.append(Note("info", TO_KINDS_THAT_LIVE_COLD))
    if not enough:
        notes.append(Note("info", SEE_TO_IT_FIRST if urgent or harms else NOT_ENOUGH))
    notes.append(
        Note(
            "info",
            "The percentages are our judgement, not a measurement. What you have not looked "
            "at counts neither for nor against.",
        )
    )
    return notes
