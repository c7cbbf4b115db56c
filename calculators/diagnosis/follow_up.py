"""After the first step: what to expect by which day, and calculators filled with the figures given."""

import math
from collections.abc import Mapping
from typing import Annotated, Any, NamedTuple

from calculators.core.quantities import Days
from calculators.core.quantity import Label
from calculators.diagnosis.record import CAUSES

WEEK = 7  # days


class Day(NamedTuple):
    """A change to expect, and between which days."""

    text: Annotated[str, Label("What")]
    from_day: Annotated[Days, Label("From day")]
    to_day: Annotated[Days, Label("To day")]


class Filled(NamedTuple):
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
    return [Day(**one) for one in CAUSES[cause].expect] if cause else []


def filled(
    cause: str | None,
    readings: Mapping[str, float | None],
    volume_l: float | None,
    cover_percent: float | None,
    light_hours: float | None,
) -> list[Filled]:
    """The record's calculators with the keeper's own figures in place of its examples."""
    own = {
        **readings,
        "volume_l": volume_l,
        "cover_percent": cover_percent,
        "hours": light_hours,
    }
    made = []
    for one in CAUSES[cause].calculators if cause else ():
        inputs = {
            key: value if own.get(key) is None else own[key] for key, value in one["inputs"].items()
        }
        if one["calculator"] == "free-ammonia" and readings["ammonia_mg_n_l"] is not None:
            inputs |= {"ammonia_mg_l": readings["ammonia_mg_n_l"], "reported_as": "nitrogen"}
        made.append(Filled(one["calculator"], inputs))
    return made
