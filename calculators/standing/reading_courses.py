"""Which way the readings of a tank go: the project's own slope, cut where the log breaks the line."""

from typing import Annotated, NamedTuple, get_args

from calculators.core.figures import figure
from calculators.core.quantities import Factor
from calculators.core.quantity import Choices, Digits, Label, UsUnit
from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.latest import Latest
from calculators.science.shelf.log import Dated, Log
from calculators.science.trends.stretches import DAY_PLACES, Change, DatedReading, into_stretches
from calculators.science.trends.theil_sen import Slope, Stretch, theil_sen
from calculators.science.trends.trend_verdict import Verdict, judge

WINDOW_DAYS = 120
MOST_READINGS = 60  # of one thing: more would keep a phone busy and tell no more
NOT_CHANGED_OUT = ("temperature_c", "oxygen_mg_l", "cover_percent")
BREAKS = {"cover_percent": ("thin",), "temperature_c": (), "oxygen_mg_l": ()}
BREAKS_OF_WATER = ("change", "dose")
Slopes = Annotated[Factor, Digits(2)]
VERDICT_WORDS = Choices(("builds up", "steady", "falls", "too few readings to tell"))


class TrendRow(NamedTuple):
    """The latest reading of one thing, and which way it goes a week between changes."""

    what: Annotated[str, Label("Key")]
    label: Annotated[str, Label("Reading")]
    latest: Annotated[Factor, Label("Latest")]
    unit: Annotated[str, Label("Unit")]
    on: Annotated[str, Label("Read on")]
    slope_week: Annotated[Slopes | None, Label("A week")]
    slope_low_week: Annotated[Slopes | None, Label("At least")]
    slope_high_week: Annotated[Slopes | None, Label("At most")]
    verdict: Annotated[Verdict, Label("Verdict"), VERDICT_WORDS]
    read: Annotated[str, Label("Latest, with its age")]
    way: Annotated[str, Label("Way")]


class ReadingCourse(NamedTuple):
    """The readings of one thing by stretches, in days before today (below zero), and their slope."""

    what: str
    stretches: list[Stretch]
    slope: Slope | None
    kit_step: float

    @property
    def verdict(self) -> Verdict:
        """Which way it goes, as far as the readings and the kit can tell."""
        if self.slope is None:
            return "too-few-readings"
        return judge(self.slope, self.stretches, self.kit_step)


def courses(log: Log) -> list[ReadingCourse]:
    """The course of each thing that was read within the window, in the order of the readings' table."""
    found = []
    for what in READINGS:
        lately = [one for one in log.readings(what) if log.days_ago(one.day) <= WINDOW_DAYS]
        if lately:
            found.append(course_of(what, lately[-MOST_READINGS:], log))
    return found


def course_of(what: str, readings: list[Dated], log: Log) -> ReadingCourse:
    """The course of one thing; readings of one moment are taken as their mean."""
    zero = today_in_days(log)
    by_day: dict[float, list[float]] = {}
    for one in readings:
        by_day.setdefault(round(one.days - zero, DAY_PLACES), []).append(one.value)
    points = [DatedReading(day, sum(values) / len(values)) for day, values in by_day.items()]
    breaks = log.of(*BREAKS.get(what, BREAKS_OF_WATER))
    # Each cuts the line, however large it was; one that was of nothing does not.
    cuts = [Change(one.days - zero, 100.0) for one in breaks if one.entry.value != 0]
    stretches = into_stretches(points, cuts)
    return ReadingCourse(what, stretches, theil_sen(stretches), kit_step(what, readings))


def today_in_days(log: Log) -> float:
    """Noon of the day that is asked about, in days since the fixed moment of ``Dated.days``."""
    return log.today.toordinal() - EPOCH_ORDINAL + 0.5


EPOCH_ORDINAL = 719_163  # of 1970-01-01, where Python's timestamps begin


def kit_step(what: str, readings: list[Dated]) -> float:
    """The coarsest step of the kits that were used, else that of a common kit.

    In the unit of the reading.
    """
    steps = [one.entry.step for one in readings if one.entry.step is not None]
    return max(steps, default=READINGS[what].step)


def trend_row(course: ReadingCourse, latest: Latest) -> TrendRow:
    """One row of the answer."""
    slope, one = course.slope, READINGS[course.what]
    middle, low, high = (None, None, None) if slope is None else slope[:3]
    ends = (weekly(middle), weekly(low), weekly(high))
    read = f"{one.words(latest.value)}, {latest.of_when}"
    day, way = latest.day.isoformat(), way_words(course.verdict, *ends, one.us)
    return TrendRow(
        course.what, one.label, latest.value, one.unit, day, *ends, course.verdict, read, way
    )


def way_words(
    verdict: Verdict,
    middle: float | None,
    low: float | None,
    high: float | None,
    us: UsUnit | None = None,
) -> str:
    """Which way a reading goes, with the slope and its limits where it says that something moves.

    The slope is ``middle``, its limits are ``low`` and ``high``, in the reading's unit a week.
    """
    word: str = VERDICT_WORDS.words[get_args(Verdict).index(verdict)]
    if verdict not in ("building", "falling") or middle is None or low is None or high is None:
        return word
    ends = [abs(end) for end in (middle, *sorted((low, high), key=abs))]
    by, least, most = (figure(Slopes, end) for end in ends)
    said = f"{word} by {by} a week, {least} to {most}"
    if us is None:
        return said
    by, least, most = (figure(Slopes, end * us.factor) for end in ends)
    return f"{said} (in {us.unit} by {by}, {least} to {most})"


def weekly(slope: float | None) -> float | None:
    """A slope a day as one a week."""
    return None if slope is None else DAYS_PER_WEEK * slope
