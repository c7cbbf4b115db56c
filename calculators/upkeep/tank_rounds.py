"""What comes round in a tank, when it falls due, and what is overdue."""

from typing import NamedTuple

from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.growth.rounds import due_days, is_long_overdue, late_days
from calculators.science.growth.tasks import CHANGE, THIN
from calculators.upkeep.outputs import SHOWN_DAYS, Overdue, Task
from calculators.upkeep.upkeep_inputs import TankRound


class Round(NamedTuple):
    """A task that comes round in a tank: how often, how long ago, and how many minutes."""

    tank: str
    task: str
    every_days: float
    since_days: float
    minutes: float


def rounds_of(tank: TankRound) -> list[Round]:
    """What comes round in one tank."""
    rounds = [
        Round(
            tank.name,
            f"trim {plant.name}",
            plant.trim_every_days,
            plant.days_since_trim,
            plant.minutes,
        )
        for plant in tank.plants
    ]
    if tank.change_every_days:
        since, minutes = tank.days_since_change, tank.change_minutes
        rounds.append(Round(tank.name, CHANGE, tank.change_every_days, since, minutes))
    if tank.floaters_minutes_week:
        rounds.append(Round(tank.name, THIN, DAYS_PER_WEEK, 0.0, tank.floaters_minutes_week))
    return rounds


def tasks_of(work: Round) -> list[Task]:
    """The days on which a task is due."""
    days = due_days(work.every_days, work.since_days, SHOWN_DAYS)
    return [Task(day, work.tank, work.task, work.minutes) for day in days]


def overdue_of(rounds: list[Round]) -> list[Overdue]:
    """The tasks that were due before today, the latest first."""
    overdue = [
        Overdue(work.tank, work.task, late, is_long_overdue(work.every_days, work.since_days))
        for work in rounds
        if (late := late_days(work.every_days, work.since_days)) > 0
    ]
    return sorted(overdue, key=lambda work: -work.late_days)
