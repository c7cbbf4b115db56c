"""The uptake of plants that explains a tank's own readings of nitrate, and how sure it is."""

from typing import NamedTuple

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.science.nitrogen.balance import Flows
from calculators.science.nitrogen.edges import LESS_GAS, MORE_GAS
from calculators.science.nitrogen.steady import fitted_uptake

AT_THE_END = Note(
    "info",
    "With hardly any nitrate left, plants take no more than comes in. The uptake that fits is then "
    "what they get, not what they could take.",
)

Slopes = tuple[float | None, float | None, float | None]


class UptakeFit(NamedTuple):
    """Uptake in mg N a day with its 95 % limits; None where the readings do not bear one.

    ``width`` is that of the limits, ``width_next`` with one reading more. ``unexplained``: nitrate
    rises faster than the feed explains with no plants at all.
    """

    middle: float | None = None
    low: float | None = None
    high: float | None = None
    width: float | None = None
    width_next: float | None = None
    unexplained: bool = False


def fit(
    week_flows: Flows, slopes: Slopes, next_reading_ratio: float | None, volume_l: float
) -> UptakeFit:
    """Fit the uptake to the slope of a trend and its limits (mg/L a week, middle, low, high).

    A steeper rise means less uptake, so the limits change places. The mass balance is linear in the
    slope: limits at 95 % stay limits at 95 %, and a width that one reading more makes smaller by a
    ratio is smaller by the same ratio here. The feed's and the soil's share are taken as entered.
    """
    supply = week_flows.excreted - week_flows.denitrified
    middle, high, low = (
        None if slope is None else fitted_uptake(supply, slope, volume_l) for slope in slopes
    )
    if all(limit is None or limit < 0 for limit in (middle, high)):
        return UptakeFit(unexplained=middle is not None or high is not None)
    width = None if low is None or high is None else high - low
    return UptakeFit(
        middle=at_least_none(middle),
        low=at_least_none(low),
        high=at_least_none(high),
        width=width,
        width_next=None
        if width is None or next_reading_ratio is None
        else width * next_reading_ratio,
    )


def at_least_none(uptake: float | None) -> float | None:
    """An uptake below zero read as none.

    Both the ``uptake`` and what comes back are in mg N a day.
    """
    return None if uptake is None else max(0.0, uptake)


def fit_notes(fit: UptakeFit, week_flows: Flows, sure: str = "95 %") -> list[Note]:
    """What the fit means, how sure its limits are, and what they leave out."""
    if fit.unexplained:
        return [
            Note(
                "caution",
                "Nitrate rises faster than this feed explains with no plants at all. Food is left to "
                "rot, or a figure is wrong: feed, protein, volume, or a kit that reads nitrogen, "
                "NO₃-N, where nitrate, NO₃, is meant.",
            )
        ]
    if fit.middle is None:
        return []
    limits = "; these readings bear no limits yet"
    if fit.low is not None and fit.high is not None:
        limits = f", {show(fit.low, 2)} to {show(fit.high, 2)} at {sure}"
    narrower = ""
    if fit.width is not None and fit.width_next is not None:
        narrower = (
            f" The limits are {show(fit.width, 2)} mg apart; one reading more may be expected to "
            f"make that {show(fit.width_next, 2)}."
        )
    least, most = LESS_GAS * week_flows.denitrified, MORE_GAS * week_flows.denitrified
    return [
        Note(
            "info",
            f"The readings fit an uptake of about {show(fit.middle, 2)} mg of nitrogen a day{limits}."
            f"{narrower} Not in these limits: droppings that rot can make it up to "
            f"{show(week_flows.rotting_at_most, 2)} more, and the soil's gas may be {show(least, 2)} to "
            f"{show(most, 2)} mg where {show(week_flows.denitrified, 2)} is taken.",
        )
    ]
