"""A range from a record as text in both systems of units, and as a bar on a scale."""

from typing import Any, NamedTuple

from markupsafe import Markup

from calculators.core import quantities as q
from calculators.core.kept_together import kept_together
from calculators.core.numbers import show_number
from calculators.core.quantity import Quantity
from calculators.core.shown_units import System, converted, us_unit
from scripts.records.claim import COMMON_PRACTICE, Range

BAR_WIDTH, BAR_HEIGHT = 240, 34
LIGHT_HOURS = 8  # the day that the PPFD beside a DLI is worked out for
MOL_PER_UMOL_HOUR = 0.0036  # 3,600 seconds, micromoles to moles


class Bar(NamedTuple):
    """One need: its label, its range in words, its picture, and the claim behind it."""

    label: str
    words: Markup
    extra: str
    picture: Markup
    claim: Range


class BarScale(NamedTuple):
    """Which part of a quantity's world the bars show, so that plants can be compared."""

    key: str
    quantity: Any
    low: float
    high: float
    ticks: tuple[float, ...]


SCALES = (
    BarScale("dli_mol", q.DailyLight, 0, 8, (0, 2, 4, 6, 8)),
    BarScale("temperature_c", q.Temperature, 5, 35, (5, 15, 25, 35)),
    BarScale("ph", q.PH, 4, 9, (4, 5, 6, 7, 8, 9)),
    BarScale("gh_dh", q.GeneralHardness, 0, 30, (0, 10, 20, 30)),
    BarScale("height_cm", q.Height, 0, 80, (0, 20, 40, 60, 80)),
)

HANGS = "Depth below the surface"


def bar(scale: BarScale, claim: Range, *, hangs: bool = False) -> Bar:
    """Draw one range. A floating plant ``hangs``: its height is how deep it reaches below the surface."""
    quantity: Quantity = scale.quantity.__metadata__[0]
    extra = ""
    if scale.key == "dli_mol":
        low, high = (end / LIGHT_HOURS / MOL_PER_UMOL_HOUR for end in (claim.low, claim.high))
        extra = f"{span(low, high, 2)} µmol/m²/s (PPFD) over {LIGHT_HOURS} hours"
    return Bar(
        label=(HANGS if hangs else "Height") if scale.key == "height_cm" else quantity.label,
        words=both_units(scale.quantity, claim),
        extra=extra,
        picture=picture(scale, claim),
        claim=claim,
    )


def in_words(quantity: Quantity, claim: Range, *, us: bool) -> str:
    """A range with its unit."""
    system: System = "us" if us else "metric"
    unit = us_unit(quantity, system)
    low, high = (converted(quantity, end, system) for end in (claim.low, claim.high))
    return f"{span(low, high, 2 if us else 3)} {unit.unit if unit else quantity.unit}".rstrip()


def both_units(vocabulary_entry: Any, claim: Range) -> Markup:
    """A range in both systems of units; the style sheet shows the one that is chosen."""
    metric, us = map(kept_together, both_systems(vocabulary_entry, claim))
    if metric == us:
        return Markup.escape(metric)
    return Markup('<span class="in-metric">{}</span><span class="in-us">{}</span>').format(
        metric, us
    )


def both_systems(vocabulary_entry: Any, claim: Range) -> tuple[str, str]:
    """A range with its unit, in the metric unit of the entry and in the US one."""
    quantity: Quantity = vocabulary_entry.__metadata__[0]
    return in_words(quantity, claim, us=False), in_words(quantity, claim, us=True)


def figure_in_both(vocabulary_entry: Any, value: float) -> Markup:
    """One figure in both systems of units. The ``value`` is in the metric unit of the entry."""
    claim = Range(low=value, high=value, source=COMMON_PRACTICE, sure="uncertain")
    return both_units(vocabulary_entry, claim)


def span(low: float, high: float, digits: int = 3) -> str:
    """Two ends, or one figure where they are the same.

    Both ``low`` and ``high`` are in one unit, which is not written.
    """
    first, last = show_number(low, digits), show_number(high, digits)
    return first if first == last else f"{first}–{last}"


def picture(scale: BarScale, claim: Range) -> Markup:
    """The bar itself; hidden from a screen reader, which has the words."""

    def at(value: float) -> float:
        share = (min(max(value, scale.low), scale.high) - scale.low) / (scale.high - scale.low)
        return 8 + share * (BAR_WIDTH - 16)

    left, right = at(claim.low), at(claim.high)
    ticks = "".join(
        f'<text class="tick mid" x="{at(tick):.0f}" y="{BAR_HEIGHT - 3}">{show_number(tick)}</text>'
        for tick in scale.ticks
    )
    return Markup(
        f'<svg class="bar" viewBox="0 0 {BAR_WIDTH} {BAR_HEIGHT}" aria-hidden="true">'
        f'<rect class="track" x="8" y="6" width="{BAR_WIDTH - 16}" height="10" rx="5"/>'
        f'<rect class="fill" x="{left:.1f}" y="6" width="{max(right - left, 4):.1f}" '
        f'height="10" rx="5"/>{ticks}</svg>'
    )
