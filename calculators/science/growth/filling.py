"""How a bed of plants closes: doubling until it is full, cut back each time."""

import math

from calculators.science.conversions import DAYS_PER_WEEK


def stems_for(area_cm2: float, spacing_cm: float) -> int:
    """How many stems fill an area, each in a square of the spacing; at least one."""
    return max(1, math.ceil(area_cm2 / spacing_cm**2 - 1e-9))


def growth_rate(doubling_days: float) -> float:
    """Relative growth rate a day that belongs to a doubling time."""
    return math.log(2) / doubling_days


def days_between(start: float, end: float, doubling_days: float) -> float:
    """Days in which a stand grows from one share of the bed to another; 0 if it is there already.

    Those are ``start`` and ``end``, above 0 and up to 1.
    """
    return max(0.0, math.log(end / start) / growth_rate(doubling_days))


def days_to_full(start: float, settle_days: float, doubling_days: float) -> float:
    """Days until a bed is full that is planted to a share of it; none where it is planted full.

    That share is ``start``, above 0 and up to 1.
    """
    return 0.0 if start >= 1 else settle_days + days_between(start, 1.0, doubling_days)


def cover_by_week(
    start: float, settle_days: float, doubling_days: float, after_cut: float, weeks: int
) -> tuple[list[float], list[float]]:
    """Weeks and cover in percent, as many of each, with a point at each turn: settled, full, cut.

    The cover at ``start`` and that ``after_cut`` are shares of the bed, 0 to 1.
    """
    last = weeks * DAYS_PER_WEEK
    days, covers, cover, day = [0.0], [100 * start], start, min(settle_days, last)
    days.append(day)
    covers.append(100 * cover)
    while day < last:
        full_on = day + days_between(cover, 1.0, doubling_days)
        until = min(math.floor(day) + 1.0, last, full_on)
        cover = min(1.0, cover * 2 ** ((until - day) / doubling_days))
        day = until
        days.append(day)
        covers.append(100 * cover)
        if day == full_on:
            cover = after_cut
            days.append(day)
            covers.append(100 * cover)
    return [at_day / DAYS_PER_WEEK for at_day in days], covers


def trims_within(days: float, first_day: float, every_days: float) -> int:
    """How often a bed is cut within some days, if it is first full on one and then at intervals."""
    if first_day > days:
        return 0
    return math.floor((days - first_day) / every_days + 1e-9) + 1
