"""The fitted weeks as pictures: readings with the kit's step, the course through them and on, its band."""

from calculators.core.result import Line, Mark, Series
from calculators.core.wording import upper
from calculators.science.animals.line_words import HARMS
from calculators.science.fitting.fitted_course import DAY_PLACES, FittedCourse
from calculators.science.shelf.engine_tank import NITRATE
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.harmful_readings import AmmoniaWater
from calculators.standing.nitrogen_outlook import FittedWeeks
from calculators.standing.outlook_words import caption, harm_line, reach_of

TODAY = Mark(0.0, "today", is_now=True)


def outlook_pictures(weeks: FittedWeeks | None, water: AmmoniaWater) -> dict[str, Series]:
    """A picture for nitrate, and before it one for what is toxic, where there is any that matters."""
    if weeks is None:
        return {}
    shown = [one for one in weeks.courses if one.what == NITRATE or matters(one, weeks, water)]
    found: dict[str, Series] = {}
    for course in sorted(shown, key=lambda one: one.what == NITRATE):
        found |= course_picture(course, weeks, water)
    return found


def matters(course: FittedCourse, weeks: FittedWeeks, water: AmmoniaWater) -> bool:
    """Whether anything was read, or the band reaches what harms."""
    read = any(one.value > 0 for one in weeks.readings if one.what == course.what)
    return read or reach_of(course, water) is not None


def course_picture(
    course: FittedCourse, weeks: FittedWeeks, water: AmmoniaWater
) -> dict[str, Series]:
    """The series of one thing: the course, the edges of its band, and the readings as dots."""
    one = READINGS[course.what]
    name, key = upper(one.name), f"ahead_{course.what}"
    rows = [row for row in weeks.readings if row.what == course.what]
    fitted = Series(
        f"{name}, fitted", one.unit, "Day", "today is 0", course.days, course.levels,
        picture=f"{name}: read, and the weeks ahead", short="fitted", us=one.us,
        digits=2, x_digits=2,
    )  # fmt: skip
    edge = fitted._replace(edge_of=key)
    return {
        key: fitted._replace(
            lines=(Line(HARMS, harm_line(course.what, water)),),
            marks=marks(weeks, course),
            caption=caption(weeks, water),
        ),
        f"{key}_low": edge._replace(label=f"{name}, at least", y=course.edge(-1)),
        f"{key}_high": edge._replace(label=f"{name}, at most", y=course.edge(1)),
        f"{key}_read": fitted._replace(
            label=f"{name} that you read",
            x=[round(row.day, DAY_PLACES) for row in rows],
            y=[row.value for row in rows],
            short="read",
            dots=True,
            step=max((row.step or one.step for row in rows), default=one.step),
        ),
    }


def marks(weeks: FittedWeeks, course: FittedCourse) -> tuple[Mark, ...]:
    """Today, and the changes of water: those that were made, and those of the tank's habit."""
    first, last = course.days[0], course.days[-1]
    days = [round(one.day, DAY_PLACES) for one in weeks.changes]
    return (TODAY, *(Mark(day, "change") for day in days if first <= day <= last))
