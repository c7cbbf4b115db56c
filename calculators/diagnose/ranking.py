"""The likeliest causes in order, with their reasons."""

from calculators.diagnose.case_read import Case
from calculators.diagnose.likelihood import ODDS
from calculators.diagnose.outputs import Ranked
from calculators.diagnose.problem_table import CAUSES, FINDINGS
from calculators.diagnose.words import reasons
from calculators.science.rounding import RESULT_DIGITS

MOST_SHOWN = 10
LEAST_SHOWN = 3
LEAST_PERCENT = 1.0  # causes below this are not listed, beyond the first few
MOST_EXPLAINING = 3


def in_order(chances: dict[str, float]) -> list[str]:
    """All causes, the likeliest first."""
    return sorted(CAUSES, key=lambda cause: (-chances[cause], cause))


def ranked(case: Case, chances: dict[str, float], plant: str | None) -> list[Ranked]:
    """The likeliest causes with their reasons."""
    shown = [
        cause
        for place, cause in enumerate(in_order(chances)[:MOST_SHOWN])
        if place < LEAST_SHOWN or 100 * chances[cause] >= LEAST_PERCENT
    ]
    return [row(cause, case, chances, plant) for cause in shown]


def row(cause: str, case: Case, chances: dict[str, float], plant: str | None) -> Ranked:
    """One cause of the ranking."""
    return Ranked(
        cause,
        round(100 * chances[cause], RESULT_DIGITS),
        *reasons(cause, case, plant),
        CAUSES[cause].name,
        CAUSES[cause].urgency,
    )


def explaining_first(case: Case, chances: dict[str, float], plant: str | None) -> list[Ranked]:
    """The ranking, but first the causes that explain something that the keeper saw.

    Nobody who points at holes in leaves wants to read of tea-coloured water first, common as that
    is. Chances stay what they are.
    """
    seen = {key for key in case.present() if FINDINGS[key].input is None}
    explaining = [cause for cause in in_order(chances) if explains(cause, seen)]
    first = [
        cause
        for place, cause in enumerate(explaining[:MOST_EXPLAINING])
        if place == 0 or 100 * chances[cause] >= LEAST_PERCENT
    ]
    rest = [one for one in ranked(case, chances, plant) if one.problem not in first]
    rest.sort(key=lambda one: not explains(one.problem, seen))
    return [*(row(cause, case, chances, plant) for cause in first), *rest]


def explains(cause: str, seen: set[str]) -> bool:
    """Whether a cause makes a sign that was seen likelier."""
    rows = CAUSES[cause].rows
    return any(key in rows and ODDS[rows[key].strength] > 1 for key in seen)
