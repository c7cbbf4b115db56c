"""What the fitted weeks mean for a tank, in sentences: what may harm before all else, then the plants."""

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.core.wording import counted, joined, upper
from calculators.science.animals.reading_lines import edge_of
from calculators.science.animals.toxic_lines import (
    least_harmful_ammonia_mg_n_l,
    most_nitrite_mg_n_l,
)
from calculators.science.fitting.fitted_course import FittedCourse
from calculators.science.shelf.engine_tank import NITRATE
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.harmful_readings import AMMONIA, NITRITE, AmmoniaWater
from calculators.science.shelf.recorded_plants import plant_name
from calculators.standing.nitrogen_outlook import FittedWeeks

USED_UP_MG_L = (
    1.0  # nitrate below which it counts as used up, as NO3: under the steps of kits; judgement
)
WEEKS_FROM_DAYS = 14  # a span that begins later is said in weeks
SHADED = "Shaded is where four readings in five would lie."
BY_FIT, BY_BAND, BY_KIT = "fit", "band", "kit"


class Reach(NamedTuple):
    """A line that harms, in the unit of the readings, the day on which it is reached, and by what.

    ``by`` says whether the fitted course itself reaches it, its band, or the kit's error alone.
    """

    what: str
    line: float
    day: float
    by: str


def harm_line(what: str, water: AmmoniaWater) -> float:
    """From where a reading harms in this water, in its unit; what is not known is taken at the worse."""
    if what == AMMONIA:
        return least_harmful_ammonia_mg_n_l(*water)
    return most_nitrite_mg_n_l() if what == NITRITE else edge_of(what, "harmful_high")


def reach_of(course: FittedCourse, water: AmmoniaWater) -> Reach | None:
    """How a course, from today on, reaches the line that harms; None where not even its band does."""
    ahead, line = course.ahead(), harm_line(course.what, water)
    ways = ((BY_FIT, ahead.levels), (BY_BAND, ahead.edge(1, kit=False)), (BY_KIT, ahead.edge(1)))
    for by, values in ways:
        day = first_day(ahead.days, (value >= line for value in values))
        if day is not None:
            return Reach(course.what, line, day, by)
    return None


def first_day(days: Sequence[float], holds: Iterable[bool]) -> float | None:
    """The first of some days on which something holds."""
    return next((day for day, here in zip(days, holds, strict=True) if here), None)


def reaches(weeks: FittedWeeks, water: AmmoniaWater) -> list[Reach]:
    """The lines that may be reached: ammonia and nitrite before nitrate."""
    found = [reach_of(course, water) for course in weeks.courses]
    return sorted(filter(None, found), key=lambda one: one.what == NITRATE)


def harm_sentences(weeks: FittedWeeks, water: AmmoniaWater) -> list[str]:
    """A sentence for each line that may be reached."""
    return [harm_sentence(one, water) for one in reaches(weeks, water)]


def harm_sentence(reach: Reach, water: AmmoniaWater) -> str:
    """When a reading may begin to harm, and that a test comes first."""
    one = READINGS[reach.what]
    level, name = one.words(reach.line), one.name
    at = water.words() if reach.what == AMMONIA else ""
    over_time = " over time" if reach.what == NITRATE else ""
    harms = f"from which it harms many animals{over_time}{at}"
    if reach.by == BY_KIT:
        if reach.what == NITRATE:
            return f"The kit cannot rule out {name} of {level}, {harms}."
        return f"The kit cannot rule out {name} of {level}, {harms}: a finer kit can."
    test = "" if reach.what == NITRATE else " Test it today."
    if reach.by == BY_FIT:
        verb = "stands at" if reach.day < 1 else "reaches"
        return f"{upper(name)} {verb} {level} {or_more(reach.day)}, {harms}.{test}"
    return f"{upper(name)} could reach {level} {within(reach.day)}, {harms}.{test}"


def or_more(day: float) -> str:
    """When it is reached, by the course itself."""
    return "or more now" if day < 1 else within(day)


def within(day: float) -> str:
    """How soon a day comes, in words."""
    return "today already" if day < 1 else f"in about {counted(round(day), 'day')}"


def span(low: float, high: float) -> str:
    """From ``low`` to ``high`` days ahead, in words: in weeks where it is far."""
    by, name = (7, "week") if low >= WEEKS_FROM_DAYS else (1, "day")
    first, last = max(1, round(low / by)), max(1, round(high / by))
    return counted(first, name) if first == last else f"{first} to {counted(last, name)}"


def caption(weeks: FittedWeeks, water: AmmoniaWater) -> str:
    """The meaning of the weeks: harm, then nitrate, then the plants."""
    nitrate = next(one for one in weeks.courses if one.what == NITRATE)
    said = [*harm_sentences(weeks, water), nitrate_sentence(nitrate), *hunger(weeks), SHADED]
    return " ".join(said)


def nitrate_sentence(course: FittedCourse) -> str:
    """Whether nitrate runs out, and when; else from where to where it goes."""
    ahead = course.ahead()
    days, sure = ahead.days, [ahead.edge(side, kit=False) for side in (-1, 1)]
    early, middle, late = (used_up(days, row) for row in (sure[0], ahead.levels, sure[1]))
    if middle is not None and middle < 1:
        return "Nitrate is about used up already."
    if middle is not None and late is not None:
        return f"Nitrate runs out in about {span(early or 0.0, late)}."
    if middle is not None:
        return f"Nitrate runs out in about {span(middle, middle)}, perhaps not within four weeks."
    if early is not None:
        soonest = span(early, early)
        return f"Nitrate may run out, in {soonest} at the soonest; more likely it lasts four weeks."
    begin, end = (show_number(ahead.levels[at], 2) for at in (0, -1))
    low, high = (show_number(row[-1], 2) for row in sure)
    return f"Nitrate goes from about {begin} to {end} mg/L in four weeks, {low} to {high}."


def used_up(days: Sequence[float], levels: Sequence[float]) -> float | None:
    """The first day on which nitrate counts as used up; ``levels`` in mg/L, one for each day."""
    return first_day(days, (level <= USED_UP_MG_L for level in levels))


def hunger(weeks: FittedWeeks) -> Iterator[str]:
    """Which plants starve first, and when."""
    if weeks.hungry_day is None:
        return
    names = joined([plant_name(key) for key in weeks.hungry])
    starve = "starve" if len(weeks.hungry) > 1 else "starves"
    when = "already" if weeks.hungry_day < 1 else f"in about {span(*2 * [weeks.hungry_day])}"
    yield f"{upper(names)} {starve} first, {when}."
