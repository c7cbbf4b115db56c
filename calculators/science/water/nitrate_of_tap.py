"""A change of water against what kills, where the tap itself brings nitrate: the one rule for all pages.

Nitrite and ammonia kill within days, nitrate of the tap harms over weeks. So a tap that is rich in
nitrate is no reason to leave nitrite in; one whose nitrate kills by itself is.
"""

from collections.abc import Collection

from calculators.core.numbers import show_number
from calculators.science.animals.reading_lines import edge_of, standing
from calculators.science.animals.reading_steps import SHARES

NITRATE, NITRITE, AMMONIA = "nitrate_mg_l", "nitrite_mg_n_l", "ammonia_mg_n_l"
AFTERWARDS = "Once {} zero, bring the nitrate down with fast plants, or with water that holds less."
OTHER_WATER = "Take other dechlorinated water, no harder than the tank’s and as warm."
RICH_TAP = (
    "A tap that is rich in nitrate is no reason to wait: nitrite kills within days, nitrate of "
    f"{show_number(edge_of(NITRATE, 'harmful_high'))} mg/L and more over weeks. From "
    f"{show_number(edge_of(NITRATE, 'deadly_high'))} mg/L in the tap on, take other water."
)


def change_by_tap(
    change: str, kills: Collection[str], tap_mg_l: float | None, tank_mg_l: float | None
) -> str:
    """A change of water in words, by the nitrate of the tap and of the tank; mg/L as NO3, None if unread.

    ``kills`` are the readings, by key, that the change is for.
    """
    if not change or tap_mg_l is None:
        return change
    read = f"Your tap’s nitrate of {show_number(tap_mg_l)} mg/L"
    quicker = [name for key, name in ((NITRITE, "nitrite"), (AMMONIA, "ammonia")) if key in kills]
    if NITRATE in kills and not quicker and tank_mg_l is not None and tap_mg_l >= tank_mg_l:
        return f"{read} is no lower than the tank’s: do not change with it. {OTHER_WATER}"
    level = standing(NITRATE, tap_mg_l).level
    if level == "deadly" and not kills:
        return f"{read} can kill: for any change take other dechlorinated water. {change}"
    if level == "in-range" or not quicker:
        return change
    sooner = " and ".join(quicker)
    if level == "harmful":
        kill, they = ("kill", "they read") if quicker[1:] else ("kills", "it reads")
        return (
            f"{change} {read} is by itself no reason against a change: it harms over weeks, {sooner} {kill} "
            f"sooner. {AFTERWARDS.format(they)}"
        )
    if standing(NITRATE, after_a_third(tank_mg_l or 0.0, tap_mg_l)).level == "deadly":
        return f"{read} can kill: do not change with it. {OTHER_WATER} {change}"
    return (
        f"{change} {read} can kill by itself: for a change take other dechlorinated water, no harder than "
        f"the tank’s and as warm. With none at hand make one change with it and no more, since {sooner} may "
        "kill sooner."
    )


def tap_is_lower(tap_mg_l: float) -> str:
    """That a change with this tap brings nitrate down; mg/L as NO3."""
    return f"Your tap’s nitrate of {show_number(tap_mg_l)} mg/L is lower than the tank’s."


def after_a_third(tank_mg_l: float, tap_mg_l: float) -> float:
    """The nitrate once a third is changed, mg/L."""
    return tank_mg_l + SHARES["third"][0] / 100 * (tap_mg_l - tank_mg_l)
