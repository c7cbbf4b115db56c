"""What in a run harms animals: the readings it starts from, and the peaks that it comes to."""

from collections.abc import Sequence
from typing import Literal, NamedTuple

from calculators.science.animals.reading_lines import standing
from calculators.science.animals.toxic_lines import ammonia_grade, nitrite_grade
from calculators.science.nitrogen.course import Course, course_of
from calculators.science.nitrogen.daily_record import DailyRecord
from calculators.science.nitrogen.forecast_tank import Tank

Band = Literal["watch", "harmful", "deadly"]
Reading = Literal["temperature_c", "ph", "ammonia", "nitrite", "nitrate_mg_l"]
RANK: dict[Band, int] = {"deadly": 0, "harmful": 1, "watch": 2}
AT_START_DAYS = 0.1  # a peak so early is the reading that the run starts from
MUCH_MORE = 1.2  # times the reading now: a peak worth a word of its own; judgement


class HarmfulReading(NamedTuple):
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


def harms(record: DailyRecord, course: Course, tank: Tank) -> list[HarmfulReading]:
    """All that harms, what is nearest first: readings of now, then forecasts, the worst before."""
    worst = [
        *of_table("temperature_c", tank.temperature_c),
        *of_table("ph", tank.ph),
        *now_and_peak("ammonia", tank.ammonia_mg_n_l, *record.ammonia, tank),
        *now_and_peak("nitrite", tank.nitrite_mg_n_l, *record.nitrite, tank),
        *of_table("nitrate_mg_l", course.start),
    ]
    if course.highest_day >= AT_START_DAYS:
        later = of_table("nitrate_mg_l", course.highest, course.highest_day)
        worst += [harm for harm in later if worth_a_word(harm, worst, course.start)]
    return sorted(worst, key=lambda harm: (not harm.is_danger, not harm.is_now, RANK[harm.band]))


def harms_at_edges(
    records: Sequence[DailyRecord], in_middle: Sequence[HarmfulReading], tank: Tank
) -> list[HarmfulReading]:
    """The worst forecast of each reading at the unsure edges, where it is worse than in the middle run."""
    worst: dict[str, HarmfulReading] = {harm.reading: harm for harm in reversed(in_middle)}
    for record in records:
        for harm in harms(record, course_of(record.lines), tank):
            before = worst.get(harm.reading)
            if before is None or (RANK[harm.band], -harm.value) < (
                RANK[before.band],
                -before.value,
            ):
                worst[harm.reading] = harm
    bands = {(harm.reading, harm.band) for harm in in_middle}
    new = [
        harm
        for harm in worst.values()
        if not harm.is_now and (harm.reading, harm.band) not in bands
    ]
    return sorted(new, key=lambda harm: RANK[harm.band])


def of_table(reading: Reading, value: float, day: float = 0.0) -> list[HarmfulReading]:
    """A reading of the table of lines, where it lies outside its range.

    The ``value`` is in the unit of its line.
    """
    level, side = standing(reading, value)
    return [] if level == "in-range" else [HarmfulReading(reading, level, value, day, side)]


def now_and_peak(
    reading: Reading, now: float, peak: float, day: float, tank: Tank
) -> list[HarmfulReading]:
    """Ammonia or nitrite as read now, and its peak where that is later and higher.

    Both ``now`` and ``peak`` are in mg N/L.
    """
    harms = []
    if (band := toxic_band(reading, now, tank)) is not None:
        harms.append(HarmfulReading(reading, band, now))
    if day >= AT_START_DAYS and (band := toxic_band(reading, peak, tank)) is not None:
        later = HarmfulReading(reading, band, peak, day)
        harms += [later] if worth_a_word(later, harms, now) else []
    return harms


def worth_a_word(later: HarmfulReading, harms: list[HarmfulReading], now: float) -> bool:
    """Whether a forecast says more than the same reading of now.

    That reading, ``now``, is in mg N/L.
    """
    before = [harm for harm in harms if harm.reading == later.reading]
    return not before or RANK[later.band] < RANK[before[0].band] or later.value > MUCH_MORE * now


def toxic_band(reading: Reading, total_mg_n_l: float, tank: Tank) -> Band | None:
    """The band of ammonia or nitrite in this tank's water; no chloride is known of it."""
    if reading == "ammonia":
        grade = ammonia_grade(total_mg_n_l, tank.ph, tank.temperature_c)
    else:
        grade = nitrite_grade(total_mg_n_l)
    return None if grade == "in-range" else grade
