"""What is said about the answers for a target: how to get there, and where not to go."""

from collections.abc import Sequence

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.nitrogen_forecast.inverse import MOST_STEPS, Answers
from calculators.nitrogen_forecast.run_harm import harms
from calculators.science.nitrogen.balance_words import FEED_IN_STEPS, target_notes
from calculators.science.nitrogen.course import course_of
from calculators.science.nitrogen.forecast_tank import Event, Rates, Tank
from calculators.science.nitrogen.ode import Effort
from calculators.science.nitrogen.simulate import COARSE, simulate

UNKNOWN_ON_THE_WAY = Note(
    "caution",
    "Whether the water would harm animals on the way to that target was not worked out to the last "
    "day. Raise the feed in steps, and test ammonia and nitrite at each.",
    first=True,
)
UNFINISHED = Note(
    "caution",
    "Not all ways to that target were searched: in so many days too much is done, or changes too fast. "
    "Ask for fewer days. What shows no figure was not found, which does not mean that it cannot be.",
)


def target_cautions(
    target: float | None,
    to_target: Answers,
    tank: Tank,
    events: Sequence[Event],
    days: float,
    rates: Rates,
) -> list[Note]:
    """Cautions that belong to the answers for a target.

    The ``target`` is in mg/L as NO3, the run lasts for so many days.
    """
    if target is None:
        return []
    notes = [
        *target_notes(target),
        *harmful_feed(to_target.feed_g_week, tank, events, days, rates),
        FEED_IN_STEPS,
    ]
    if to_target.unfinished:
        return [*notes, UNFINISHED]
    if to_target.feed_g_week is None:
        notes.append(Note("caution", "No feed leads there: even without any, nitrate ends higher."))
    if None in (to_target.extra_stems_g, to_target.extra_floater_cm2):
        notes.append(
            Note(
                "caution",
                "Plants alone do not lead there: feed less, or change more with leaner water.",
            )
        )
    return notes


def harmful_feed(
    feed: float | None, tank: Tank, events: Sequence[Event], days: float, rates: Rates
) -> list[Note]:
    """A caution where the feed for the target is more than now, and harms before it gets there.

    The search looks at nitrate on the last day alone; animals have to live through all days.
    """
    if feed is None or feed <= tank.feed_g_week:
        return []
    fed = tank._replace(feed_g_week=feed)
    ran = simulate(fed, events, days, rates, relative=COARSE, effort=Effort(MOST_STEPS))
    record = ran.record
    harmful = [harm for harm in harms(record, course_of(record.lines), fed) if harm.is_danger]
    if all(harm.is_now for harm in harmful):
        return [] if ran.day >= days else [UNKNOWN_ON_THE_WAY]
    return [
        Note(
            "caution",
            f"Do not feed for that target: at {show(feed, 2)} g a week the water would harm "
            "animals before nitrate gets there. Let the filter grow first, and raise the feed in "
            "steps.",
            first=True,
        )
    ]
