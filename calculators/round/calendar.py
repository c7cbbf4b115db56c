"""The days of all tanks' tasks to come."""

from datetime import date, timedelta

from calculators.core.calendar_file import CalendarTask, calendar_file
from calculators.science.growth.rounds import due_days
from calculators.science.shelf.due import due_of
from calculators.science.shelf.tank_state import TankState


def calendar_entries(stands: list[TankState], today: date, days: int) -> list[CalendarTask]:
    """Each task on each of the next days; what is due by today is entered for today."""
    found = [entry for stand in stands for entry in tank_entries(stand, today, days)]
    return sorted(found, key=lambda entry: (entry.day, entry.where, entry.task))


def tank_entries(stand: TankState, today: date, days: int) -> list[CalendarTask]:
    """The tasks of one tank: what comes round, and one test."""
    found, name = [], stand.tank.name
    for one in stand.rounds:
        wait = max(0, (due_of(one, stand.log).on - today).days)
        # Day 0 of the rounds' own count is the day before the first time.
        later = due_days(one.every_days, one.every_days, days - wait + 1) if wait <= days else []
        found += [
            CalendarTask(today + timedelta(wait + day - 1), name, one.task, one.minutes)
            for day in later
        ]
    test = stand.next_test.due(today)
    on = max(today, test.on)
    if (on - today).days <= days:
        found.append(CalendarTask(on, name, test.task, test.minutes))
    return found


def calendar_text(stands: list[TankState], today: date, days: int) -> str | None:
    """The tasks as a calendar file; None where there are none."""
    entries = calendar_entries(stands, today, days)
    return calendar_file(entries, today) if entries else None
