"""Growth against light as one inline picture: ranges as crosses, plants as numbered marks."""

import math
from html import escape
from typing import NamedTuple

from markupsafe import Markup

from calculators.core.numbers import show_number
from scripts.pages.plants.growth_places import (
    BOTTOM,
    HEIGHT,
    LEFT,
    MARK,
    RIGHT,
    TOP,
    WIDTH,
    PicturePoint,
    spread_out,
)
from scripts.records.claim import Range

AIR = 1.12  # factor by which an axis goes on past the outermost range
# Ticks that an axis may carry; both go by equal factors, since the figures span powers of ten.
LIGHT_TICKS = (0.25, 0.5, 1.0, 2.0, 4.0, 8.0, 16.0)  # mol/m²/d
DAY_TICKS = (3.0, 7.0, 14.0, 30.0, 60.0, 120.0, 240.0, 480.0)


class Spot(NamedTuple):
    """A plant of the picture."""

    number: int
    slug: str
    name: str
    light: Range
    doubling: Range


class Axis(NamedTuple):
    """One axis: the figures at its ends, and its pixels there."""

    low: float
    high: float
    start: float
    end: float

    def at(self, value: float) -> float:
        """The pixel of a figure. The ``value`` is in the unit of the axis."""
        share = math.log(value / self.low) / math.log(self.high / self.low)
        return self.start + share * (self.end - self.start)

    def within(self, ticks: tuple[float, ...]) -> list[float]:
        """The ticks that the axis reaches. They stay in order."""
        return [tick for tick in ticks if self.low <= tick <= self.high]


class Axes(NamedTuple):
    """Light from left to right; doubling time from the top, fast, to the bottom, slow."""

    light: Axis
    days: Axis

    def point(self, spot: Spot) -> PicturePoint:
        """The middle of both ranges of a plant."""
        return PicturePoint(
            self.light.at(spot.light.middle_by_factors),
            self.days.at(spot.doubling.middle_by_factors),
        )


def axes_for(spots: list[Spot]) -> Axes:
    """Axes that just hold every range."""

    def ends(claims: list[Range]) -> tuple[float, float]:
        return min(claim.low for claim in claims) / AIR, max(claim.high for claim in claims) * AIR

    return Axes(
        Axis(*ends([spot.light for spot in spots]), LEFT, WIDTH - RIGHT),
        Axis(*ends([spot.doubling for spot in spots]), TOP, HEIGHT - BOTTOM),
    )


def picture(spots: list[Spot], habit: str) -> Markup:
    """The picture of one habit; each mark is a link to its plant's page."""
    axes = axes_for(spots)
    homes = [axes.point(spot) for spot in spots]
    crosses = "".join(cross(spot, axes) for spot in spots)
    places = spread_out(homes)
    leads = "".join(map(lead, homes, places))
    marks = "".join(map(mark, spots, places))
    words = escape(
        f"Doubling time against daily light need of every {habit} with figures; "
        "the list beneath says the same."
    )
    return Markup(
        f'<svg class="growth" viewBox="0 0 {WIDTH:g} {HEIGHT:g}" role="group" aria-label="{words}">'
        f"{lines(axes)}{crosses}{leads}{marks}</svg>"
    )


def lines(axes: Axes) -> str:
    """Lines and figures of both axes."""
    foot = HEIGHT - BOTTOM
    made = [
        f'<path class="grid" d="M{axes.light.at(tick):.1f} {TOP:g}V{foot:g}"/>'
        f'<text class="mid" x="{axes.light.at(tick):.1f}" y="{foot + 14:g}">{show_number(tick)}</text>'
        for tick in axes.light.within(LIGHT_TICKS)
    ]
    made += [
        f'<path class="grid" d="M{LEFT:g} {axes.days.at(tick):.1f}H{WIDTH - RIGHT:g}"/>'
        f'<text class="end" x="{LEFT - 5:g}" y="{axes.days.at(tick) + 4:.1f}">{show_number(tick)}</text>'
        for tick in axes.days.within(DAY_TICKS)
    ]
    made.append(f'<text x="2" y="{TOP - 10:g}">doubles in, days (fast on top)</text>')
    made.append(
        f'<text class="end" x="{WIDTH - RIGHT:g}" y="{HEIGHT - 8:g}">daily light, mol/m²/d</text>'
    )
    return "".join(made)


def cross(spot: Spot, axes: Axes) -> str:
    """Both ranges, from end to end."""
    x, y = axes.point(spot)
    left, right = axes.light.at(spot.light.low), axes.light.at(spot.light.high)
    top, foot = axes.days.at(spot.doubling.low), axes.days.at(spot.doubling.high)
    return f'<path class="span" d="M{left:.1f} {y:.1f}H{right:.1f}M{x:.1f} {top:.1f}V{foot:.1f}"/>'


def lead(home: PicturePoint, place: PicturePoint) -> str:
    """A thin line to the true place of a mark that had to give way."""
    if place == home:
        return ""
    return (
        f'<path class="lead" d="M{home.x:.1f} {home.y:.1f}L{place.x:.1f} {place.y:.1f}"/>'
        f'<circle class="home" cx="{home.x:.1f}" cy="{home.y:.1f}" r="2"/>'
    )


def mark(spot: Spot, place: PicturePoint) -> str:
    """A numbered mark, which leads to the plant's line in the list."""
    name = escape(f"{spot.number}: {spot.name}")
    return (
        f'<a href="#spot-{spot.slug}" aria-label="{name}"><title>{name}</title>'
        f'<circle class="dot" cx="{place.x:.1f}" cy="{place.y:.1f}" r="{MARK:g}"/>'
        f'<text class="mid" x="{place.x:.1f}" y="{place.y + 4:.1f}">{spot.number}</text></a>'
    )
