"""All that the weekly budget says, in its order: harm to animals, the verdict, the rest."""

from calculators.core.result import Note
from calculators.nitrogen_balance.balance_verdict import Ahead, verdict_note
from calculators.nitrogen_balance.load_words import (
    hardness_notes,
    load_notes,
    never_so_much,
    target_feed_notes,
)
from calculators.nitrogen_balance.tank_load import Load
from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.nitrogen.balance import SHOWN_DAYS, Flows, Verdict
from calculators.science.nitrogen.balance_words import nitrate_notes, other_notes, target_notes
from calculators.science.nitrogen.steady import Cycle


def notes(
    verdict: Verdict,
    week_flows: Flows,
    cycle: Cycle,
    days: float | None,
    high: float | None,
    now: float,
    later: float,
    load: Load,
    hardness: tuple[float | None, float | None],
    *,
    measured: bool,
    tap: float,
    feed_to_balance: float,
    target: float,
    feed_now: float,
    feed_for_target: float,
    at_balance: Load,
    at_target: Load,
) -> list[Note]:
    """All that is to be said about one budget; ``hardness`` is the KH read and the weeks it lasts.

    The nitrate ``now``, ``later``, as ``high`` as it settles, of the ``tap`` and of the ``target`` is in mg/L
    as NO3; ``feed_now``, ``feed_to_balance`` and ``feed_for_target`` are in g a week, below zero where there
    is no such feed; ``at_balance`` and ``at_target`` are the loads of the last two.
    """
    endless = cycle.share <= 0 < cycle.rise_day
    harm = [*nitrate_notes(now, high, tap, endless=endless), *load_notes(load)]
    first = sorted(harm, key=lambda note: note.level != "danger")
    ahead = Ahead(now, later, SHOWN_DAYS / DAYS_PER_WEEK)
    says = verdict_note(verdict, week_flows, cycle, days, high, ahead, harmless=not harm)
    return [
        *first,
        says._replace(first=True),
        *hardness_notes(load, *hardness),
        *never_so_much(verdict, feed_to_balance, at_balance),
        *target_notes(target),
        *target_feed_notes(feed_for_target, feed_now, at_target),
        *other_notes(
            verdict,
            cycle,
            high,
            measured=measured,
            feed_to_balance=feed_to_balance,
            match_harms=at_balance.is_overfed,
            feed_for_target=feed_for_target,
            more_for_target=feed_for_target > feed_now and not at_target.is_overfed,
        ),
    ]
