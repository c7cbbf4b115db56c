"""What is said of a first change of water that moves the hardness too far at once."""

from collections.abc import Callable

from calculators.core.result import Note
from calculators.science.water.between_changes import CourseOfReading
from calculators.science.water.gentle import STEP_DH_A_DAY


def quick_first_change(
    course: CourseOfReading, name: str, show: Callable[[float], str], tender: str = ""
) -> list[Note]:
    """A change that lifts or lowers a hardness by more than animals bear in a day; else nothing.

    The ``course`` is in °dH, of the hardness called ``name``; ``show`` words a figure of it, and
    ``tender`` says, after a comma, who bears least.
    """
    step = course.share * (course.new_water - course.start)
    if not course.is_renewed or abs(step) <= STEP_DH_A_DAY:
        return []
    text = (
        f"The first of these changes {'raises' if step > 0 else 'lowers'} {name} by {show(abs(step))} °dH at "
        f"once. Animals bear about {STEP_DH_A_DAY} °dH a day{tender}: begin with smaller changes."
    )
    return [Note("caution", text, True)]
