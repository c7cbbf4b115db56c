"""What the keeper must know beside a trend's figures."""

from collections.abc import Sequence

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.nitrogen.constants import DAYS_PER_WEEK
from calculators.readings.outlook import readings_needed
from calculators.readings.stretches import Change, Reading, change_days
from calculators.readings.theil_sen import Slope, Stretch

KIT_IS_COARSE = Note(
    "info",
    "Colour kits differ between eyes, lights and batches. Use one kit, one light and one person, and "
    "mark each reading as nitrate or as nitrate nitrogen: the two differ 4.4-fold.",
)
NEEDS_A_TREND = (
    "Days to zero or a limit, and changes that hold a level, are given for a clear trend only."
)
ONLY_WHERE_IT_LEADS = (
    "A dash stands where this trend does not lead: days to zero while it builds up, days to a limit "
    "while it falls, a holding change where the new water reads too high for one, a final level "
    "where fewer than two changes are given or the plants would use up all."
)
NOTHING_TOLD = Note("info", "Too few readings to tell which way it goes.", first=True)
ANIMALS_FIRST = Note(
    "caution",
    "This is for slow things such as nitrate, phosphate or hardness. If ammonia or nitrite shows at "
    "all, do not wait for a trend: look at the animals and act on the single reading.",
)


def notes(
    slope: Slope,
    verdict: str,
    stretches: Sequence[Stretch],
    readings: Sequence[Reading],
    changes: Sequence[Change],
) -> list[Note]:
    """Why the verdict is what it is, and what the readings cannot show."""
    said = [verdict_note(slope, verdict), ANIMALS_FIRST]
    if slope.width is None:
        said.append(too_few(stretches, changes))
    elif verdict == "too-few-readings":
        why = (
            "The line moves, but readings that scatter like these could do that by chance. Go on "
            "measuring, best twice or more between two changes."
        )
        said.append(Note("info", why))
    if verdict == "falling":
        said.append(
            Note(
                "info",
                "More is taken up than comes in. Before it reaches zero, feed a little more or thin "
                "fast plants, or they will starve; never feed more than the animals eat at once.",
            )
        )
    moving = verdict in ("building", "falling")
    said.append(Note("info", ONLY_WHERE_IT_LEADS if moving else NEEDS_A_TREND))
    return [*said, *doubts(slope, stretches, readings, changes), KIT_IS_COARSE]


def verdict_note(slope: Slope, verdict: str) -> Note:
    """The verdict in one plain sentence, with its limits where it says that something moves."""
    if verdict == "too-few-readings" or slope.low is None or slope.high is None:
        return NOTHING_TOLD
    if verdict == "steady":
        text = "Steady: over your readings it moves by less than they can tell."
        return Note("info", text, first=True)
    way = "Building up" if verdict == "building" else "Falling"
    middle, *ends = (DAYS_PER_WEEK * one for one in (slope.middle, slope.low, slope.high))
    least, most = sorted(ends, key=abs)
    return Note(
        "info",
        f"{way}: by about {show_number(abs(middle), 2)} mg/L a week between water changes, "
        f"{show_number(abs(least), 2)} to {show_number(abs(most), 2)} at 95 %.",
        first=True,
    )


def too_few(stretches: Sequence[Stretch], changes: Sequence[Change]) -> Note:
    """Say how many readings more it takes before anything can be told."""
    last_day = stretches[-1][-1][0] if stretches else 0.0
    days = change_days(changes)
    needed = readings_needed(stretches, bool(days) and days[-1] >= last_day)
    more = (
        "several readings"
        if needed is None
        else f"{needed} readings"
        if needed > 1
        else "one reading"
    )
    return Note(
        "info",
        f"There are no 95 % limits for so few pairs, so nothing can be said yet. Take {more} more "
        "before the next water change.",
    )


def doubts(
    slope: Slope,
    stretches: Sequence[Stretch],
    readings: Sequence[Reading],
    changes: Sequence[Change],
) -> list[Note]:
    """What in these readings may mislead."""
    said = []
    if slope.width == 0:
        why = "The limits meet because equal readings hide what lies between the kit's steps."
        said.append(Note("caution", why))
    if sum(reading.value == 0 for reading in readings) > 1:
        why = "Readings of zero mean less than the kit can show. They hide a further fall."
        said.append(Note("caution", why))
    alone = sum(len(stretch) == 1 for stretch in stretches)
    if alone:
        said.append(
            Note("info", f"{alone} of the readings stand alone between changes and were not used.")
        )
    days = set(change_days(changes))
    shared = sorted(reading.day for reading in readings if reading.day in days)
    if shared:
        which = ", ".join(show_number(day) for day in shared[:5])
        said.append(
            Note("info", f"Readings on the day of a change count as taken before it (day {which}).")
        )
    return said
