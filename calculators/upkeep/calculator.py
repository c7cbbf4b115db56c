"""Minutes a week over several tanks, and the days of the next four weeks."""

from datetime import date, timedelta
from typing import Annotated

from calculators.core.calendar_file import CalendarTask, calendar_file
from calculators.core.dates import read_date
from calculators.core.declare import calculator
from calculators.core.quantity import Help, IsDate, Label
from calculators.core.repeats import repeated
from calculators.core.result import Refusal, Refused
from calculators.science.growth.rounds import minutes_a_week
from calculators.science.growth.tasks import minutes_series
from calculators.upkeep.outputs import SHOWN_DAYS, Task, Upkeep
from calculators.upkeep.tank_rounds import overdue_of, rounds_of, tasks_of
from calculators.upkeep.upkeep_inputs import ANOTHER_TANK, PlantRound, TankRound
from calculators.upkeep.words import notes, verdict

MOST_ROUNDS = 500  # tanks and plants together; more is a slip, and would keep a phone busy

LIBRARY = [
    TankRound(
        "Reading Room",
        [PlantRound("Hygrophila polysperma", 14, 10), PlantRound("Rotala rotundifolia", 21, 8, 10)],
        7, 25, 5, 3,
    ),
    TankRound("Foyer", [PlantRound("Vallisneria spiralis", 28, 20, 20)], 10, 40, 0, 5),
    TankRound("Children's Corner", [PlantRound("Taxiphyllum barbieri", 45, 10, 30)], 14, 15, 3, 6),
    TankRound("Propagation Jar", [], 7, 5, 0, 1),
]  # fmt: skip


@calculator("Upkeep", sources=("rfc-5545",))
def upkeep(
    tanks: Annotated[list[TankRound], Label("Tanks"), ANOTHER_TANK] = LIBRARY,
    today: Annotated[
        str | None,
        Label("Today's date, for the calendar file"),
        IsDate(),
        Help("As 2026-12-07. Day 1 of the list is the day after it."),
    ] = None,
) -> Upkeep:
    """Add up the minutes a week that several tanks take, and list what is due in the next 28 days.

    A task that takes so many minutes every so many days takes 7 / days of them a week. Each round
    starts on the day it was last done; what is overdue is due tomorrow, and what has missed a whole
    round is told first. Floaters are thinned weekly.

    With a date the list also comes as a calendar file, one whole-day entry a task, for the
    calendar of your phone. Nothing is sent anywhere.
    """
    check(tanks)
    made = day_made(today)
    per_tank = {tank.name: week_of(tank) for tank in tanks}
    rounds = [work for tank in tanks for work in rounds_of(tank)]
    tasks = sorted(
        (task for work in rounds for task in tasks_of(work)),
        key=lambda task: task.day,
    )
    overdue = overdue_of(rounds)
    days = list(range(1, SHOWN_DAYS + 1))
    loads = [sum(task.minutes for task in tasks if task.day == day) for day in days]
    total = sum(per_tank.values())
    busy = loads.index(max(loads))
    busiest = days[busy] if loads[busy] else None
    heaviest = max(per_tank, key=lambda name: per_tank[name]) if total else None
    return Upkeep(
        minutes_week=total,
        per_tank=per_tank,
        heaviest=heaviest,
        busiest_day=busiest,
        busiest_minutes=loads[busy],
        overdue=overdue,
        next_days=tasks,
        calendar=file_of(tasks, made) if made and tasks else None,
        notes=(
            *verdict(total, heaviest, busiest, overdue),
            *notes(max(loads), bool(tasks), made is not None),
        ),
        series=minutes_series(days, loads),
    )


def check(tanks: list[TankRound]) -> None:
    """Refuse two tanks of one name, and more work than anyone has. Raises ``Refused``."""
    wrong = [
        Refusal(f"tanks[{place}].name", "another tank has that name already")
        for place in repeated([tank.name for tank in tanks])
    ]
    if sum(1 + len(tank.plants) for tank in tanks) > MOST_ROUNDS:
        wrong.append(Refusal("tanks", f"more than {MOST_ROUNDS} tanks and plants in all"))
    if wrong:
        raise Refused(*wrong)


def day_made(today: str | None) -> date | None:
    """The day that the keeper gave, or None. Raises ``Refused`` for what is no date."""
    if today is None:
        return None
    try:
        return read_date(today)
    except ValueError:
        why = "write the day as year-month-day, such as 2026-12-07"
        raise Refused(Refusal("today", why)) from None


def week_of(tank: TankRound) -> float:
    """Minutes a week of one tank."""
    plants = sum(minutes_a_week(plant.minutes, plant.trim_every_days) for plant in tank.plants)
    change = (
        minutes_a_week(tank.change_minutes, tank.change_every_days) if tank.change_every_days else 0
    )
    return plants + change + tank.floaters_minutes_week


def file_of(tasks: list[Task], made: date) -> str:
    """The list as a calendar file."""
    entries = (
        CalendarTask(made + timedelta(days=task.day), task.tank, task.task, task.minutes)
        for task in tasks
    )
    return calendar_file(entries, made)
