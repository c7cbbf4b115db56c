"""What the weekly budget says in words; what harms animals first, then the verdict, then the leaves."""

from collections.abc import Sequence

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.core.wording import CUTTINGS
from calculators.science.animals.reading_lines import LINES, standing
from calculators.science.nitrogen.balance import Verdict
from calculators.science.nitrogen.steady import Cycle

FEED_IN_STEPS = Note(
    "caution",
    "Feed more only if the animals eat all of it within minutes, by a quarter a week at most, and "
    "test ammonia and nitrite twice a week while you do. What shrimp leave lying rots: for a tank "
    "of shrimp alone use fewer fast plants, or a plain nitrate fertiliser as its label says.",
)
RANGE = Note(
    "info",
    "The soil's gas is known within a factor of thirty: read its least and most, too. Droppings and "
    "leftovers that rot come on top, days to weeks later; how much is unsure. Plants' uptake is "
    "right within a factor of two at best. Let your own readings decide.",
)
MEASURED = Note(
    "info", "The measured uptake stands for all plants; cover and trimmings are not added."
)
NOWHERE = Note("info", "In the end plants take all, so nitrate settles nowhere above zero.")
NO_FEED = Note(
    "info",
    "No feed holds your target: even without any, more comes in than goes out at it.",
)
ENDLESS = Note("caution", "Without water changes nitrate climbs without end.")


def nitrate_notes(now: float, high: float | None, tap: float, *, endless: bool) -> list[Note]:
    """Nitrate that harms, as read now and where it settles; the one table of lines decides.

    What is read ``now``, ``high``, the level before a change, and that of the ``tap`` are in mg/L as NO3.
    """
    notes = []
    if (level := standing("nitrate_mg_l", now).level) != "in-range":
        notes.append(
            nitrate_note(level == "deadly", f"{show(now)} mg/L of nitrate now", tap, now_too=True)
        )
    if high is not None and (level := standing("nitrate_mg_l", high).level) != "in-range":
        notes.append(
            nitrate_note(
                level == "deadly", f"nitrate settles near {show(high)} mg/L", tap, now_too=False
            )
        )
    if endless:
        notes.append(ENDLESS._replace(first=bool(notes)))
    return sorted(notes, key=lambda note: note.level != "danger")


def nitrate_note(deadly: bool, what: str, tap: float, *, now_too: bool) -> Note:
    """One reading or forecast of nitrate that harms, with what to do.

    A ``tap`` that brings as much itself, in mg/L as NO3, is no water to change more with.
    """
    edge = LINES["nitrate_mg_l"].harmful_high or 0.0
    tap_harms = tap >= edge
    other = f"with water that holds less nitrate than this tap's {show(tap, 2)} mg/L"
    water = f"{other}, " if tap_harms else "with water "
    if deadly:
        act = (
            f"change a quarter of the water today and each day, {water}"
            f"of the same temperature and hardness, until a test reads under {edge:.0f}"
            if now_too
            else f"feed less and change {other if tap_harms else 'more'} before it gets there"
        )
        text = (
            f"Animals first: {what}, which can kill sensitive ones. Animals already in it: {act}. Where "
            "ammonia shows, see first how to change water with it. No animals yet: wait until this is put "
            "right."
        )
        return Note("danger", text, first=True)
    text = (
        f"{what[0].upper()}{what[1:]}. From about {edge:.0f} it can harm sensitive animals over time: "
        f"change {other if tap_harms else 'more'}, feed less, or grow more plants."
    )
    return Note("caution", text, first=True)


def target_notes(target: float) -> list[Note]:
    """What to say of a ``target`` of nitrate, in mg/L as NO3, that harms by itself."""
    level = standing("nitrate_mg_l", target).level
    if level == "in-range":
        return []
    edge = LINES["nitrate_mg_l"].harmful_high or 0.0
    harm = "can kill sensitive animals" if level == "deadly" else "can harm them over time"
    text = (
        f"No target for a tank with animals: {show(target)} mg/L of nitrate {harm}. "
        f"Aim well below {edge:.0f}."
    )
    return [Note("danger" if level == "deadly" else "caution", text, first=True)]


def other_notes(
    verdict: Verdict,
    cycle: Cycle,
    high: float | None,
    *,
    measured: bool,
    feed_to_balance: float,
    match_harms: bool,
    feed_for_target: float,
    more_for_target: bool,
) -> Sequence[Note]:
    """What stands after the verdict.

    Nitrate settles as ``high`` as this, mg/L as NO3; ``feed_to_balance`` and ``feed_for_target`` are in
    g a week; where the former ``match_harms``, that stands before, and no such feed is named.
    ``more_for_target``: whether more is fed for the target than now, which the water carries.
    """
    notes = []
    if verdict == "running-short" and not match_harms:
        notes.append(
            Note("info", f"Feed that would just match: about {show(feed_to_balance, 2)} g a week.")
        )
    if more_for_target or (verdict == "running-short" and not match_harms):
        notes.append(FEED_IN_STEPS)
    notes += [MEASURED] if measured else []
    notes += [NOWHERE] if high is None and cycle.rise_day < 0 else []
    notes += [NO_FEED] if feed_for_target < 0 else []
    return [*notes, RANGE, CUTTINGS]
