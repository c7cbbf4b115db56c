"""After the first step: what to expect by which day, and calculators filled with the figures given."""

import math
from collections.abc import Mapping
from typing import Annotated, Any, NamedTuple

from calculators.core.quantities import Days
from calculators.core.quantity import Label
from calculators.diagnose.problem_table import CAUSES
from calculators.science.rounding import RESULT_DIGITS

WEEK = 7  # days
OWN = ("volume_l", "cover_percent", "feed_g_week", "light_hours")  # beside the readings
RENAMED = {"light_hours": "hours"}  # as the light calculator calls it


class Day(NamedTuple):
    """A change to expect, and between which days."""

    text: Annotated[str, Label("What")]
    from_day: Annotated[Days, Label("From day")]
    to_day: Annotated[Days, Label("To day")]


class PrefilledCalculator(NamedTuple):
    """A calculator and inputs for it."""

    calculator: Annotated[str, Label("Calculator")]
    inputs: Annotated[dict[str, Any], Label("Inputs")]


def when(from_day: float, to_day: float) -> str:
    """Between which days, and in which weeks where it takes longer than one."""
    first, last = round(from_day), round(to_day)
    days = f"{first}" if first == last else f"{first} to {last}"
    if last <= WEEK:
        return f"Day {days}"
    weeks = sorted({max(1, math.ceil(day / WEEK)) for day in (first, last)})
    return f"Week {' to '.join(map(str, weeks))} (day {days})"


def expected(cause: str | None) -> list[Day]:
    """What a problem's record says to expect."""
    return [Day(**change) for change in CAUSES[cause].expect] if cause else []


def filled(cause: str | None, inputs: Mapping[str, Any]) -> list[PrefilledCalculator]:
    """The record's calculators with the keeper's own figures in place of its examples.

    ``inputs`` are the diagnosis's own. A figure goes where the calculator has an input of the same
    name, or where the record says that an input takes a reading.
    """
    return [
        PrefilledCalculator(calculator["calculator"], {**calculator["inputs"], **own})
        for calculator, own in zip(
            CAUSES[cause].calculators if cause else (), own_figures(cause, inputs), strict=True
        )
    ]


def handed_on(cause: str, inputs: Mapping[str, Any]) -> list[dict[str, Any]]:
    """What a link to each of the record's calculators fills in, by its keys; metric.

    Of a record's example no figure is handed on, for in the next form it would pass for the keeper's; a
    choice is, such as which nutrient it is about.
    """
    return [
        {**{key: value for key, value in record["inputs"].items() if isinstance(value, str)}, **own}
        for record, own in zip(CAUSES[cause].calculators, own_figures(cause, inputs), strict=True)
    ]


def own_figures(cause: str | None, inputs: Mapping[str, Any]) -> list[dict[str, Any]]:
    """The keeper's own figures for each of the record's calculators, by its keys; metric."""
    own = {**(inputs["readings"] or {}), **{key: inputs[key] for key in OWN}}
    own |= {there: own[here] for here, there in RENAMED.items()}
    made = []
    for calculator in CAUSES[cause].calculators if cause else ():
        values = {
            key: own.get(calculator["readings"].get(key, key)) for key in calculator["inputs"]
        }
        made.append(
            {key: round(value, RESULT_DIGITS) for key, value in values.items() if value is not None}
        )
    return made
