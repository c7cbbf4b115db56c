"""What the standing of a tank gives."""

from typing import Annotated, NamedTuple

from calculators.core.quantity import AsRows, Help, Label, RowsStyle, Unpainted, WhenNone
from calculators.core.result import Note, Series
from calculators.science.growth.tasks import WeekMinutes, WholeDays
from calculators.science.shelf.outlook import Outlook
from calculators.science.shelf.trends import TrendRow
from calculators.science.shelf.verdict import VERDICT_WORDS, Verdict


class DueTask(NamedTuple):
    """A task that is due, or will be."""

    task: Annotated[str, Label("Task")]
    on: Annotated[str, Label("On")]
    late_days: Annotated[WholeDays, Label("Late")]
    why: Annotated[str, Label("Why")]
    when: Annotated[str, Label("When")]


class TestWanted(NamedTuple):
    """The reading that tells most next."""

    what: Annotated[str, Label("Reading")]
    why: Annotated[str, Label("Why")]


class TankStanding(NamedTuple):
    """How one tank stands, and what it asks for."""

    verdict: Annotated[Verdict, Label("This tank"), VERDICT_WORDS]
    sentence: Annotated[str, Label("In one sentence"), Unpainted()]
    due: Annotated[
        list[DueTask], Label("Due"), AsRows(RowsStyle.TABLE, "task", columns=("why", "when"))
    ]
    trends: Annotated[
        list[TrendRow],
        Label("Readings"),
        Help("Ways are between changes of water, in the reading's unit a week."),
        AsRows(RowsStyle.TABLE, "label", columns=("read", "way")),
    ]
    next_test: Annotated[TestWanted | None, Label("Test next"), Unpainted()]
    outlook: Annotated[
        Outlook | None, Label("In four weeks"), Unpainted(), WhenNone("not enough is known")
    ]
    minutes_week: Annotated[WeekMinutes, Label("Minutes a week")]
    notes: tuple[Note, ...]
    series: dict[str, Series]
