"""Which test tells most next: what is in danger, then what was never read, then what is longest ago."""

from datetime import date, timedelta
from typing import NamedTuple

from calculators.science.shelf.due import TEST_MINUTES, Due
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.harmful_readings import AMMONIA
from calculators.science.shelf.latest import Latest
from calculators.science.shelf.log import Log
from calculators.science.shelf.tank_verdict import TankVerdict

# How often a settled tank's water is read as a rule, in days; common practice, no source.
ROUTINE_DAYS = {
    "ammonia_mg_n_l": 28, "nitrite_mg_n_l": 28, "temperature_c": 7, "nitrate_mg_l": 14, "ph": 28,
    "kh_dh": 28, "gh_dh": 56,
}  # fmt: skip


class NextTest(NamedTuple):
    """What to read next, why, and from which day on."""

    what: str
    why: str
    on: date

    def due(self, today: date) -> Due:
        """The same as a task."""
        return Due(
            f"test {READINGS[self.what].name}",
            self.on,
            max(0, (today - self.on).days),
            self.why,
            TEST_MINUTES,
        )


def next_test(judged: TankVerdict, log: Log) -> NextTest:
    """The next test of a tank."""
    if judged.harms:
        return again(judged.harms[0].reading, judged.harms[0].is_deadly, log)
    if judged.deaths.asks:
        return NextTest(AMMONIA, "animals died, and ammonia comes first", log.today)
    if judged.young:
        return NextTest(AMMONIA, "new soil gives off ammonia", log.today)
    if judged.torn:
        return NextTest(judged.torn[0].what, "its readings of one day contradict", log.today)
    return routine(judged, log)


def again(reading: Latest, deadly: bool, log: Log) -> NextTest:
    """The same test again after a reading that harms."""
    if reading.age_days == 0:
        wait = 0 if deadly else 1
        return NextTest(
            reading.what, "to see whether what you did has helped", log.today + timedelta(wait)
        )
    why = f"its reading of {reading.of_when} harms"
    return NextTest(reading.what, why, log.today)


def routine(judged: TankVerdict, log: Log) -> NextTest:
    """What is furthest beyond its routine; never read comes before all that was."""
    never = next((what for what in ROUTINE_DAYS if what not in judged.readings), None)
    if never is not None:
        return NextTest(never, "it was never read", log.today)
    what = max(ROUTINE_DAYS, key=lambda one: judged.readings[one].age_days / ROUTINE_DAYS[one])
    latest = judged.readings[what]
    why = f"last read {latest.of_when}; every {ROUTINE_DAYS[what]} days is enough"
    return NextTest(what, why, latest.day + timedelta(ROUTINE_DAYS[what]))
