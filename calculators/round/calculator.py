"""One round through all tanks of the shelf."""

from datetime import date
from typing import Annotated

from calculators.core.declare import calculator
from calculators.core.quantities import Count
from calculators.core.quantity import (
    Assumed,
    FromFile,
    Help,
    Label,
    Possible,
    Private,
)
from calculators.core.repeats import repeated
from calculators.core.result import Refusal, Refused, Series
from calculators.round.calendar import calendar_entries, calendar_text
from calculators.round.outputs import RoundOfTanks, TankInOrder, TaskToday
from calculators.round.round_example import LOG, TANKS, TODAY
from calculators.round.words import notes
from calculators.science.growth.tasks import minutes_series
from calculators.science.shelf.entries import Entry
from calculators.science.shelf.log_and_day import DayAsked, LogAsked, day_asked
from calculators.science.shelf.reading import check_entries
from calculators.science.shelf.shelf_tank import MOST_TANKS, ShelfTank
from calculators.science.shelf.tank_state import TankState, state_of_tank

MOST_DAYS = 365


@calculator("Round of all tanks", sources=("rfc-5545",))
def round(
    tanks: Annotated[
        list[ShelfTank], Label("Tanks"), Help("In walking order."), FromFile(MOST_TANKS), Private()
    ] = TANKS,
    entries: LogAsked = LOG,
    today: DayAsked = None,
    days: Annotated[
        Count, Label("Days ahead"), Possible(1, MOST_DAYS), Help("For the calendar."), Assumed()
    ] = 28,
) -> RoundOfTanks:
    """Put all tanks of the shelf in order, the worst first, with what is due today and in the weeks to come.

    Each tank stands as its own page says. Among tanks that stand alike the one goes first whose tasks
    are latest; after that the order is yours. Minutes are those of upkeep: a task that takes so many
    minutes every so many days takes 7 / days of them a week.

    The calendar file has one whole-day entry a task. Nothing is sent anywhere.
    """
    check_tanks(tanks)
    check_entries(entries)
    day = day_asked(today, TODAY if tanks == TANKS else None)
    stands = in_order([state_of_tank(tank, own_entries(tank, entries), day) for tank in tanks])
    tasks = [task for stand in stands for task in due_today(stand, day)]
    minutes = sum(task.minutes for task in tasks)
    week = sum(stand.minutes_week for stand in stands)
    return RoundOfTanks(
        order=[row(stand, day) for stand in stands],
        today=tasks,
        minutes_today=minutes,
        minutes_week=week,
        calendar=calendar_text(stands, day, days),
        notes=tuple(notes(stands, minutes, week)),
        series=minutes_by_day(stands, day, days),
    )


def check_tanks(tanks: list[ShelfTank]) -> None:
    """Refuse two tanks of one id. Raises ``Refused`` with each."""
    wrong = [
        Refusal(f"tanks[{place}].id", "another tank has that id already; each is allowed once")
        for place in repeated([tank.id for tank in tanks])
    ]
    if wrong:
        raise Refused(*wrong)


def own_entries(tank: ShelfTank, entries: list[Entry]) -> list[Entry]:
    """The entries of one tank; one that names none belongs to no tank of several."""
    return [entry for entry in entries if entry.tank == tank.id]


def in_order(stands: list[TankState]) -> list[TankState]:
    """Worst first, then late first; else as they came."""
    return sorted(stands, key=lambda stand: stand.rank)


def due_today(stand: TankState, today: date) -> list[TaskToday]:
    """What is due in a tank today, or was before."""
    return [
        TaskToday(stand.tank.id, stand.tank.name, one.task, one.minutes, one.late_days)
        for one in stand.due
        if one.on <= today
    ]


def row(stand: TankState, today: date) -> TankInOrder:
    """One tank of the round."""
    tank, judged = stand.tank, stand.judged
    minutes = sum(task.minutes for task in due_today(stand, today))
    return TankInOrder(
        tank.id, tank.name, judged.verdict, judged.sentence, minutes, stand.late_days
    )


def minutes_by_day(stands: list[TankState], today: date, days: int) -> dict[str, Series]:
    """The minutes of each day to come, from today."""
    loads = [0.0] * (days + 1)
    for entry in calendar_entries(stands, today, days):
        loads[(entry.day - today).days] += entry.minutes
    return minutes_series(range(days + 1), loads)
