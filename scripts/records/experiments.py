"""Published experiments beside what a calculator says of them: tests/published/experiments/<calculator>.yml.

The page of the model shows observed, predicted and the error; the tests hold the words to them.
"""

from collections.abc import Mapping
from itertools import pairwise
from typing import Annotated, Any, Literal, NamedTuple

from pydantic import Field, TypeAdapter

from calculators.core.run import run
from scripts.records.claim import Slug, Text
from scripts.records.published import listed
from scripts.records.record import Record
from scripts.setup.paths import PUBLISHED


class Observation(Record):
    """What was observed, from low to high, and where the answer says the same.

    ``output`` names an output; else ``series`` on a ``day``, by how much it falls from there
    ``until`` another day, its ``mean``, or the day on which it ``falls_to`` a value. ``times`` turns
    its unit into that of the paper. ``near``: how far off, in that unit, still counts as met;
    without it the words say that it is missed.
    """

    what: Text
    observed: Annotated[list[float], Field(min_length=2, max_length=2)]
    unit: Text
    output: str | None = None
    series: str | None = None
    day: float | None = None
    until: float | None = None
    mean: bool = False
    falls_to: float | None = None
    times: float = 1.0
    near: float | None = None


class Experiment(Record):
    """One published experiment: its conditions, what the forecast is given, and what was observed."""

    name: Text
    source: Slug
    read: Literal["abstract", "table", "text", "figure", "quotation by another"]
    conditions: Text
    not_said: Text
    given: dict[str, Any]
    looks: Annotated[list[Observation], Field(min_length=1)]
    says: Text


class ComparedObservation(NamedTuple):
    """One look, what the calculator says, and by how much it is off the observed span."""

    look: Observation
    predicted: float | None
    error: float | None

    @property
    def is_met(self) -> bool:
        """Whether the prediction is as near as the look asks."""
        near = self.look.near
        return near is not None and self.error is not None and abs(self.error) <= near


EXPERIMENTS = TypeAdapter(list[Experiment])


def experiments(calculator: str) -> list[Experiment]:
    """The experiments of a calculator; none where it has no file."""
    return listed(PUBLISHED / "experiments" / f"{calculator}.yml", EXPERIMENTS)


def held_against(calculator: str, experiment: Experiment) -> list[ComparedObservation]:
    """Run the calculator with the experiment's conditions, and lay it beside what was observed."""
    answer = run(calculator, experiment.given)
    return [compared(look, predicted(look, answer)) for look in experiment.looks]


def compared(look: Observation, value: float | None) -> ComparedObservation:
    """The error is zero inside the observed span, else the distance to it.

    The ``value`` and the error are in the unit of the observation.
    """
    if value is None:
        return ComparedObservation(look, None, None)
    low, high = look.observed
    return ComparedObservation(look, value, value - low if value < low else max(0.0, value - high))


def predicted(look: Observation, answer: Mapping[str, Any]) -> float | None:
    """What an answer says of a look; None where it never comes to it.

    In the unit of the observation.
    """
    if look.output is not None:
        value = answer["outputs"][look.output]
        return None if value is None else look.times * float(value)
    drawn = answer["series"][look.series]
    points = list(zip(drawn["x"], drawn["y"], strict=True))
    if look.mean:
        return look.times * sum(float(y) for _, y in points) / len(points)
    if look.falls_to is not None:
        return falling_day(points, look.falls_to)
    value = on_day(points, look.day)
    return look.times * (value if look.until is None else value - on_day(points, look.until))


def on_day(points: list[tuple[float, float]], day: float | None) -> float:
    """The first value of a curve on a day that it has a point for, in the curve's own unit.

    Its ``points``: pairs of a day and the value on it.
    """
    return float(next(y for x, y in points if x == day))


def falling_day(points: list[tuple[float, float]], level: float) -> float | None:
    """The day on which a curve first falls to a level, on a straight line between its points."""
    for (day, before), (later, after) in pairwise(points):
        if before > level >= after:
            return day + (later - day) * (before - level) / (before - after)
    return None
