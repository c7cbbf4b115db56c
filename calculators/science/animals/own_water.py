"""The pH and hardness at which a kind is kept, against the water that it is in or is to go into."""

from collections.abc import Sequence

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.science.animals.animal_table import ANIMALS, shown_name
from calculators.science.water.unread import HIGH_PH

# A pH that nobody read is taken at this, for its ammonia; it says nothing of what the animals are in.
WHERE_UNREAD = HIGH_PH
# How far beyond what keepers say it is worth a word: their ranges are no sharp lines; our judgement.
PH_SLACK, GH_SLACK_DH = 0.5, 2.0
UNSUITED = (
    "Keep it in other water rather than changing this one: put in nothing that moves pH or hardness quickly. "
    "An animal that lives in it already is brought over within days, never at once."
)


def own_water(
    kinds: Sequence[str], ph: float | None = None, gh_dh: float | None = None
) -> list[Note]:
    """A note for each kind whose own pH or hardness (°dH) this water is outside of."""
    found = []
    for key in kinds:
        kind = ANIMALS[key]
        parts = []
        if (
            ph is not None
            and is_outside(ph, kind.ph_low, kind.ph_high, PH_SLACK)
            and ph != WHERE_UNREAD
        ):
            parts.append(
                f"pH {span(kind.ph_low, kind.ph_high)}, and this water has {show_number(ph)}"
            )
        if gh_dh is not None and is_outside(gh_dh, kind.gh_low, kind.gh_high, GH_SLACK_DH):
            parts.append(
                f"{span(kind.gh_low, kind.gh_high)} °dH of GH, and this water has {show_number(gh_dh)}"
            )
        if parts:
            text = f"Keepers have {shown_name(key)} at {'; and at '.join(parts)}. {UNSUITED}"
            found.append(Note("caution", text, first=True))
    return found


def is_outside(value: float, low: float | None, high: float | None, slack: float) -> bool:
    """Whether a figure lies outside a range by ``slack`` or more; False where none is known.

    The ``value``, its ``low`` and ``high`` end and the slack are in one unit: °dH, or none for pH.
    """
    return (low is not None and value <= low - slack) or (
        high is not None and value >= high + slack
    )


def span(low: float | None, high: float | None) -> str:
    """A range in words, without its unit; ``low`` and ``high`` are of the same, °dH or none for pH."""
    return f"{show_number(low or 0)} to {show_number(high or 0)}"
