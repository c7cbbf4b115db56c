"""How much of these changes animals bear, by the pH and the hardness of the tank and of the new water.

The words and the limits are those of every other door: ``first_change.py`` and ``careful_change.py``.
"""

from calculators.core.result import Level, Note
from calculators.core.wording import joined
from calculators.science.animals.reading_lines import standing
from calculators.science.water.careful_change import WaterForChange, a_tenth_at_a_time, is_acid
from calculators.science.water.first_change import hardness_jump
from calculators.science.water.gentle import STEP_DH_A_DAY
from calculators.water_change.targets import Substance, level_of

# What is not left in for days while its water is matched. A nitrate that kills rose for months, and
# animals are used to it: a quick change of hardness then harms as much.
KILLS_SOON: tuple[Substance, ...] = ("nitrite", "copper")


def gentle_step(what: Substance, now_mg_l: float, percent: float, water: WaterForChange) -> str:
    """How to begin where a change of so many ``percent`` is more than animals bear; empty where they do.

    ``what`` reads ``now_mg_l`` in the tank.
    """
    if percent <= 0:
        return ""
    if leaps(water):
        return a_tenth_at_a_time(water)
    kills = what in KILLS_SOON and level_of(what, now_mg_l) == "deadly"
    return hardness_jump(percent, water.gaps, what if kills else "")


def leaps(water: WaterForChange) -> bool:
    """Whether the pH of this tank leaps with more than a little of this new water.

    It does in acid water, and where no carbonate hardness holds it, unless the new water has none to give.
    """
    if is_acid(water):
        return True
    kh, tap = water.kh_dh, water.tap_kh_dh
    holds_none = kh is not None and standing("kh_dh", kh).side == "low"
    return holds_none and (tap is None or tap > (kh or 0.0))


def begin_gently(step: str, level: Level) -> list[Note]:
    """The step as a note that stands before the plan; nothing where there is none."""
    return [Note(level, step, True)] if step else []


def unread(water: WaterForChange) -> list[Note]:
    """That a hardness which nobody gave may lie far off; nothing where both are known on both sides."""
    known = {gap.name for gap in water.gaps}
    names = [name for name in ("KH", "GH") if name not in known]
    if not names:
        return []
    which = joined(names)
    text = (
        f"These figures know nothing of {which}. New water of far other hardness is a shock of its own: "
        f"animals bear about {STEP_DH_A_DAY} °dH a day. Where it differs, or nobody knows, begin with a "
        f"tenth, poured slowly; {which} of the tank and of the new water can be entered."
    )
    return [Note("caution", text)]
