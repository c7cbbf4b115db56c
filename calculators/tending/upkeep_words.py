"""What the upkeep calculator says beside its figures."""

from calculators.core.result import Note
from calculators.core.wording import CHANGE_WITH_CARE, CUTTINGS

LONG_DAY_MINUTES = 120  # common practice, no source: after two hours one starts to skip things


def verdict(minutes_week: float, heaviest: str | None, busiest_day: int | None) -> Note:
    """The answer in plain words."""
    if heaviest is None:
        return Note("info", "No tank, or no minutes: there is nothing to add up.", True)
    text = f"About {minutes_week:.0f} minutes a week. {heaviest} takes most"
    fullest = f"; the fullest day is day {busiest_day}" if busiest_day else ""
    return Note("info", f"{text}{fullest}.", True)


def notes(longest_day: float, any_task: bool, dated: bool) -> list[Note]:
    """What the list leaves out, and what not to skip when time is short."""
    said = []
    if longest_day > LONG_DAY_MINUTES:
        text = f"One day takes {longest_day:.0f} minutes: move a trim, never a water change that is due."
        said.append(Note("caution", text))
    if any_task and not dated:
        said.append(Note("info", "Give today's date to get the list as a calendar file."))
    if not any_task:
        said.append(Note("info", "Nothing falls due in the next 28 days, so there is no calendar."))
    text = (
        "Feeding and looking at the animals come daily and are not counted here. When time is short, "
        "look at the animals first, then change water; leaves can wait."
    )
    return [*said, Note("info", text), CHANGE_WITH_CARE, CUTTINGS]
