"""What the round through all tanks gives."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import Count
from calculators.core.quantity import AsRows, Download, Help, Label, RowsStyle
from calculators.core.result import Note, Series
from calculators.science.growth.tasks import WeekMinutes, WholeMinutes
from calculators.science.shelf.tank_verdict import VERDICT_WORDS, Verdict


class TankInOrder(NamedTuple):
    """One tank of the round. ``late_days`` is that of its latest task."""

    tank: Annotated[str, Label("Key")]
    name: Annotated[str, Label("Tank")]
    verdict: Annotated[Verdict, Label("Stands"), VERDICT_WORDS]
    sentence: Annotated[str, Label("Why")]
    minutes: Annotated[WholeMinutes, Label("Work today")]
    late_days: Annotated[Count, Label("Days late")]


class TaskToday(NamedTuple):
    """What is due in a tank today, or was before."""

    tank: Annotated[str, Label("Key")]
    name: Annotated[str, Label("Tank")]
    task: Annotated[str, Label("Task")]
    minutes: Annotated[WholeMinutes, Label("Work")]
    late_days: Annotated[Count, Label("Days late")]


class RoundOfTanks(NamedTuple):
    """All tanks: in which order, what is due, and when."""

    order: Annotated[
        list[TankInOrder],
        Label("Tanks"),
        Help("Worst first, then what is latest."),
        AsRows(RowsStyle.TABLE, "name", columns=("sentence", "minutes")),
    ]
    today: Annotated[
        list[TaskToday],
        Label("Due today"),
        AsRows(RowsStyle.TABLE, "name", columns=("task", "minutes", "late_days")),
    ]
    minutes_today: Annotated[WholeMinutes, Label("Work today")]
    minutes_week: Annotated[WeekMinutes, Label("Work a week")]
    calendar: Annotated[
        str | None, Label("What is due, as a calendar file"), Download("tanks.ics", "text/calendar")
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]
