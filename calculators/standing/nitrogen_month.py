"""What brought nitrogen into a tank and what took it out in the last 30 days, by the tank and its log."""

from collections.abc import Iterator
from datetime import date
from typing import Literal, NamedTuple

from calculators.science.conversions import CM2_PER_M2
from calculators.science.nitrogen.constants import DENITRIFICATION_MG_M2_DAY, NITRATE_PER_N
from calculators.science.nitrogen.feed_fate import feed_nitrogen_mg_day
from calculators.science.nitrogen.plant_constants import (
    DRY_SHARE_FLOATING,
    DRY_SHARE_ROOTED,
    HEALTHY_N_FLOATING,
    HEALTHY_N_ROOTED,
)
from calculators.science.shelf.engine_tank import NITRATE
from calculators.science.shelf.latest import USE_DAYS
from calculators.science.shelf.log import Dated, Log
from calculators.science.shelf.recorded_plants import plants
from calculators.science.shelf.shelf_tank import ShelfTank

MONTH_DAYS, LEAST_DAYS = 30, 7  # a shorter log says nothing of a month

Way = Literal["new water", "plants", "cuttings", "changes"]
COMES_IN: tuple[Way, ...] = ("new water", "plants")


class Moved(NamedTuple):
    """Nitrogen that one entry of the log moved, mg, at a day before today (below zero)."""

    day: float
    way: Way
    mg: float


class NitrogenMonth(NamedTuple):
    """The flows of the last ``days`` days: feed and the soil's gas in mg N a day, the rest as logged."""

    days: float
    fed_day: float
    gas_day: float
    moved: tuple[Moved, ...]
    not_counted: tuple[str, ...]  # what of the log could not be counted, in words

    def total(self, way: Way) -> float:
        """What one way carried, mg N."""
        return sum(one.mg for one in self.moved if one.way == way)

    def added_up(self, *, into: bool) -> tuple[list[float], list[float]]:
        """Days before today, and all that had come in by then, or gone out: mg N. An entry is a step."""
        steps = sorted(one for one in self.moved if (one.way in COMES_IN) == into)
        rate = self.fed_day if into else self.gas_day
        days, sums, stepped = [-self.days], [0.0], 0.0
        for one in steps:
            steady = rate * (one.day + self.days)
            days += [one.day, one.day]
            sums += [steady + stepped, steady + stepped + one.mg]
            stepped += one.mg
        return [*days, 0.0], [*sums, rate * self.days + stepped]


def nitrogen_month(tank: ShelfTank, log: Log) -> NitrogenMonth | None:
    """The flows; None where litres, feed or its protein are not said, or the log is too young."""
    days = days_of_log(tank, log)
    fed = fed_a_day(tank)
    if days < LEAST_DAYS or fed is None or tank.volume_l is None:
        return None
    lately = [one for one in log.entries if log.end - one.days <= days]
    moved = [
        *(part for one in lately for part in changed(one, tank, log)),
        *(part for one in lately for part in carried(one, log)),
    ]
    gas = DENITRIFICATION_MG_M2_DAY * (tank.soil_area_cm2 or 0.0) / CM2_PER_M2
    return NitrogenMonth(days, fed, gas, tuple(moved), tuple(left_out(lately, tank, log)))


def days_of_log(tank: ShelfTank, log: Log) -> float:
    """The days that are counted: 30, or since the tank was flooded or its log began."""
    begun = [log.end - one.days for one in log.entries[:1]]
    if tank.flooded_on is not None:
        begun.append(float(log.days_ago(date.fromisoformat(tank.flooded_on))))
    return min([MONTH_DAYS, *begun]) if log.entries else 0.0


def fed_a_day(tank: ShelfTank) -> float | None:
    """Nitrogen in the tank's ration, mg a day."""
    if tank.feed_g_week == 0:
        return 0.0
    if tank.feed_g_week is None or tank.protein_percent is None:
        return None
    return feed_nitrogen_mg_day(tank.feed_g_week, tank.protein_percent)


def changed(one: Dated, tank: ShelfTank, log: Log) -> Iterator[Moved]:
    """What a change of water took out, by the reading before it, and what the new water brought."""
    if one.entry.kind != "change":
        return
    day, litres = one.days - log.end, one.value / 100 * (tank.volume_l or 0.0)
    nitrate = read_before(one, log)
    if nitrate is not None:
        yield Moved(day, "changes", nitrate / NITRATE_PER_N * litres)
    if tank.tap is not None and tank.tap.nitrate_mg_l is not None:
        yield Moved(day, "new water", tank.tap.nitrate_mg_l / NITRATE_PER_N * litres)


def read_before(one: Dated, log: Log) -> float | None:
    """The nitrate in the water at an entry, mg/L: the last reading before it, while it is of use."""
    before = [
        read for read in log.readings(NITRATE) if 0 <= one.days - read.days <= USE_DAYS[NITRATE]
    ]
    return before[-1].value if before else None


def carried(one: Dated, log: Log) -> Iterator[Moved]:
    """What plants held that were cut, thinned, taken out or put in."""
    if one.entry.kind not in ("trim", "thin", "plant") or not one.value:
        return
    way: Way = "plants" if one.entry.kind == "plant" and one.value > 0 else "cuttings"
    yield Moved(one.days - log.end, way, plant_nitrogen_mg(abs(one.value), one))


def plant_nitrogen_mg(wet_g: float, one: Dated) -> float:
    """The nitrogen of wet plants, as well-fed ones hold it: right within a factor of two.

    Equation: nitrogen = wet g · dry share · mg N a g dry
    """
    facts = plants().get(one.entry.what or "")
    if one.entry.kind == "thin" or (facts and facts.floating):
        return wet_g * DRY_SHARE_FLOATING * HEALTHY_N_FLOATING
    return wet_g * DRY_SHARE_ROOTED * HEALTHY_N_ROOTED


def left_out(lately: list[Dated], tank: ShelfTank, log: Log) -> Iterator[str]:
    """What of the log moved nitrogen and cannot be counted."""
    changes = [one for one in lately if one.entry.kind == "change" and one.value]
    unweighed = [
        one for one in lately if one.entry.kind in ("trim", "thin", "plant") and not one.value
    ]
    if any(read_before(one, log) is None for one in changes):
        yield "changes with no reading of nitrate in the two weeks before"
    if changes and (tank.tap is None or tank.tap.nitrate_mg_l is None):
        yield "the nitrate of the new water, which is not said"
    if unweighed:
        yield "plants that were not weighed"
    if any(one.entry.kind == "dose" for one in lately):
        yield "doses"
    if tank.soil_area_cm2 is None:
        yield "gas from the soil, whose area is not said"
