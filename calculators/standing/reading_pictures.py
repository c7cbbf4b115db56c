"""The last readings of a tank as pictures, with what broke the line marked."""

from calculators.core.result import Line, Mark, Series
from calculators.core.wording import upper
from calculators.science.animals.line_words import HARMS
from calculators.science.animals.reading_lines import LINES
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.harmful_readings import ReadingOutside
from calculators.science.shelf.log import Log
from calculators.science.trends.theil_sen import line
from calculators.standing.reading_courses import (
    BREAKS,
    BREAKS_OF_WATER,
    ReadingCourse,
    TrendRow,
    today_in_days,
)

MOST_PICTURES = 5
IN_HEADING = 2
WAYS = {"building": "rising", "falling": "falling", "steady": "steady"}
MARKS = {"change": "change", "dose": "dose", "thin": "thinned"}
DRAWN_FIRST = ("nitrate_mg_l", "ammonia_mg_n_l", "nitrite_mg_n_l", "ph", "cover_percent")


def pictures(
    courses: list[ReadingCourse], harms: list[ReadingOutside], log: Log
) -> dict[str, Series]:
    """The readings of what harms first, then nitrate and the other tests; at most five pictures."""
    harmful = [harm.reading.what for harm in harms]
    order = [*harmful, *DRAWN_FIRST, *READINGS]
    shown = sorted(courses, key=lambda course: order.index(course.what))
    found: dict[str, Series] = {}
    for course in [one for one in shown if points(one) > 1][:MOST_PICTURES]:
        found |= drawn(course, log)
    return found


def folded(series: dict[str, Series], heading: str, in_view: str = "") -> dict[str, Series]:
    """The same series behind a heading, but for the one of the key ``in_view``."""
    return {
        key: one if key == in_view else one._replace(fold=heading) for key, one in series.items()
    }


def readings_heading(rows: list[TrendRow]) -> str:
    """What was read last of what is asked for most, and which way it goes, in a few words."""
    asked = sorted(rows, key=lambda row: [*DRAWN_FIRST, *READINGS].index(row.what))
    return f"Readings: {'; '.join(reading_words(row) for row in asked[:IN_HEADING])}"


def reading_words(row: TrendRow) -> str:
    """One reading with its way, where one is known."""
    one = READINGS[row.what]
    way = WAYS.get(row.verdict)
    return f"{one.name} {one.words(row.latest)}{f', {way}' if way else ''}"


def points(course: ReadingCourse) -> int:
    """How many readings a course has."""
    return sum(map(len, course.stretches))


def drawn(course: ReadingCourse, log: Log) -> dict[str, Series]:
    """One thing's readings as dots, with the line of its trend where there is one."""
    one = READINGS[course.what]
    title = upper(one.name)
    days = [day for stretch in course.stretches for day, _ in stretch]
    values = [value for stretch in course.stretches for _, value in stretch]
    base = Series(
        title,
        one.unit,
        "Day",
        "today is 0",
        days,
        values,
        f"{title}: readings",
        x_digits=2,
        us=one.us,
    )
    found = {
        course.what: base._replace(
            short="read", dots=True, lines=harm_lines(course.what), marks=marks(course, days, log)
        )
    }
    found |= band(course, base)
    if course.slope is not None:
        heights = [y for stretch in course.stretches for y in line(stretch, course.slope.middle)]
        found[f"{course.what}_trend"] = base._replace(
            label=f"{title}: line of the trend",
            y=heights,
            short="trend",
            digits=2,
            subject="The line of the trend",
        )
    return found


def band(course: ReadingCourse, base: Series) -> dict[str, Series]:
    """What the kit cannot tell apart: half of its step to either side of each reading."""
    half, least = course.kit_step / 2, READINGS[course.what].low
    edges = {"least": [max(least, y - half) for y in base.y], "most": [y + half for y in base.y]}
    return {
        f"{course.what}_{edge}": base._replace(y=values, edge_of=course.what)
        for edge, values in edges.items()
    }


def harm_lines(what: str) -> tuple[Line, ...]:
    """Where a reading begins to harm; ammonia's line hangs on pH and warmth, and is not drawn."""
    lines = LINES.get(what)
    if lines is None:
        return ()
    ends = ((HARMS, lines.harmful_low), (HARMS, lines.harmful_high))
    return tuple(Line(label, value) for label, value in ends if value is not None)


def marks(course: ReadingCourse, days: list[float], log: Log) -> tuple[Mark, ...]:
    """What broke the line while it was read."""
    zero = today_in_days(log)
    return tuple(
        Mark(one.days - zero, MARKS[one.entry.kind])
        for one in log.of(*BREAKS.get(course.what, BREAKS_OF_WATER))
        if days[0] <= one.days - zero <= days[-1]
    )
