"""How heavily the animals weigh on their water: by oxygen, by ammonia, by warmth. Never by length."""

from collections.abc import Sequence
from typing import Literal, NamedTuple

from calculators.science.animals.animal_warmth import worst_warmth
from calculators.science.animals.oxygen_balance import (
    OxygenBalance,
    air_of,
    harmful_mg_l,
    hours_until,
)
from calculators.science.animals.stock_totals import Stocked, Totals
from calculators.science.conversions import MG_PER_G
from calculators.science.nitrogen.filter_load import HOURS_PER_DAY, FilterLoad, filter_load

Burden = Literal["no-line-reached", "heavy", "overstocked", "wrong-temperature"]
NIGHT_H = 12


class Burdens(NamedTuple):
    """Oxygen and ammonia of the stock against its water; hours from saturated water, no air coming in."""

    air: OxygenBalance
    hours_to_harm: float | None
    hours_to_empty: float | None
    ammonia: FilterLoad

    @property
    def short_of_air(self) -> bool:
        """Oxygen falls into harm with a moving surface, or within a night of a still one."""
        in_a_night = self.hours_to_harm is not None and self.hours_to_harm < NIGHT_H
        still_harms = self.air.standing_still.level != "in-range" and in_a_night
        return self.air.standing_moved.level != "in-range" or still_harms

    @property
    def too_much_ammonia(self) -> bool:
        """Even much filter film leaves harmful ammonia, or a day without it brings what kills."""
        return self.ammonia.films_fail or self.ammonia.kills_within(HOURS_PER_DAY)

    @property
    def is_overstocked(self) -> bool:
        """Whether oxygen or ammonia alone says that these are too many."""
        return self.short_of_air or self.too_much_ammonia

    @property
    def is_heavy(self) -> bool:
        """Whether a still surface or a day without the filter already harms."""
        in_a_night = self.hours_to_harm is not None and self.hours_to_harm < NIGHT_H
        air = self.air.standing_still.level != "in-range" or in_a_night
        return air or self.ammonia.films_may_fail or self.ammonia.harms_within(HOURS_PER_DAY)


def burdens(total: Totals, volume_l: float, ph: float, temperature_c: float) -> Burdens:
    """Weigh the animals at rest against their water."""
    demand = total.resting_oxygen_mg_h
    return Burdens(
        air_of(demand, volume_l, temperature_c),
        hours_until(harmful_mg_l(), demand, volume_l, temperature_c),
        hours_until(0.0, demand, volume_l, temperature_c),
        filter_load(total.ammonia_n_g_day * MG_PER_G, volume_l, ph, temperature_c),
    )


def judge(burdens_of_tank: Burdens, animals: Sequence[Stocked], temperature_c: float) -> Burden:
    """The worst first: warmth that kills or harms, then too many, then many."""
    if worst_warmth(animals, temperature_c) == "danger":
        return "wrong-temperature"
    if burdens_of_tank.is_overstocked:
        return "overstocked"
    if worst_warmth(animals, temperature_c) is not None:
        return "wrong-temperature"
    return "heavy" if burdens_of_tank.is_heavy else "no-line-reached"
