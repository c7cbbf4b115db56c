"""Water changes by reading: nitrate beside the tap's own, and nitrite."""

from calculators.core.numbers import show_number
from calculators.science.animals.reading_lines import Level, standing
from calculators.science.water.chemistry import NITRATE, NITRITE, N
from scripts.pages.calculators.ready.table import (
    ReadyRow,
    ReadyTable,
    ReadyValues,
    WorkedCell,
    cell,
    heading,
    said_of_all,
)

NAME = "water-change"
NITRATE_MG_L = (30.0, 40.0, 50.0, 60.0, 80.0, 100.0, 150.0, 200.0, 250.0)
TAP_NITRATE_MG_L = (0.0, 5.0, 10.0, 15.0)
NITRITE_MG_N_L = (0.1, 0.25, 0.5, 0.6, 1.0, 2.0)
WORDS: dict[Level, str] = {
    "in-range": "in range",
    "harmful": "harmful over time",
    "deadly": "DEADLY: where a test shows no ammonia, the first change now",
}
NO_PLAN = "no plan: too many"
FIRST = (
    "Ammonia is not in these tables on purpose: a change can make it more toxic. Test it first.",
    "A reading that says deadly: stop feeding and add air; make the first change now, slowly, only where "
    "a test shows no ammonia.",
)


def water_change_values() -> ReadyValues:
    """The fewest equal changes that bring a reading to the level offered for it."""
    plans = [answer_at("nitrate", now, 0.0) for now in NITRATE_MG_L]
    plans += [answer_at("nitrite", now, 0.0) for now in NITRITE_MG_N_L]
    planned = [plan for plan in plans if plan.value("changes")]
    largest = cell(NAME).answer["inputs"]["max_change_percent"]
    after = (
        "Read “6 × 28 %” as six changes of 28 % of the tank's water each. No single change is above "
        f"{show_number(largest)} %. Wait three days between changes for nitrate, half a day for nitrite, and "
        "test before each. Between two readings take the higher one.",
    )
    return ReadyValues(
        "Water changes by reading", (*FIRST, *said_of_all(planned)), (nitrate(), nitrite()), after
    )


def nitrate() -> ReadyTable:
    """Nitrate as NO3 by what the new water reads."""
    target = answer_at("nitrate", 40.0, 0.0).shown("target_used_mg_l")
    return ReadyTable(
        f"Nitrate, as NO₃, down to {target} mg/L; if the kit counts nitrogen, multiply its figure by "
        f"{show_number(NITRATE / N)} first",
        "Tank reads",
        (
            "It is",
            *(f"new water reads {heading(NAME, 'tap_mg_l', tap)}" for tap in TAP_NITRATE_MG_L),
        ),
        tuple(
            ReadyRow(
                heading(NAME, "now_mg_l", now),
                (
                    WORDS[standing("nitrate_mg_l", now).level],
                    *(plan_words(answer_at("nitrate", now, tap)) for tap in TAP_NITRATE_MG_L),
                ),
            )
            for now in NITRATE_MG_L
        ),
    )


def nitrite() -> ReadyTable:
    """Nitrite as nitrogen; new water has none."""
    target = answer_at("nitrite", 1.0, 0.0).shown("target_used_mg_l")
    return ReadyTable(
        f"Nitrite, as nitrogen, down to {target} mg/L; if the kit says NO₂, divide its figure by "
        f"{show_number(NITRITE / N)} first",
        "Tank reads",
        ("It is", "changes"),
        tuple(
            ReadyRow(
                heading(NAME, "now_mg_l", now),
                (
                    WORDS[standing("nitrite_mg_n_l", now).level],
                    plan_words(answer_at("nitrite", now, 0.0)),
                ),
            )
            for now in NITRITE_MG_N_L
        ),
    )


def answer_at(what: str, now: float, tap: float) -> WorkedCell:
    """The calculator's answer for one cell. Both ``now`` and the ``tap`` are in mg/L."""
    return cell(NAME, what=what, now_mg_l=now, tap_mg_l=tap, volume_l=None)


def plan_words(plan: WorkedCell) -> str:
    """How many changes of how much."""
    if plan.value("changes") is None:
        return NO_PLAN
    return f"{plan.shown('changes')} × {plan.shown('each_change_percent')} %"
