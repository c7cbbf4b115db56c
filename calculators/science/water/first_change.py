"""What is said of a first change of water that moves the hardness too far at once."""

from collections.abc import Callable

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.science.water.between_changes import CourseOfReading
from calculators.science.water.gentle import STEP_DH_A_DAY


def hardness_jump(percent: float, tank_dh: float | None, new_dh: float | None) -> str:
    """What to do about new water of another carbonate hardness; empty where animals bear such a change.

    The hardness is in °dH, ``percent`` the change that is asked for; None is not read.
    """
    if tank_dh is None or new_dh is None:
        return ""
    step = (new_dh - tank_dh) * percent / 100
    if abs(step) <= STEP_DH_A_DAY:
        return ""
    moves, side = ("raise", "above") if step > 0 else ("lower", "below")
    match = "mix it with purified water" if step > 0 else "add minerals to it"
    least = 100 * STEP_DH_A_DAY / abs(new_dh - tank_dh)
    return (
        f"Your new water’s KH of {show_number(new_dh)} °dH is so far {side} the tank’s that this would "
        f"{moves} it by {show_number(abs(step), 2)} °dH at once, where animals bear about {STEP_DH_A_DAY} a "
        f"day: {match} first, to about the tank’s KH. Where you cannot, begin with {least:.0f} % at a time."
    )


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
