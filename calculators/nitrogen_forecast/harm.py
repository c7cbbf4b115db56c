"""What in a run harms animals: the readings it starts from, and the peaks that it comes to."""

from typing import Literal, NamedTuple

from calculators.nitrogen_forecast.outlook import NITRITE_ACT_MG_N_L, NITRITE_WATCH_MG_N_L
from calculators.science.animals.reading_lines import standing
from calculators.science.nitrogen.course import Course
from calculators.science.nitrogen.daily_record import Record
from calculators.science.nitrogen.tank import Tank
from calculators.science.water.ammonia import (
    acute_limit_mg_n_l,
    chronic_limit_mg_n_l,
    rate,
    unionised_share,
)

Band = Literal["watch", "harmful", "deadly"]
Reading = Literal["temperature_c", "ph", "ammonia", "nitrite", "nitrate_mg_l"]
RANK: dict[Band, int] = {"deadly": 0, "harmful": 1, "watch": 2}
AT_START_DAYS = 0.1  # a peak so early is the reading that the run starts from
MUCH_MORE = 1.2  # times the reading now: a peak worth a word of its own; judgement


class Harm(NamedTuple):
    """One reading in a band outside its range: as read now (day 0), or as forecast for a day.

    ``side`` is low or high for temperature and pH.
    """

    reading: Reading
    band: Band
    value: float
    day: float = 0.0
    side: str = "high"

    @property
    def is_now(self) -> bool:
        """Whether it is a reading that the run starts from."""
        return self.day < AT_START_DAYS

    @property
    def is_danger(self) -> bool:
        """Whether to act at once: all but nitrate, pH and warmth act from the harmful band on."""
        slow = self.reading in ("nitrate_mg_l", "temperature_c", "ph")
        return self.band == "deadly" or (self.band == "harmful" and not slow)


def harms(record: Record, course: Course, tank: Tank) -> list[Harm]:
    """All that harms, what is nearest first: readings of now, then forecasts, the worst before."""
    found = [
        *of_table("temperature_c", tank.temperature_c),
        *of_table("ph", tank.ph),
        *now_and_peak("ammonia", tank.ammonia_mg_n_l, *record.ammonia, tank),
        *now_and_peak("nitrite", tank.nitrite_mg_n_l, *record.nitrite, tank),
        *of_table("nitrate_mg_l", course.start),
    ]
    if course.highest_day >= AT_START_DAYS:
        later = of_table("nitrate_mg_l", course.highest, course.highest_day)
        found += [one for one in later if worth_a_word(one, found, course.start)]
    return sorted(found, key=lambda one: (not one.is_danger, not one.is_now, RANK[one.band]))


def of_table(reading: Reading, value: float, day: float = 0.0) -> list[Harm]:
    """A reading of the table of lines, where it lies outside its range."""
    level, side = standing(reading, value)
    return [] if level == "in-range" else [Harm(reading, level, value, day, side)]


def now_and_peak(reading: Reading, now: float, peak: float, day: float, tank: Tank) -> list[Harm]:
    """Ammonia or nitrite as read now, and its peak where that is later and higher."""
    judge = ammonia_band if reading == "ammonia" else nitrite_band
    found = []
    if (band := judge(now, tank)) is not None:
        found.append(Harm(reading, band, now))
    if day >= AT_START_DAYS and (band := judge(peak, tank)) is not None:
        later = Harm(reading, band, peak, day)
        found += [later] if worth_a_word(later, found, now) else []
    return found


def worth_a_word(later: Harm, found: list[Harm], now: float) -> bool:
    """Whether a forecast says more than the same reading of now."""
    before = [one for one in found if one.reading == later.reading]
    return not before or RANK[later.band] < RANK[before[0].band] or later.value > MUCH_MORE * now


def ammonia_band(total_mg_n_l: float, tank: Tank) -> Band | None:
    """How total ammonia nitrogen stands at the tank's pH and warmth."""
    if total_mg_n_l > acute_limit_mg_n_l(tank.ph, tank.temperature_c):
        return "deadly"
    toxic = total_mg_n_l * unionised_share(tank.ph, tank.temperature_c)
    rating = rate(total_mg_n_l / chronic_limit_mg_n_l(tank.ph, tank.temperature_c), toxic)
    if rating == "act":
        return "harmful"
    return "watch" if rating == "watch" else None


def nitrite_band(mg_n_l: float, tank: Tank) -> Band | None:
    """How nitrite nitrogen stands against the guideline; no chloride is known of the tank."""
    if mg_n_l >= NITRITE_ACT_MG_N_L:
        return "harmful"
    return "watch" if mg_n_l >= NITRITE_WATCH_MG_N_L else None
