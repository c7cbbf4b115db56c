"""Minutes a week over several tanks, and the days of the next four weeks."""

from datetime import date, timedelta
from typing import Annotated, NamedTuple

from calculators.core.declare import calculator
from calculators.core.form_hints import Preset, Presets, Step, Suggest
from calculators.core.quantities import Count, Days, Interval, Minutes, MinutesAWeek
from calculators.core.quantity import AsRows, Download, Help, IsDate, Label, Possible
from calculators.core.result import Note, Refusal, Refused, Series
from calculators.tending.calendar_file import Entry, calendar_file, read_date
from calculators.tending.rounds import DAYS_A_WEEK, due_days, minutes_a_week
from calculators.tending.upkeep_words import notes, verdict

SHOWN_DAYS = 28
MOST_ROUNDS = 500  # tanks and plants together; more is a slip, and would keep a phone busy

EveryDays = Annotated[Interval, Possible(1, 365), Step(1)]
Since = Annotated[Days, Possible(0, 365), Step(1)]
MinutesEach = Annotated[Minutes, Step(5)]
NEW_PLANT = {"name": "New plant", "trim_every_days": 14.0, "minutes": 10.0}
NEW_TANK = {"name": "New tank", "change_every_days": 7.0, "change_minutes": 20.0}
ANOTHER_PLANT = Presets((Preset("Another plant", NEW_PLANT),))
ANOTHER_TANK = Presets((Preset("Another tank", NEW_TANK),))


class PlantRound(NamedTuple):
    """A plant that is trimmed again and again."""

    name: Annotated[str, Label("Plant"), Suggest("plants")]
    trim_every_days: Annotated[EveryDays, Label("Trim every")]
    minutes: Annotated[MinutesEach, Label("Minutes each time")]
    days_since_trim: Annotated[Since, Label("Last trimmed, days ago")] = 0.0


class TankRound(NamedTuple):
    """A tank and what comes round in it."""

    name: Annotated[str, Label("Tank")]
    plants: Annotated[list[PlantRound], Label("Plants to trim"), ANOTHER_PLANT] = []
    change_every_days: Annotated[
        EveryDays | None, Label("Change water every"), Help("Empty for no changes.")
    ] = None
    change_minutes: Annotated[MinutesEach, Label("Minutes for a change")] = 0.0
    floaters_minutes_week: Annotated[MinutesEach, Label("Floaters, minutes a week")] = 0.0
    days_since_change: Annotated[Since, Label("Last changed, days ago")] = 0.0


class Task(NamedTuple):
    """What is due on one day."""

    day: Annotated[Count, Label("Day"), Possible(1, SHOWN_DAYS)]
    tank: Annotated[str, Label("Tank")]
    task: Annotated[str, Label("Task")]
    minutes: Annotated[Minutes, Label("Minutes")]


class Upkeep(NamedTuple):
    """The time it takes, and when."""

    minutes_week: Annotated[MinutesAWeek, Label("All tanks together")]
    per_tank: Annotated[dict[str, float], Label("Minutes a week for each tank")]
    heaviest: Annotated[str | None, Label("The tank that takes most")]
    busiest_day: Annotated[Count | None, Label("The fullest of the next 28 days")]
    busiest_minutes: Annotated[Minutes, Label("Minutes on that day")]
    next_days: Annotated[
        list[Task],
        Label("The next 28 days"),
        Help("Day 1 is tomorrow."),
        AsRows("table", "day", columns=("tank", "task", "minutes")),
    ]
    calendar: Annotated[
        str | None, Label("The same as a calendar file"), Download("upkeep.ics", "text/calendar")
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]


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
    starts on the day it was last done; what is overdue is due tomorrow. Floaters are thinned weekly.

    With a date the list also comes as a calendar file, one whole-day entry a task, for the
    calendar of your phone. Nothing is sent anywhere.
    """
    check(tanks)
    made = day_made(today)
    per_tank = {tank.name: week_of(tank) for tank in tanks}
    tasks = sorted((task for tank in tanks for task in tasks_of(tank)), key=lambda task: task.day)
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
        next_days=tasks,
        calendar=file_of(tasks, made) if made and tasks else None,
        notes=(
            verdict(total, heaviest, busiest),
            *notes(max(loads), bool(tasks), made is not None),
        ),
        series={"minutes_by_day": Series("Minutes a day", "min", "Day", "days", days, loads)},
    )


def check(tanks: list[TankRound]) -> None:
    """Refuse two tanks of one name, and more work than anyone has."""
    names = [tank.name for tank in tanks]
    wrong = [
        Refusal(f"tanks[{place}].name", "another tank has that name already")
        for place, name in enumerate(names, start=1)
        if name in names[: place - 1]
    ]
    if sum(1 + len(tank.plants) for tank in tanks) > MOST_ROUNDS:
        wrong.append(Refusal("tanks", f"more than {MOST_ROUNDS} tanks and plants in all"))
    if wrong:
        raise Refused(*wrong)


def day_made(today: str | None) -> date | None:
    """The day that the keeper gave, or None. Refuses what is no date."""
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


def tasks_of(tank: TankRound) -> list[Task]:
    """What is due in one tank."""
    rounds = [
        (f"trim {plant.name}", plant.trim_every_days, plant.days_since_trim, plant.minutes)
        for plant in tank.plants
    ]
    if tank.change_every_days:
        change = (tank.change_every_days, tank.days_since_change, tank.change_minutes)
        rounds.append(("change water", *change))
    if tank.floaters_minutes_week:
        rounds.append(("thin the floaters", DAYS_A_WEEK, 0.0, tank.floaters_minutes_week))
    return [
        Task(day, tank.name, task, minutes)
        for task, every, since, minutes in rounds
        for day in due_days(every, since, SHOWN_DAYS)
    ]


def file_of(tasks: list[Task], made: date) -> str:
    """The list as a calendar file."""
    entries = (
        Entry(made + timedelta(days=task.day), task.tank, task.task, task.minutes) for task in tasks
    )
    return calendar_file(entries, made)
