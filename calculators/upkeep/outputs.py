"""What the upkeep calculator gives: the minutes, what is overdue, and the days to come."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import Count, Minutes
from calculators.core.quantity import AsRows, Download, Help, Label, Possible, RowsStyle
from calculators.core.result import Note, Series
from calculators.science.growth.tasks import WeekMinutes, WholeDays, WholeMinutes

SHOWN_DAYS = 28


class Task(NamedTuple):
    """What is due on one day."""

    day: Annotated[Count, Label("Day"), Possible(1, SHOWN_DAYS)]
    tank: Annotated[str, Label("Tank")]
    task: Annotated[str, Label("Task")]
    minutes: Annotated[Minutes, Label("Work")]


class Overdue(NamedTuple):
    """A task that was due before today; ``long`` where a whole round has been missed."""

    tank: Annotated[str, Label("Tank")]
    task: Annotated[str, Label("Task")]
    late_days: Annotated[WholeDays, Label("Days late")]
    long: Annotated[bool, Label("A round or more missed")]


class Upkeep(NamedTuple):
    """The time it takes, and when."""

    minutes_week: Annotated[WeekMinutes, Label("All tanks together")]
    per_tank: Annotated[dict[str, float], Label("Minutes a week for each tank")]
    heaviest: Annotated[str | None, Label("The tank that takes most")]
    busiest_day: Annotated[Count | None, Label("The fullest of the next 28 days")]
    busiest_minutes: Annotated[WholeMinutes, Label("Work on that day")]
    overdue: Annotated[
        list[Overdue],
        Label("Overdue"),
        Help("In the list below these are for tomorrow."),
        AsRows(RowsStyle.TABLE, "tank", columns=("task", "late_days")),
    ]
    next_days: Annotated[
        list[Task],
        Label("The next 28 days"),
        Help("Day 1 is tomorrow."),
        AsRows(RowsStyle.TABLE, "day", columns=("tank", "task", "minutes")),
    ]
    calendar: Annotated[
        str | None, Label("The same as a calendar file"), Download("upkeep.ics", "text/calendar")
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]
