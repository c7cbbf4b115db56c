"""What the keeper must know beside a trend's figures."""

from collections.abc import Sequence

from calculators.core.figures import figure
from calculators.core.numbers import show_number
from calculators.core.quantities import Percent
from calculators.core.result import Link, Note
from calculators.core.wording import DANGER_PAGE
from calculators.science.animals.reading_lines import standing
from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.trends.kendall import LEAST_COVERAGE, TARGET_COVERAGE
from calculators.science.trends.stretches import Change, DatedReading, change_days
from calculators.science.trends.theil_sen import Slope, Stretch
from calculators.science.water.careful_change import IN_ACID_WATER
from calculators.trend.outputs import SlopeWeek
from calculators.trend.trend_outlook import readings_needed

ONE_KIT = Note(
    "info", "Use one kit, one light and one person: colours differ between kits, lights and eyes."
)
NEEDS_A_TREND = (
    "Days to zero or a limit, and changes that hold a level, are given for a clear trend only."
)
ONLY_WHERE_IT_LEADS = (
    "A dash stands where this trend does not lead, or where no change with your tap can hold it."
)
NO_SOIL = Note(
    "info", "No soil area is given, so what the soil turns to gas counts as the plants' uptake."
)
# Feed that is nitrified uses up carbonate hardness: what helps a falling nitrate hurries a falling KH.
FALLING = (
    Note(
        "info",
        "More is taken up than comes in. If it is nitrate or phosphate: before it reaches zero, thin fast "
        "plants or feed a little more, never more than the animals eat at once.",
    ),
    Note(
        "caution",
        "If it is carbonate hardness (KH): feed no more for it, since feed uses KH up, and where it ends pH "
        "falls. Raise nothing quickly; see first how long it lasts.",
        links=(Link("How long carbonate hardness lasts", "calculators/kh-budget/"),),
    ),
)
TOO_FEW_TO_TELL = Note("info", "Too few readings to tell which way it goes.", first=True)
ANIMALS_FIRST = Note(
    "caution",
    "This is for slow things such as nitrate, phosphate or hardness. If ammonia or nitrite shows at "
    "all, do not wait for a trend: look at the animals and act on the single reading.",
)


def notes(
    slope: Slope,
    verdict: str,
    stretches: Sequence[Stretch],
    readings: Sequence[DatedReading],
    changes: Sequence[Change],
) -> list[Note]:
    """Why the verdict is what it is, and what the readings cannot show."""
    high = highest_now(readings)
    collected = [*high, verdict_note(slope, verdict), ANIMALS_FIRST]
    if slope.coverage is None:
        collected.append(too_few(stretches, changes))
    elif slope.coverage < TARGET_COVERAGE:
        collected.append(less_sure(slope, stretches, changes))
    if slope.coverage is not None and verdict == "too-few-readings":
        why = (
            "The line moves, but readings that scatter like these could do that by chance. Go on "
            "measuring, best twice or more between two changes."
        )
        collected.append(Note("info", why))
    if verdict == "falling" and not high:
        collected += FALLING
    moving = verdict in ("building", "falling")
    collected.append(Note("info", ONLY_WHERE_IT_LEADS if moving else NEEDS_A_TREND))
    return [*collected, *doubts(slope, stretches, readings, changes), ONE_KIT]


def highest_now(readings: Sequence[DatedReading]) -> list[Note]:
    """The last reading, where it harms or kills if it is of nitrate; other things have no line here."""
    if not readings:
        return []
    last = max(readings, key=lambda one: one.day).value
    level = standing("nitrate_mg_l", last).level
    if level == "in-range":
        return []
    if level == "deadly":
        text = (
            f"The last reading is {show_number(last)} mg/L. If it is nitrate, it can kill sensitive animals: "
            "do not wait for a trend. Test ammonia and pH, and where no ammonia shows change a quarter now "
            f"and each day until it reads lower. {IN_ACID_WATER} If the kit counts nitrogen, it is 4.4 times "
            "worse."
        )
        return [Note("danger", text, True, (DANGER_PAGE,))]
    text = (
        f"The last reading is {show_number(last)} mg/L. If it is nitrate, it harms sensitive animals over "
        "time: feed no more than now, test ammonia and pH, and where no ammonia shows change more, in small "
        f"steps. {IN_ACID_WATER}"
    )
    return [Note("caution", text, True)]


def verdict_note(slope: Slope, verdict: str) -> Note:
    """The verdict in one plain sentence, with its limits where it says that something moves."""
    if verdict == "too-few-readings" or slope.low is None or slope.high is None:
        return TOO_FEW_TO_TELL
    if verdict == "steady":
        text = "Steady: over your readings it moves by less than they can tell."
        return Note("info", text, first=True)
    way = "Building up" if verdict == "building" else "Falling"
    middle, *ends = (DAYS_PER_WEEK * end for end in (slope.middle, slope.low, slope.high))
    least, most = (figure(SlopeWeek, abs(end)) for end in sorted(ends, key=abs))
    return Note(
        "info",
        f"{way}: by about {figure(SlopeWeek, abs(middle))} mg/L a week between water changes, "
        f"{least} to {most} ({percent_sure(slope)} sure).",
        first=True,
    )


def percent_sure(slope: Slope) -> str:
    """How often limits like a slope's hold the true one, in percent."""
    return f"{figure(Percent, 100 * (slope.coverage or 0))} %"


def too_few(stretches: Sequence[Stretch], changes: Sequence[Change]) -> Note:
    """Say how many readings more it takes before anything can be told."""
    more = more_readings(stretches, changes, LEAST_COVERAGE)
    text = f"So few pairs bear no limits. Take {more} more before the next water change."
    return Note("info", text)


def less_sure(slope: Slope, stretches: Sequence[Stretch], changes: Sequence[Change]) -> Note:
    """Say how sure the widest limits are, and how many readings more it takes for 95 %."""
    more = more_readings(stretches, changes, TARGET_COVERAGE)
    text = (
        f"So few pairs bear no 95 % limits: these are the widest there are, {percent_sure(slope)} sure. "
        f"For 95 % take {more} more before the next water change."
    )
    return Note("info", text)


def more_readings(stretches: Sequence[Stretch], changes: Sequence[Change], coverage: float) -> str:
    """How many readings more make limits of such a coverage, in words."""
    last_day = stretches[-1][-1][0] if stretches else 0.0
    days = change_days(changes)
    needed = readings_needed(stretches, bool(days) and days[-1] >= last_day, coverage)
    if needed is None:
        return "several readings"
    return f"{needed} readings" if needed > 1 else "one reading"


def doubts(
    slope: Slope,
    stretches: Sequence[Stretch],
    readings: Sequence[DatedReading],
    changes: Sequence[Change],
) -> list[Note]:
    """What in these readings may mislead."""
    notes = []
    if slope.width == 0:
        why = "The limits meet because equal readings hide what lies between the kit's steps."
        notes.append(Note("caution", why))
    if sum(reading.value == 0 for reading in readings) > 1:
        why = "Readings of zero mean less than the kit can show. They hide a further fall."
        notes.append(Note("caution", why))
    alone = sum(len(stretch) == 1 for stretch in stretches)
    if alone:
        notes.append(
            Note("info", f"{alone} of the readings stand alone between changes and were not used.")
        )
    days = set(change_days(changes))
    shared = sorted(reading.day for reading in readings if reading.day in days)
    if shared:
        which = ", ".join(show_number(day) for day in shared[:5])
        notes.append(
            Note("info", f"Readings on the day of a change count as taken before it (day {which}).")
        )
    return notes
