"""What a week's feed asks of the water beside nitrate: its ammonia, its oxygen, its carbonate hardness."""

from typing import NamedTuple

from calculators.science.animals.oxygen_balance import OxygenBalance, air_of
from calculators.science.conversions import DAYS_PER_WEEK, MG_PER_G
from calculators.science.nitrogen.alkalinity import CACO3_MG_PER_N
from calculators.science.nitrogen.balance import Flows
from calculators.science.nitrogen.filter_load import HOURS_PER_DAY, FilterLoad, filter_load
from calculators.science.water import chemistry

# g of oxygen for each g of feed, all that breathes and rots on it and nitrification within it:
# 1.25 is usual in ponds (boyd-feed-oxygen); half, where the rest stays in animals and soil, is a
# judgement.
OXYGEN_LEAST = 0.6
OXYGEN_MOST = 1.25
MUCH_KH_DH_WEEK = 1.0  # soft water loses its buffer within a month; judgement
LOW_KH_DH = 1.0  # below it pH can fall fast: common practice, no source


class Load(NamedTuple):
    """The load of a week's feed: ammonia, the air at the least and most need, and hardness used."""

    ammonia: FilterLoad
    need_low_mg_h: float
    need_high_mg_h: float
    air_low_need: OxygenBalance
    air_high_need: OxygenBalance
    kh_dh_week: float

    @property
    def short_of_air(self) -> bool:
        """Whether oxygen falls into harm at the least need, under a surface that moves."""
        return self.air_low_need.standing_moved.level != "in-range"

    @property
    def is_overfed(self) -> bool:
        """Whether air or filter cannot carry the load, or a day without a filter brings what kills."""
        ammonia = self.ammonia.films_fail or self.ammonia.kills_within(HOURS_PER_DAY)
        return ammonia or self.short_of_air

    @property
    def is_heavy(self) -> bool:
        """Whether a still surface, the most need, or a day without a filter harms."""
        air = (self.air_low_need.standing_still, self.air_high_need.standing_moved)
        ammonia = self.ammonia.films_may_fail or self.ammonia.harms_within(HOURS_PER_DAY)
        return ammonia or any(standing.level != "in-range" for standing in air)


def load_of(
    week_flows: Flows, feed_g_week: float, volume_l: float, ph: float, temperature_c: float
) -> Load:
    """The load of a feed in its water."""
    hourly = feed_g_week * MG_PER_G / DAYS_PER_WEEK / HOURS_PER_DAY
    low, high = OXYGEN_LEAST * hourly, OXYGEN_MOST * hourly
    return Load(
        filter_load(week_flows.excreted, volume_l, ph, temperature_c),
        low,
        high,
        air_of(low, volume_l, temperature_c),
        air_of(high, volume_l, temperature_c),
        hardness_used(week_flows, volume_l),
    )


def hardness_used(week_flows: Flows, volume_l: float) -> float:
    """Carbonate hardness that nitrification uses, less what plants and soil give back, °dH a week.

    7.1 mg of calcium carbonate for each mg of nitrogen nitrified, half of it back for each mg that
    plants take or the soil loses. All excreted ammonia counts as nitrified. Below zero is none.
    """
    gone = min(week_flows.excreted, week_flows.plants + week_flows.denitrified)
    used = CACO3_MG_PER_N * (week_flows.excreted - gone / 2)
    return max(0.0, used) / volume_l / chemistry.CACO3_MG_PER_DH * DAYS_PER_WEEK


def weeks_to_low(kh_dh: float | None, used_dh_week: float) -> float | None:
    """Weeks from a reading down to 1 °dH without a water change; None if not read or not used."""
    if kh_dh is None or used_dh_week <= 0:
        return None
    return max(0.0, kh_dh - LOW_KH_DH) / used_dh_week
