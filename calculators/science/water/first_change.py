"""What is said of a first change of water that moves the hardness too far at once."""

from collections.abc import Callable, Sequence

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.core.wording import joined
from calculators.science.water.between_changes import CourseOfReading
from calculators.science.water.gentle import STEP_DH_A_DAY
from calculators.science.water.hardness_gap import HardnessGap, bearable_percent, hardness_gaps

# Where hardness is nearly gone: common practice, no source. More at once lifts the pH in a leap.
A_DAY_PERCENT = 10
# Who bears a change of general hardness least, at the end of a sentence; common practice, no source.
TENDER = ", shrimp and snails least of all"


def hardness_jump(percent: float, gaps: Sequence[HardnessGap], killer: str = "") -> str:
    """What to do about new water of another hardness; empty where animals bear such a change.

    ``percent`` is the change that is asked for. ``killer`` names what kills in the tank meanwhile: then
    the change is not put off, but split.
    """
    far = [gap for gap in gaps if abs(gap.step_dh(percent)) > STEP_DH_A_DAY]
    if not far:
        return ""
    begin = f"begin with {bearable_percent(gaps)} % at a time"
    if killer:
        verb = "kill" if " and " in killer else "kills"
        begin += (
            f", poured slowly, and again after an hour or more until it is {percent:.0f} % in all, since "
            f"{killer} {verb} sooner"
        )
    return f"{too_far(far, percent)}: {match(far)} Where you cannot, {begin}."


def too_far(far: Sequence[HardnessGap], percent: float) -> str:
    """That a change of so many ``percent`` moves these hardnesses too far, without a full stop."""
    tender = TENDER if any(gap.name == "GH" for gap in far) else ""
    sides = {"above" if gap.new_dh > gap.tank_dh else "below" for gap in far}
    waters = joined([f"{gap.name} of {show_number(gap.new_dh)}" for gap in far])
    steps = joined([show_number(abs(gap.step_dh(percent)), 2) for gap in far])
    verb, it = ("are", "them") if far[1:] else ("is", "it")
    if len(sides) == 2:
        place, moves = "so far from", "move"
    else:
        place = f"so far {next(iter(sides))}"
        moves = "raise" if sides == {"above"} else "lower"
    return (
        f"Your new water’s {waters} °dH {verb} {place} the tank’s that a change of {percent:.0f} % would "
        f"{moves} {it} by {steps} °dH at once, where animals bear about {STEP_DH_A_DAY} a day{tender}"
    )


def match(far: Sequence[HardnessGap]) -> str:
    """How to bring new water to the tank's hardness."""
    harder = [gap.new_dh > gap.tank_dh for gap in far]
    if any(harder) and not all(harder):
        return "take other water, since neither purified water nor minerals alone match both."
    how = "mix it with purified water first" if all(harder) else "add minerals to it first"
    return f"{how}, to about the tank’s {' and '.join(gap.name for gap in far)}."


def daily_rise(kh_dh: float, tap_kh_dh: float) -> str:
    """How to bring up a carbonate hardness that is nearly gone, by that of the tap; both in °dH."""
    tap = f"Your tap’s KH of {show_number(tap_kh_dh)} °dH"
    if tap_kh_dh <= kh_dh:
        return f"{tap} is no higher than the tank’s: no change with it raises KH."
    most = min(A_DAY_PERCENT, bearable_percent(hardness_gaps(kh_dh, tap_kh_dh)))
    if most < A_DAY_PERCENT:
        return f"{tap} allows no more than {most} % a day."
    return ""


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
