"""What the upkeep calculator says beside its figures."""

from collections.abc import Sequence

from calculators.core.figures import figure
from calculators.core.result import Note
from calculators.core.wording import CHANGE_WITH_CARE, CUTTINGS
from calculators.science.growth.tasks import CHANGE, WeekMinutes, WholeDays, WholeMinutes
from calculators.upkeep.outputs import Overdue

LONG_DAY_MINUTES = 120  # common practice, no source: after two hours one starts to skip things
MOST_NAMED = 4
OLD_WATER = Note(
    "caution",
    "Water that has long gone unchanged may have drifted far from your tap's, in pH and hardness above "
    "all. Test ammonia, nitrite, pH and KH first, and then change a little every day or two rather "
    "than all at once (common practice, no source).",
    True,
)


def verdict(
    minutes_week: float,
    heaviest: str | None,
    busiest_day: int | None,
    overdue: Sequence[Overdue],
) -> list[Note]:
    """The answer in plain words; what is long overdue goes before the minutes."""
    late = [task for task in overdue if task.long]
    sentences = [long_overdue(late)] if late else []
    if any(task.task == CHANGE for task in late):
        sentences.append(OLD_WATER)
    if heaviest is None:
        return [
            *sentences,
            Note("info", "No tank, or no minutes: there is nothing to add up.", True),
        ]
    text = f"About {figure(WeekMinutes, minutes_week)} minutes a week. {heaviest} takes most"
    fullest = f"; the fullest day is day {busiest_day}" if busiest_day else ""
    return [*sentences, Note("info", f"{text}{fullest}.", True)]


def long_overdue(late: Sequence[Overdue]) -> Note:
    """What has missed a whole round, the longest first, changes of water before leaves."""
    ordered = sorted(late, key=lambda work: (work.task != CHANGE, -work.late_days))
    named = [
        f"{work.tank}, {work.task}, {figure(WholeDays, work.late_days)} days late"
        for work in ordered[:MOST_NAMED]
    ]
    if len(ordered) > MOST_NAMED:
        named.append(f"{len(ordered) - MOST_NAMED} more")
    return Note("caution", f"Long overdue: {'; '.join(named)}.", True)


def notes(longest_day: float, any_task: bool, dated: bool) -> list[Note]:
    """What the list leaves out, and what not to skip when time is short."""
    collected = []
    if longest_day > LONG_DAY_MINUTES:
        minutes = figure(WholeMinutes, longest_day)
        text = f"One day takes {minutes} minutes: move a trim, never a water change that is due."
        collected.append(Note("caution", text))
    if any_task and not dated:
        collected.append(Note("info", "Give today's date to get the list as a calendar file."))
    if not any_task:
        collected.append(
            Note("info", "Nothing falls due in the next 28 days, so there is no calendar.")
        )
    text = (
        "When time is short, look at the animals first, then change water; leaves can wait. The daily "
        "look and feeding are not counted here."
    )
    return [*collected, Note("info", text), CHANGE_WITH_CARE, CUTTINGS]
