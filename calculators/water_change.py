"""The water change that brings a reading to a target."""

import math
from typing import Annotated, NamedTuple

from calculators.core.declare import calculator
from calculators.core.numbers import show_number
from calculators.core.quantities import Concentration, Count, Litres, Percent, Volume
from calculators.core.quantity import Help, Label, Possible
from calculators.core.result import Note
from calculators.core.wording import CHANGE_WITH_CARE, TESTED_TAP

LARGE_CHANGE_PERCENT = 50  # common practice, no source: above it, match the new water with care
ROUNDING = 1e-9  # so that a target met exactly by n changes does not ask for n + 1


class WaterChange(NamedTuple):
    """One change, or the fewest equal ones; null where none can do it."""

    single_change_percent: Annotated[Percent | None, Label("In a single change")]
    changes: Annotated[Count | None, Label("Number of changes"), Help("None above your limit.")]
    each_change_percent: Annotated[Percent | None, Label("Each change")]
    after_mg_l: Annotated[Concentration | None, Label("Reading afterwards")]
    litres_total: Annotated[Litres | None, Label("Water in all")]
    notes: tuple[Note, ...]


@calculator("Water change", sources=())
def water_change(
    now_mg_l: Annotated[Concentration, Label("Reading now")] = 40.0,
    tap_mg_l: Annotated[
        Concentration, Label("Reading of the new water"), Help("Test the tap, or what you mix.")
    ] = 5.0,
    target_mg_l: Annotated[Concentration, Label("Reading wanted")] = 20.0,
    max_change_percent: Annotated[
        Percent,
        Label("Largest single change"),
        Possible(1, 100),
        Help("What you and the animals will bear."),
    ] = 30.0,
    volume_l: Annotated[Volume, Help("Water in the tank, without soil and stones.")] = 120.0,
) -> WaterChange:
    """Find the water change, or the fewest equal changes, that bring a reading down to a target.

    Works for anything dissolved that is measured in mg/L: nitrate, nitrite, phosphate, a dosing
    accident. Each change replaces its share of the tank with new water, and the tank mixes.
    Nothing is taken to be added or used up between the changes, so make them on the same day or
    test before each.
    """
    if now_mg_l <= target_mg_l:
        return nothing_to_do(now_mg_l, tap_mg_l)
    if tap_mg_l >= target_mg_l and (tap_mg_l > target_mg_l or max_change_percent < 100):
        return out_of_reach(tap_mg_l, target_mg_l)
    left = (target_mg_l - tap_mg_l) / (now_mg_l - tap_mg_l)  # of the distance to the tap's reading
    changes = fewest(left, max_change_percent / 100)
    each = 1 - left ** (1 / changes)
    return WaterChange(
        single_change_percent=100 * (1 - left),
        changes=changes,
        each_change_percent=100 * each,
        after_mg_l=target_mg_l,
        litres_total=changes * each * volume_l,
        notes=(
            verdict(changes, 100 * each, now_mg_l, target_mg_l),
            *notes(changes, 100 * each, tap_mg_l),
        ),
    )


def fewest(left: float, largest: float) -> int:
    """The fewest equal changes, none above ``largest``, that leave the share ``left``."""
    if largest >= 1 or left >= 1 - largest:
        return 1
    return math.ceil(math.log(left) / math.log(1 - largest) - ROUNDING)


def nothing_to_do(now: float, tap: float) -> WaterChange:
    """The reading is at or below the target already."""
    said = [Note("info", "The reading is not above the target: no change is needed for it.", True)]
    if tap > now:
        said.append(Note("caution", "The new water reads higher than the tank and would raise it."))
    return WaterChange(0.0, 0, 0.0, now, 0.0, tuple(said))


def out_of_reach(tap: float, target: float) -> WaterChange:
    """The new water itself does not read below the target."""
    why = (
        f"Changes with this water can never reach the target: it reads {tap:g} mg/L itself, and "
        f"the target is {target:g} mg/L. Mix in water that reads lower, or let plants do it."
    )
    return WaterChange(None, None, None, None, None, (Note("caution", why, True), TESTED_TAP))


def verdict(changes: int, each_percent: float, now: float, target: float) -> Note:
    """The answer in plain words."""
    so_many = "One change" if changes == 1 else f"{changes} changes"
    text = f"{so_many} of {show_number(each_percent)} %"
    text += " each" if changes > 1 else ""
    ends = "bring" if changes > 1 else "brings"
    return Note(
        "info", f"{text} {ends} it from {show_number(now)} to {show_number(target)} mg/L.", True
    )


def notes(changes: int, each_percent: float, tap: float) -> list[Note]:
    """Cautions by the size of the change."""
    said = []
    if each_percent > LARGE_CHANGE_PERCENT:
        said.append(
            Note(
                "caution",
                f"{each_percent:.0f} % at once shifts temperature, pH and hardness. Where animals "
                "are not in danger, several smaller changes are gentler.",
            )
        )
    if changes > 1:
        said.append(
            Note("info", "Test again before the last change: the tank may be there already.")
        )
    return [*said, CHANGE_WITH_CARE, *([TESTED_TAP] if tap == 0 else [])]
