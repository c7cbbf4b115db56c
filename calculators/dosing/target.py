"""How large a rise is wanted: given as such, or as a level to reach from the reading now."""

from calculators.core.numbers import show_number
from calculators.core.result import Note, Refusal, Refused
from calculators.dosing.cautions import Plan, peaks

MOST_MG_L = 1_000.0
BEYOND = 1.1  # of the level wanted: what repeated doses may pass it by before it is said


def target_rise(rise: float | None, target: float | None, now: float | None) -> float:
    """The rise of one dose, in mg/L, as are the ``target`` level and the reading ``now``.

    A level to reach goes before a rise. Raises ``Refused`` where neither is given, or the reading is
    missing.
    """
    if target is None:
        if rise is None:
            why = "fill in a rise, or the level to reach and the reading now"
            raise Refused(Refusal("rise_mg_l", why, 0, MOST_MG_L))
        return rise
    if now is None:
        why = "fill in the reading now: a dose is what is missing to the level you want"
        raise Refused(Refusal("now_mg_l", why, 0, 10_000))
    return max(0.0, target - now)


def target_notes(plan: Plan, target: float | None, now: float | None) -> list[Note]:
    """What to know of a level to reach, and of a reading that was not entered.

    Both ``target`` and ``now`` are in mg/L.
    """
    if now is None:
        text = (
            f"You have not entered the reading now, so levels here count from nothing. What the water "
            f"holds of {plan.nutrient} comes on top: test it before you dose."
        )
        return [Note("caution", text)]
    if target is None:
        return []
    if plan.rise == 0:
        text = (
            f"The water reads {show_number(now)} mg/L, which is not below the level you want: nothing is "
            "to be dosed."
        )
        return [Note("info", text, True)]
    highest = peaks(plan, {})[plan.nutrient]
    if plan.rhythm.dose_every is None or highest <= BEYOND * target:
        return []
    text = (
        f"One such dose reaches {show_number(target)} mg/L. Repeated, it leads to {show_number(highest)} "
        "mg/L: give it once, then test, and give back only what plants took."
    )
    return [Note("caution", text)]
