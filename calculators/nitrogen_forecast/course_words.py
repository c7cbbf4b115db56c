"""The course of a run in plain words: hunger, where nitrate goes, what the stand does."""

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.nitrogen_forecast.shortage_words import shortage
from calculators.science.conversions import PERCENT_TO_MG_PER_G
from calculators.science.nitrogen.course import Course
from calculators.science.nitrogen.plant_constants import CRITICAL_N_PERCENT, HEALTHY_N_ROOTED
from calculators.science.nitrogen.simulate import Outcome

LEAST_SEEN_MG_L = 0.5


def course_note(outcome: Outcome, course: Course, days: float, *, harmless: bool) -> Note:
    """The course in a few sentences; a word that calms is used only where nothing harms animals."""
    hunger = outcome.record.hunger
    short = bool(hunger.spells) and hunger.spells[-1].end is None
    parts = [
        shortage(hunger, days),
        nitrate_words(outcome, course, harmless=harmless and not short),
    ]
    text = " ".join(part for part in (*parts, stand_words(course)) if part)
    return Note("caution" if short else "info", text)


def nitrate_words(outcome: Outcome, course: Course, *, harmless: bool) -> str:
    """Where nitrate goes."""
    start, end = amount(course.start), amount(course.end)
    if course.direction == "rising":
        top = (
            f", and reaches {amount(course.highest)} on the way"
            if course.highest > 1.1 * course.end
            else ""
        )
        return f"Building: nitrate climbs from {start} to {end}{top}."
    if course.direction == "falling":
        top = (
            f", after a top of {amount(course.highest)} about day {course.highest_day:.0f}"
            if course.highest > 1.1 * course.start
            else ""
        )
        return f"Falling: nitrate goes from {start} to {end}{top}.{lean(outcome)}"
    if course.direction == "up-and-down":
        return (
            f"Nitrate ends near where it began, at {end}, but swings between "
            f"{amount(course.lowest)} and {amount(course.highest)}."
        )
    if outcome.last.nitrate < LEAST_SEEN_MG_L:
        return f"Nitrate stays at next to none.{lean(outcome)}"
    subject = "Level: nitrate" if harmless and course.stand_holds else "Nitrate"
    return f"{subject} stays at {end}."


def lean(outcome: Outcome) -> str:
    """A word on plants that take all that comes, and live below their fill."""
    store = outcome.last.plant_nitrogen_percent
    if outcome.last.nitrate < LEAST_SEEN_MG_L and store < HEALTHY_N_ROOTED / PERCENT_TO_MG_PER_G:
        return (
            " Lean: the plants take all that comes and grow as slowly as it allows. The hungriest "
            f"hold {show(store, 2)} % nitrogen; leaves brown below {show(CRITICAL_N_PERCENT, 2)} %."
        )
    return ""


def stand_words(course: Course) -> str:
    """What the stand of plants does, where it does not hold."""
    if course.stand_holds:
        return ""
    masses = f"from {show(course.mass_start, 2)} to {show(course.mass_end, 2)} g, wet"
    if course.times_grown < 1:
        return f"The plants dwindle {masses}."
    return (
        f"The plants grow {show(course.times_grown, 2)}-fold, {masses}, and that growth takes nitrogen "
        "for as long as there is room and light."
    )


def amount(nitrate_mg_l: float) -> str:
    """A nitrate in words; what no kit can see is next to none."""
    return (
        "next to none" if nitrate_mg_l < LEAST_SEEN_MG_L else f"about {show(nitrate_mg_l, 2)} mg/L"
    )
