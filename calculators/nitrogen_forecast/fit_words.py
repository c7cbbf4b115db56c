"""What is said of a forecast that is fitted to readings, and of one that could not be."""

from collections.abc import Sequence

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.science.fitting.enough_readings import LEAST_READINGS, LEAST_SPAN_DAYS
from calculators.science.fitting.fit import FittedForecast, Parameter
from calculators.science.fitting.fit_readings import NITRATE, Reading

TIMES = {
    "uptake": "the plants take {} what was entered",
    "feed": "the feed brings {} the nitrogen that was entered",
    "filter": "the filter is {} as mature as was entered",
}


def told(found: FittedForecast, count: int) -> Note:
    """What the readings tell, each with the limits that hold it four times in five."""
    said = [
        TIMES[one.name].format(times(one))
        for one in found.parameters
        if one.told and one.name in TIMES
    ]
    return Note(
        "info",
        f"Fitted to {count} readings: {'; '.join(said)}. The forecast goes on from there; what they tell "
        "nothing of stays as it was entered.",
        first=True,
    )


def times(one: Parameter) -> str:
    """A factor with its limits in words."""
    return f"{show(one.factor, 2)} times ({show(one.low, 2)} to {show(one.high, 2)})"


def too_few(rows: Sequence[Reading]) -> Note:
    """That the readings are too few, or too near one another."""
    count = sum(one.what == NITRATE for one in rows)
    return Note(
        "info",
        f"Not fitted: of nitrate there {'is one reading' if count == 1 else f'are {count} readings'}, with "
        f"today's. It takes {LEAST_READINGS} over {LEAST_SPAN_DAYS:g} days at least. The forecast goes by "
        "what was entered.",
        first=True,
    )


def dated_changes(count: int) -> str:
    """That water was changed so many times since the first reading, on the days entered."""
    if count == 0:
        return "No change of water since the first reading was entered, so none is counted."
    times = "change" if count == 1 else "changes"
    return f"Of the weeks before it counts the {count} {times} of water that you dated."


def undated_changes(percent: float, every_days: float) -> str:
    """What is taken for changes of water of which no day was entered."""
    if percent <= 0:
        return "Of the weeks before it counts no change of water, since none is entered."
    return (
        f"No change of water of the weeks before was dated: taken are {show(percent)} % every "
        f"{show(every_days)} days, counted from your first reading. Date them below it, if they were "
        "otherwise: the fit hangs on them."
    )


TOO_LONG = Note(
    "info",
    "Not fitted: that would take too long for these readings. Leave the oldest out. The forecast goes by "
    "what was entered.",
    first=True,
)
CONTRADICTS = Note(
    "caution",
    "Not fitted: no uptake, feed or filter within reason gives these readings with the water changes that "
    "were entered. Look whether each reading, its day and the changes are right, and test again. The "
    "forecast goes by what was entered, and so is not to be relied on.",
    first=True,
)
TELLS_NOTHING = Note(
    "info",
    "Not fitted: within what the kits see, these readings agree with what was entered and tell no more. The "
    "forecast goes by what was entered.",
    first=True,
)
